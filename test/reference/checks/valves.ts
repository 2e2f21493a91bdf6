import { type Check, checksOf } from "./check.ts";

const MOTORCYCLE =
  "a motorcycle parts maker's instructions: a shim of 1.55 with 0.30 where 0.22 is wanted asks for 1.63, next 1.65; the limits about 0.22 are ours";
const CAR = "a car maker's repair manual: 2.80 with 0.45 measured and 0.25 wanted asks for 3.00, in steps of 0.05; the limits about 0.25 are ours";
const STEPS = "shims are made in steps of 0.05 and of 0.025 mm";

/** Shims and springs. */
export const VALVES: readonly Check[] = [
  ...checksOf("COILBIND", "fitted length less lift less solid length, subtracted by hand", "common practice", [
    ["=HATCH.COILBIND(40, 9.2, 28.5)", 2.3],
    ["=HATCH.COILBIND(1.575, 0.45, 1.065)", 0.06],
  ]),
  ...checksOf("SHIMPLAN", MOTORCYCLE, "read", [
    ["=HATCH.SHIMPLAN(1.55, 0.3, 0.18, 0.26)", 1.65, { at: [2, 2] }],
    ["=HATCH.SHIMPLAN(1.55, 0.3, 0.18, 0.26)", "buy", { at: [2, 3] }],
    ["=HATCH.SHIMPLAN(1.55, 0.3, 0.18, 0.26, {1.7,1.65})", "spare 2", { at: [2, 3] }],
  ]),
  ...checksOf("SHIMPLAN", CAR, "read", [["=HATCH.SHIMPLAN({2.8;2.8}, {0.45;0.25}, 0.2, 0.3)", 3, { at: [2, 2] }]]),
  ...checksOf("SHIMPLAN", "all ways enumerated by hand: valve 1 could have valve 2's shim or the spare, valve 2 only the spare", "computed", [
    ["=HATCH.SHIMPLAN({2.5;2.4}, {0.1;0.35}, 0.15, 0.25, 2.55)", "valve 2", { at: [2, 3] }],
    ["=HATCH.SHIMPLAN({2.5;2.4}, {0.1;0.35}, 0.15, 0.25, 2.55)", "spare 1", { at: [3, 3] }],
  ]),
  ...checksOf("SHIMSIZE", MOTORCYCLE, "read", [["=HATCH.SHIMSIZE(1.55, 0.3, 0.18, 0.26)", 1.65]]),
  ...checksOf("SHIMSIZE", CAR, "read", [["=HATCH.SHIMSIZE(2.8, 0.45, 0.2, 0.3)", 3]]),
  ...checksOf("SHIMSIZE", STEPS, "common practice", [["=HATCH.SHIMSIZE(1.55, 0.3, 0.18, 0.26, 0.025)", 1.625]]),
  ...checksOf("SPRINGRATE", "a spring maker's guide: free length .750 in, 22 lb/in, 5.5 lb at .500 in", "read", [["=HATCH.SPRINGRATE(0, 0.75, 5.5, 0.5)", 22]]),
  ...checksOf("SPRINGRATE", "a machining firm's note: free length 50 mm, 10 N/mm, 100 N at 40 mm", "read", [["=HATCH.SPRINGRATE(0, 50, 100, 40)", 10]]),
];
