import { type Check, from } from "./check.ts";

/** Limits, with and without an uncertainty. */
export const LIMIT_CHECKS: readonly Check[] = [
  ...from("ISO 286-2, Ø50 H7/g6: clearance 0.009 to 0.050 mm", "read", [
    ["=HATCH.VERDICT(0.009, 0.009, 0.05)", "within"],
    ["=HATCH.VERDICT(0.05, 0.009, 0.05)", "within"],
    ["=HATCH.VERDICT(0.008, 0.009, 0.05)", "under"],
    ["=HATCH.VERDICT(0.051, 0.009, 0.05)", "over"],
    ["=HATCH.MARGIN(0.02, 0.009, 0.05)", 0.011],
    ["=HATCH.MARGIN(0.055, 0.009, 0.05)", -0.005],
  ]),
  ...from("published micrometer example: limit of error ±0.003 mm, U 0.0010, so accepted within ±0.002 mm", "read", [
    ["=HATCH.VERDICT(0.0017, -0.003, 0.003, 0.001)", "within"],
    ["=HATCH.VERDICT(0.002, -0.003, 0.003, 0.001)", "within"],
    ["=HATCH.VERDICT(0.0025, -0.003, 0.003, 0.001)", "not proven"],
    ["=HATCH.EXPLAIN(0.0025, -0.003, 0.003, 0.001)", "0.0025 is inside the upper limit 0.003 by 0.0005, not proven either way with an uncertainty of 0.001"],
  ]),
  ...from("ISO 14253-1 default rule: proven inside LSL + U to USL − U, disproven outside LSL − U to USL + U", "from memory", [
    ["=HATCH.VERDICT(11, 10, 20, 1)", "within"],
    ["=HATCH.VERDICT(10.9, 10, 20, 1)", "not proven"],
    ["=HATCH.VERDICT(9, 10, 20, 1)", "not proven"],
    ["=HATCH.VERDICT(8.9, 10, 20, 1)", "under"],
    ["=HATCH.VERDICT(21, 10, 20, 1)", "not proven"],
    ["=HATCH.VERDICT(21.1, 10, 20, 1)", "over"],
    ["=HATCH.VERDICT(19, , 20, 1)", "within"],
    ["=HATCH.VERDICT(19.1, , 20, 1)", "not proven"],
  ]),
];
