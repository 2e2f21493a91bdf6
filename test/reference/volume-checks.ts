import { type Check, from } from "./check.ts";

/** Swept volumes, discs and compression ratios. */
export const VOLUME_CHECKS: readonly Check[] = [
  ...from("FAA AMT General handbook, piston displacement: 5.5 × 5.4 in is 128.29 in³, eight cylinders 1026.32 in³", "read", [
    ['=HATCH.SWEPTVOLUME(5.5, 5.4, 1, "in")', 128.29, 0.05],
    ['=HATCH.SWEPTVOLUME(5.5, 5.4, 8, "in")', 1026.32, 0.05],
    ['=HATCH.DISCVOLUME(5.5, 5.4, "in")', 128.29, 0.05],
  ]),
  ...from("NACA TR 250: single-cylinder engine, 5 in bore and 7 in stroke", "computed", [['=HATCH.SWEPTVOLUME(5, 7, , "in")', 137.4447, 5e-5]]),
  ...from("fuel-rating engine, 82.5 × 114.3 mm or 3.25 × 4.5 in", "computed", [
    ["=HATCH.SWEPTVOLUME(82.5, 114.3)", 611.0, 5e-3],
    ['=HATCH.SWEPTVOLUME(3.25, 4.5, 1, "in")', 37.331, 5e-4],
  ]),
  ...from("FAA-H-8083-32: 140 in³ with the piston down, 20 in³ with it up, is 7:1", "from memory", [["=HATCH.COMPRESSIONRATIO(140-20, 20)", 7]]),
];
