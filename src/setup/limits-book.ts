import { type Cell, isBlank } from "../core/cell.ts";
import { isSource, readHeadings } from "../vocabulary/headings.ts";
import { limitsInText } from "../vocabulary/limit-text.ts";
import { measuredBy, ownCharacteristic } from "../vocabulary/subjects.ts";
import { unitIn, unitOf } from "../vocabulary/units.ts";
import type { SheetSnapshot } from "../workbook/port.ts";
import type { CellSpec, SheetSpec } from "../workbook/sheet-spec.ts";
import { LIMITS_TABLE } from "./limit-and-summary-sheets.ts";
import type { BuildSheet } from "./model.ts";

/** The limits of one characteristic as a shop keeps them. */
interface BookLimit {
  characteristic: string;
  lower: number | null;
  upper: number | null;
  near: number | null;
  unit: string | undefined;
  source: string;
}

/** The limits of one engine model: a sheet of a shop's limits book, by its name. */
export interface LimitsModel {
  name: string;
  limits: readonly BookLimit[];
  /** Rows that could not be read, each with why. */
  refused: readonly string[];
}

/**
 * Every sheet with a table headed characteristic and lower or upper (and unit, near, source, as on the Limits sheet of a
 * build sheet): a limits book has one for each engine model, and a filled build sheet is one as well. A limit may be in
 * words, `0.25-0.45` or `165 min`.
 */
export function modelsIn(sheets: readonly SheetSnapshot[]): LimitsModel[] {
  return sheets.flatMap((sheet) => {
    const top = sheet.values.findIndex((line) => isHead(line));
    if (top < 0) return [];
    const refused: string[] = [];
    const limits = limitsBelow(sheet, top, refused);
    return limits.length + refused.length > 0 ? [{ name: sheet.name, limits, refused }] : [];
  });
}

const textOfCell = (cell: Cell): string => (typeof cell === "string" || typeof cell === "number" ? String(cell).trim() : "");

function isHead(line: readonly Cell[]): boolean {
  const { at } = readHeadings(line.map((cell) => (typeof cell === "string" ? cell : "")));
  return at.characteristic !== undefined && at.value === undefined && at.before === undefined && (at.lower !== undefined || at.upper !== undefined);
}

function limitsBelow({ name, row, values }: SheetSnapshot, top: number, refused: string[]): BookLimit[] {
  const headings = values[top]!.map((cell) => (typeof cell === "string" ? cell : ""));
  const { at } = readHeadings(headings);
  const source = headings.findIndex(isSource);
  // `Upper (mm)`
  const inHeading = [at.lower, at.upper].map((column) => (column === undefined ? undefined : unitIn(headings[column]!))).find((unit) => unit !== undefined);
  const limits: BookLimit[] = [];
  let isBehindGap = false;
  for (let r = top + 1; r < values.length; r++) {
    const line = values[r]!;
    const cell = (column: number | undefined): Cell => (column === undefined ? null : (line[column] ?? null));
    const characteristic = textOfCell(cell(at.characteristic));
    if (characteristic === "") isBehindGap = true;
    const given = [at.lower, at.upper].map(cell);
    if (characteristic === "" || given.every(isBlank)) continue;
    const [lower, upper] = sidesOf(given[0] ?? null, given[1] ?? null);
    // Behind a gap something else may stand in the same columns.
    if (isBehindGap && (lower === undefined || upper === undefined)) break;
    const near = cell(at.near);
    const place = `${name}, row ${row + r + 1}, ${characteristic}`;
    // What goes into a sheet as text must not become a formula there.
    if (/^[=+\-@]/.test(characteristic)) refused.push(`${place}: this is no name of a characteristic, so it was not copied`);
    else if (lower === undefined || upper === undefined) refused.push(`${place}: its limits are no numbers, so they were not copied`);
    else
      limits.push({
        ...{ characteristic, lower, upper, near: typeof near === "number" ? near : null },
        unit: unitOf(textOfCell(cell(at.unit))) ?? inHeading,
        source: textOfCell(cell(source < 0 ? undefined : source)),
      });
  }
  return limits;
}

