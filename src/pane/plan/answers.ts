import { cellsOf, type WorkbookCells } from "../../formula/workbook-cells.ts";
import { SheetLabels } from "../../layout/labels.ts";
import { isArea, type PlanInput } from "../../plan/inputs.ts";
import type { RingInput, RingInputs } from "../../plan/rings.ts";
import { type CellArea, cellName } from "../../workbook/address.ts";
import { type ParsedInput, readArea, readGiven } from "../parts/range-text.ts";
import { type Form, type FormField, isAsked } from "./fields.ts";

/** Which ring goes with which bore, target and name, as a sheet's own arithmetic pairs a range with a larger one. */
export function ringInputs(answers: Answers): RingInputs {
  const measured = answers.area("measured");
  if (!measured) return { rings: [] };
  const picks = RING_KEYS.flatMap((key): [RingKey, Pick][] => {
    const wanted = answers.given(key);
    if (Array.isArray(wanted)) answers.refuse(key, "one number is wanted here, or cells");
    if (wanted === null || wanted === "") return [];
    return [[key, isArea(wanted) ? pairing(answers, key, wanted, measured, key === "bore") : () => wanted]];
  });
  const namesAt = answers.area("names");
  const nameAt = namesAt && pairing(answers, "names", namesAt, measured, false);
  const own = namesAt ? undefined : answers.namesBeside(measured);
  const rings = [...cellsOf(measured)].map((cell, at): RingInput => {
    const ring = { ...cell, rows: 1, columns: 1 };
    if (own) return { name: own[at]!, measured: ring, ...Object.fromEntries(picks.map(([key, pick]) => [key, pick(ring)])) };
    const named = nameAt?.(ring);
    const text = isArea(named ?? null) ? String(answers.book.value(named as CellArea) ?? "").trim() : "";
    // Rings of one cylinder that share its name are told apart by their cells.
    const isShared = namesAt !== undefined && namesAt.rows * namesAt.columns < measured.rows * measured.columns;
    const name = text === "" ? cellName(ring) : isShared ? `${text}, ${cellName(ring)}` : text;
    return { name, measured: ring, ...Object.fromEntries(picks.map(([key, pick]) => [key, pick(ring)])) };
  });
  return { rings, perBore: answers.given("perBore") };
}

/** What a ring's gap may be told by. */
const RING_KEYS = ["bore", "target", "least", "most"] as const satisfies readonly (keyof RingInput)[];
type RingKey = (typeof RING_KEYS)[number];

type Pick = (ring: CellArea) => PlanInput;

function pairing(answers: Answers, key: string, from: CellArea, measured: CellArea, mayBeReadings: boolean): Pick {
  const fits = (a: number, b: number) => a === 1 || a === b;
  const at = (ring: CellArea) => ({
    row: from.row + (from.rows === 1 ? 0 : ring.row - measured.row),
    column: from.column + (from.columns === 1 ? 0 : ring.column - measured.column),
  });
  // Two or more readings of each bore stand in its row.
  if (mayBeReadings && from.columns > 1 && from.columns !== measured.columns && fits(from.rows, measured.rows))
    return (ring) => ({ ...from, row: at(ring).row, rows: 1 });
  if (!fits(from.rows, measured.rows) || !fits(from.columns, measured.columns))
    answers.refuse(key, `this is ${sizeOf(from)} and the gaps are ${sizeOf(measured)}: give one for all, one for each row, or one for each gap`);
  return (ring) => ({ sheet: from.sheet, ...at(ring), rows: 1, columns: 1 });
}

const sizeOf = ({ rows, columns }: CellArea): string => `${rows} down and ${columns} across`;

/** The answers of a form, read against the workbook. What cannot be read is collected, a sentence for each field. */
export class Answers {
  readonly troubles: Record<string, string> = {};
  readonly #asked: ReadonlySet<string>;
  #labels: SheetLabels | undefined;

  constructor(
    readonly book: WorkbookCells,
    readonly form: Form,
    fields: readonly FormField[],
  ) {
    const asked = fields.filter((field) => isAsked(field, form));
    this.#asked = new Set(asked.map(({ key }) => key));
    for (const field of asked) if (field.isNeeded && !form[field.key]?.trim()) this.troubles[field.key] = "this is needed for the plan";
  }

  given(key: string): PlanInput {
    return this.#take(key, readGiven(this.#text(key), this.book), null);
  }

  /** The ranges of a field, one a line. */
  areas(key: string): CellArea[] {
    const lines = this.#text(key)
      .split(/[\n;]/)
      .filter((line) => line.trim() !== "");
    return lines.flatMap((line) => this.#take(key, wrapped(readArea(line, this.book)), []));
  }

  /** One range, where several would not be understood. */
  area(key: string): CellArea | undefined {
    const areas = this.areas(key);
    if (areas.length > 1) this.troubles[key] ??= "one range is wanted here, and there are several lines";
    return areas[0];
  }

  /**
   * What the sheet calls the parts of a range: the words in the cells that are said to name them, in their order, of which
   * several in a row name one part of a column; where that field is left blank, what stands beside them.
   */
  names(key: string, of: CellArea | null | undefined, isByRow = false): string[] | undefined {
    const area = this.areas(key)[0];
    if (!area) return of ? this.namesBeside(of, isByRow) : undefined;
    const textIn = (cells: CellArea) => [...cellsOf(cells)].map((cell) => String(this.book.value(cell) ?? "").trim() || cellName(cell));
    const isOneARow = of && area.columns > 1 && area.rows === of.rows && (isByRow || of.columns === 1);
    return isOneARow ? rowsOfArea(area).map((row) => textIn(row).join(", ")) : textIn(area);
  }

  /** Cylinder and valve, or bore, as the words at the head of each row say; with the heading where several stand in a row. Nothing where that tells them not apart. */
  namesBeside(area: CellArea, isByRow = false): string[] | undefined {
    this.#labels ??= new SheetLabels(this.book);
    const labels = this.#labels;
    const names = isByRow || area.columns === 1 ? rowsOfArea(area).map((row) => labels.rowOf(row)) : [...cellsOf(area)].map((cell) => labels.of(cell));
    return names.every((name) => name !== "") && new Set(names).size === names.length ? names : undefined;
  }

  refuse(key: string, sentence: string): void {
    this.troubles[key] ??= sentence;
  }

  /** What stands in a field that is not asked counts for nothing. */
  #text(key: string): string {
    return this.#asked.has(key) ? (this.form[key] ?? "") : "";
  }

  #take<T>(key: string, read: ParsedInput<T>, otherwise: T): T {
    if ("given" in read) return read.given;
    this.refuse(key, read.sentence);
    return otherwise;
  }
}

const wrapped = (read: ParsedInput<CellArea>): ParsedInput<CellArea[]> => ("given" in read ? { given: [read.given] } : read);

/** Each row of a range as a range of its own. */
export const rowsOfArea = (area: CellArea): CellArea[] => Array.from({ length: area.rows }, (_, r) => ({ ...area, row: area.row + r, rows: 1 }));
