import { type Check, checksOf } from "./check.ts";

const TRUCK = "TM 9-2320-366-34: 4.134 in bore, top ring gap .016 to .026 in";
const GIRTH = "geometry: the girth of a bore grows by π × the growth of its diameter, .001 in opens the gap by .00314 in";
const UNDER_SIZE = "geometry: a bore .0012 in under size closes the gap by π × .0012 = .00377 in, not by the .0031 in that is printed";

/** Ring end gaps, wear and side clearance. */
export const RINGS: readonly Check[] = [
  ...checksOf("RINGGAPATBORE", GIRTH, "computed", [["=HATCH.RINGGAPATBORE(0.016, 4, 4.001)", 0.01914, { within: 5e-6 }]]),
  ...checksOf("RINGGAPATBORE", UNDER_SIZE, "computed", [["=0.016-HATCH.RINGGAPATBORE(0.016, 4, 3.9988)", 0.00377, { within: 5e-6 }]]),
  ...checksOf("RINGGAPFILE", TRUCK, "read", [
    ["=HATCH.RINGGAPFILE(0.012, 0.016)", 0.004],
    ["=HATCH.RINGGAPFILE(0.016, 0.016)", 0],
    ["=HATCH.RINGGAPFILE(0.026, 0.016)", 0],
  ]),
  ...checksOf("RINGGAPTARGET", "ring end gap .004 in for each inch of bore", "common practice", [
    ["=HATCH.RINGGAPTARGET(4)", 0.016],
    ["=HATCH.RINGGAPTARGET(73)", 0.292],
  ]),
  ...checksOf("RINGGAPTARGET", "a ring maker's published tip: at least .0035 in for each inch of bore", "read", [["=HATCH.RINGGAPTARGET(4, 0.0035)", 0.014]]),
  ...checksOf("RINGGAPTARGET", TRUCK, "read", [["=HATCH.VERDICT(HATCH.RINGGAPTARGET(4.134), 0.016, 0.026)", "within"]]),
  ...checksOf("RINGSIDE", "a car maker's repair data: top groove 1.53 to 1.55 mm, ring 1.47 to 1.49 mm, side clearance 0.04 to 0.08 mm", "read", [
    ["=HATCH.RINGSIDE(1.53, 1.49)", 0.04],
    ["=HATCH.RINGSIDE(1.55, 1.47)", 0.08],
  ]),
  ...checksOf(
    "RINGWEAR",
    "geometry: a face worn by 0.01 mm has a circle smaller by 0.02 mm to fill and opens the gap by 2π × 0.01 = 0.0628319 mm",
    "computed",
    [["=HATCH.RINGWEAR(0.3, 0.3628319)", 0.01, { within: 1e-8, prints: 6 }]],
  ),
  ...checksOf("RINGWEAR", `${GIRTH}, and the ring has not worn`, "computed", [["=HATCH.RINGWEAR(0.016, 0.01914, 4.134, 4.135)", 0, { within: 1e-6 }]]),
];
