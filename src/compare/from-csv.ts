import { cellOf, type DecimalSign, wrongSign } from "../check/csv/fields.ts";
import { misfitOf, readHeader, type Wanted } from "../check/csv/header.ts";
import { readRecords } from "../check/csv/records.ts";
import { Scanner } from "../check/csv/scanner.ts";
import type { ColumnFields } from "../check/long-tables.ts";
import type { Cell } from "../core/cell.ts";
import { canBeCompared, READING_FIELDS, type ReadingField } from "../vocabulary/headings.ts";
import { isLengthUnit } from "../vocabulary/units.ts";
import { type Reading, type ReadingSet, readingFrom } from "./readings.ts";

const NUMBERS = new Set<ReadingField>(["value", "lower", "upper", "uncertainty", "hours"]);

const toBeCompared: Wanted = (columns) =>
  canBeCompared(columns)
    ? undefined
    : `no heading for ${columns.at.value === undefined ? "the value" : "the characteristic or position"}; wanted are value and characteristic, and as known engine, cylinder, position, unit, uncertainty, lower, upper, hours`;

export interface CsvReadingOptions {
  name?: string;
  /** Sign before the decimals. A comma is read only when it is asked for. */
  decimal?: DecimalSign;
  /** Expanded uncertainty U of one length, where the file gives none. */
  uncertainty?: number | undefined;
}

/** Reads one side of a comparison from a file in long form. `unread` says why it, or its rest, could not be read. */
export async function readingsOfCsv(
  input: AsyncIterable<Uint8Array>,
  { name = "", decimal = ".", uncertainty }: CsvReadingOptions = {},
): Promise<ReadingSet & { unread?: string }> {
  const head = await readHeader(input, undefined, toBeCompared);
  if ("unread" in head) return { name, readings: [], notes: [], unread: head.unread };
  const readings: Reading[] = [];
  const { at, unit } = head;
  const records = new Scanner(head.delimiter, head.nextLine);
  const unread = await readRecords(head.bytes, records, () => {
    const record = records.texts();
    if (record.every((field) => field.trim() === "")) return;
    const place = { cell: { sheet: name, row: records.line - 1, column: at.value! }, line: records.line };
    const cells: ColumnFields = {};
    let why = misfitOf(record, head);
    for (const field of READING_FIELDS) {
      const column = at[field];
      if (column === undefined) continue;
      cells[field] = cellIn(field, record[column] ?? "", decimal);
      if (NUMBERS.has(field)) why ??= wrongSign(field, cells[field], decimal);
    }
    const reading = readingFrom(cells, unit, place);
    if (reading.unit !== undefined && isLengthUnit(reading.unit)) reading.uncertainty ??= uncertainty;
    readings.push(why === undefined ? reading : { ...reading, value: null, fault: why });
  });
  return { name, readings, notes: [], ...(unread === undefined ? {} : { unread }) };
}

const cellIn = (field: ReadingField, text: string, decimal: DecimalSign): Cell => (NUMBERS.has(field) ? cellOf(text, decimal) : text.trim());
