import { parse } from "csv-parse/sync";
import type { Cell } from "../../core/cell.ts";
import type { Fields } from "../check/tables.ts";
import { isLengthUnit } from "../check/units.ts";
import { readHead, type Wanted } from "../csv/head.ts";
import { cellOf, type DecimalSign, wrongSign } from "../csv/numbers.ts";
import { misfitOf, recordsFrom } from "../csv/records.ts";
import { canBeCompared, FIELDS, type Field } from "../headers.ts";
import type { Reading, ReadingSet } from "./reading.ts";
import { readingFrom } from "./table.ts";

const NUMBERS = new Set<Field>(["value", "lower", "upper", "uncertainty", "hours"]);

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
  const head = await readHead(input, undefined, toBeCompared);
  if ("unread" in head) return { name, readings: [], notes: [], unread: head.unread };
  const readings: Reading[] = [];
  const { at, unit } = head;
  const { options, brokenOff } = recordsFrom(head.delimiter, head.nextLine, (record, line) => {
    if (record.every((field) => field.trim() === "")) return;
    const place = { cell: { sheet: name, row: line - 1, column: at.value! }, line };
    const cells: Fields = {};
    let why = misfitOf(record, head);
    for (const field of FIELDS) {
      const column = at[field];
      if (column === undefined) continue;
      cells[field] = cellIn(field, record[column] ?? "", decimal);
      if (NUMBERS.has(field)) why ??= wrongSign(field, cells[field], decimal);
    }
    const reading = readingFrom(cells, unit, place);
    if (reading.unit !== undefined && isLengthUnit(reading.unit)) reading.uncertainty ??= uncertainty;
    readings.push(why === undefined ? reading : { ...reading, value: null, fault: why });
  });
  const texts: string[] = [];
  for await (const text of head.rest) texts.push(text);
  const text = texts.join("");
  try {
    parse(text, options);
  } catch (error) {
    return { name, readings, notes: [], unread: brokenOff(error, text) };
  }
  return { name, readings, notes: [] };
}

const cellIn = (field: Field, text: string, decimal: DecimalSign): Cell => (NUMBERS.has(field) ? cellOf(text, decimal) : text.trim());
