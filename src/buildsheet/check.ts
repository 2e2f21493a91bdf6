import { isCellError } from "../core/cell.ts";
import { CHECK_PREFIX } from "../core/sentences.ts";
import { type CellAddress, placeName } from "../sheet/address.ts";
import type { WorkbookSnapshot } from "../sheet/sheet-host.ts";
import { callsIn, type OwnCall } from "./check/calls.ts";
import { candidatesOf, judges } from "./check/candidates.ts";
import { plainValue } from "./check/given.ts";
import { type BadInput, Inputs } from "./check/inputs.ts";
import { Labels } from "./check/labels.ts";
import { Origins } from "./check/origins.ts";
import { Report } from "./check/report.ts";
import { Rows } from "./check/rows.ts";
import { tableRows } from "./check/tables.ts";
import { faultSource } from "./check/trace.ts";
import { Watch } from "./check/watch.ts";
import type { CheckResult } from "./finding.ts";
import { Book } from "./formula/book.ts";
import type { JudgedRow } from "./judged.ts";
import { judgedRows } from "./layout/apply.ts";
import type { Mapping } from "./layout/mapping.ts";

/**
 * Looks through a workbook for what somebody should see before the engine goes together: every
 * reading that VERDICT, EXPLAIN or MARGIN judges and every row of a table in long form, and the
 * inputs of all our functions. With a layout of the shop's own, what it maps is judged as well.
 * `judged` is told every verdict, also those of which there is nothing to say.
 */
export function checkWorkbook(snapshot: WorkbookSnapshot, mapping?: Mapping, judged?: (row: JudgedRow) => void): CheckResult {
  const book = new Book(snapshot);
  const report = new Report(undefined, judged);
  const watch = new Watch((watched, { kind, sentence }) => report.find(kind, watched.subject(), sentence));
  const labels = new Labels(book);
  const origins = new Origins(book);
  const inputs = new Inputs(origins, labels, report, watch);
  const rows = new Rows(origins, labels, report, watch);
  const others: OwnCall[] = [];
  for (const call of callsIn(book)) {
    if (judges(call)) for (const candidate of candidatesOf(call, origins)) rows.add(candidate);
    else {
      others.push(call);
      inputs.look(call);
    }
  }
  const laid = mapping && judgedRows(origins, mapping);
  for (const candidate of tableRows(origins)) if (!laid?.covers.has(placeName(candidate.cell))) rows.add(candidate);
  for (const candidate of laid?.candidates ?? []) rows.add(candidate);
  rows.judgeAll();
  inputs.reportBlanks();
  rows.reportBlanks();
  for (const { cell, why } of [...inputs.bad.values(), ...badResults(book, others)]) {
    const source = faultSource(origins, cell);
    if (rows.covered.has(placeName(source))) continue;
    rows.covered.add(placeName(source));
    report.row({ as: "refused", why }, () => ({ cell: source, label: labels.of(source) }), plainValue(book.value(source)));
  }
  for (const { group, watched } of laid?.watched ?? []) watch.add(group, watched);
  report.inputs += laid?.inputs ?? 0;
  for (const { kind, about, sentence } of laid?.findings ?? []) report.find(kind, about, sentence);
  watch.finish();
  return report.result(snapshot.sheets.map(({ name }) => name));
}

/** Formulas that call our functions and show a fault, and faults that have spilled from them. */
function* badResults(book: Book, calls: readonly OwnCall[]): Generator<BadInput> {
  for (const { at } of calls) {
    const value = book.value(at);
    if (isCellError(value)) yield { cell: at, why: value.message ?? `the formula gives ${value.error}` };
  }
  for (const { name, row, column, values } of book.sheets) {
    for (const [r, line] of values.entries()) {
      for (const [c, value] of line.entries()) {
        const cell: CellAddress = { sheet: name, row: row + r, column: column + c };
        if (typeof value === "string" && value.startsWith(CHECK_PREFIX)) yield { cell, why: value.slice(CHECK_PREFIX.length) };
      }
    }
  }
}
