import { LENGTH_UNIT_ENTRY } from "../vocabulary/units.ts";
import type { SheetSnapshot, WorkbookSnapshot } from "../workbook/port.ts";
import type { SheetSpec, TableSpec } from "../workbook/sheet-spec.ts";
import { buildSheetSpec } from "./build-sheet.ts";
import { type BuildSheetChoices, readChoices } from "./choices.ts";
import type { BuildSheet, PlanSource } from "./model.ts";
import { SHEET_WORDS, SHEETS } from "./sheets.ts";

/** The build sheet that a workbook was set up with, by its sheet Engine and by which sheets are there; null where that says none. */
export function buildSheetIn(snapshot: WorkbookSnapshot): { choices: BuildSheetChoices; book: BuildSheet } | null {
  const read = readChoices(choicesOf(snapshot));
  return "sentences" in read ? null : { choices: read.choices, book: buildSheetSpec(read.choices) };
}

/** What the sheet Engine says of the engine, and which sheets are there. */
function choicesOf({ sheets }: WorkbookSnapshot): object {
  const engine = sheets.find(({ name }) => name === "Engine");
  const entries = new Map(engine?.values.map((line, r) => [String(line[0 - engine.column] ?? ""), engine.values[r]![1 - engine.column]]) ?? []);
  const given = {
    cylinders: entries.get("Cylinders"),
    heights: entries.get("Heights of a bore"),
    axes: entries.get("Axes of a bore"),
    valves: entries.get("Valves of a cylinder"),
    unit: entries.get(LENGTH_UNIT_ENTRY),
  };
  const names = new Set(sheets.map(({ name }) => name));
  return {
    ...Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined && value !== null && value !== "")),
    secondReadings: names.has("Second readings"),
    without: SHEET_WORDS.filter((word) => !names.has(SHEETS[word])),
  };
}

export const snapshotValue = ({ row, column, values }: SheetSnapshot, r: number, c: number) => values[r - row]?.[c - column] ?? null;

export const hasHeadings = (there: SheetSnapshot, { row, column, headings }: TableSpec): boolean =>
  headings.every((heading, i) => snapshotValue(there, row, column + i) === heading);

/** What the workbook holds for plans by a function: of tables that stand as they were set up, headings and names of rows. */
export function planSourcesIn(snapshot: WorkbookSnapshot, of: string): PlanSource[] {
  const found = buildSheetIn(snapshot);
  if (!found) return [];
  const { sheets, plans = [] } = found.book;
  const isThere = (name: string): boolean => {
    const sheet = sheets.find(({ tables }) => tables.some((table) => table.name === name));
    const there = snapshot.sheets.find((one) => one.name === sheet?.name);
    const table = sheet?.tables.find((one) => one.name === name);
    return !!sheet && !!there && !!table && hasHeadings(there, table) && hasLabels(there, sheet, table);
  };
  // A person reads them, and nothing is filled down from them.
  const plain = (inputs: PlanSource["inputs"]) => Object.fromEntries(Object.entries(inputs).map(([key, text]) => [key, text.replaceAll("$", "")]));
  return plans.flatMap((source) => (source.of === of && source.tables.every(isThere) ? [{ ...source, inputs: plain(source.inputs) }] : []));
}

/** A row that was put in or taken out would move what is asked for. */
const hasLabels = (there: SheetSnapshot, { cells }: SheetSpec, { row, rows, column, headings }: TableSpec): boolean =>
  cells
    .filter((cell) => cell.style === "label" && cell.row > row && cell.row <= row + rows && cell.column >= column && cell.column < column + headings.length)
    .every((cell) => cell.content === "" || snapshotValue(there, cell.row, cell.column) === cell.content);
