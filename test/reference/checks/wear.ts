import { type Check, checksOf } from "./check.ts";
import { CARS, NORRIS } from "./data.ts";

const TUTORIAL = "R's t.test on these two lists, as a tutorial prints it";
const ROSETTA = "R's t.test on these two lists, as the task Welch's t-test of Rosetta Code and a public test suite print it";
const RODS = "R's t.test on these two lists, as the task Welch's t-test of Rosetta Code prints it";
const MILEAGE = "NIST/SEMATECH e-Handbook 1.3.5.3, AUTO83B, variances taken as unequal";
const GEAR_SCORES = "NIST Dataplot reference, ISO 13528 En score: readings of GEAR against 1, U twice the deviations of the batch and of all";
const HAND_EN = "ISO/IEC 17043: (x − X) ÷ √(U² + U²), with 3-4-5 under the root";
const MARINE = "a marine engine maker's manual: rate = (D1 − D2) ÷ hours × 1000; on a line all readings agree with it";
const R = "R 4.2.2 (test/reference/r/change-and-wear.R)";
const BAND = `${R}: where the band of predict(interval = "confidence") reaches the level; data of Graybill and Iyer, Regression Analysis: Concepts and Applications`;
const CONFINT = `${R}: lm and confint`;
const KNOWN = `${R}: lm's unscaled covariance and qnorm, a deviation of half of U taken as known`;

const PAIRS = "=HATCH.PAIREDCHANGE({73.012;73.01;73.015;73.011;73.013;73.012}, {73.021;73.026;73.024;73.018;73.031;73.022})";
const SLEEP = "=HATCH.PAIREDCHANGE({0.7;-1.6;-0.2;-1.2;-0.1;3.4;3.7;0.8;0;2}, {1.9;0.8;1.1;0.1;-0.1;4.4;5.5;1.6;4.6;3.4})";
const CHANCES = "=HATCH.CHANCEADJUSTED({0.01,0.04,0.03,0.005,0.2,0.0004,0.04,0.9})";
const WOOD = "=HATCH.COMPAREGROUPS({5.1,2,4.1,6.2,7.1,8.3}, {1.5,6.4,3.3,5.8,4.8,7.2,5.6,4.5})";
const RUXTON =
  "=HATCH.COMPAREGROUPS({27.5,21,19,23.6,17,17.9,16.9,20.1,21.9,22.6,23.1,19.6,19,21.7,21.4}, {27.1,22,20.8,23.4,23.4,23.5,25.8,22,24.8,20.2,21.9,22.1,22.9,20.5,24.4})";
const SMALL = "=HATCH.COMPAREGROUPS({30.02,29.99,30.11,29.97,30.01,29.99}, {29.89,29.93,29.72,29.98,30.02,29.98})";
const FAR_APART = "=HATCH.COMPAREGROUPS({3,4,1,2.1}, {490.2,340,433.9})";
const READS = "=HATCH.WEARLIFE({96,98,100,102,104,106,108,110}, {95.71,98.16,99.52,102.09,103.79,106.18,108.14,110.21}, 104)";
const GROWS = "=HATCH.WEARLIFE({2,4,6,8,10,12,14,16,18,20,22,24,26,28}, {0.08,1.12,4.43,4.98,4.92,7.18,5.57,8.4,8.81,10.81,11.16,10.12,13.12,15.04}, 8)";

