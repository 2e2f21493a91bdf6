import { limitCount } from "../layout/mapped-readings.ts";
import type { Mapping } from "../layout/mapping.ts";
import type { WorkbookSnapshot } from "../workbook/port.ts";
import { Analysis } from "./analysis.ts";
import { findingOf } from "./finding.ts";
import { judgedRows } from "./mapped-rows.ts";

/** What a layout makes of a workbook, for a person to look at before it is kept. */
interface LayoutSummary {
  readings: number;
  limits: number;
  engines: string[];
  /** Rows that a check judges by it. */
  judged: number;
  /** What a person should know before keeping it, in sentences. */
  notes: string[];
}

export function layoutSummaryOf(snapshot: Pick<WorkbookSnapshot, "sheets">, mapping: Mapping): LayoutSummary {
  const analysis = new Analysis(snapshot);
  const { readings, limits } = analysis.mapped(mapping);
  const { candidates, findings } = judgedRows(analysis, mapping);
  return {
    readings: readings.length,
    limits: limitCount(readings, limits),
    engines: [...new Set([...readings, ...limits].map(({ engine }) => engine))].filter(Boolean),
    judged: candidates.length,
    notes: findings.flatMap(({ kind, about, details }) => (kind === "missing limit" ? [findingOf(kind, about, details).sentence] : [])),
  };
}
