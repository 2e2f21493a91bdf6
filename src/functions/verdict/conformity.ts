import { define, value } from "../../core/define.ts";
import { Fault } from "../../core/fault.ts";
import { number } from "../../core/inputs.ts";
import { conformanceProbability } from "../../math/normal.ts";
import { limitParams, limitsOf, ZERO_LIMIT_NOTE } from "./limit-params.ts";

// Stands after the limits, which may be left out, so it has to be asked for in compute.
const u = number("standard uncertainty u of the value: half of U at 95 %").above(0);

/** Probability that the measured thing itself lies within its limits. Source: JCGM 106:2012, 7.4 (normal distribution about the value). */
export const conformity = define({
  name: "CONFORMITY",
  group: "verdict",
  role: "assists",
  summary: "Probability that the true value lies within the limits, given the uncertainty of the reading",
  definition: "Φ((upper − value)/u) − Φ((lower − value)/u), Φ the normal distribution; a limit not given lies endlessly far away",
  source: "JCGM 106:2012, 7.4; ISO 14253-1 for what to do with it",
  params: { ...limitParams, u: u.optional() },
  returns: value("probability from 0 to 1; blank while there is no limit"),
  examples: [
    { formula: "=HATCH.CONFORMITY(13.6, 12.5, 16.3, 1.8)", gives: 0.66263 },
    { formula: "=HATCH.CONFORMITY({0.038;0.04;0.042}, , 0.04, 0.002)", gives: [[0.841345], [0.5], [0.158655]] },
  ],
  notes: ["A value on a limit is as likely outside as inside. HATCH.VERDICT with U = 2u calls it not proven, by either of its rules.", ZERO_LIMIT_NOTE],
  compute: ({ value: reading, lower, upper, u: deviation }) => {
    const limits = limitsOf(lower, upper);
    if (limits instanceof Fault) return limits;
    if (limits.lower === undefined && limits.upper === undefined) return "";
    if (deviation === undefined) return new Fault("missing", "u", undefined, u.want);
    return conformanceProbability(reading, limits.lower, limits.upper, deviation);
  },
});
