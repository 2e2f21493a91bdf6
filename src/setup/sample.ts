import { buildSheetSpec } from "./build-sheet.ts";
import type { BuildSheet } from "./model.ts";

/** Typed into a column of a table, from its first row on. */
type Column = readonly (number | null)[];

// Engine A of an invented hire-boat yard. All numbers are invented: cylinder 2 is worn, and cylinder 3 stands on a limit.
const BORES: Readonly<Record<string, Column>> = {
  "Top thrust": [73.025, 73.06, 73.06],
  "Top pin": [73.02, 73.035, 73.05],
  "Middle thrust": [73.02, 73.05, 73.05],
  "Middle pin": [73.015, 73.03, 73.05],
  "Bottom thrust": [73.015, 73.035, 73.04],
  "Bottom pin": [73.015, 73.025, 73.04],
};
const COLUMNS: Filling["columns"] = {
  BoreReadings: BORES,
  PistonReadings: { Skirt: [72.985, 72.98, 73] },
  RingReadings: { "End gap": [0.3, 0.35, 0.3, 0.55, 0.6, 0.4, 0.32, 0.22, 0.35] },
};

const ENTRIES: Filling["entries"] = { Owner: "Hire-boat yard (invented)", Engine: "Engine A", "Standard bore": 73, Stroke: 72 };

const LIMITS: Filling["limits"] = {
  Taper: [null, 0.02],
  "Out-of-round": [null, 0.02],
  "Bore wear": [null, 0.08],
  "Piston clearance": [0.02, 0.05],
  "Ring end gap, top": [0.25, 0.5],
  "Ring end gap, second": [0.25, 0.5],
  "Ring end gap, oil": [0.2, 0.5],
};

const SOURCE = "invented for this sample";

/** A build sheet with invented readings and limits, to look round in before one's own. */
export function sampleBuildSheet(): BuildSheet {
  const book = buildSheetSpec({ cylinders: 3, heights: 3, axes: 2, valves: 2, unit: "mm", secondReadings: false, without: [] });
  fillBuildSheet(book, { columns: COLUMNS, entries: ENTRIES, limits: LIMITS });
  return book;
}

/** What somebody might type into a build sheet. */
export interface Filling {
  /** By table and heading, from the first row on. */
  columns: Readonly<Record<string, Readonly<Record<string, Column>>>>;
  entries: Readonly<Record<string, number | string>>;
  limits: Readonly<Record<string, readonly [lower: number | null, upper: number | null]>>;
}

export function fillBuildSheet(book: BuildSheet, { columns: tables, entries, limits }: Filling): void {
  for (const [table, columns] of Object.entries(tables))
    for (const [heading, contents] of Object.entries(columns)) for (const [index, content] of contents.entries()) type(book, table, heading, index, content);
  for (const [item, entry] of Object.entries(entries)) type(book, "EngineData", "Entry", rowOf(book, "EngineData", item), entry);
  for (const [characteristic, [lower, upper]] of Object.entries(limits)) {
    const row = rowOf(book, "LimitList", characteristic);
    type(book, "LimitList", "Lower", row, lower);
    type(book, "LimitList", "Upper", row, upper);
    type(book, "LimitList", "Source", row, SOURCE);
  }
}

function tableIn({ sheets }: BuildSheet, name: string) {
  for (const { tables, cells } of sheets) {
    const table = tables.find((one) => one.name === name);
    if (table) return { table, cells };
  }
  throw new Error(`there is no table ${name}`);
}

function type(book: BuildSheet, name: string, heading: string, index: number, content: number | string | null): void {
  if (content === null) return;
  const { table, cells } = tableIn(book, name);
  const place = { row: table.row + 1 + index, column: table.column + table.headings.indexOf(heading) };
  const cell = cells.find(({ row, column }) => row === place.row && column === place.column);
  if (!cell) throw new Error(`${name} has no cell for ${heading}, row ${index + 1}`);
  cell.content = content;
}

/** The row of a table whose first cell holds this text. */
function rowOf(book: BuildSheet, name: string, first: string): number {
  const { table, cells } = tableIn(book, name);
  const cell = cells.find(({ row, column, content }) => column === table.column && row > table.row && content === first);
  if (!cell) throw new Error(`${name} has no row ${first}`);
  return cell.row - table.row - 1;
}
