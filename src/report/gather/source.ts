import type { Analysis } from "../../check/analysis.ts";
import type { JudgedRow } from "../../check/finding.ts";
import { type Cell, isBlank, isCellError } from "../../core/cell.ts";
import type { DrawnInputs, DrawnInputsOf } from "../../core/define.ts";
import { numberText, withoutControlCharacters } from "../../drawings/text.ts";
import { CannotTell, evaluateNode } from "../../formula/evaluate.ts";
import type { OwnCall } from "../../formula/own-calls.ts";
import { argumentArea } from "../../formula/precedents.ts";
import { cellsOf, showArea, type WorkbookCells } from "../../formula/workbook-cells.ts";
import type { SheetLabels } from "../../layout/labels.ts";
import { dayOf, dayText } from "../../vocabulary/dates.ts";
import { speaksOfDay } from "../../vocabulary/identity.ts";
import { type QuantityKind, unitIn } from "../../vocabulary/units.ts";
import { type CellAddress, type CellArea, placeName } from "../../workbook/address.ts";

/** A cell as a person reads it; a number under a heading that speaks of a day is that day. */
export function reportText(cell: Cell, heading = ""): string {
  if (isBlank(cell)) return "";
  if (isCellError(cell)) return cell.error;
  if (typeof cell === "boolean") return cell ? "yes" : "no";
  if (typeof cell !== "number") return withoutControlCharacters(String(cell));
  const day = speaksOfDay(heading) ? dayOf(cell) : undefined;
  return day === undefined ? numberText(cell) : dayText(day);
}

/** A number in a cell; anything else is none. */
export const numberIn = (cell: Cell): number | null => (typeof cell === "number" && Number.isFinite(cell) ? cell : null);

/** Names of the rows and columns of a block, from what the sheet calls its cells. */
interface BlockNames {
  /** What all cells have in common: `Engine A, Cylinder 2`. */
  shared: string;
  rows: string[];
  columns: string[];
}

/** Takes names such as `Cylinder 2, top, Thrust` or `Cylinder 2, Top thrust` apart into whose they are, which row and which column. */
export function namesOf(labels: readonly (readonly string[])[]): BlockNames {
  const pieces = labels.map((line) => line.map((label) => label.split(", ").filter(Boolean)));
  const all = pieces.flat();
  const isSingle = all.length <= 1;
  const depth = isSingle ? (all[0]?.length ?? 0) : sharedDepth(all);
  const rest = pieces.map((line) => line.map((own) => wordsIn(own.slice(depth).join(" "))));
  const everywhere = new Set(rest.flat().reduce((left, own) => left.filter((word) => own.includes(word)), rest[0]?.[0] ?? []));
  const columnCount = labels[0]?.length ?? 0;
  const rows = rest.map((line) => wordsOfAll(line, everywhere));
  const columns = Array.from({ length: columnCount }, (_, c) =>
    wordsOfAll(
      rest.map((line) => line[c]!),
      everywhere,
    ),
  );
  return {
    shared: all[0]?.slice(0, depth).join(", ") ?? "",
    rows: labels.length > 1 ? rows : rows.map(() => ""),
    columns: columnCount > 1 ? columns : columns.map(() => ""),
  };
}

function sharedDepth(all: readonly (readonly string[])[]): number {
  const shortest = Math.min(...all.map((own) => own.length));
  let depth = 0;
  while (depth < shortest && all.every((own) => own[depth] === all[0]![depth])) depth++;
  return depth;
}

const wordsIn = (text: string): string[] => text.split(/[\s,]+/).filter(Boolean);

/** Words that stand in all of these, without those that stand everywhere. Compared without regard to capitals. */
function wordsOfAll(lines: readonly (readonly string[])[], everywhere: ReadonlySet<string>): string {
  const [first = [], ...others] = lines;
  return first.filter((word) => !everywhere.has(word) && others.every((own) => own.some((other) => other.toLowerCase() === word.toLowerCase()))).join(" ");
}

