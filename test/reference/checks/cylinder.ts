import { type Check, checksOf } from "./check.ts";
import { SUMMARY_OF_RINGS } from "./data.ts";

const NAVY = "US Navy Engineman training manual p. 3-5: three heights, two axes, every reading recorded; the readings are ours";
const MARINE_DIESEL =
  "a marine diesel maker's manual: roundness is the larger difference of the directions A and B in a section, cylindricity the larger difference of the sections in a direction; the readings are ours";
const FORKLIFT = "TM 10-3930-243-34: taper at most .002 in, out-of-round at most .003 in";
const ROLLER = "TM 5-3810-303-24: taper at most .002 in, out-of-round at most .0025 in";
const RINGS = "D. C. Montgomery, Introduction to Statistical Quality Control, piston ring diameters: mean and range that he prints for sample 1";
const GRADES = "a car maker's repair data: piston grades 79.965 to 79.975, 79.975 to 79.985 and 79.985 to 79.995 mm, clearance 0.025 to 0.045 mm";
const LANDING_CRAFT = "TM 55-1905-219-14-10 p. 5-368: average bore over 4.6285 in to the +.005 size, 4.631 in; then 4.636 and 4.646 in, from 4.626 in";
const EXPANSION = "Callister & Rethwisch, table B.6: grey iron 11.4, alloy 356.0 21.5 millionths per K; ISO 1: 20 °C; multiplied out by hand";
const TWELVE = "twelve readings every 30° on a radius of 43 mm, µm, by exact enumeration over real circles, which the reference figure meets within 0.001 µm";
const LOBES = "definition: a pure lobed bore of radial amplitude a has a roundness of 2a; between two diameters two lobes show as 4a, three as 0";
const ENUMERATED = "all pairings enumerated by hand";
const TRACE = "{3,6,2,-4,-1,5,7,1,-6,-2,4,0}";

