import { buildSheetIn, hasHeadings, snapshotValue } from "../../setup/found.ts";
import { SHEETS } from "../../setup/sheets.ts";
import type { CellAddress, CellArea } from "../../workbook/address.ts";
import { cellName } from "../../workbook/address.ts";
import type { SheetSnapshot, WorkbookSnapshot } from "../../workbook/port.ts";
import type { Rule, SheetSpec, TableSpec } from "../../workbook/sheet-spec.ts";

/** One cell that a reading goes into. */
export interface Place {
  cell: CellAddress;
  /** `Cylinder 1, Top thrust` */
  name: string;
  /** Readings with the same words here are alike. */
  like: string;
  unit: string;
  /** The least that may be typed; 0 itself only where it may be read. */
  least: number;
  allowsZero: boolean;
}

/** Places that are measured together, in their order. */
export interface PlaceGroup {
  id: string;
  title: string;
  places: readonly Place[];
  /** For a second person, who is shown nothing. */
  isSecond: boolean;
}

/** Sheets on which something is measured; the others hold what is typed from papers. */
const NOT_MEASURED = new Set<string>(["Engine", "Limits", "Both readings", "Summary", SHEETS["run-in"], SHEETS.torques, SHEETS.parts, SHEETS.notes]);

const NUMBERS: ReadonlySet<Rule["kind"]> = new Set(["above zero", "at least zero", "number"]);

/** Groups of places on the sheets of Set up, as far as these still are as they were set up. */
export function groupsIn(snapshot: WorkbookSnapshot): PlaceGroup[] {
  const found = buildSheetIn(snapshot);
  if (!found) return [];
  const { unit } = found.choices;
  return found.book.sheets.flatMap((sheet) => {
    const there = snapshot.sheets.find(({ name }) => name === sheet.name);
    if (!there || NOT_MEASURED.has(sheet.name)) return [];
    return sheet.tables.filter((table) => hasHeadings(there, table)).flatMap((table) => groupsOf(sheet, table, there, unit));
  });
}

const formulaAt = ({ row, column, formulas }: SheetSnapshot, r: number, c: number) => formulas[r - row]?.[c - column] ?? null;

/** The columns of a table that take numbers: bores one after the other, other columns one by one, as one gauge is set. */
function groupsOf(sheet: SheetSpec, table: TableSpec, there: SheetSnapshot, unit: string): PlaceGroup[] {
  const ruleAt = (row: number, column: number) => sheet.validations.find(({ area }) => isIn(area, row, column))?.rule.kind;
  const columns = table.headings.flatMap((heading, i) => {
    const column = table.column + i;
    const kind = ruleAt(table.row + 1, column);
    const isTyped = sheet.cells.some((cell) => cell.row === table.row + 1 && cell.column === column && cell.style === "typed");
    return kind && isTyped && NUMBERS.has(kind) ? [{ heading, column, kind }] : [];
  });
  const placesOf = (own: typeof columns, row: number): Place[] =>
    own
      .filter(({ column }) => formulaAt(there, row, column) === null && typeof snapshotValue(there, row, column) !== "string")
      .map(({ heading, column, kind }) => ({
        cell: { sheet: sheet.name, row, column },
        name: [...namesOf(sheet, table, row), heading].join(", "),
        like: sheet.name === "Bores" || sheet.name === "Second readings" ? table.name : `${table.name} ${heading}`,
        // Only lengths are named: of other quantities the sheet's own words say the unit.
        unit: isLength(sheet, heading) ? unit : "",
        least: kind === "number" ? Number.NEGATIVE_INFINITY : 0,
        allowsZero: kind !== "above zero",
      }));
  const rows = Array.from({ length: table.rows }, (_, i) => table.row + 1 + i);
  const isSecond = sheet.name === "Second readings";
  const group = (title: string, places: Place[]): PlaceGroup[] => (places.length ? [{ id: `${sheet.name}!${title}`, title, places, isSecond }] : []);
  if (sheet.name === "Bores")
    return group(
      "Bores",
      rows.flatMap((row) => placesOf(columns, row)),
    );
  return columns.flatMap((column) =>
    group(
      isSecond ? `Second readings: ${table.name.replace("Second", "").toLowerCase()}` : `${sheet.name}: ${column.heading}`,
      rows.flatMap((row) => placesOf([column], row)),
    ),
  );
}

const isLength = (sheet: SheetSpec, heading: string): boolean =>
  !["Volumes", "Tests"].includes(sheet.name) && !/\b(?:mass|force|rate|angle|places)\b/i.test(heading);

/** What a row is about: its labels, numbers with their heading. */
const namesOf = (sheet: SheetSpec, { row: top, column: left, headings }: TableSpec, row: number): string[] =>
  headings.flatMap((heading, i) => {
    const label = sheet.cells.find((cell) => cell.row === row && cell.column === left + i && cell.style === "label" && row > top)?.content;
    if (label === undefined || label === "") return [];
    return [typeof label === "number" ? `${heading} ${label}` : label];
  });

const isIn = ({ row, column, rows, columns }: SheetSpec["validations"][number]["area"], r: number, c: number): boolean =>
  r >= row && r < row + rows && c >= column && c < column + columns;

/** Places of cells that somebody has selected on a sheet of the shop's own: those without a formula and without text, row by row. */
export function selectedGroup(snapshot: WorkbookSnapshot, { sheet, row, column, rows, columns }: CellArea): PlaceGroup | { sentence: string } {
  const there = snapshot.sheets.find(({ name }) => name === sheet);
  const cells = Array.from({ length: rows * columns }, (_, i) => ({ sheet, row: row + Math.floor(i / columns), column: column + (i % columns) }));
  const free = cells.filter(
    (cell) => !there || (formulaAt(there, cell.row, cell.column) === null && typeof snapshotValue(there, cell.row, cell.column) !== "string"),
  );
  if (free.length === 0) return { sentence: "The cells that are selected hold formulas or text alone: select those that readings go into." };
  if (free.length > MOST_SELECTED) return { sentence: `${free.length} cells are selected: at most ${MOST_SELECTED} can be.` };
  const heading = (cell: CellAddress): string[] => {
    for (let r = row - 1; there && r >= Math.max(0, row - 4); r--) {
      const value = snapshotValue(there, r, cell.column);
      if (typeof value === "string" && value.trim() !== "") return [value.trim()];
    }
    return [];
  };
  const label = (cell: CellAddress): string[] => {
    for (let c = column - 1; there && c >= Math.max(0, column - 4); c--) {
      const value = snapshotValue(there, cell.row, c);
      if (value !== null && value !== "" && typeof value !== "object") return [String(value)];
    }
    return [];
  };
  const places = free.map((cell): Place => {
    const words = [...label(cell), ...heading(cell)];
    return { cell, name: words.length ? words.join(", ") : cellName(cell), like: "selected", unit: "", least: Number.NEGATIVE_INFINITY, allowsZero: true };
  });
  return { id: "selected", title: `${sheet}!${cellName({ row, column })}`, places, isSecond: false };
}

const MOST_SELECTED = 500;

/** What the places hold. */
export function heldIn(snapshot: WorkbookSnapshot, places: readonly Place[]): (number | null)[] {
  const sheets = new Map(snapshot.sheets.map((sheet) => [sheet.name, sheet]));
  return places.map(({ cell }) => {
    const sheet = sheets.get(cell.sheet);
    const value = sheet && snapshotValue(sheet, cell.row, cell.column);
    return typeof value === "number" ? value : null;
  });
}
