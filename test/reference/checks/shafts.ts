import { type Check, checksOf } from "./check.ts";

const WALLS =
  "TM 5-3810-300-24&P-3 p. 74: a shell has a wall of .1548 in at standard size, .1598 in at .010 in undersize, so the clearance stays; housing and journal are ours";
const BY_HAND = "housing less both walls less the journal, subtracted by hand at each place";
const H7P6 = "ISO 286-2, over 30 to 50 mm: H7 +25/0, p6 +42/+26 µm, interference 0.001 to 0.042 mm";
const EXPANSION = "Callister & Rethwisch, table B.6: alloy steel 12.3, alloy 356.0 21.5 millionths per K; multiplied out by hand";
const SWYT = "D. Swyt, J. Res. NIST 99(1), 31, 1994: 100 mm of aluminium grows by 11.55 µm over 5 K";
const INCH = "undersizes of .010, .020 and .030 in";
const GRIND_ALL = "TM 5-3805-262-34 p. 4-24: if one journal is ground, all are; the readings are ours";
const TWO_CENTRES = "geometry: with all the wear on one side the original centre line needs standard − 2 × wear";

/** Crankshaft journals, bearings and press fits. */
export const SHAFTS: readonly Check[] = [
  ...checksOf("BEARINGCLEARANCE", WALLS, "read", [
    ["=HATCH.BEARINGCLEARANCE(2.812, 0.1548, 2.5)", 0.0024, { at: [2, 1] }],
    ["=HATCH.BEARINGCLEARANCE(2.812, 0.1598, 2.49)", 0.0024, { at: [2, 1] }],
  ]),
  ...checksOf("BEARINGCLEARANCE", BY_HAND, "computed", [
    ["=HATCH.BEARINGCLEARANCE({54.01,54.012;54.008,54.01}, {1.98,1.981}, {50,49.99;49.99,49.98})", 0.049, { at: [2, 1] }],
    ["=HATCH.BEARINGCLEARANCE({54.01,54.012;54.008,54.01}, {1.98,1.981}, {50,49.99;49.99,49.98})", 0.059, { at: [2, 2] }],
    ["=HATCH.BEARINGCLEARANCE({54.01,54.012;54.008,54.01}, {1.98,1.981}, {50,49.99;49.99,49.98})", 0.069, { at: [2, 3] }],
    ["=HATCH.BEARINGCLEARANCE({54.02,54.012;54.008,54.004}, 1.98, 49.99)", 2, { at: [2, 4] }],
    ["=HATCH.BEARINGCLEARANCE({54.02,54.012;54.008,54.004}, 1.98, 49.99)", 2, { at: [2, 5] }],
  ]),
  ...checksOf("CRUSH", "a circle of circumference 100π + 0.1 has a diameter of 100 + 0.1 ÷ π", "computed", [
    ["=HATCH.CRUSH({0.02,0.03,0.02,0.03})", 0.0318309886, { within: 5e-10 }],
    ["=HATCH.CRUSH(0.1)", 0.0318309886, { within: 5e-10 }],
  ]),
  ...checksOf("INTERFERENCE", H7P6, "from memory", [
    ["=HATCH.INTERFERENCE(40.026, 40.025)", 0.001],
    ["=HATCH.INTERFERENCE(40.042, 40)", 0.042],
  ]),
  ...checksOf("HEATFORFIT", EXPANSION, "computed", [
    ['=HATCH.HEATFORFIT(50.05, 50, 0.05, "alloy steel")', 182.601626, { within: 5e-7 }],
    ['=HATCH.HEATFORFIT(22.01, 21.99, 0.02, "cast aluminium")', 104.605053, { within: 5e-7 }],
  ]),
  ...checksOf("HEATFORFIT", SWYT, "read", [['=HATCH.HEATFORFIT(100.01155, 100, 0, "aluminium")', 25, { within: 1e-8 }]]),
  ...checksOf("SHAFTWEAR", "standard less the smallest of the readings, subtracted by hand", "common practice", [
    ["=HATCH.SHAFTWEAR({1.9985,1.998;1.9985,1.9975}, 2)", 0.0025],
    ["=HATCH.SHAFTWEAR({50.005,50.004}, 50)", -0.004],
  ]),
  ...checksOf("REGRINDSIZE", INCH, "common practice", [
    ["=HATCH.REGRINDSIZE({1.9985,1.998;1.9985,1.9975}, 2, {0.01,0.02,0.03})", 0.01],
    ['=HATCH.REGRINDSIZE({1.99,1.991}, 2, {0.01,0.02,0.03}, , "worn")', 0.02],
    ["=HATCH.REGRINDSIZE({1.98,1.991}, 2, {0.01,0.02,0.03})", "none: new shaft"],
  ]),
  ...checksOf("REGRINDSIZE", TWO_CENTRES, "computed", [
    ["=HATCH.REGRINDSIZE({49.87,49.9}, 50, {0.25,0.5})", 0.5],
    ['=HATCH.REGRINDSIZE({49.87,49.9}, 50, {0.25,0.5}, , "worn")', 0.25],
  ]),
  ...checksOf("REGRINDPLAN", GRIND_ALL, "read", [
    ["=HATCH.REGRINDPLAN({1.9985,1.998;1.993,1.992;1.999,1.999}, 2, {0.01,0.02,0.03}, , , 2)", 0.02, { at: [2, 3] }],
    ["=HATCH.REGRINDPLAN({1.9985,1.998;1.993,1.992;1.999,1.999}, 2, {0.01,0.02,0.03}, , , 2)", 0.02, { at: [4, 3] }],
    ["=HATCH.REGRINDPLAN({1.9985,1.998;1.993,1.992;1.999,1.999}, 2, {0.01,0.02,0.03}, , , 2)", 0.012, { at: [3, 5] }],
    ["=HATCH.REGRINDPLAN({1.9985,1.998;1.993,1.992;1.999,1.999}, 2, {0.01,0.02,0.03}, , , 2, FALSE)", 0.01, { at: [4, 3] }],
  ]),
];
