import { type Cell, isBlank } from "../core/cell.ts";
import { unitWords } from "../core/words.ts";
import { type Columns, type ComparisonField, isSource } from "../vocabulary/headings.ts";
import { limitsInText } from "../vocabulary/limit-text.ts";
import { measuredBy, ownCharacteristic } from "../vocabulary/subjects.ts";
import { type ColumnFields, cellText, type TableLine, tableLines } from "../vocabulary/table-lines.ts";
import { unitIn, unitOf } from "../vocabulary/units.ts";
import type { CellAddress } from "../workbook/address.ts";
import type { Edit, SheetSnapshot } from "../workbook/port.ts";
import type { CellSpec, SheetSpec } from "../workbook/sheet-spec.ts";
import { LIMITS_TABLE } from "./limit-and-summary-sheets.ts";
import type { BuildSheet } from "./model.ts";

/** The limits of one characteristic as a shop keeps them. */
interface BookLimit {
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
function* limitLines(sheet: Pick<SheetSnapshot, "values">): Generator<TableLine> {
  const goesOn = (cells: ColumnFields) => !isBlank(cells.characteristic) && !sidesOf(cells.lower ?? null, cells.upper ?? null).includes(undefined);
  for (const line of tableLines(sheet, isOfLimits, goesOn, LIMIT_FIELDS)) if (cellText(line.cells.characteristic).trim() !== "") yield line;
}

/** The unit of a row's limits, and the column of sources. */
function besideLimits(
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
const keyOf = (text: string): string => ownCharacteristic(measuredBy(text, ""));

const sourceText = (file: string, model: string, source: string): string => `Limits book ${file}, ${model}${source ? `: ${source}` : ""}`;

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
const otherUnit = (unit: string | undefined, wanted: string | undefined): string =>
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
    const own = this.#rows.find((row) => keyOf(this.#content(row, "Characteristic")) === keyOf(characteristic));
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

/** A limit that a workbook already has otherwise than the limits book. */
export interface OtherLimit {
  characteristic: string;
  /** Where its limits stand: the row's first cell of them. */
  cell: CellAddress;
  /** What is typed, and what the book says, in words. */
  typed: string;
  inBook: string;
  edits: readonly Edit[];
}

/** What a model's limits come to in a workbook that is set up already. */
export interface LimitsForWorkbook {
  /** Of rows without a limit so far. */
  edits: Edit[];
  copied: number;
  /** Rows that say the same already. */
  same: number;
  /** Left as they are typed, unless somebody says otherwise. */
  others: OtherLimit[];
  notes: string[];
}

/** A model's limits for the tables of limits of a workbook, each with its source; nothing that is typed is among the edits. */
export function limitsFor(sheets: readonly SheetSnapshot[], { name, limits, refused }: LimitsModel, file: string): LimitsForWorkbook {
  const rows = sheets.flatMap((sheet) => [...limitLines(sheet)].map((line) => ({ sheet, line, key: keyOf(cellText(line.cells.characteristic)) })));
  const found: LimitsForWorkbook = { edits: [], copied: 0, same: 0, others: [], notes: [...refused] };
  const seen = new Set<string>();
  if (rows.length === 0) found.notes.push("this workbook has no table of limits: it needs the headings Characteristic, Lower, Upper and Unit");
  for (const limit of rows.length === 0 ? [] : limits) {
    const key = keyOf(limit.characteristic);
    const own = rows.filter((row) => row.key === key);
    if (seen.has(key)) found.notes.push(`${limit.characteristic}: the limits book has it twice, and the first counts`);
    else if (own.length === 0) found.notes.push(`${limit.characteristic}: no limit of this workbook has that name`);
    else for (const { sheet, line } of own) take(found, sheet, line, limit, sourceText(file, name, limit.source));
    seen.add(key);
  }
  return found;
}

function take(found: LimitsForWorkbook, sheet: SheetSnapshot, line: TableLine, limit: BookLimit, source: string): void {
  const { at } = line.columns;
  const { unit, source: sourceAt } = besideLimits(sheet, line);
  if (unit !== limit.unit) {
    found.notes.push(`${limit.characteristic}: ${otherUnit(limit.unit, unit)}`);
    return;
  }
  const oneSide = (["lower", "upper"] as const).find((side) => limit[side] !== null && at[side] === undefined);
  if (oneSide) {
    found.notes.push(`${limit.characteristic}: this workbook has no column for its ${oneSide} limit`);
    return;
  }
  // A distance counts where the book has one and the table a column for it.
  const fields = ["lower", "upper", ...DISTANCES.filter((field) => limit[field] !== null && at[field] !== undefined)] as const;
  const wanted: [column: number | undefined, content: number | string | null][] = [
    ...fields.map((field): [number | undefined, number | null] => [at[field], limit[field]]),
    [sourceAt, source],
  ];
  const edits = wanted.flatMap(([column, content]) =>
    // A side that the book leaves open is emptied where it was typed otherwise.
    column === undefined ? [] : [{ sheet: sheet.name, row: sheet.row + line.row, column: sheet.column + column, cells: [[content ?? ""]] }],
  );
  const typed = fields.map((field) => line.cells[field] ?? null);
  const inBook = fields.map((field) => limit[field]);
  const isFormula = [at.lower, at.upper].some((column) => column !== undefined && sheet.formulas[line.row]?.[column] != null);
  if (typed.every(isBlank) && !isFormula) {
    found.edits.push(...edits.filter(({ cells }) => cells[0]![0] !== ""));
    found.copied++;
  } else if (typed.every((cell, i) => (isBlank(cell) ? null : cell) === inBook[i])) found.same++;
  else {
    const cell = { sheet: sheet.name, row: sheet.row + line.row, column: sheet.column + (at.lower ?? at.upper)! };
    found.others.push({
      characteristic: limit.characteristic,
      cell,
      typed: typed.every(isBlank) ? "a formula that shows nothing" : limitSays(fields, typed),
      inBook: limitSays(fields, inBook),
      edits,
    });
  }
}

/** Beside the limits: how far from one is near it, and the smallest difference that matters. */
const DISTANCES = ["near", "matters"] as const;

/** `0.02 to 0.05`, `at most 0.08, near 0.005`, `at least 9.4, matters 0.1` */
function limitSays(fields: readonly ComparisonField[], cells: readonly Cell[]): string {
  const [low, high, ...distances] = cells.map(cellText);
  const sides = low && high ? `${low} to ${high}` : high ? `at most ${high}` : low ? `at least ${low}` : "no limit";
  return [sides, ...distances.flatMap((text, i) => (text === "" ? [] : [`${fields[i + 2]} ${text}`]))].join(", ");
}
