import { shapeOf } from "../formula/template.ts";
import type { Box } from "../workbook/address.ts";
import type { CellFile, WorkbookFile } from "../xlsx/model.ts";
import { contentOf, type Refused } from "./contents.ts";
import { signatures } from "./grid-model.ts";
import type { Grids } from "./grids.ts";
import type { Area } from "./references.ts";
import { type Compiled, Compiler, NeedsModel, type Reader } from "./template-cache.ts";
import { Translator } from "./translate.ts";

/** A formula ready to run: what it is compiled to, and what it refers to where it stands. */
export interface Runnable {
  compiled: Compiled;
  areas: readonly Area[];
}

/** Makes the formulas of a workbook ready to run; those that differ only in the cells that they name are compiled once. */
export class Runnables {
  readonly refused: Refused = new Map();
  readonly #grids: Grids;
  readonly #translator: Translator;
  readonly #compiler: Compiler;
  /** Of formulas of one cell sheet by sheet, of array formulas all together. */
  readonly #shapes: Map<string, Compiled | null>[];
  readonly #arrayShapes = new Map<string, Compiled | null>();

  constructor(book: WorkbookFile, grids: Grids, reader: Reader) {
    this.#grids = grids;
    this.#translator = new Translator(book, grids, signatures());
    this.#compiler = new Compiler(reader);
    this.#shapes = book.sheets.map(() => new Map());
  }

  /** The formula that runs for a cell, and what it refers to there. */
  of(cell: CellFile, sheet: number): Runnable {
    // What a part of a table is depends on the row, also where nothing in the formula's text does.
    const shape = cell.formula === undefined || cell.formula.includes("[") ? undefined : shapeOf(cell.formula);
    if (!shape) return this.#compile(cell, sheet);
    const { array } = cell;
    const key = array ? `${sheet} ${array.grows ? "grows" : `${array.rows}×${array.columns}`} ${shape.key}` : shape.key;
    const shapes = array ? this.#arrayShapes : this.#shapes[sheet]!;
    const known = shapes.get(key);
    if (known) return { compiled: known, areas: this.#held(shape.areas, known.areas) };
    const made = this.#compile(cell, sheet);
    // What the engine is given can name other cells than the formula does: names, tables, one cell of a range.
    if (known === undefined) shapes.set(key, !this.refused.has(cell) && areAlike(made.areas, shape.areas) ? made.compiled : null);
    return made;
  }

  #compile(cell: CellFile, sheet: number): Runnable {
    this.#grids.cut = false;
    const content = contentOf(cell, sheet, this.#translator, false, this.refused);
    if (this.#grids.cut) throw new NeedsModel();
    const compiled = this.#compiler.compile(content, (name) => this.#areaOf(name, sheet));
    return { compiled, areas: compiled.areas };
  }

  /** The cells of these boxes, each on the sheet of its like. */
  #held(boxes: readonly Box[], like: readonly Area[]): Area[] {
    const areas: Area[] = [];
    for (let i = 0; i < boxes.length; i++) {
      const { top, left, bottom, right } = boxes[i]!;
      const area = { sheet: like[i]!.sheet, top, left, bottom, right };
      if (!this.#grids.holds(area)) throw new NeedsModel();
      areas.push(area);
    }
    return areas;
  }

  /** `B2` or `'Bores'!B2:C5`, as the translator writes it. */
  #areaOf(name: string, home: number): Area {
    const mark = name.lastIndexOf("!");
    const sheet = mark < 0 ? home : this.#grids.all.findIndex((grid) => `'${grid.name}'` === name.slice(0, mark));
    const box = shapeOf(name.slice(mark + 1))?.areas[0];
    if (sheet < 0 || !box) throw new NeedsModel();
    return { sheet, ...box };
  }
}

const areAlike = (areas: readonly Box[], others: readonly Box[]): boolean =>
  areas.length === others.length &&
  areas.every(({ top, left, bottom, right }, i) => {
    const other = others[i]!;
    return top === other.top && left === other.left && bottom === other.bottom && right === other.right;
  });
