import type { Analysis } from "../../check/analysis.ts";
import type { JudgedRow } from "../../check/finding.ts";
import type { Cell } from "../../core/cell.ts";
import type { DrawnInputs, DrawnInputsOf } from "../../core/define.ts";
import { CannotTell, evaluateNode } from "../../formula/evaluate.ts";
import type { OwnCall } from "../../formula/own-calls.ts";
import { argumentArea } from "../../formula/precedents.ts";
import { type Area, cellsOf, showArea, type WorkbookCells } from "../../formula/workbook-cells.ts";
import type { SheetLabels } from "../../layout/labels.ts";
import { type QuantityKind, unitIn } from "../../vocabulary/units.ts";
import { type CellAddress, placeName } from "../../workbook/address.ts";
import { numberIn } from "./cells.ts";

/** A workbook that is looked through for something to draw. */
export class Source {
  readonly book: WorkbookCells;
  readonly labels: SheetLabels;
  /** Verdicts by the cell that they are on. */
  readonly #judged: ReadonlyMap<string, JudgedRow>;
  readonly #unitOfLength: string | undefined;
  readonly #drawn = new Set<string>();

  constructor({ book, labels }: Analysis, judged: readonly JudgedRow[], unitOfLength: string | undefined) {
    this.book = book;
    this.labels = labels;
    this.#judged = new Map(judged.map((row) => [placeName(row.cell), row]));
    this.#unitOfLength = unitOfLength;
  }

  judgedAt(cell: CellAddress): JudgedRow | undefined {
    return this.#judged.get(placeName(cell));
  }

  /** Notes that an area is drawn. */
  draws(area: Area): void {
    for (const cell of cellsOf(area)) this.#drawn.add(placeName(cell));
  }

  isDrawn(cell: CellAddress): boolean {
    return this.#drawn.has(placeName(cell));
  }

  /** The range that an argument refers to, by the name of its param. */
  area({ spec, args, context }: OwnCall, name: string): Area | undefined {
    return argumentArea(args[spec.inputs.findIndex((input) => input.name === name)], context);
  }

  /** What an argument comes to when it is one cell or one literal. */
  value({ spec, args, context }: OwnCall, name: string): Cell {
    const node = args[spec.inputs.findIndex((input) => input.name === name)];
    const value = node ? evaluateNode(node, context) : null;
    return value instanceof CannotTell || Array.isArray(value) ? null : value;
  }

  number(call: OwnCall, name: string): number | undefined {
    return numberIn(this.value(call, name)) ?? undefined;
  }

  /** The unit by which the sheet names these cells: in their headings, in its title, or for the whole workbook. */
  unit(area: Area, kind: QuantityKind): string | undefined {
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
export function placeOf(area: Area): string {
  const place = placeName(area);
  return place.slice(0, place.lastIndexOf("!") + 1) + showArea(area);
}

/** Labels of the cells of an area, row by row. */
export const labelsOf = ({ labels }: Source, area: Area): string[][] =>
  Array.from({ length: area.rows }, (_, r) =>
    Array.from({ length: area.columns }, (_, c) => labels.of({ sheet: area.sheet, row: area.row + r, column: area.column + c })),
  );
