import type { Result } from "../../core/cell.ts";
import { define, table } from "../../core/define.ts";
import { Fault } from "../../core/fault.ts";
import { cells } from "../../core/inputs.ts";
import { checkText } from "../../core/sentences.ts";
import { holm } from "../../math/holm.ts";

/** Chances of rows that were looked at together. Source: S. Holm, Scandinavian Journal of Statistics 6 (1979) 65. */
export const chanceAdjusted = define({
  name: "CHANCEADJUSTED",
  group: "wear",
  role: "assists",
  summary: "p values of rows that are looked at together, adjusted for how many they are (Holm)",
  definition: "the k-th smallest of n becomes the largest of (n − j + 1) × p(j) for j = 1 … k, at most 1",
  source: "S. Holm, Scandinavian Journal of Statistics 6 (1979) 65",
  params: {
    p: cells("ratio", "p of every row that is looked at, in any order; a blank one does not count").atLeast(0).atMost(1),
  },
  returns: table("for each p the adjusted one, in the shape of the range; a row of at most 0.05 may be said to differ"),
  examples: [
    { formula: "=HATCH.CHANCEADJUSTED({0.01;0.04;0.03;0.005})", gives: [[0.03], [0.06], [0.06], [0.02]] },
    { formula: "=HATCH.CHANCEADJUSTED({0.001,0.9,0.02})", gives: [[0.003, 0.9, 0.04]] },
    { formula: "=HATCH.CHANCEADJUSTED(0.04)", gives: [[0.04]] },
  ],
  notes: [
    "Of 60 rows in which nothing has changed about three have a p of at most 0.05. Adjusted, in 19 of 20 such sheets none has.",
    "Give all rows that were looked at, also those that show nothing: rows left out because of what they show make it worthless.",
    "A p that is no number counts as a row that was looked at, so that mending it makes no other row worse.",
  ],
  compute: ({ p }) => {
    const filled = p.values.filter((value) => value !== null);
    const adjusted = holm(filled.map((value) => (value instanceof Fault ? 1 : value)));
    let next = 0;
    const results = p.values.map((value): Result => {
      if (value === null) return "";
      const own = adjusted[next++]!;
      return value instanceof Fault ? checkText(value) : own;
    });
    return Array.from({ length: p.rows }, (_, row) => results.slice(row * p.columns, (row + 1) * p.columns));
  },
});