/** Change and wear. */
export const WEAR: readonly Check[] = [
  ...checksOf("CHANCEADJUSTED", `${R}: p.adjust, holm`, "computed", [
    [CHANCES, 0.06, { at: [1, 1], within: { digits: 12 } }],
    [CHANCES, 0.16, { at: [1, 2], within: { digits: 12 } }],
    [CHANCES, 0.15, { at: [1, 3], within: { digits: 12 } }],
    [CHANCES, 0.035, { at: [1, 4], within: { digits: 12 } }],
    [CHANCES, 0.0032, { at: [1, 6], within: { digits: 12 } }],
    [CHANCES, 0.16, { at: [1, 7], within: { digits: 12 } }],
    [CHANCES, 0.9, { at: [1, 8], within: { digits: 12 } }],
  ]),
  ...checksOf("COMPAREGROUPS", TUTORIAL, "read", [
    [WOOD, -1.93542, { at: [2, 2], within: 5e-7, prints: 7 }],
    [WOOD, 3.093754, { at: [2, 3], within: 5e-7 }],
    [WOOD, 0.51703, { at: [2, 4], within: 5e-6 }],
    [WOOD, 9.48, { at: [2, 5], within: 5e-3 }],
    [WOOD, 0.617, { at: [2, 6], within: 5e-4 }],
  ]),
  ...checksOf("COMPAREGROUPS", ROSETTA, "read", [
    [RUXTON, -2.45535639828601, { at: [2, 4], within: { digits: 13 } }],
    [RUXTON, 24.9885292902309, { at: [2, 5], within: { digits: 13 } }],
    [RUXTON, 0.021378001462867, { at: [2, 6], within: { digits: 12 } }],
  ]),
  ...checksOf("COMPAREGROUPS", "the same two lists, interval by SciPy (ttest_ind, equal_var false)", "computed", [
    [RUXTON, -3.98409626714093, { at: [2, 2], within: { digits: 13 } }],
    [RUXTON, -0.349237066192407, { at: [2, 3], within: { digits: 13 } }],
  ]),
  ...checksOf("COMPAREGROUPS", RODS, "read", [
    [SMALL, 0.090773324285671, { at: [2, 6], within: { digits: 12 } }],
    [FAR_APART, 0.0107515611497845, { at: [2, 6], within: { digits: 12 } }],
  ]),
  ...checksOf("COMPAREGROUPS", "by hand: no spread, U 0.004: 1.960 × √2 × 0.002 by the normal law; JCGM 100:2008, 5.1.2", "computed", [
    ["=HATCH.COMPAREGROUPS({73.01;73.01}, {73.02;73.02}, , 0.004)", -0.0155436, { at: [2, 2], within: 5e-8, prints: 6 }],
    ["=HATCH.COMPAREGROUPS({73.01;73.01}, {73.02;73.02}, , 0.004)", "gauge", { at: [2, 7] }],
  ]),
  ...checksOf("COMPAREGROUPS", MILEAGE, "read", [
    [CARS, -12.94627, { at: [2, 4], within: 5e-6 }],
    [CARS, 136.875, { at: [2, 5], within: 5e-4 }],
  ]),
  ...checksOf("DETECTABLE", `${R}: qnorm of 1 − 0.025/rows and of the power, times √2 × 0.002`, "computed", [
    ["=HATCH.DETECTABLE(0.004)", (2 + 1.2815515655446) * 0.002 * Math.SQRT2, { within: { digits: 12 } }],
    ["=HATCH.DETECTABLE(0.004, , 1, 1, 0.8, 64)", (3.35935371793433 + 0.841621233572914) * 0.002 * Math.SQRT2, { within: { digits: 12 } }],
  ]),
  ...checksOf("DETECTABLE", "by hand with 3-4-5: (2 + 1.2815516) × √((0.006² + 0.008²)/4/4 + 2 × 0.006²/4)", "computed", [
    ["=HATCH.DETECTABLE(0.006, 0.008, 4, 1, 0.9, 1, 0.006)", 0.0161598, { within: 5e-8, prints: 6 }],
  ]),
  ...checksOf("ENGINESNEEDED", `${R}: smallest n whose power.t.test, two-sample and strict, reaches the power`, "computed", [
    ["=HATCH.ENGINESNEEDED(1, 1)", 23],
    ["=HATCH.ENGINESNEEDED(0.5, 1)", 86],
    ["=HATCH.ENGINESNEEDED(2, 1)", 7],
    ["=HATCH.ENGINESNEEDED(3, 1)", 4],
    ["=HATCH.ENGINESNEEDED(1, 1, 0.8)", 17],
    ["=HATCH.ENGINESNEEDED(1, 1, 0.9, 0.99)", 32],
  ]),
  ...checksOf("ENNUMBER", GEAR_SCORES, "read", [
    ["=HATCH.ENNUMBER(1, 1.006, 0.01255781, 0.00869227)", 0.393, { within: 5e-4 }],
    ["=HATCH.ENNUMBER(1, 0.996, 0.01255781, 0.00869227)", -0.262, { within: 5e-4 }],
    ["=HATCH.ENNUMBER(1, 0.998, 0.01255781, 0.00869227)", -0.131, { within: 5e-4 }],
  ]),
  ...checksOf("ENNUMBER", HAND_EN, "computed", [
    ["=HATCH.ENNUMBER(73, 73.01, 0.006, 0.008)", 1],
    ["=HATCH.ENNUMBER(73.05, 73.01, 0.006, 0.008)", -4],
  ]),
  ...checksOf("PAIREDCHANGE", `${R}: t.test, paired, six places measured twice`, "computed", [
    [PAIRS, 0.0115, { at: [2, 1], within: { digits: 12 } }],
    [PAIRS, 0.0068658176919221, { at: [2, 2], within: { digits: 11 } }],
    [PAIRS, 0.0161341823080788, { at: [2, 3], within: { digits: 11 } }],
    [PAIRS, 6.37905225659478, { at: [2, 4], within: { digits: 11 } }],
    [PAIRS, 5, { at: [2, 5], within: { digits: 12 } }],
    [PAIRS, 0.00140110780224763, { at: [2, 6], within: { digits: 11 } }],
    [PAIRS, "differs", { at: [2, 8] }],
  ]),
  ...checksOf(
    "PAIREDCHANGE",
    "Student, Biometrika 6 (1908) 1, hours of sleep gained by two drugs, as R's data set sleep has them; R's t.test, paired",
    "computed",
    [
      [SLEEP, 1.58, { at: [2, 1], within: { digits: 12 } }],
      [SLEEP, 0.700114236723018, { at: [2, 2], within: { digits: 12 } }],
      [SLEEP, 2.45988576327698, { at: [2, 3], within: { digits: 12 } }],
      [SLEEP, 4.06212768338204, { at: [2, 4], within: { digits: 12 } }],
      [SLEEP, 0.00283289019738427, { at: [2, 6], within: { digits: 11 } }],
    ],
  ),
  ...checksOf(
    "PAIREDCHANGE",
    "by hand: U 0.006 and 0.008 as one reading's own and common part, 1.960 × √(2 × 0.003² ÷ 2 + 2 × 0.004²); JCGM 100:2008, 5.1.2",
    "computed",
    [
      ["=HATCH.PAIREDCHANGE({73;73.1}, {73.02;73.12}, 0.01, , , 0.008)", 0.0074501, { at: [2, 2], within: 5e-8, prints: 5 }],
      ["=HATCH.PAIREDCHANGE({73;73.1}, {73.02;73.12}, 0.01, , , 0.008)", 0.0325499, { at: [2, 3], within: 5e-8, prints: 6 }],
      ["=HATCH.PAIREDCHANGE({73;73.1}, {73.02;73.12}, 0.01, , , 0.008)", "gauge", { at: [2, 7] }],
    ],
  ),
  ...checksOf("REALCHANGE", "ISO/IEC 17043: results agree when |En| ≤ 1; 3-4-5 makes the uncertainty of the difference 0.01", "computed", [
    ["=HATCH.REALCHANGE(73, 73.011, 0.006, 0.008)", "larger, beyond its gauge"],
    ["=HATCH.REALCHANGE(73, 72.989, 0.006, 0.008)", "smaller, beyond its gauge"],
  ]),
  ...checksOf("REALCHANGE", "two one-sided tests at 5 %, Schuirmann 1987: 0.01 + 1.645 × 0.01 ÷ 2 = 0.0182, to two digits", "computed", [
    ["=HATCH.REALCHANGE(73, 73.01, 0.006, 0.008)", "cannot tell: up to 0.018 may hide"],
  ]),
  ...checksOf("REALCHANGE", `${GEAR_SCORES}: all below 1; 0.006 + 1.645 × 0.01527 ÷ 2`, "read", [
    ["=HATCH.REALCHANGE(1, 1.006, 0.01255781, 0.00869227)", "cannot tell: up to 0.019 may hide"],
  ]),
  ...checksOf("SAMEWITHIN", "two one-sided tests at 5 %, Schuirmann 1987: 1.644854 × 0.01 ÷ 2 = 0.008224 beside the difference", "computed", [
    ["=HATCH.SAMEWITHIN(73, 73.004, 0.01223, 0.006, 0.008)", "same within 0.01223"],
    ["=HATCH.SAMEWITHIN(73, 73.004, 0.01222, 0.006, 0.008)", "cannot tell: up to 0.012 may hide"],
    ["=HATCH.SAMEWITHIN(73, 73.011, 0.01923, 0.006, 0.008)", "differs, but less than what matters"],
    ["=HATCH.SAMEWITHIN(73, 73.011, 0.01922, 0.006, 0.008)", "differs"],
  ]),
  ...checksOf("WEARLIFE", `${BAND}, p. 431`, "computed", [
    [READS, 103.994915645944, { at: [2, 1], within: { digits: 13 } }],
    [READS, 103.795104475359, { at: [2, 2], within: { digits: 11 } }],
    [READS, 104.198406051717, { at: [2, 3], within: { digits: 11 } }],
    [READS, "scatter", { at: [2, 5] }],
  ]),
  ...checksOf("WEARLIFE", `${BAND}, p. 434`, "computed", [
    [GROWS, 15.8881952326901, { at: [2, 1], within: { digits: 13 } }],
    [GROWS, 14.6589587043499, { at: [2, 2], within: { digits: 10 } }],
    [GROWS, 17.1596321188673, { at: [2, 3], within: { digits: 10 } }],
  ]),
  ...checksOf("WEARLIFE", KNOWN, "computed", [
    ["=HATCH.WEARLIFE({0;500;1000;1500}, {73;73.011;73.019;73.031}, 73.1, 0.004)", 4945.54455445296, { at: [2, 1], within: { digits: 10 } }],
    ["=HATCH.WEARLIFE({0;500;1000;1500}, {73;73.011;73.019;73.031}, 73.1, 0.004)", 4318.59425273787, { at: [2, 2], within: { digits: 10 } }],
    ["=HATCH.WEARLIFE({0;500;1000;1500}, {73;73.011;73.019;73.031}, 73.1, 0.004)", 5833.13811561823, { at: [2, 3], within: { digits: 10 } }],
    ["=HATCH.WEARLIFE({0;500;1000;1500}, {73;73.011;73.019;73.031}, 73.1, 0.004)", "gauge", { at: [2, 5] }],
  ]),
  ...checksOf("WEARLIFE", CONFINT, "computed", [
    ["=HATCH.WEARLIFE({0;100;250;400;600}, {0;0.02;0.024;0.03;0.035}, 0.05)", 825.71305099395, { at: [2, 1], within: { digits: 12 } }],
  ]),
  ...checksOf("WEARLIFE", MARINE, "computed", [
    ["=HATCH.WEARLIFE({0,3000,6000}, {73,73.045,73.09}, 73.15)", 10000, { at: [2, 1], within: { digits: 9 }, prints: 9 }],
  ]),
  ...checksOf("WEARRATE", CONFINT, "computed", [
    ["=HATCH.WEARRATE({0;100;250;400;600}, {0;0.02;0.024;0.03;0.035})", 0.0000507456140350877, { at: [2, 1], within: { digits: 12 } }],
    ["=HATCH.WEARRATE({0;100;250;400;600}, {0;0.02;0.024;0.03;0.035})", 0.00000559560833198633, { at: [2, 2], within: { digits: 11 } }],
    ["=HATCH.WEARRATE({0;100;250;400;600}, {0;0.02;0.024;0.03;0.035})", 0.0000958956197381891, { at: [2, 3], within: { digits: 11 } }],
  ]),
  ...checksOf("WEARRATE", KNOWN, "computed", [
    ["=HATCH.WEARRATE({0;500;1000;1500}, {73;73.011;73.019;73.031}, 0.004)", 0.0000166939098377049, { at: [2, 2], within: { digits: 11 } }],
    ["=HATCH.WEARRATE({0;500;1000;1500}, {73;73.011;73.019;73.031}, 0.004)", 0.0000237060901623175, { at: [2, 3], within: { digits: 11 } }],
    ["=HATCH.WEARRATE({0;500;1000;1500}, {73;73.011;73.019;73.031}, 0.004)", "gauge", { at: [2, 5] }],
  ]),
  ...checksOf("WEARRATE", "NIST StRD, Norris: certified slope", "read", [[NORRIS, 1.00211681802045, { at: [2, 1], within: { digits: 13 } }]]),
  // From the slope by t95(34) = 2.032244509 (SciPy) times its certified standard deviation.
  ...checksOf("WEARRATE", "NIST StRD, Norris: certified slope ± Student's t × its certified standard deviation, 0.000429796848199937", "computed", [
    [NORRIS, 1.00124337, { at: [2, 2], within: 5e-9 }],
    [NORRIS, 1.00299027, { at: [2, 3], within: 5e-9 }],
    [NORRIS, "grows", { at: [2, 4] }],
  ]),
  ...checksOf("WEARRATE", MARINE, "computed", [
    ["=HATCH.WEARRATE({0,3000,6000}, {73,73.045,73.09})", 0.000015, { at: [2, 1], within: { digits: 9 }, prints: 9 }],
  ]),
  ...checksOf("WEARRATE", "four points by hand: slope 0.6, deviation √0.02, t95(2) = 4.302653", "computed", [
    ["=HATCH.WEARRATE({0,1,2,3}, {10,11,11,12})", 0.6, { at: [2, 1], within: { digits: 12 }, prints: 12 }],
    ["=HATCH.WEARRATE({0,1,2,3}, {10,11,11,12})", -0.008487, { at: [2, 2], within: 5e-7 }],
    ["=HATCH.WEARRATE({0,1,2,3}, {10,11,11,12})", 1.208487, { at: [2, 3], within: 5e-7 }],
    ["=HATCH.WEARRATE({0,1,2,3}, {10,11,11,12})", "not distinguishable from zero", { at: [2, 4] }],
  ]),
];
