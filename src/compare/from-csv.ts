import { cellOf, type DecimalSign, wrongSign } from "../check/csv/fields.ts";
import { misfitOf, readHeader, type Wanted } from "../check/csv/header.ts";
import { readRecords } from "../check/csv/records.ts";
import { Scanner } from "../check/csv/scanner.ts";
import type { Cell } from "../core/cell.ts";
import { COMPARISON_FIELDS, type ComparisonField, canBeCompared, holdsBothSides } from "../vocabulary/headings.ts";
import { measuredBy, ownCharacteristic } from "../vocabulary/subjects.ts";
import type { ColumnFields } from "../vocabulary/table-lines.ts";
import { NUMBER_FIELDS, type Reading, type ReadingSet, readingsFrom } from "./readings.ts";
import { fillFromTyped, type TypedSizes } from "./typed-sizes.ts";

const toBeCompared: Wanted = (columns) =>
  canBeCompared(columns)
    ? undefined
    : `no heading for ${columns.at.value === undefined && !holdsBothSides(columns) ? "the value" : "the characteristic or position"}; the table needs value and characteristic, and where known engine, cylinder, position, unit, uncertainty, lower, upper, matters, hours`;

export interface CsvReadingOptions {
  name?: string;
  /** Sign before the decimals. A comma is read only when it is asked for. */
  decimal?: DecimalSign;
  /** Expanded uncertainties U, where the file gives none. */
  uncertainty?: TypedSizes | undefined;
  /** How the file is written, where that is not found out. */
  encoding?: string | undefined;
}

/** Reads one side of a comparison from a file in long form. `unread` says why it, or its rest, could not be read. */
export async function readingsOfCsv(
  input: AsyncIterable<Uint8Array>,
  { name = "", decimal = ".", uncertainty, encoding }: CsvReadingOptions = {},
): Promise<ReadingSet & { unread?: string }> {
  const notes: string[] = [];
  const head = await readHeader(input, { encoding, noted: (sentence) => void notes.push(`${name}: ${sentence}`) }, toBeCompared);
  if ("unread" in head) return { name, readings: [], notes: [], unread: head.unread };
  const readings: Reading[] = [];
  const { at } = head;
  const records = new Scanner(head.delimiter, head.nextLine);
  const unread = await readRecords(head.bytes, records, () => {
    const record = records.texts();
    if (record.every((field) => field.trim() === "")) return;
    const cells: ColumnFields = {};
    let why = misfitOf(record, head);
    for (const field of COMPARISON_FIELDS) {
      const column = at[field];
      if (column === undefined) continue;
      cells[field] = cellIn(field, record[column] ?? "", decimal);
      if (NUMBER_FIELDS.has(field)) why ??= wrongSign(field, cells[field], decimal);
    }
    const { line } = records;
    const found = readingsFrom(head, cells, (field) => ({ cell: { sheet: name, row: line - 1, column: at[field]! }, line }));
    for (const reading of found) readings.push(why === undefined ? reading : { ...reading, value: null, fault: why });
  });
  fillFromTyped(readings, uncertainty);
  return { name, readings, notes, ...(unread === undefined ? {} : { unread }) };
}

const cellIn = (field: ComparisonField, text: string, decimal: DecimalSign): Cell => (NUMBER_FIELDS.has(field) ? cellOf(text, decimal) : text.trim());

const ofMatters: Wanted = ({ at }) =>
  at.characteristic !== undefined && at.matters !== undefined ? undefined : "no headings for the characteristic and the smallest difference that matters";

/** Smallest differences that matter, from a file with a column of characteristics and one of those. */
export async function mattersOfCsv(input: AsyncIterable<Uint8Array>, decimal: DecimalSign): Promise<TypedSizes | { unread: string }> {
  const head = await readHeader(input, {}, ofMatters);
  if ("unread" in head) return head;
  const of = new Map<string, number>();
  const faults: string[] = [];
  const records = new Scanner(head.delimiter, head.nextLine);
  const unread = await readRecords(head.bytes, records, () => {
    const record = records.texts();
    const [name, size] = (["characteristic", "matters"] as const).map((field) => (record[head.at[field]!] ?? "").trim()) as [string, string];
    if (name === "" && size === "") return;
    const value = cellOf(size, decimal);
    if (name === "" || typeof value !== "number" || !(value > 0)) faults.push(`holds in line ${records.line} no characteristic with a number above 0`);
    else of.set(ownCharacteristic(measuredBy(name, "")), value);
  });
  const why = unread ?? faults[0];
  return why === undefined ? { of } : { unread: why };
}