/** Names that tell the rows apart, or numbers in their place. */
export function distinct(names: readonly string[], word: string): string[] {
  const isTelling = names.every(Boolean) && new Set(names).size === names.length;
  return isTelling ? [...names] : names.map((_, i) => `${word} ${i + 1}`);
}

/** A workbook that is looked through for something to draw. */
export class Source {
  readonly book: WorkbookCells;
  readonly labels: SheetLabels;
  /** Verdicts by the cell that they are on. */
  readonly #judged = new Map<string, JudgedRow[]>();
  readonly #unitOfLength: string | undefined;
  readonly #drawn = new Set<string>();

  constructor({ book, labels }: Analysis, judged: readonly JudgedRow[], unitOfLength: string | undefined) {
    this.book = book;
    this.labels = labels;
    for (const row of judged) this.#judged.set(placeName(row.cell), [...this.judgedAt(row.cell), row]);
    this.#unitOfLength = unitOfLength;
  }

  judgedAt(cell: CellAddress): readonly JudgedRow[] {
    return this.#judged.get(placeName(cell)) ?? [];
  }

  /** Notes that an area is drawn. */
  draws(area: CellArea): void {
    for (const cell of cellsOf(area)) this.#drawn.add(placeName(cell));
  }

  isDrawn(cell: CellAddress): boolean {
    return this.#drawn.has(placeName(cell));
  }

  /** The range that an argument refers to, by the name of its param. */
  area({ spec, args, context }: OwnCall, name: string): CellArea | undefined {
    return argumentArea(args[spec.inputs.findIndex((input) => input.name === name)], context);
  }

  /** What an argument comes to when it is one cell or one literal; left out or blank, what the function takes then. */
  value({ spec, args, context }: OwnCall, name: string): Cell {
    const index = spec.inputs.findIndex((input) => input.name === name);
    const node = args[index];
    const value = node ? evaluateNode(node, context) : null;
    if (value instanceof CannotTell || Array.isArray(value)) return null;
    return isBlank(value) ? spec.inputs[index]?.param.fallback : value;
  }

  number(call: OwnCall, name: string): number | undefined {
    return numberIn(this.value(call, name)) ?? undefined;
  }

  /** The unit by which the sheet names these cells: in their headings, in its title, or for the whole workbook. */
  unit(area: CellArea, kind: QuantityKind): string | undefined {
    const headings = [this.labels.of(area), this.labels.of({ ...area, row: area.row + area.rows - 1, column: area.column + area.columns - 1 })];
    const page = this.book.sheet(area.sheet);
    const title = page?.values[0]?.find((cell) => typeof cell === "string");
    const note = page?.values[1]?.find((cell) => typeof cell === "string");
    for (const text of [...headings, title, note]) {
      const unit = typeof text === "string" ? unitIn(text, kind) : undefined;
      if (unit !== undefined) return unit;
    }
    return kind === "length" ? this.#unitOfLength : undefined;
  }
}

/** The calls of functions that declare such a drawing. */
export function* drawnAs<K extends DrawnInputs["kind"]>(kind: K, calls: readonly OwnCall[]): Generator<{ call: OwnCall; draws: DrawnInputsOf<K> }> {
  for (const call of calls) if (call.spec.draws?.kind === kind) yield { call, draws: call.spec.draws as DrawnInputsOf<K> };
}

/** `Bores!C4:D6` */
export function placeOf(area: CellArea): string {
  const place = placeName(area);
  return place.slice(0, place.lastIndexOf("!") + 1) + showArea(area);
}

/** Labels of the cells of an area, row by row. */
export const labelsOf = ({ labels }: Source, area: CellArea): string[][] =>
  Array.from({ length: area.rows }, (_, r) =>
    Array.from({ length: area.columns }, (_, c) => labels.of({ sheet: area.sheet, row: area.row + r, column: area.column + c })),
  );
