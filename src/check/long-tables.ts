import { isBlank } from "../core/cell.ts";
import type { SpillSources } from "../formula/precedents.ts";
import type { ReadingField } from "../vocabulary/heading-words.ts";
import { type Columns, canBeJudged, groupFrom, labelFrom, unitMisfit } from "../vocabulary/headings.ts";
import { type ColumnFields, cellText, tableLines } from "../vocabulary/table-lines.ts";
import { unitOf } from "../vocabulary/units.ts";
import { type CellAddress, placeName } from "../workbook/address.ts";
import type { SheetSnapshot } from "../workbook/port.ts";
import { type Candidate, limitKey } from "./candidates.ts";
import { gaugeColumn } from "./gauges.ts";
import { JUDGED_COLUMNS, NO_INPUTS } from "./judge.ts";

/** Tables in long form on the sheets: a row of headings that names a value and a limit, one reading a row below it. */
export function* tableRows(origins: SpillSources): Generator<Candidate> {
  for (const sheet of origins.book.sheets) {
    let table = -1;
    let gauges: number | undefined;
    for (const { columns, cells, row, top } of tableLines(sheet, canBeJudged, looksLikeReading)) {
      if (top !== table) gauges = gaugeColumn(sheet.values[top]!);
      table = top;
      const candidate = candidateOf(origins, sheet, columns, cells, row, `${sheet.name}|${top}`);
      const gauge = gauges === undefined ? "" : cellText(sheet.values[row]![gauges]);
      yield gauge === "" ? candidate : { ...candidate, gauge };
    }
  }
}

const looksLikeReading = ({ value, lower, upper }: ColumnFields): boolean =>
  (typeof value === "number" || isBlank(value)) && (typeof lower === "number" || typeof upper === "number");

function candidateOf(origins: SpillSources, sheet: SheetSnapshot, columns: Columns, cells: ColumnFields, row: number, table: string): Candidate {
  const { at } = columns;
  const place = (column: number): CellAddress => ({ sheet: sheet.name, row: sheet.row + row, column: sheet.column + column });
  const cell = place(at.value!);
  const given = { ...NO_INPUTS };
  const beside: Candidate["beside"] = {};
  for (const name of JUDGED_COLUMNS) {
    if (at[name] === undefined) continue;
    given[name] = cells[name];
    beside[name] = place(at[name]);
  }
  const texts = Object.fromEntries(Object.entries(cells).map(([field, value]) => [field, cellText(value)])) as Partial<Record<ReadingField, string>>;
  const label = labelFrom(texts);
  const unit = unitOf(texts.unit ?? "") ?? columns.unit;
  const misfit = isBlank(given.value) ? undefined : unitMisfit(columns, unit);
  return {
    key: `${placeName(cell)}|${limitKey(given)}`,
    cell,
    given,
    isTyped: !origins.isResult(cell),
    beside,
    group: `${table}|${groupFrom(texts)}`,
    unit,
    ...(misfit === undefined ? {} : { whole: { fault: misfit } }),
    ...(label ? { label } : {}),
    ...(texts.characteristic ? { characteristic: texts.characteristic } : {}),
  };
}
