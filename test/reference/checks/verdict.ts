import { type Check, checksOf } from "./check.ts";

const FIT = "ISO 286-2, Ø50 H7/g6: clearance 0.009 to 0.050 mm";
const MICROMETER = "published micrometer example: limit of error ±0.003 mm, U 0.0010, so accepted within ±0.002 mm";
const DEFAULT_RULE = "ISO 14253-1:1998: proven inside LSL + U to USL − U, disproven outside LSL − U to USL + U";
const ILAC = "ILAC-G8:09/2019: at the edge of a guard band of 2u the risk is 2.275 %, at 1.645u 4.998 %";

/** Limits and verdicts, with and without an uncertainty. The words around the numbers are this project's own. */
export const VERDICTS: readonly Check[] = [
  ...checksOf("CONFORMITY", "JCGM 106:2012, 7.4: value 13.6, u 1.8, limits 12.5 and 16.3; the probability worked out from them", "computed", [
    ["=HATCH.CONFORMITY(13.6, 12.5, 16.3, 1.8)", 0.66263, { within: 5e-7, prints: 6 }],
  ]),
  ...checksOf("CONFORMITY", "any table of the normal distribution: 0.919243 lies below 1.4, 0.841345 below 1", "computed", [
    ["=HATCH.CONFORMITY(10, , 12.8, 2)", 0.919243, { within: 5e-7 }],
    ["=HATCH.CONFORMITY(12.8, 10, , 2)", 0.919243, { within: 5e-7 }],
    ["=HATCH.CONFORMITY(0.038, , 0.04, 0.002)", 0.841345, { within: 5e-7 }],
  ]),
  ...checksOf("CONFORMITY", ILAC, "read", [["=1-HATCH.CONFORMITY(0.036, , 0.04, 0.002)", 0.02275, { within: 5e-6 }]]),
  ...checksOf("CONFORMITY", ILAC, "computed", [["=1-HATCH.CONFORMITY(0.03671, , 0.04, 0.002)", 0.04998, { within: 5e-6 }]]),
  ...checksOf("EXPLAIN", FIT, "read", [
    ["=HATCH.EXPLAIN(0.02, 0.009, 0.05)", "0.02 is within 0.009 to 0.05, 0.011 from the lower limit"],
    ["=HATCH.EXPLAIN(0.051, 0.009, 0.05)", "0.051 is over the upper limit 0.05 by 0.001"],
  ]),
  ...checksOf("EXPLAIN", MICROMETER, "read", [
    ["=HATCH.EXPLAIN(0.0017, -0.003, 0.003, 0.001)", "0.0017 is within -0.003 to 0.003, 0.0013 from the upper limit, proven with an uncertainty of 0.001"],
    ["=HATCH.EXPLAIN(0.0025, -0.003, 0.003, 0.001)", "0.0025 is inside the upper limit 0.003 by 0.0005, not proven either way with an uncertainty of 0.001"],
  ]),
  ...checksOf("MARGIN", FIT, "read", [
    ["=HATCH.MARGIN(0.02, 0.009, 0.05)", 0.011],
    ["=HATCH.MARGIN(0.05, 0.009, 0.05)", 0],
    ["=HATCH.MARGIN(0.055, 0.009, 0.05)", -0.005],
  ]),
  ...checksOf("VERDICT", FIT, "read", [
    ["=HATCH.VERDICT(0.009, 0.009, 0.05)", "within"],
    ["=HATCH.VERDICT(0.05, 0.009, 0.05)", "within"],
    ["=HATCH.VERDICT(0.008, 0.009, 0.05)", "under"],
    ["=HATCH.VERDICT(0.051, 0.009, 0.05)", "over"],
  ]),
  ...checksOf("VERDICT", MICROMETER, "read", [
    ["=HATCH.VERDICT(0.0017, -0.003, 0.003, 0.001)", "within"],
    ["=HATCH.VERDICT(0.002, -0.003, 0.003, 0.001)", "within"],
    ["=HATCH.VERDICT(0.0025, -0.003, 0.003, 0.001)", "not proven"],
  ]),
  ...checksOf("VERDICT", ILAC, "computed", [
    ['=HATCH.VERDICT(0.03671, , 0.04, 0.004, , "95 %")', "within"],
    ['=HATCH.VERDICT(0.03672, , 0.04, 0.004, , "95 %")', "not proven"],
  ]),
  ...checksOf("VERDICT", DEFAULT_RULE, "from memory", [
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
