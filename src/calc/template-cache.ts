import * as engine from "@odoo/o-spreadsheet";
import type { Area } from "./references.ts";

/** A value as the engine's functions give it. */
export interface Given {
  value?: unknown;
  format?: string | undefined;
  message?: unknown;
}

/** Only the engine with its whole model can tell what the workbook comes to. */
export class NeedsModel extends Error {}

/**
 * What functions can ask about the sheet beside their arguments. Here there is no sheet behind them: who
 * asks is remembered, since the engine makes an error of its own of whatever is thrown inside a function.
 */
const ASKED = ["getters", "getFormulaResult", "updateDependencies", "addDependencies", "__originCellPosition", "__originSheetId", "lookupCaches"];
let asked = false;

function ask(): never {
  asked = true;
  throw new engine.EvaluationError("there is no sheet to ask");
}

/** What a cell comes to, as the engine's functions take it. */
export class Value {
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

export const BLANK = new Value(null);

const isError = (value: unknown): boolean => typeof value === "string" && engine.registries.errorTypes.has(value);

/** Where a formula finds its cells while it runs. */
export interface Reader {
  cell(area: Area): Value;
  /** Column by column. */
  block(area: Area): Value[][];
}

/** A formula compiled by the engine. It can run for any cell that differs only in what it refers to. */
export interface Compiled {
  /** What it refers to, in reading order. */
  areas: Area[];
  run(areas: readonly Area[]): Given | Given[][];
}

interface CompiledFormula {
  rangeDependencies: unknown[];
  execute(areas: readonly Area[], cell: Reader["cell"], block: Reader["block"], name: () => never, context: object): Given | Given[][];
}

/** The parts of the engine that compile a formula and hold its functions. */
const { CompiledFormula, registries } = engine as unknown as {
  CompiledFormula: { Compile(formula: string, sheet: string, getters: { getRangeFromSheetXC(sheet: string, name: string): Area }): CompiledFormula };
  registries: { functionRegistry: { mapping: object } };
};

/** Compiles formulas that read their cells from `reader`. */
export class Compiler {
  readonly #context: object = Object.assign(Object.create(registries.functionRegistry.mapping), { locale: engine.DEFAULT_LOCALE });

  constructor(private readonly reader: Reader) {
    asked = false;
    for (const name of ASKED) Object.defineProperty(this.#context, name, { get: ask });
  }

  /** `areaOf` reads the name of a cell or range as it stands in the formula. */
  compile(formula: string, areaOf: (name: string) => Area): Compiled {
    const compiled = CompiledFormula.Compile(formula, "", { getRangeFromSheetXC: (_, name) => areaOf(name) });
    const { cell, block } = this.reader;
    return {
      areas: compiled.rangeDependencies as Area[],
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

/** The engine takes some texts for links and shows a part of them. */
const LINK = /^\[|^https?:/;
const NUMBER_FORMAT = /^[#0.,%]+$/;

/** What a cell holds when its formula gives this: nothing becomes 0, as in every sheet. */
export function settled({ value, format, message }: Given): Value {
  if (value === null || value === undefined) return new Value(0, format);
  if (isError(value)) return new Value(value as string, undefined, message);
  const isNumber = typeof value === "number";
  if (isNumber && !(Math.abs(value) <= Number.MAX_VALUE)) throw new NeedsModel();
  if (format && !NUMBER_FORMAT.test(format)) {
    // Dates and times stay as they are; whatever else a format can do to a value is the engine's to say.
    if (isNumber && value > 0 && engine.helpers.isDateTimeFormat(format)) return new Value(value, format);
    throw new NeedsModel();
  }
  // No cell holds −0.
  if (isNumber) return new Value(value || 0, format);
  if (typeof value === "string" ? LINK.test(value) : typeof value !== "boolean") throw new NeedsModel();
  return new Value(value as string | boolean, format);
}
