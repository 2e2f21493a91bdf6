import { type Cell, isBlank, isCellError } from "../core/cell.ts";
import { groupedBy } from "../core/grouped.ts";
import { placeName } from "../workbook/address.ts";
import type { Analysis } from "./analysis.ts";
import { type FindingCollector, unjudged } from "./collect.ts";
import { plainValue } from "./judge.ts";

/** Cells of our functions that show something else than their formulas give, each; and those without a result, once for each sheet and reason. */
export function reportShown({ shown: { wrong, without }, labels }: Analysis, report: FindingCollector): void {
  for (const { cell, shown, right, why, because } of wrong) {
    const details = { gives: given(right), why, because: because ? placeName(because) : null };
    report.find("wrong result", unjudged({ cell, label: labels.of(cell) }, plainValue(shown)), details);
  }
  for (const group of groupedBy(without, ({ cell, why }) => `${why}|${cell.sheet}`).values()) {
    const { cell, why } = group[0]!;
    report.find("no result", unjudged({ cell, label: labels.of(cell) }, null), { why, cells: group.length });
  }
}

/** A fault by its sentence. */
function given(right: Cell): number | string | null {
  if (isCellError(right)) return right.message ?? right.error;
  return isBlank(right) ? null : plainValue(right);
}