/** Bores, pistons, clearances and oversizes. */
export const CYLINDER: readonly Check[] = [
  ...checksOf("BORESUMMARY", NAVY, "computed", [
    ["=HATCH.BORESUMMARY({73.05,73.02;73.02,73.01;73,73})", 73, { at: [2, 1] }],
    ["=HATCH.BORESUMMARY({73.05,73.02;73.02,73.01;73,73})", 73.05, { at: [2, 2] }],
    ["=HATCH.BORESUMMARY({73.05,73.02;73.02,73.01;73,73})", 73.0166667, { at: [2, 3], within: 5e-8 }],
    ["=HATCH.BORESUMMARY({73.05,73.02;73.02,73.01;73,73})", 0.05, { at: [2, 4] }],
    ["=HATCH.BORESUMMARY({73.05,73.02;73.02,73.01;73,73})", 0.03, { at: [2, 5] }],
    ["=HATCH.BORESUMMARY({73.05,73.02;73.02,73.01;73,73})", 1, { at: [2, 6] }],
    ["=HATCH.BORESUMMARY({73.05,73.02;73.02,73.01;73,73})", 1, { at: [2, 7] }],
  ]),
  ...checksOf("BORESUMMARY", RINGS, "from memory", [
    ["=HATCH.BORESUMMARY({74.03;74.002;74.019;73.992;74.008})", 74.01, { at: [2, 3], within: 5e-4, prints: 5 }],
    ["=HATCH.BORESUMMARY({74.03;74.002;74.019;73.992;74.008})", 0.038, { at: [2, 4] }],
  ]),
  ...checksOf("BORESUMMARY", "the same book, 25 samples of five rings taken as one block: their mean, worked out from the listed data", "computed", [
    [SUMMARY_OF_RINGS, 74.001176, { at: [2, 3] }],
    [SUMMARY_OF_RINGS, 73.967, { at: [2, 1] }],
  ]),
  ...checksOf("BOREWEAR", LANDING_CRAFT, "read", [["=HATCH.BOREWEAR({4.6285,4.628}, 4.626)", 0.0025]]),
  ...checksOf("BOREWEAR", "a marine diesel maker's manual: bore of 84.000 mm when new, limit 84.200 mm", "read", [
    ["=HATCH.VERDICT(HATCH.BOREWEAR({84.2,84.15;84.12,84.1;84.03,84.02}, 84), , 84.2-84)", "within"],
    ["=HATCH.VERDICT(HATCH.BOREWEAR({84.201,84.15;84.12,84.1;84.03,84.02}, 84), , 84.2-84)", "over"],
  ]),
  ...checksOf("CLEARANCE", "ISO 286-2, Ø50 H7/g6: hole 50.000 to 50.025, shaft 49.975 to 49.991, clearance 0.009 to 0.050 mm", "read", [
    ["=HATCH.CLEARANCE(50, 49.991)", 0.009],
    ["=HATCH.CLEARANCE(50.025, 49.975)", 0.05],
  ]),
  ...checksOf("CLEARANCE", "ISO 286-2, over 50 to 80 mm: H7 +30/0, f7 −30/−60, g6 −10/−29 µm", "read", [
    ["=HATCH.CLEARANCE(73, 72.97)", 0.03],
    ["=HATCH.CLEARANCE(73.03, 72.94)", 0.09],
    ["=HATCH.CLEARANCE(73, 72.99)", 0.01],
    ["=HATCH.CLEARANCE(73.03, 72.971)", 0.059],
  ]),
  ...checksOf("CLEARANCE", "ISO 286-2, over 10 to 18 mm: H7 +18/0, f7 −16/−34 µm; over 30 to 50 mm: H7 +25/0, f7 −25/−50 µm", "read", [
    ["=HATCH.CLEARANCE(16.018, 15.966)", 0.052],
    ["=HATCH.CLEARANCE(16, 15.984)", 0.016],
    ["=HATCH.CLEARANCE(40.025, 39.95)", 0.075],
    ["=HATCH.CLEARANCE(40, 39.975)", 0.025],
  ]),
  ...checksOf(
    "CLEARANCE",
    "a car maker's repair data: guide 6.000 to 6.012 mm; inlet stem 5.965 to 5.980, clearance 0.020 to 0.047; exhaust 5.940 to 5.955, 0.045 to 0.072",
    "read",
    [
      ["=HATCH.CLEARANCE(6, 5.98)", 0.02],
      ["=HATCH.CLEARANCE(6.012, 5.965)", 0.047],
      ["=HATCH.CLEARANCE(6, 5.955)", 0.045],
      ["=HATCH.CLEARANCE(6.012, 5.94)", 0.072],
    ],
  ),
  ...checksOf("FINISHBORE", `${GRADES}; the bores that follow`, "computed", [
    ["=HATCH.FINISHBORE(79.975, 0.025)", 80],
    ["=HATCH.FINISHBORE(79.965, 0.045)", 80.01],
    ["=HATCH.FINISHBORE(79.985, 0.025)", 80.01],
    ["=HATCH.FINISHBORE(79.975, 0.045)", 80.02],
    ["=HATCH.FINISHBORE(79.995, 0.025)", 80.02],
    ["=HATCH.FINISHBORE(79.985, 0.045)", 80.03],
  ]),
  ...checksOf("HOTCLEARANCE", EXPANSION, "computed", [
    ['=HATCH.HOTCLEARANCE(80, "grey iron", 30, 80, "cast aluminium", 30)', -0.00808],
    ["=HATCH.HOTCLEARANCE(80, 11.4, 30, 80, 21.5, 30)", -0.00808],
    ['=HATCH.HOTCLEARANCE(80, "grey iron", 30, 80, "cast aluminium", 20)', 0.00912],
    ['=HATCH.HOTCLEARANCE(80, "grey iron", 20, 80, "cast aluminium", 30)', -0.0172],
  ]),
  ...checksOf("HOTCLEARANCE", "D. Swyt, J. Res. NIST 99(1), 31, 1994: 100 mm of aluminium grows by 11.55 µm over 5 K; 0.1 mm are ours", "read", [
    ['=HATCH.HOTCLEARANCE(100, "aluminium", 25, 99.9, "steel", 20)', 0.11155],
  ]),
  ...checksOf("OUTOFROUND", MARINE_DIESEL, "computed", [
    ["=HATCH.OUTOFROUND({84.02,84.01;84.03,84;84.01,84.01})", 0.03],
    ["=HATCH.OUTOFROUND({84,84.01;84,84.02;84.03,84.03})", 0.02],
  ]),
  ...checksOf("OUTOFROUND", FORKLIFT, "read", [
    ["=HATCH.VERDICT(HATCH.OUTOFROUND({4.003,4;4.001,4;4,4}), , 0.003)", "within"],
    ["=HATCH.VERDICT(HATCH.OUTOFROUND({4.0031,4;4.001,4;4,4}), , 0.003)", "over"],
  ]),
  ...checksOf("OUTOFROUND", ROLLER, "read", [
    ["=HATCH.VERDICT(HATCH.OUTOFROUND({3.8775,3.875}), , 0.0025)", "within"],
    ["=HATCH.VERDICT(HATCH.OUTOFROUND({3.8776,3.875}), , 0.0025)", "over"],
  ]),
  ...checksOf("OUTOFROUND", LOBES, "computed", [
    ["=HATCH.OUTOFROUND({73.01,72.99})", 0.02],
    ["=HATCH.OUTOFROUND({73,73,73,73})", 0],
  ]),
  ...checksOf("PISTONCLEARANCE", "TM 9-2815-260-24: piston clearance .003 to .006 in", "read", [
    ["=HATCH.VERDICT(HATCH.PISTONCLEARANCE({4.006,4.0065;4.006,4.006}, 4), 0.003, 0.006)", "within"],
    ["=HATCH.VERDICT(HATCH.PISTONCLEARANCE({4.0061,4.0065;4.0062,4.007}, 4), 0.003, 0.006)", "over"],
    ["=HATCH.VERDICT(HATCH.PISTONCLEARANCE({4.0029,4.003;4.003,4.003}, 4), 0.003, 0.006)", "under"],
  ]),
  ...checksOf("PISTONCLEARANCE", `${GRADES}, in bores of 80.000 to 80.010`, "computed", [
    ["=HATCH.PISTONCLEARANCE(80, 79.975)", 0.025],
    ["=HATCH.PISTONCLEARANCE(80.01, 79.965)", 0.045],
    ['=HATCH.PISTONCLEARANCE({80,80.01}, 79.965, "largest")', 0.045],
  ]),
  ...checksOf("PISTONMATCH", ENUMERATED, "computed", [
    ["=HATCH.PISTONMATCH({73.04,73}, {73,73.02}, 0.04)", 2, { at: [2, 3] }],
    ["=HATCH.PISTONMATCH({73.04,73}, {73,73.02}, 0.04)", -0.04, { at: [3, 6] }],
    ["=HATCH.PISTONMATCH({73.04,73.06}, {73,72.98}, 0.04)", 2, { at: [2, 3] }],
    ["=HATCH.PISTONMATCH({73.04,73.06}, {73,72.98}, 0.04)", 0.06, { at: [3, 5] }],
  ]),
  ...checksOf("PISTONMATCH", `${GRADES}: one piston and one bore of each grade`, "computed", [
    ["=HATCH.PISTONMATCH({80.025,80.005,80.015}, {79.97,79.99,79.98}, 0.035)", 2, { at: [2, 3] }],
    ["=HATCH.PISTONMATCH({80.025,80.005,80.015}, {79.97,79.99,79.98}, 0.035)", 1, { at: [3, 3] }],
    ["=HATCH.PISTONMATCH({80.025,80.005,80.015}, {79.97,79.99,79.98}, 0.035)", 0.035, { at: [4, 5] }],
  ]),
  ...checksOf("PISTONSPEED", "an encyclopedia's article on mean piston speed: stroke 90 mm, 9 m/s at 3000 and 21.6 m/s at 7200 a minute", "read", [
    ["=HATCH.PISTONSPEED(90, 3000)", 9],
    ["=HATCH.PISTONSPEED(90, 7200)", 21.6],
  ]),
  ...checksOf("PISTONSPEED", "a formulary for apprentices in the motor trade: 0.085 m at 5500 a minute, 15.58 m/s", "read", [
    ["=HATCH.PISTONSPEED(85, 5500)", 15.58, { within: 5e-3 }],
  ]),
  ...checksOf("PISTONSPEED", "fuel-rating engine, 4.5 in of stroke at 900 a minute: 675 ft/min", "from memory", [['=HATCH.PISTONSPEED(4.5, 900, "in")', 675]]),
  ...checksOf("REBOREPLAN", LANDING_CRAFT, "read", [
    ['=HATCH.REBOREPLAN({4.6286;4.632;4.6395}, 4.626, {0.005,0.01,0.02}, , "worn", 1, FALSE)', 4.631, { at: [2, 4] }],
    ['=HATCH.REBOREPLAN({4.6286;4.632;4.6395}, 4.626, {0.005,0.01,0.02}, , "worn", 1, FALSE)', 4.636, { at: [3, 4] }],
    ['=HATCH.REBOREPLAN({4.6286;4.632;4.6395}, 4.626, {0.005,0.01,0.02}, , "worn", 1, FALSE)', 4.646, { at: [4, 4] }],
  ]),
  ...checksOf("REBOREPLAN", "one oversize for the whole block, that of its worst bore", "common practice", [
    ['=HATCH.REBOREPLAN({4.6286;4.632;4.6395}, 4.626, {0.005,0.01,0.02}, , "worn", 1)', 0.02, { at: [2, 3] }],
  ]),
  ...checksOf("REBOREPLAN", "geometry: with all the wear on one side the true centre line needs standard + 2 × wear", "computed", [
    ['=HATCH.REBOREPLAN({73.2,73.02}, 73, {0.25,0.5,0.75,1}, , "true")', 73.4, { at: [2, 2] }],
    ['=HATCH.REBOREPLAN({73.2,73.02}, 73, {0.25,0.5,0.75,1}, , "true")', 0.48, { at: [2, 6] }],
  ]),
  ...checksOf("REBORESIZE", LANDING_CRAFT, "read", [
    ["=HATCH.REBORESIZE(4.6286, 4.626, {0.005,0.01,0.02})", 0.005],
    ["=HATCH.REBORESIZE(4.6309, 4.626, {0.005,0.01,0.02})", 0.005],
    ["=HATCH.REBORESIZE(4.632, 4.626, {0.005,0.01,0.02})", 0.01],
    ["=HATCH.REBORESIZE(4.6359, 4.626, {0.005,0.01,0.02})", 0.01],
    ["=HATCH.REBORESIZE(4.637, 4.626, {0.005,0.01,0.02})", 0.02],
    ["=HATCH.REBORESIZE(4.647, 4.626, {0.005,0.01,0.02})", "none: sleeve"],
  ]),
  ...checksOf("REBORESIZE", "metric oversizes of 0.25, 0.50, 0.75 and 1.00 mm, chosen on the largest bore", "common practice", [
    ["=HATCH.REBORESIZE({73.24,73.1;73.02,73.01}, 73, {0.25,0.5,0.75,1})", 0.25],
    ["=HATCH.REBORESIZE({73.26,73.1;73.02,73.01}, 73, {0.25,0.5,0.75,1})", 0.5],
  ]),
  ...checksOf("ROUNDNESS", TWELVE, "computed", [
    [`=HATCH.ROUNDNESS(${TRACE}, "LS")`, 12.4004, { within: 1e-3 }],
    [`=HATCH.ROUNDNESS(${TRACE}, "MZ")`, 11.4227, { within: 1e-3 }],
    [`=HATCH.ROUNDNESS(${TRACE}, "MC")`, 11.7321, { within: 1e-3 }],
    [`=HATCH.ROUNDNESS(${TRACE}, "MI")`, 15.3091, { within: 1e-3 }],
  ]),
  ...checksOf("ROUNDNESS", "true circles of radius 36.5 through the eight points, every pair and every three of them tried", "computed", [
    ['=HATCH.ROUNDNESS({0;0.004;0;-0.002;0.003;0.005;-0.001;-0.003}, "MC")', 0.0075, { within: 5e-7 }],
    ['=HATCH.ROUNDNESS({0;0.004;0;-0.002;0.003;0.005;-0.001;-0.003}, "MI")', 0.0105355, { within: 1e-6 }],
  ]),
  ...checksOf("ROUNDNESS", "four points, ±1.1 on one axis and ±0.9 on the other: a ring of width 0.2", "computed", [
    ['=HATCH.ROUNDNESS({1.1,0.9,1.1,0.9}, "MZ")', 0.2, { within: { digits: 12 }, prints: 12 }],
    ['=HATCH.ROUNDNESS({1.1,0.9,1.1,0.9}, "LS")', 0.2, { within: { digits: 12 }, prints: 12 }],
  ]),
  ...checksOf("ROUNDNESS", LOBES, "computed", [
    ['=HATCH.ROUNDNESS({0.01,-0.01,0.01,-0.01,0.01,-0.01}, "MZ")', 0.02, { within: { digits: 12 }, prints: 12 }],
    ['=HATCH.ROUNDNESS({0.01,0,-0.01,0,0.01,0,-0.01,0}, "MZ")', 0.02, { within: { digits: 12 }, prints: 12 }],
  ]),
  ...checksOf("TAPER", MARINE_DIESEL, "computed", [
    ["=HATCH.TAPER({84.05,84.04;84.02,84.03;84.01,84.03})", 0.04],
    ["=HATCH.TAPER({84,84;84.03,84;84,84})", 0.03],
  ]),
  ...checksOf("TAPER", RINGS, "from memory", [["=HATCH.TAPER({74.03;74.002;74.019;73.992;74.008})", 0.038]]),
  ...checksOf("TAPER", FORKLIFT, "read", [
    ["=HATCH.VERDICT(HATCH.TAPER({4.002,4.001;4.001,4.001;4,4}), , 0.002)", "within"],
    ["=HATCH.VERDICT(HATCH.TAPER({4.0021,4.001;4.001,4.001;4,4}), , 0.002)", "over"],
  ]),
  ...checksOf("TAPER", ROLLER, "read", [["=HATCH.VERDICT(HATCH.TAPER({3.877;3.875}), , 0.002)", "within"]]),
];