/** Lower and upper; `undefined` for one that is neither a number nor a limit in words. */
function sidesOf(lower: Cell, upper: Cell): [number | null | undefined, number | null | undefined] {
  const inWords = [lower, upper].flatMap((cell) => (typeof cell === "string" && !isBlank(cell) ? [limitsInText(cell)] : []));
  if (inWords.includes(undefined)) return [undefined, undefined];
  const side = (cell: Cell, name: "lower" | "upper"): number | null | undefined => {
    if (typeof cell === "number") return cell;
    if (!isBlank(cell) && typeof cell !== "string") return undefined;
    return inWords.find((words) => words?.[name] !== undefined)?.[name] ?? null;
  };
  return [side(lower, "lower"), side(upper, "upper")];
}

/** A characteristic by whatever name: `Top ring end gap` and `Ring end gap, top` are one. */
const keyOf = (text: string): string => ownCharacteristic(measuredBy(text, ""));

/** The build sheet with a model's limits on its Limits sheet, each with its source; and what was not copied, in sentences. */
export function withLimits(book: BuildSheet, { name, limits, refused }: LimitsModel, file: string): { book: BuildSheet; copied: number; notes: string[] } {
  const sheet = book.sheets.find((one) => one.tables.some((table) => table.name === LIMITS_TABLE));
  if (!sheet) return { book, copied: 0, notes: ["the build sheet has no sheet of limits"] };
  const page = new LimitRows(sheet);
  const notes = [...refused];
  let copied = 0;
  for (const limit of limits) {
    const fault = page.put(limit, `Limits book ${file}, ${name}${limit.source ? `: ${limit.source}` : ""}`);
    if (fault) notes.push(`${limit.characteristic}: ${fault}`);
    else copied++;
  }
  const sheets = book.sheets.map((one) => (one === sheet ? { ...sheet, cells: page.cells } : one));
  return { book: { ...book, sheets }, copied, notes };
}

/** The table of limits of a sheet that is to be written. */
class LimitRows {
  readonly cells: CellSpec[];
  readonly #at: (row: number, heading: string) => number;
  readonly #rows: number[];

  constructor({ cells, tables }: SheetSpec) {
    this.cells = [...cells];
    const table = tables.find(({ name }) => name === LIMITS_TABLE)!;
    const places = new Map(cells.map(({ row, column }, index) => [`${row},${column}`, index]));
    this.#rows = Array.from({ length: table.rows }, (_, r) => table.row + 1 + r);
    this.#at = (row, heading) => places.get(`${row},${table.column + table.headings.indexOf(heading)}`)!;
  }

  #content = (row: number, heading: string): string => String(this.cells[this.#at(row, heading)]!.content);

  #type(row: number, heading: string, content: number | string | null): void {
    const at = this.#at(row, heading);
    if (content !== null) this.cells[at] = { ...this.cells[at]!, content };
  }

  /** Types a limit into its row, or into one for limits of the shop's own; or says why not. */
  put({ characteristic, lower, upper, near, unit }: BookLimit, source: string): string | undefined {
    const own = this.#rows.find((row) => keyOf(this.#content(row, "Characteristic")) === keyOf(characteristic));
    const row = own ?? this.#rows.find((one) => this.#content(one, "Characteristic") === "");
    if (row === undefined) return "this build sheet does not judge it, and its rows for limits of your own are full";
    if (this.#content(row, "Lower") !== "" || this.#content(row, "Upper") !== "") return "the limits book has it twice, and the first counts";
    const wanted = unitOf(this.#content(row, "Unit"));
    if (own !== undefined && wanted !== unit)
      return `the limits book ${unit ? `has it in ${unit}` : "names no unit for it"}, and this build sheet has it ${wanted ? `in ${wanted}` : "without one"}`;
    if (own === undefined) {
      this.#type(row, "Characteristic", characteristic);
      this.#type(row, "Unit", unit ?? null);
    }
    this.#type(row, "Lower", lower);
    this.#type(row, "Upper", upper);
    this.#type(row, "Near", near);
    this.#type(row, "Source", source);
    return undefined;
  }
}
