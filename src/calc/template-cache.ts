import * as engine from "@odoo/o-spreadsheet";
import type { Edges } from "../formula/template.ts";
import { formulaTemplate } from "../formula/template.ts";
import type { CellFile, WorkbookFile } from "../xlsx/model.ts";
import { signatures } from "./grid-model.ts";
import type { GridSheets, SheetRectangle } from "./references.ts";
import { gridContent, type RefusedFormulas } from "./results.ts";
import { Translator } from "./translate.ts";

/** A value as the grid's functions give it. */
export interface ComputedValue {
  value?: unknown;
  format?: string | undefined;
  message?: unknown;
}

/** Only the grid with its whole model can tell what the workbook comes to. */
export class NeedsModel extends Error {}

/**
 * What functions can ask about the sheet beside their arguments. Here there is no sheet behind them: who
 * asks is remembered, since the grid makes an error of its own of whatever is thrown inside a function.
 */
const ASKED = ["getters", "getFormulaResult", "updateDependencies", "addDependencies", "__originCellPosition", "__originSheetId", "lookupCaches"];
let asked = false;

function ask(): never {
  asked = true;
  throw new engine.EvaluationError("there is no sheet to ask");
}

/** What a cell comes to, as the grid's functions take it. */
export class RuntimeValue {
  constructor(
    readonly value: string | number | boolean | null,
    readonly format?: string | undefined,
    readonly message?: unknown,
  ) {}

  /** Where the cell stands: asked by functions that look at more than its value. */
  get position(): never {
    return ask();
  }

  get isError(): boolean {
    return isError(this.value);
  }
}

export const BLANK_CELL = new RuntimeValue(null);

const isError = (value: unknown): boolean => typeof value === "string" && engine.registries.errorTypes.has(value);

/** Where a formula finds its cells while it runs. */
interface CellReader {
  cell(area: SheetRectangle): RuntimeValue;
  /** Column by column. */
  block(area: SheetRectangle): RuntimeValue[][];
}

/** A formula compiled by the grid. It can run for any cell that differs only in what it refers to. */
interface Compiled {
  /** What it refers to, in reading order. */
  areas: SheetRectangle[];
  run(areas: readonly SheetRectangle[]): ComputedValue | ComputedValue[][];
}

interface CompiledFormula {
  rangeDependencies: unknown[];
  execute(
    areas: readonly SheetRectangle[],
    cell: CellReader["cell"],
    block: CellReader["block"],
    name: () => never,
    context: object,
  ): ComputedValue | ComputedValue[][];
}

/** The parts of the grid that compile a formula and hold its functions. */
const { CompiledFormula, registries } = engine as unknown as {
  CompiledFormula: { Compile(formula: string, sheet: string, getters: { getRangeFromSheetXC(sheet: string, name: string): SheetRectangle }): CompiledFormula };
  registries: { functionRegistry: { mapping: object } };
};

/** Compiles formulas that read their cells from `reader`. */
class Compiler {
  readonly #context: object = Object.assign(Object.create(registries.functionRegistry.mapping), { locale: engine.DEFAULT_LOCALE });

