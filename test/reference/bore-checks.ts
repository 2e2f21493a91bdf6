import { type Check, from } from "./check.ts";

/** Bores, pistons and oversizes. */
export const BORE_CHECKS: readonly Check[] = [
  ...from("ISO 286-2, Ø50 H7/g6: hole 50.000 to 50.025, shaft 49.975 to 49.991, clearance 0.009 to 0.050 mm", "read", [
    ["=HATCH.CLEARANCE(50, 49.991)", 0.009],
    ["=HATCH.CLEARANCE(50.025, 49.975)", 0.05],
  ]),
  ...from("ISO 286-2, over 50 to 80 mm: H7 +30/0, f7 −30/−60, g6 −10/−29 µm", "read", [
    ["=HATCH.CLEARANCE(73, 72.97)", 0.03],
    ["=HATCH.CLEARANCE(73.03, 72.94)", 0.09],
    ["=HATCH.CLEARANCE(73, 72.99)", 0.01],
    ["=HATCH.CLEARANCE(73.03, 72.971)", 0.059],
  ]),
  ...from("ISO 286-2, over 10 to 18 mm: H7 +18/0, f7 −16/−34 µm; over 30 to 50 mm: H7 +25/0, f7 −25/−50 µm", "read", [
    ["=HATCH.CLEARANCE(16.018, 15.966)", 0.052],
    ["=HATCH.CLEARANCE(16, 15.984)", 0.016],
    ["=HATCH.CLEARANCE(40.025, 39.95)", 0.075],
    ["=HATCH.CLEARANCE(40, 39.975)", 0.025],
  ]),
  ...from("TM 10-3930-243-34: taper at most .002 in, out-of-round at most .003 in", "read", [
    ["=HATCH.VERDICT(HATCH.TAPER({4.002,4.001;4.001,4.001;4,4}), , 0.002)", "within"],
    ["=HATCH.VERDICT(HATCH.TAPER({4.0021,4.001;4.001,4.001;4,4}), , 0.002)", "over"],
    ["=HATCH.VERDICT(HATCH.OUTOFROUND({4.003,4;4.001,4;4,4}), , 0.003)", "within"],
    ["=HATCH.VERDICT(HATCH.OUTOFROUND({4.0031,4;4.001,4;4,4}), , 0.003)", "over"],
  ]),
  ...from("TM 5-3810-303-24: taper at most .002 in, out-of-round at most .0025 in", "read", [
    ["=HATCH.VERDICT(HATCH.OUTOFROUND({3.8775,3.875}), , 0.0025)", "within"],
    ["=HATCH.VERDICT(HATCH.OUTOFROUND({3.8776,3.875}), , 0.0025)", "over"],
    ["=HATCH.VERDICT(HATCH.TAPER({3.877;3.875}), , 0.002)", "within"],
  ]),
  ...from("TM 9-2815-260-24: taper and out-of-round at most .002 in, piston clearance .003 to .006 in", "read", [
    ["=HATCH.VERDICT(HATCH.PISTONCLEARANCE({4.006,4.0065;4.006,4.006}, 4), 0.003, 0.006)", "within"],
    ["=HATCH.VERDICT(HATCH.PISTONCLEARANCE({4.0061,4.0065;4.0062,4.007}, 4), 0.003, 0.006)", "over"],
    ["=HATCH.VERDICT(HATCH.PISTONCLEARANCE({4.0029,4.003;4.003,4.003}, 4), 0.003, 0.006)", "under"],
  ]),
  ...from("TM 55-1905-219-14-10 p. 5-368: average bore over 4.6285 in to the +.005 size, 4.631 in; then 4.636 and 4.646 in", "read", [
    ["=HATCH.REBORESIZE(4.6286, 4.626, {0.005,0.01,0.02})", 0.005],
    ["=HATCH.REBORESIZE(4.631, 4.626, {0.005,0.01,0.02})", 0.005],
    ["=HATCH.REBORESIZE(4.6311, 4.626, {0.005,0.01,0.02})", 0.01],
    ["=HATCH.REBORESIZE(4.6361, 4.626, {0.005,0.01,0.02})", 0.02],
    ["=HATCH.REBORESIZE(4.6461, 4.626, {0.005,0.01,0.02})", "none: sleeve"],
  ]),
  ...from("metric oversizes of 0.25, 0.50, 0.75 and 1.00 mm, chosen on the largest bore", "common practice", [
    ["=HATCH.REBORESIZE({73.25,73.1;73.02,73.01}, 73, {0.25,0.5,0.75,1})", 0.25],
    ["=HATCH.REBORESIZE({73.26,73.1;73.02,73.01}, 73, {0.25,0.5,0.75,1})", 0.5],
  ]),
  ...from("a pure two-lobed bore of radial amplitude a has a two-point out-of-round of 4a", "computed", [
    // Radius 36.5 + 0.005 cos 2φ: diameters 73.01 along the lobes and 72.99 across them.
    ["=HATCH.OUTOFROUND({73.01,72.99})", 0.02],
  ]),
];
