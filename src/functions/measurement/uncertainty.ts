import { define, value } from "../../core/define.ts";
import { refuse } from "../../core/fault.ts";
import { length, list, ratio } from "../../core/inputs.ts";
import { studentQuantile } from "../../math/distributions.ts";
import { effectiveDegreesOfFreedom, variance } from "../../math/statistics.ts";

/** A certificate states its U at 95 % with this factor. */
const CERTIFICATE_FACTOR = 2;

/**
 * Expanded uncertainty of the mean of repeated readings. Source: JCGM 100:2008: 4.2.3 (mean of
 * readings), F.2.2.1 (resolution), G.4.1 (effective degrees of freedom by Welch-Satterthwaite,
 * truncated to a whole number), G.6.4 (t of that many).
 */
export const uncertainty = define({
  name: "UNCERTAINTY",
  group: "measurement",
  role: "assists",
  summary: "Expanded uncertainty U of the mean of repeated readings with one gauge",
  definition: "t(confidence, ν) × u, u = √(s²/n + resolution²/12 + (calibration/2)²), ν = whole part of u⁴ ÷ ((s²/n)²/(n − 1))",
  source: "JCGM 100:2008 (GUM), 4.2.3, F.2.2.1, G.4.1 and G.6.4",
  params: {
    readings: list("number", "repeated readings of the same place, at least 2"),
    resolution: length("smallest step the gauge shows"),
    calibration: length("expanded uncertainty U (k = 2) from the gauge's calibration certificate").atLeast(0).default(0),
    confidence: ratio("share of cases that U is to cover").below(1).default(0.95),
  },
  returns: value("expanded uncertainty U, in the unit of the readings"),
  examples: [
    { formula: "=HATCH.UNCERTAINTY({73.01;73.02;73.01;73.02;73.01}, 0.01, 0.004)", gives: 0.008676 },
    { formula: "=HATCH.UNCERTAINTY({73.01,73.01,73.01}, 0.01)", gives: 0.005658 },
    { formula: "=HATCH.UNCERTAINTY({2.8741,2.8742,2.8740,2.8741}, 0.0001, 0.0001, 0.99)", gives: 0.000196 },
  ],
  notes: [
    "U belongs to the mean. One later reading with the same gauge is less certain: its spread is not divided by √n.",
    "Readings that all agree leave only the resolution and the calibration.",
    "Different people, heat and dirt are not in it: HATCH.GAUGESTUDY shows the people, HATCH.COMBINE adds what else is known.",
  ],
  compute: ({ readings, resolution, calibration, confidence }) => {
    const n = readings.length;
    if (n < 2) return refuse("readings", readings[0], "one reading shows no spread, at least 2 are needed");
    const repeated = variance(readings) / n;
    const known = resolution ** 2 / 12 + (calibration / CERTIFICATE_FACTOR) ** 2;
    const degreesOfFreedom = effectiveDegreesOfFreedom([
      { variance: repeated, degreesOfFreedom: n - 1 },
      { variance: known, degreesOfFreedom: Number.POSITIVE_INFINITY },
    ]);
    // Truncated as G.4.1 has it, which is never on the hopeful side.
    return studentQuantile(confidence, Math.floor(degreesOfFreedom)) * Math.sqrt(repeated + known);
  },
});