  constructor(private readonly reader: CellReader) {
    asked = false;
    for (const name of ASKED) Object.defineProperty(this.#context, name, { get: ask });
  }

  /** `areaOf` reads the name of a cell or range as it stands in the formula. */
  compile(formula: string, areaOf: (name: string) => SheetRectangle): Compiled {
    const compiled = CompiledFormula.Compile(formula, "", { getRangeFromSheetXC: (_, name) => areaOf(name) });
    const { cell, block } = this.reader;
    return {
      areas: compiled.rangeDependencies as SheetRectangle[],
      run: (areas) => {
        try {
          const given = compiled.execute(areas, cell, block, unknownName, this.#context);
          if (!asked) return given;
        } catch {
          // The model makes an error in the cell of whatever is thrown, in a way of its own.
        }
        throw new NeedsModel();
      },
    };
  }
}

function unknownName(): never {
  throw new NeedsModel();
}

/** The grid takes some texts for links and shows a part of them. */
const LINK = /^\[|^https?:/;
const NUMBER_FORMAT = /^[#0.,%]+$/;

/** What a cell holds when its formula gives this: nothing becomes 0, as in every sheet. */
export function settled({ value, format, message }: ComputedValue): RuntimeValue {
  if (value === null || value === undefined) return new RuntimeValue(0, format);
  if (isError(value)) return new RuntimeValue(value as string, undefined, message);
  const isNumber = typeof value === "number";
  if (isNumber && !(Math.abs(value) <= Number.MAX_VALUE)) throw new NeedsModel();
  if (format && !NUMBER_FORMAT.test(format)) {
    // Dates and times stay as they are; whatever else a format can do to a value is the grid's to say.
    if (isNumber && value > 0 && engine.helpers.isDateTimeFormat(format)) return new RuntimeValue(value, format);
    throw new NeedsModel();
  }
  // No cell holds −0.
  if (isNumber) return new RuntimeValue(value || 0, format);
  if (typeof value === "string" ? LINK.test(value) : typeof value !== "boolean") throw new NeedsModel();
  return new RuntimeValue(value as string | boolean, format);
}

/** A formula ready to run: what it is compiled to, and what it refers to where it stands. */
export interface ReadyFormula {
  compiled: Compiled;
  areas: readonly SheetRectangle[];
}

/** Makes the formulas of a workbook ready to run; those that differ only in the cells that they name are compiled once. */
export class TemplateCache {
  readonly refused: RefusedFormulas = new Map();
  readonly #grids: GridSheets;
  readonly #translator: Translator;
  readonly #compiler: Compiler;
  /** Of formulas of one cell sheet by sheet, of array formulas all together. */
  readonly #templates: Map<string, Compiled | null>[];
  readonly #arrayTemplates = new Map<string, Compiled | null>();

  constructor(book: WorkbookFile, grids: GridSheets, reader: CellReader) {
    this.#grids = grids;
    this.#translator = new Translator(book, grids, signatures());
    this.#compiler = new Compiler(reader);
    this.#templates = book.sheets.map(() => new Map());
  }

  /** The formula that runs for a cell, and what it refers to there. */
  of(cell: CellFile, sheet: number): ReadyFormula {
    // What a part of a table is depends on the row, also where nothing in the formula's text does.
    const template = cell.formula === undefined || cell.formula.includes("[") ? undefined : formulaTemplate(cell.formula);
    if (!template) return this.#compile(cell, sheet);
    const { array } = cell;
    const key = array ? `${sheet} ${array.grows ? "grows" : `${array.rows}×${array.columns}`} ${template.key}` : template.key;
    const templates = array ? this.#arrayTemplates : this.#templates[sheet]!;
    const known = templates.get(key);
    if (known) return { compiled: known, areas: this.#held(template.areas, known.areas) };
    const made = this.#compile(cell, sheet);
    // What the grid is given can name other cells than the formula does: names, tables, one cell of a range.
    if (known === undefined) templates.set(key, !this.refused.has(cell) && areAlike(made.areas, template.areas) ? made.compiled : null);
    return made;
  }

  #compile(cell: CellFile, sheet: number): ReadyFormula {
    this.#grids.cut = false;
    const content = gridContent(cell, sheet, this.#translator, false, this.refused);
    if (this.#grids.cut) throw new NeedsModel();
    const compiled = this.#compiler.compile(content, (name) => this.#areaOf(name, sheet));
    return { compiled, areas: compiled.areas };
  }

  /** The cells of these boxes, each on the sheet of its like. */
  #held(boxes: readonly Edges[], like: readonly SheetRectangle[]): SheetRectangle[] {
    const areas: SheetRectangle[] = [];
    for (let i = 0; i < boxes.length; i++) {
      const { top, left, bottom, right } = boxes[i]!;
      const area = { sheet: like[i]!.sheet, top, left, bottom, right };
      if (!this.#grids.holds(area)) throw new NeedsModel();
      areas.push(area);
    }
    return areas;
  }

  /** `B2` or `'Bores'!B2:C5`, as the translator writes it. */
  #areaOf(name: string, home: number): SheetRectangle {
    const mark = name.lastIndexOf("!");
    const sheet = mark < 0 ? home : this.#grids.all.findIndex((grid) => `'${grid.name}'` === name.slice(0, mark));
    const box = formulaTemplate(name.slice(mark + 1))?.areas[0];
    if (sheet < 0 || !box) throw new NeedsModel();
    return { sheet, ...box };
  }
}

const areAlike = (areas: readonly Edges[], others: readonly Edges[]): boolean =>
  areas.length === others.length &&
  areas.every(({ top, left, bottom, right }, i) => {
    const other = others[i]!;
    return top === other.top && left === other.left && bottom === other.bottom && right === other.right;
  });
