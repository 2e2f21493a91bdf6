import { type Cell, isBlank } from "../core/cell.ts";
import { unitWords } from "../core/words.ts";
import { type Columns, type ComparisonField, isSource } from "../vocabulary/headings.ts";
import { limitsInText } from "../vocabulary/limit-text.ts";
import { measuredBy, ownCharacteristic } from "../vocabulary/subjects.ts";
import { type ColumnFields, cellText, type TableLine, tableLines } from "../vocabulary/table-lines.ts";
import { unitIn, unitOf } from "../vocabulary/units.ts";
import type { SheetSnapshot } from "../workbook/port.ts";
import type { CellSpec, SheetSpec } from "../workbook/sheet-spec.ts";
import { LIMITS_TABLE } from "./limit-and-summary-sheets.ts";
import type { BuildSheet } from "./model.ts";

/** The limits of one characteristic as a shop keeps them. */
export interface BookLimit {
  characteristic: string;
  lower: number | null;
  upper: number | null;
  near: number | null;
  /** The smallest difference that matters. */
  matters: number | null;
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
 * Every sheet with a table headed characteristic and lower or upper (and unit, near, matters, source, as on the Limits sheet of a
 * build sheet): a limits book has one for each engine model, and a filled build sheet is one as well. A limit may be in
 * words, `0.25-0.45` or `165 min`.
 */
export function modelsIn(sheets: readonly SheetSnapshot[]): LimitsModel[] {
  return sheets.flatMap((sheet) => {
    const refused: string[] = [];
    const limits = [...limitLines(sheet)].flatMap((line) => limitOf(sheet, line, refused) ?? []);
    return limits.length + refused.length > 0 ? [{ name: sheet.name, limits, refused }] : [];
  });
}

const LIMIT_FIELDS = ["characteristic", "lower", "upper", "near", "matters", "unit"] as const satisfies readonly ComparisonField[];

const isOfLimits = ({ at }: Columns): boolean =>
  at.characteristic !== undefined && at.value === undefined && at.before === undefined && (at.lower !== undefined || at.upper !== undefined);

/** The rows of tables of limits that name something. Behind a gap they go on with what has a name and limits that can be read. */
export function* limitLines(sheet: Pick<SheetSnapshot, "values">): Generator<TableLine> {
  const goesOn = (cells: ColumnFields) => !isBlank(cells.characteristic) && !sidesOf(cells.lower ?? null, cells.upper ?? null).includes(undefined);
  for (const line of tableLines(sheet, isOfLimits, goesOn, LIMIT_FIELDS)) if (cellText(line.cells.characteristic).trim() !== "") yield line;
}

/** The unit of a row's limits, and the column of sources. */
export function besideLimits(
  { values }: Pick<SheetSnapshot, "values">,
  { columns: { at }, cells, top }: TableLine,
): { unit: string | undefined; source: number | undefined } {
  const headings = values[top]!.map((cell) => (typeof cell === "string" ? cell : ""));
  const source = headings.findIndex(isSource);
  // `Upper (mm)`
  const inHeading = [at.lower, at.upper].map((column) => (column === undefined ? undefined : unitIn(headings[column]!))).find((unit) => unit !== undefined);
  return { unit: unitOf(cellText(cells.unit)) ?? inHeading, source: source < 0 ? undefined : source };
}

function limitOf(sheet: SheetSnapshot, line: TableLine, refused: string[]): BookLimit | undefined {
  const { name, row, values } = sheet;
  const { cells, row: r } = line;
  if (isBlank(cells.lower) && isBlank(cells.upper)) return undefined;
  const { source, unit } = besideLimits(sheet, line);
  const [lower, upper] = sidesOf(cells.lower ?? null, cells.upper ?? null);
  const characteristic = cellText(cells.characteristic).trim();
  const place = `${name}, row ${row + r + 1}, ${characteristic}`;
  // What goes into a sheet as text must not become a formula there.
  if (/^[=+\-@]/.test(characteristic)) refused.push(`${place}: this is no name of a characteristic, so it was not copied`);
  else if (lower === undefined || upper === undefined) refused.push(`${place}: its limits are no numbers, so they were not copied`);
  else
    return {
      ...{ characteristic, lower, upper, near: numberIn(cells.near), matters: numberIn(cells.matters) },
      unit,
      source: cellText(source === undefined ? null : values[r]![source]).trim(),
    };
  return undefined;
}

const numberIn = (cell: Cell | undefined): number | null => (typeof cell === "number" ? cell : null);

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
export const bookKey = (text: string): string => ownCharacteristic(measuredBy(text, ""));

export const sourceText = (file: string, model: string, source: string): string => `Limits book ${file}, ${model}${source ? `: ${source}` : ""}`;

/** The build sheet with a model's limits on its Limits sheet, each with its source; and what was not copied, in sentences. */
export function withLimits(book: BuildSheet, { name, limits, refused }: LimitsModel, file: string): { book: BuildSheet; copied: number; notes: string[] } {
  const sheet = book.sheets.find((one) => one.tables.some((table) => table.name === LIMITS_TABLE));
  if (!sheet) return { book, copied: 0, notes: ["the build sheet has no sheet of limits"] };
  const page = new LimitRows(sheet);
  const notes = [...refused];
  let copied = 0;
  for (const limit of limits) {
    const fault = page.put(limit, sourceText(file, name, limit.source));
    if (fault) notes.push(`${limit.characteristic}: ${fault}`);
    else copied++;
  }
  const sheets = book.sheets.map((one) => (one === sheet ? { ...sheet, cells: page.cells } : one));
  return { book: { ...book, sheets }, copied, notes };
}

/** Why a limit of one unit does not go where another one counts. */
export const otherUnit = (unit: string | undefined, wanted: string | undefined): string =>
  `the limits book ${unit ? `has it in ${unitWords(unit)}` : "names no unit for it"}, and the sheet has it ${wanted ? `in ${unitWords(wanted)}` : "without one"}`;

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
  put({ characteristic, lower, upper, near, matters, unit }: BookLimit, source: string): string | undefined {
    const own = this.#rows.find((row) => bookKey(this.#content(row, "Characteristic")) === bookKey(characteristic));
    const row = own ?? this.#rows.find((one) => this.#content(one, "Characteristic") === "");
    if (row === undefined) return "this build sheet does not judge it, and its rows for limits of your own are full";
    if (this.#content(row, "Lower") !== "" || this.#content(row, "Upper") !== "") return "the limits book has it twice, and the first counts";
    const wanted = unitOf(this.#content(row, "Unit"));
    if (own !== undefined && wanted !== unit) return otherUnit(unit, wanted);
    if (own === undefined) {
      this.#type(row, "Characteristic", characteristic);
      this.#type(row, "Unit", unit ?? null);
    }
    this.#type(row, "Lower", lower);
    this.#type(row, "Upper", upper);
    this.#type(row, "Near", near);
    this.#type(row, "Matters", matters);
    this.#type(row, "Source", source);
    return undefined;
  }
}
