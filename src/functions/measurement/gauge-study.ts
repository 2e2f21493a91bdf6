import type { Result } from "../../core/cell.ts";
import { define, table } from "../../core/define.ts";
import { Fault } from "../../core/fault.ts";
import { grid, labels, length } from "../../core/inputs.ts";
import { type GaugeVariances, gaugeVariances, studyOf } from "./gauge-variances.ts";

const HEADER = ["source", "standard deviation", "% of variance", "% of variation", "% of tolerance"] as const;
/** A tolerance is held against the width that holds 99.73 % of a normal spread. */
const WIDTH = 6;

/**
 * Gauge repeatability and reproducibility. Sources: D. C. Montgomery, Introduction to Statistical
 * Quality Control (crossed analysis of variance, random parts and operators); pooling at 0.05 and the
 * number of distinct categories √2 × parts / gauge: common practice of measurement system analysis.
 */
export const gaugeStudy = define({
  name: "GAUGESTUDY",
  group: "measurement",
  role: "assists",
  summary: "How much of the spread of readings is the gauge, the people, and the parts themselves",
  definition:
    "analysis of variance, parts × operators × repeats; gauge² = repeatability² + reproducibility²; distinct categories = whole part of √2 × parts ÷ gauge",
  source: "D. C. Montgomery, Introduction to Statistical Quality Control, gauge capability by analysis of variance; categories: common practice",
  params: {
    parts: labels("which part each reading is of"),
    operators: labels("who took each reading; a column beside the readings, or a row above them"),
    readings: grid("number", "the readings; each operator reads each part as often, at least twice"),
    tolerance: length("width of the tolerance: upper limit less lower limit").optional(),
  },
  returns: table("a labelled block: repeatability, reproducibility, both as the gauge, parts, whole, distinct categories, interaction"),
  examples: [
    {
      formula: '=HATCH.GAUGESTUDY({1;1;2;2;3;3}, {"Ann","Ben"}, {73.01,73.02;73.02,73.02;73.05,73.06;73.05,73.05;73.09,73.08;73.08,73.09}, 0.2)',
      gives: [
        [...HEADER],
        ["repeatability", 0.0052, 2.33, 15.27, 15.61],
        ["reproducibility", 0.001, 0.09, 3, 3.06],
        ["gauge", 0.0053, 2.42, 15.56, 15.91],
        ["parts", 0.0337, 97.58, 98.78, 100.97],
        ["whole", 0.0341, 100, 100, 102.22],
        ["distinct categories", 8, "", "", ""],
        ["chance of the interaction", 0.787, "pooled", "", ""],
      ],
    },
    {
      formula: '=HATCH.GAUGESTUDY({1;1;2;2}, "Ann", {73.01;73.02;73.05;73.06})',
      gives: [
        [...HEADER],
        ["repeatability", 0.0071, 6.06, 24.62, ""],
        ["reproducibility", "not seen: one operator", "", "", ""],
        ["gauge", 0.0071, 6.06, 24.62, ""],
        ["parts", 0.0278, 93.94, 96.92, ""],
        ["whole", 0.0287, 100, 100, ""],
        ["distinct categories", 5, "", "", ""],
      ],
    },
  ],
  notes: [
    "A variance that comes out below nothing counts as nothing, which happens when people differ less than their repeats do.",
    "The interaction, one operator reading some parts differently, is pooled into repeatability when its chance is 0.05 or more.",
    "A gauge up to 10 % of the variation or tolerance is commonly called good, above 30 % unfit; 5 categories or more are wanted.",
    "Ten parts that span what the shop sees, two or three people, two or three blind repeats each: parts too alike make any gauge look bad.",
  ],
  compute: ({ parts, operators, readings, tolerance }) => {
    const study = studyOf(parts, operators, readings);
    if (study instanceof Fault) return study;
    return study === undefined ? [[""]] : report(gaugeVariances(study.cells), tolerance);
  },
});

function report({ repeatability, reproducibility, parts, interactionPValue, isPooled }: GaugeVariances, tolerance: number | undefined): Result[][] {
  const gauge = repeatability + (reproducibility ?? 0);
  const whole = gauge + parts;
  const line = (name: string, variance: number): Result[] => {
    const deviation = Math.sqrt(variance);
    const ofTolerance = tolerance === undefined ? "" : (100 * WIDTH * deviation) / tolerance;
    return [name, deviation, (100 * variance) / whole, 100 * Math.sqrt(variance / whole), ofTolerance];
  };
  const people: Result[] = reproducibility === undefined ? ["reproducibility", "not seen: one operator", "", "", ""] : line("reproducibility", reproducibility);
  const interaction: Result[] = interactionPValue === undefined ? [] : ["chance of the interaction", interactionPValue, isPooled ? "pooled" : "kept", "", ""];
  return [
    [...HEADER],
    line("repeatability", repeatability),
    people,
    line("gauge", gauge),
    line("parts", parts),
    line("whole", whole),
    ["distinct categories", Math.max(1, Math.floor(Math.sqrt((2 * parts) / gauge))), "", "", ""],
    ...(interaction.length ? [interaction] : []),
  ];
}
