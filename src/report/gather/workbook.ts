import { Analysis } from "../../check/analysis.ts";
import { checkAnalysed } from "../../check/check-workbook.ts";
import { type JudgedRow, JudgedRows } from "../../check/finding.ts";
import type { Mapping } from "../../layout/mapping.ts";
import type { WorkbookSnapshot } from "../../workbook/port.ts";
import type { ReportInput, SheetContent } from "../content.ts";
import { changesIn, drawnBores, facesIn, surfacesIn, testsIn, tracesIn, turnsIn } from "./drawables.ts";
import { gaugesIn, identityIn, limitsIn, unitOfLength } from "./identity.ts";
import { mappedContent } from "./mapped.ts";
import { Source } from "./source.ts";

/** A workbook checked for a report: plain data that can be handed to the thread that writes it. */
export function reportInput(snapshot: WorkbookSnapshot, mapping?: Mapping, notes: readonly string[] = []): ReportInput {
  const analysis = new Analysis(snapshot);
  const judged = new JudgedRows();
  const result = checkAnalysed(analysis, mapping, judged.take);
  const { rows, counts } = judged;
  return { name: snapshot.name, result, judged: { rows, counts }, content: gather(analysis, rows, mapping), notes };
}

/**
 * Looks in a workbook that has been looked through for what a report shows beside its verdicts: whose engine, which gauges,
 * whose limits, and what can be drawn, by our functions first and then by a layout of the shop's own.
 */
export function gather(analysis: Analysis, judged: readonly JudgedRow[], mapping?: Mapping): SheetContent {
  const { book, calls } = analysis;
  const { sheets } = book;
  const identity = identityIn(sheets);
  const limits = limitsIn(sheets);
  const source = new Source(analysis, judged, unitOfLength(identity, limits));
  const bores = drawnBores(source, calls);
  const tests = testsIn(source, calls);
  const mapped = mapping && mappedContent(analysis.mapped(mapping), (cell) => source.isDrawn(cell));
  return {
    identity,
    gauges: gaugesIn(sheets),
    limits: limits.length > 0 ? limits : (mapped?.limits ?? []),
    bores: [...bores, ...(mapped?.bores ?? [])],
    traces: tracesIn(source, calls),
    turns: turnsIn(source, calls),
    faces: facesIn(source, calls),
    surfaces: surfacesIn(source, calls),
    tests: [...tests, ...(mapped?.tests ?? [])],
    changes: changesIn(source, calls),
  };
}
