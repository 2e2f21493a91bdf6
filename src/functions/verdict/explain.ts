import { define, value } from "../../core/define.ts";
import { Fault } from "../../core/fault.ts";
import { verdictSentence as explainVerdict } from "../../core/verdict.ts";
import { DECISION_RULE_NOTE, EMPTY_CELL_NOTE, judgingParams, limitsOf, ZERO_LIMIT_NOTE } from "./limit-params.ts";

/** The verdict as one plain sentence with its numbers. Source: as VERDICT. */
export const explain = define({
  name: "EXPLAIN",
  group: "verdict",
  role: "judges",
  summary: "The verdict on a value as one plain sentence with the numbers",
  definition: "the sentence that belongs to VERDICT(value, lower, upper, uncertainty, near, rule)",
  source: "ISO 14253-1:1998 (full U), JCGM 106:2012 (95 %); near: common practice",
  params: judgingParams,
  returns: value("a sentence; blank while there is no limit to judge by"),
  examples: [
    { formula: "=HATCH.EXPLAIN(0.041, 0.02, 0.04)", gives: "0.041 is over the upper limit 0.04 by 0.001" },
    {
      formula: "=HATCH.EXPLAIN({0.03;0.04}, , 0.04)",
      gives: [["0.03 is within the upper limit 0.04 by 0.01"], ["0.04 is within the upper limit 0.04, exactly on it"]],
    },
    {
      formula: "=HATCH.EXPLAIN(0.039, 0.02, 0.04, 0.002)",
      gives: "0.039 is inside the upper limit 0.04 by 0.001, not proven either way with an uncertainty of 0.002",
    },
  ],
  notes: ["Value, limits, uncertainty and near are of one unit; the sentence repeats them as decimals.", DECISION_RULE_NOTE, ZERO_LIMIT_NOTE, EMPTY_CELL_NOTE],
  compute: ({ value: reading, lower, upper, uncertainty, near, rule }) => {
    const limits = limitsOf(lower, upper);
    return limits instanceof Fault ? limits : explainVerdict(reading, limits, uncertainty, near, rule);
  },
});
