import { roughCount } from "../../core/number-text.ts";
import { type CellPosition, cellName, keyOf, type Rectangle } from "../../workbook/address.ts";
import { UnreadableFile } from "../file-limits.ts";
import { formulaAt, fromStoredFormula, relativeFormula } from "../formula-text.ts";
import type { CellFile } from "../model.ts";
import { rectangleIn } from "../model.ts";

/** A formula as its element has it (ECMA-376 part 1, 18.3.1.40). */
export interface StoredFormula {
  text: string;
  kind: string;
  ref: string | undefined;
  /** The group of a shared formula. */
  group: string | undefined;
}

type Formula = Pick<CellFile, "formula" | "array" | "beyond">;

/** The formulas of one sheet: shared ones are written out for each cell, array formulas keep their reach. */
export class CellFormulas {
  readonly #part: string;
  /** By group: the formula of its first cell, counted from there, once a second cell has asked for it. */
  readonly #shared = new Map<string, { text: string; at: string; relative?: string }>();
  readonly #arrays: { anchor: CellPosition; area: Rectangle }[] = [];
  readonly #mostFilled: number;
  #filled = 0;

  constructor(part: string, mostFilled: number) {
    this.#part = part;
    this.#mostFilled = mostFilled;
  }

  /** What a cell's formula comes to, or `null` when its element says nothing. */
  of(stored: StoredFormula, place: CellPosition, grows: boolean): Formula | null {
    if (stored.kind === "shared") return this.#ofGroup(stored, place);
    if (stored.kind === "dataTable") return { beyond: "is part of a what-if table, which is not calculated here" };
    const text = stored.text.trim();
    if (text === "") return null;
    const formula = fromStoredFormula(text);
    if (stored.kind !== "array") return { formula };
    const area = rectangleIn(stored.ref ?? cellName(place), this.#part);
    const { rows, columns } = area;
    this.#filled += rows * columns;
    if (this.#filled > this.#mostFilled) throw new UnreadableFile(`has array formulas that fill more than ${roughCount(this.#mostFilled)} cells`);
    if (rows * columns > 1) this.#arrays.push({ anchor: place, area });
    return { formula, array: { rows, columns, grows } };
  }

  /** The cells that array formulas filled: left there by the last calculation, not typed. */
  filled(): Set<number> {
    const keys = new Set<number>();
    for (const { anchor, area } of this.#arrays) {
      for (let row = area.row; row < area.row + area.rows; row++) {
        for (let column = area.column; column < area.column + area.columns; column++)
          if (row !== anchor.row || column !== anchor.column) keys.add(keyOf({ row, column }));
      }
    }
    return keys;
  }

  #ofGroup({ text, group = "" }: StoredFormula, place: CellPosition): Formula {
    const at = cellName(place);
    if (text.trim() !== "") {
      const formula = fromStoredFormula(text.trim());
      if (!this.#shared.has(group)) this.#shared.set(group, { text: formula, at });
      return { formula };
    }
    const first = this.#shared.get(group);
    if (!first) return { beyond: "shares a formula that is missing in the file" };
    first.relative ??= relativeFormula(first.text, first.at);
    return { formula: formulaAt(first.relative, at) };
  }
}
