import { fromScipy, SCIPY } from "../scipy-values.ts";
import { type Check, checksOf, list } from "./check.ts";

const FORKLIFT = "TM 10-3930-618-20: readings not more than 10 psi apart, 120 to 125 psi being normal";
const SHARE = "TM 5-4210-230-14&P-1: the lowest not less than 75 % of the highest";
const AVERAGE = "TM 1-1500-204-23-1: a cylinder 20 % below the average";
const EXAMPLE = "a car maker's repair manual: with 150 psi the highest and 70 % the rule, 105 psi is the lowest allowed";
const OIL =
  "TM 5-4210-230-14&P-1: better with oil points at the rings, otherwise at the valves, or with two low side by side at the head gasket; the readings are ours";
const LEAKAGE = "FAA AC 43.13-1B, 8-14: (regulated − cylinder) ÷ regulated at 80 psi; 60/80 is the 25 % above which a cylinder is suspect";
const ENGINE = "{150;148;152;118}";

const ATMOSPHERE =
  "ISO 2533, table of the standard atmosphere: 1013.25 hPa at sea level, 898.746 at 1,000, 794.952 at 2,000 and 226.32 at 11,000 m of geopotential altitude";
const DENSITY =
  "TM 5-3895-359-14&P: an engine of 515 psi at 500 ft has 380 psi at 10,000 ft; brought to sea level at that height's own standard temperature, 1.5 % of what the manual rounds allowed";

/** Compression, wet and leak-down tests. The words around the numbers are this project's own. */
export const TESTS: readonly Check[] = [
  ...checksOf("COMPRESSIONCHECK", FORKLIFT, "read", [
    [`=HATCH.COMPRESSIONCHECK(${ENGINE}, "difference", 10)`, "under: 118, difference rule asks at least 142 (highest 152 less 10)", { at: [4, 1] }],
    ['=HATCH.COMPRESSIONCHECK({120;125}, "difference", 10)', "within: 120, difference rule asks at least 115 (highest 125 less 10)", { at: [1, 1] }],
  ]),
  ...checksOf("COMPRESSIONCHECK", SHARE, "read", [
    [`=HATCH.COMPRESSIONCHECK(${ENGINE}, "share", 0.75)`, "within: 118, share rule asks at least 114 (0.75 of the highest, 152)", { at: [4, 1] }],
  ]),
  ...checksOf("COMPRESSIONCHECK", EXAMPLE, "read", [
    ['=HATCH.COMPRESSIONCHECK({150;105}, "share", 0.7)', "within: 105, share rule asks at least 105 (0.7 of the highest, 150)", { at: [2, 1] }],
  ]),
  ...checksOf("COMPRESSIONCHECK", AVERAGE, "read", [
    [`=HATCH.COMPRESSIONCHECK(${ENGINE}, "average", 0.2)`, "within: 118, average rule asks at least 113.6 (0.2 below the average, 142)", { at: [4, 1] }],
  ]),
  ...checksOf("COMPRESSIONSPREAD", FORKLIFT, "read", [
    ["=HATCH.COMPRESSIONSPREAD({120,125,123,121})", 5],
    ["=HATCH.COMPRESSIONSPREAD({150;0;152})", 152],
    ["=HATCH.VERDICT(HATCH.COMPRESSIONSPREAD({115,125,120,121}), , 10)", "within"],
    [`=HATCH.VERDICT(HATCH.COMPRESSIONSPREAD(${ENGINE}), , 10)`, "over"],
  ]),
  ...checksOf("LEAKDOWN", LEAKAGE, "read", [
    ["=HATCH.LEAKDOWN(80, 60)", 25],
    ["=HATCH.LEAKDOWN(80, 70)", 12.5],
    ["=HATCH.LEAKDOWN(80, 80)", 0],
    ["=HATCH.LEAKDOWN(80, 0)", 100],
  ]),
  ...checksOf("WETTEST", OIL, "read", [
    [
      "=HATCH.WETTEST({150;148;152;100}, {153;150;155;140})",
      "rings: from 100 to 140 with oil; default share rule asks at least 114 (0.75 of the highest, 152)",
      { at: [4, 1] },
    ],
    [
      "=HATCH.WETTEST({150;100;152;148}, {153;102;155;150})",
      "valves: from 100 to 102 with oil; default share rule asks at least 114 (0.75 of the highest, 152)",
      { at: [2, 1] },
    ],
    [
      "=HATCH.WETTEST({150;90;92;148}, {153;92;95;150})",
      "head gasket: from 90 to 92 with oil, beside another low cylinder; default share rule asks at least 112.5 (0.75 of the highest, 150)",
      { at: [2, 1] },
    ],
    [
      "=HATCH.WETTEST({150;90;92;148}, {153;92;95;150})",
      "head gasket: from 92 to 95 with oil, beside another low cylinder; default share rule asks at least 112.5 (0.75 of the highest, 150)",
      { at: [3, 1] },
    ],
  ]),
  ...checksOf("BLOWBY", "multiplied and divided by hand", "common practice", [
    ["=HATCH.BLOWBY(0.24, 5)", 2.88],
    ["=HATCH.BLOWBY(1.5, 2.5)", 36],
  ]),
  ...checksOf("COMPRESSIONATSTANDARD", ATMOSPHERE, "from memory", [
    ["=HATCH.COMPRESSIONATSTANDARD(898.746, , 1000)", 1013.25, { within: 0.005, prints: 6 }],
    ["=HATCH.COMPRESSIONATSTANDARD(794.952, , 2000)", 1013.25, { within: 0.005, prints: 6 }],
    ["=HATCH.COMPRESSIONATSTANDARD(226.32, , 11000)", 1013.25, { within: 0.03, prints: 5 }],
    ["=HATCH.COMPRESSIONATSTANDARD(1000, 89.8746)", 1127.404183, { within: 5e-7 }],
  ]),
  ...checksOf("COMPRESSIONATSTANDARD", DENSITY, "read", [['=HATCH.COMPRESSIONATSTANDARD(380, , 10000, 23.3, "psi")', 515, { within: 8 }]]),
  ...checksOf("OILRATE", "added and divided by hand", "common practice", [
    ["=HATCH.OILRATE({100;150;200;260}, {4;0.2;0.25;0.35})", 0.005, { at: [2, 1] }],
    ["=HATCH.OILRATE({0,40}, {4.5,0.1})", 0.0025, { at: [2, 2] }],
  ]),
  ...checksOf(
    "OILRATE",
    `${SCIPY}: trend by numpy.polyfit`,
    "computed",
    fromScipy("oil").map((value, at) => [
      `=HATCH.OILRATE(${list(fromScipy("oil-use"))}, ${list(fromScipy("oil-added"))})`,
      value,
      { at: [2, at + 1], within: { digits: 12 } },
    ]),
  ),
];
