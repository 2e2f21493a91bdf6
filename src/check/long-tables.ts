import { type Cell, isBlank, isCellError } from "../core/cell.ts";
import type { SpillSources } from "../formula/precedents.ts";
import {
  type Columns,
  type ComparisonField,
  canBeJudged,
  groupFrom,
  labelFrom,
  READING_FIELDS,
  type ReadingField,
  readHeadings,
} from "../vocabulary/headings.ts";
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

/** One row of a table; rows count from the first of the sheet's block, `top` is that of the headings. */
interface TableLine {
  columns: Columns;
  cells: ColumnFields;
  row: number;
  top: number;
}

/** Rows below headings that `serves` accepts, up to a gap with something else behind it. */
export function* tableLines(
  sheet: SheetSnapshot,
  serves: (columns: Columns) => boolean,
  goesOn: (cells: ColumnFields) => boolean,
  fields: readonly ComparisonField[] = READING_FIELDS,
): Generator<TableLine> {
  let columns: Columns | undefined;
  let top = 0;
  let gap = false;
  for (const [r, line] of sheet.values.entries()) {
    const headings = headingsOf(line, serves);
    if (headings) {
      columns = headings;
      top = r;
      gap = false;
    } else if (columns) {
      const cells = fieldsOf(columns, line, fields);
      if (isBlankRow(cells)) gap = true;
      // Behind a gap something else may stand in the same columns.
      else if (gap && !goesOn(cells)) columns = undefined;
      else yield { columns, cells, row: r, top };
    }
  }
}

export type ColumnFields = Partial<Record<ComparisonField, Cell>>;

/** The columns, when the row is one of headings. */
function headingsOf(line: readonly Cell[], serves: (columns: Columns) => boolean): Columns | undefined {
  const texts = line.map((cell) => (typeof cell === "string" ? cell : ""));
  if (texts.filter(Boolean).length < 2) return undefined;
  const columns = readHeadings(texts);
  return serves(columns) ? columns : undefined;
}

const fieldsOf = ({ at }: Columns, line: readonly Cell[], fields: readonly ComparisonField[]): ColumnFields =>
  Object.fromEntries(fields.flatMap((field) => (at[field] === undefined ? [] : [[field, line[at[field]]]])));

const isBlankRow = (cells: ColumnFields): boolean => Object.values(cells).every(isBlank);

const looksLikeReading = ({ value, lower, upper }: ColumnFields): boolean =>
  (typeof value === "number" || isBlank(value)) && (typeof lower === "number" || typeof upper === "number");

function candidateOf(origins: SpillSources, sheet: SheetSnapshot, { at, unit }: Columns, cells: ColumnFields, row: number, table: string): Candidate {
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
  return {
    key: `${placeName(cell)}|${limitKey(given)}`,
    cell,
    given,
    isTyped: !origins.isResult(cell),
    beside,
    group: `${table}|${groupFrom(texts)}`,
    unit: unitOf(texts.unit ?? "") ?? unit,
    ...(label ? { label } : {}),
    ...(texts.characteristic ? { characteristic: texts.characteristic } : {}),
  };
}

export const cellText = (cell: Cell): string => (isBlank(cell) || isCellError(cell) ? "" : String(cell));
