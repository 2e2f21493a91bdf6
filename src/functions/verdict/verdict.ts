import { define, value } from "../../core/define.ts";
import { Fault } from "../../core/fault.ts";
import { verdictOf } from "../../core/verdict.ts";
import { DECISION_RULE_NOTE, EMPTY_CELL_NOTE, judgingParams, limitsOf, ZERO_LIMIT_NOTE } from "./limit-params.ts";

/**
 * The verdict on a value against limits typed by the shop. Source: ISO 14253-1:1998 when an
 * uncertainty is given, or JCGM 106:2012 by the rule "95 %"; without one a value on a limit is within it.
 */
export const verdict = define({
  name: "VERDICT",
  group: "verdict",
  role: "judges",
  summary: "Judges a value against typed limits: within, near limit, not proven, over or under",
  definition:
    "over: value > upper + U; under: value < lower − U; within: lower + U ≤ value ≤ upper − U; otherwise not proven. Rule 95 %: within, over or under where its probability, normal with u = U/2 about the value, is at least 0.95",
  source: "ISO 14253-1:1998 (full U), JCGM 106:2012, 7.4 and 9.2 (95 %); near: common practice",
  params: judgingParams,
  returns: value("the verdict in words; blank while there is no limit to judge by"),
  examples: [
    { formula: "=HATCH.VERDICT(73.04-73.00, , 0.04)", gives: "within" },
    { formula: "=HATCH.VERDICT(0.041, 0.02, 0.04)", gives: "over" },
    { formula: "=HATCH.VERDICT({0.019;0.021;0.039;0.045}, 0.02, 0.04, 0.002)", gives: [["not proven"], ["not proven"], ["not proven"], ["over"]] },
    { formula: "=HATCH.VERDICT(0.038, 0.02, 0.04, , 0.003)", gives: "near limit" },
    { formula: '=HATCH.VERDICT(0.0383, 0.02, 0.04, 0.002, , {"full U";"95 %"})', gives: [["not proven"], ["within"]] },
  ],
  notes: [
    "Values are compared as decimals, on a grid of 0.000000001 of the unit: 73.04 − 73.00 is within a limit of 0.04.",
    "Value, limits, uncertainty and near are of one unit. Limits come from the maker's service manual; none is built in.",
    DECISION_RULE_NOTE,
    ZERO_LIMIT_NOTE,
    EMPTY_CELL_NOTE,
  ],
  compute: ({ value: reading, lower, upper, uncertainty, near, rule }) => {
    const limits = limitsOf(lower, upper);
    return limits instanceof Fault ? limits : (verdictOf(reading, limits.lower, limits.upper, uncertainty, near, rule) ?? "");
  },
});
