import { fromScipy, SCIPY } from "../scipy-values.ts";
import { type Check, checksOf, list } from "./check.ts";
import { GEARS, HEAT_FLOW, oneWayStrd, strd, THERMAL_IMPEDANCE } from "./data.ts";

const UNITS = "NIST SP 811, appendix B.8: 1 in = 25.4 mm, 1 ft = 304.8 mm, 1 mil = 0.0254 mm, exactly";
const KEYING = "the slip is planted in the reading; no outside table of keying slips exists";
const ONE_WAY = "NIST StRD, one-way analysis of variance: certified mean squares";
const IMPEDANCE =
  "D. C. Montgomery, Introduction to Statistical Quality Control, thermal impedance: variances as R's package VCA prints them, and his ratio of 6 × 1.343 to a tolerance of 40";
const STUDENT = "Student's t of its degrees of freedom (SciPy) × the certified standard deviation ÷ √n";

const RATIO = `=HATCH.RATIOUNCERTAINTY(${fromScipy("ratio").join(", ")})`;

/** Uncertainty, gauges, lengths and slips. */
export const MEASUREMENT: readonly Check[] = [
  ...checksOf("COMBINE", "JCGM 100:2008 (GUM), H.1.3.2: 5.8, 3.9 and 6.7 nm come to 9.68194195397 nm", "computed", [
    ["=HATCH.COMBINE({5.8,3.9,6.7})", 9.68194195397, { within: 5e-12 }],
  ]),
  ...checksOf("COMBINE", "JCGM 100:2008 (GUM), H.1.5: 25, 9.7, 2.9 and 16.6 nm come to 32 nm", "read", [
    ["=HATCH.COMBINE({25;9.7;2.9;16.6})", 32, { within: 0.5 }],
  ]),
  ...checksOf("COMBINE", "JCGM 100:2008 (GUM), G.4.1: 0.25, 0.57 and 0.82 % come to 1.02947 %", "computed", [
    ["=HATCH.COMBINE({0.25,0.57,0.82})", 1.02947, { within: 5e-6 }],
  ]),
  ...checksOf("GAUGESTUDY", IMPEDANCE, "read", [
    [THERMAL_IMPEDANCE, Math.sqrt(0.5111), { at: [2, 2], within: { digits: 4 } }],
    [THERMAL_IMPEDANCE, Math.sqrt(0.5646 + 0.728), { at: [3, 2], within: { digits: 4 } }],
    [THERMAL_IMPEDANCE, 1.343, { at: [4, 2], within: 5e-4 }],
    [THERMAL_IMPEDANCE, (100 * 6 * 1.343) / 40, { at: [4, 5], within: (100 * 6 * 0.0005) / 40, prints: 4 }],
    [THERMAL_IMPEDANCE, Math.sqrt(48.2926), { at: [5, 2], within: { digits: 6 } }],
  ]),
  ...checksOf("GAUGESTUDY", "two parts read twice by one person, by hand: repeatability² 0.0001 ÷ 2, parts² (0.0016 − 0.00005) ÷ 2", "computed", [
    ['=HATCH.GAUGESTUDY({1;1;2;2}, "Ann", {73.01;73.02;73.05;73.06})', 0.00707107, { at: [2, 2], within: 5e-9 }],
    ['=HATCH.GAUGESTUDY({1;1;2;2}, "Ann", {73.01;73.02;73.05;73.06})', 0.02783882, { at: [5, 2], within: 5e-9 }],
    ['=HATCH.GAUGESTUDY({1;1;2;2}, "Ann", {73.01;73.02;73.05;73.06})', 5, { at: [7, 2] }],
  ]),
  ...checksOf("GAUGESTUDY", `${ONE_WAY}, SiRstv`, "read", [
    [oneWayStrd("SiRstv"), 0.104076068334656, { at: [2, 2], within: { digits: 11 } }],
    [oneWayStrd("SiRstv"), Math.sqrt((0.0127865654 - 0.010831828) / 5), { at: [5, 2], within: { digits: 10 } }],
  ]),
  ...checksOf("GAUGESTUDY", `${ONE_WAY}, SmLs01`, "read", [[oneWayStrd("SmLs01"), 0.1, { at: [2, 2], within: { digits: 12 }, prints: 15 }]]),
  ...checksOf("GAUGESTUDY", `${ONE_WAY}, SmLs04`, "read", [[oneWayStrd("SmLs04"), 0.1, { at: [2, 2], within: { digits: 8 }, prints: 15 }]]),
  ...checksOf("GAUGESTUDY", "NIST/SEMATECH e-Handbook, GEAR: within and between batches, worked out from the file", "computed", [
    [GEARS, 0.005938574464, { at: [2, 2], within: 5e-13 }],
    [GEARS, 0.002138639235, { at: [5, 2], within: 5e-13 }],
  ]),
  ...checksOf("LENGTH", UNITS, "read", [
    ['=HATCH.LENGTH("2 7/8 in", "mm")', 73.025],
    ['=HATCH.LENGTH("2⅞″", "mm")', 73.025],
    ['=HATCH.LENGTH("6 ft 2 in", "mm")', 1879.6],
    ['=HATCH.LENGTH("2.5 thou", "mm")', 0.0635],
    ['=HATCH.LENGTH("25.4 mm", "in")', 1],
    ['=HATCH.LENGTH("73,02 mm", "mm")', 73.02],
  ]),
  ...checksOf("SLIP", UNITS, "read", [
    ["=HATCH.SLIP(2.875, 73, 0.3)", "inch for mm"],
    ["=HATCH.SLIP(73.02, 2.875, 0.01)", "mm for inch"],
  ]),
  ...checksOf("SLIP", KEYING, "common practice", [
    ["=HATCH.SLIP(730.2, 73, 0.3)", "decimal point"],
    ["=HATCH.SLIP(37.02, 73, 0.3)", "two digits swapped"],
    ["=HATCH.SLIP(78.02, 73, 0.3)", "one digit wrong"],
  ]),
  ...checksOf("TOREFERENCE", "D. Swyt, J. Res. NIST 99(1), 31, 1994: 100 mm of aluminium grows by 11.55 µm over 5 K; ISO 1: 20 °C", "read", [
    ['=HATCH.TOREFERENCE(100.01155, 25, "aluminium")', 100],
  ]),
  ...checksOf(
    "TOREFERENCE",
    "Callister & Rethwisch, table B.6: grey iron 11.4, alloy 356.0 21.5 millionths per K: 80 mm grow by 9.12 and 17.20 µm over 10 K",
    "computed",
    [
      ['=HATCH.TOREFERENCE(80.00912, 30, "grey iron")', 80],
      ['=HATCH.TOREFERENCE(80.0172, 30, "cast aluminium")', 80],
    ],
  ),
  ...checksOf("UNCERTAINTY", "NIST/SEMATECH e-Handbook 1.3.5.2, ZARR13: 95 % limits of the mean 9.258242 and 9.264679, half the distance", "read", [
    [HEAT_FLOW, 0.0032185, { within: 1e-6 }],
  ]),
  ...checksOf("UNCERTAINTY", `NIST StRD, Lew: ${STUDENT}`, "computed", [
    [`=HATCH.UNCERTAINTY(${list(strd("Lew"))}, 0.000001)`, 38.6707494721534, { within: { digits: 13 } }],
  ]),
  ...checksOf("UNCERTAINTY", `NIST StRD, Lottery: ${STUDENT}`, "computed", [
    [`=HATCH.UNCERTAINTY(${list(strd("Lottery"))}, 0.000001)`, 38.9389980073314, { within: { digits: 13 } }],
  ]),
  ...checksOf("UNCERTAINTY", "JCGM 100:2008 (GUM), table G.2: t95(4) = 2.78, of 1 to 5 the deviation of the mean is √0.5", "read", [
    ["=HATCH.UNCERTAINTY({1,2,3,4,5}, 0.000001)/0.5^0.5", 2.78, { within: 5e-3 }],
  ]),
  ...checksOf(
    "UNCERTAINTY",
    "JCGM 100:2008 (GUM), F.2.2.1: a step of the display has the standard uncertainty 0.29 of it; 1.96 times that at 95 %",
    "computed",
    [["=HATCH.UNCERTAINTY({73.01,73.01,73.01}, 0.01)", 0.00565793, { within: 5e-9 }]],
  ),
  ...checksOf("RATIOUNCERTAINTY", `${SCIPY}: 2,000,000 drawn ratios, which JCGM 101 takes for the yardstick`, "computed", [
    [RATIO, fromScipy("ratio-simulated")[0]!, { within: fromScipy("ratio-simulated")[0]! * 0.002 }],
  ]),
  ...checksOf("RATIOUNCERTAINTY", `${SCIPY}: derivatives of 1 + swept ÷ clearance volume, JCGM 100:2008, 5.1.2`, "computed", [
    [RATIO, fromScipy("ratio-derived")[0]!, { within: { digits: 4 } }],
  ]),
];
