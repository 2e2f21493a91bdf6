import { broadcast } from "../../core/broadcast.ts";
import type { Argument, Block, Cell, Result } from "../../core/cell.ts";
import { NAMESPACE, type Spec } from "../../core/define.ts";
import { Fault } from "../../core/fault.ts";
import { sentence } from "../../core/sentences.ts";
import { commonCode } from "./grid-text.ts";

/** How the grid hands a value over: a cell's, or that of a part of the formula. */
interface GridValue {
  value: Cell;
}

/** One argument: a value, a block of them column by column, or `undefined` where it is skipped. */
type GridArgument = GridValue | undefined | (GridValue | undefined)[][];

interface GridResult {
  value: Result;
}

interface GridFunction {
  description: string;
  category: string;
  args: { name: string; description: string; type: ("ANY" | "RANGE")[]; acceptMatrix: true; acceptErrors: true; optional: true }[];
  isExported: true;
  /** Steps of one call, by the cells of each argument in their order; read where calls are put under limits. */
  steps?(cells: readonly number[]): number;
  compute(...args: GridArgument[]): GridResult | GridResult[][];
}

/** The parts of the grid that registering needs; its whole module or browser global fits. */
export interface FunctionGrid {
  addFunction(name: string, description: GridFunction): unknown;
  EvaluationError: new (message?: string, value?: string) => { message: string; value: string };
  registries: { errorTypes: Set<string> };
}

/** The code that a sheet shows for a fault, as other sheets show it. */
const FAULT_CODE = "#VALUE!";

/** Codes that other sheets put into cells and that this grid takes for text unless told. */
const FOREIGN_CODES = [FAULT_CODE, "#REF!", "#CALC!", "#FIELD!", "#BLOCKED!", "#CONNECT!", "#UNKNOWN!", "#GETTING_DATA"];

const HASH = 35;

const registered = new WeakMap<object, Set<string>>();

/** Makes every spec a function of the grid, `HATCH.` before its name. Doing it again changes nothing. */
export function registerFunctions(specs: Iterable<Spec>, engine: FunctionGrid): void {
  for (const code of FOREIGN_CODES) engine.registries.errorTypes.add(code);
  const known = registered.get(engine.registries) ?? new Set<string>();
  registered.set(engine.registries, known);
  for (const spec of specs) {
    if (known.has(spec.name)) continue;
    engine.addFunction(`${NAMESPACE}.${spec.name}`, describe(spec, engine));
    known.add(spec.name);
  }
}

function describe(spec: Spec, { EvaluationError }: FunctionGrid): GridFunction {
  return {
    description: spec.summary,
    category: NAMESPACE,
    // Every argument is optional and takes anything to the grid, so that what is missing or wrong is said by our own sentence.
    args: spec.inputs.map(({ name, param }) => ({
      name,
      description: param.help,
      type: param.broadcastKind === "element" || param.broadcastKind === "axes" ? ["ANY"] : ["ANY", "RANGE"],
      acceptMatrix: true,
      acceptErrors: true,
      optional: true,
    })),
    isExported: true,
    ...stepsOf(spec),
    compute(...args) {
      const outcome = broadcast(spec, givenOf(args));
      if (outcome instanceof Fault) return new EvaluationError(sentence(outcome), FAULT_CODE);
      return Array.isArray(outcome) ? turned(outcome) : { value: outcome };
    },
  };
}

function stepsOf({ steps, inputs }: Spec): Pick<GridFunction, "steps"> {
  if (!steps) return {};
  return { steps: (cells) => steps(Object.fromEntries(inputs.map(({ name }, i) => [name, cells[i] ?? 0]))) };
}

/** What is left out at the end, as in `F(5,,)`, is not given at all; left out in between it is a blank. */
function givenOf(args: readonly GridArgument[]): Argument[] {
  return args.slice(0, args.findLastIndex((given) => given !== undefined) + 1).map(argumentOf);
}

function argumentOf(given: GridArgument): Argument {
  if (!Array.isArray(given)) return cellOf(given);
  const rows = given[0]?.length ?? 0;
  const block: Block = new Array(rows);
  for (let row = 0; row < rows; row++) {
    const line: Cell[] = new Array(given.length);
    for (let column = 0; column < given.length; column++) line[column] = cellOf(given[column]![row]);
    block[row] = line;
  }
  return block;
}

/** An error comes as its code, which sentences quote as other sheets write it. */
function cellOf(given: GridValue | undefined): Cell {
  const value = given?.value;
  return typeof value === "string" && value.charCodeAt(0) === HASH ? commonCode(value) : value;
}

/** Rows of results as the grid's columns of values. */
function turned(rows: readonly (readonly Result[])[]): GridResult[][] {
  const width = rows.reduce((widest, line) => Math.max(widest, line.length), 1);
  return Array.from({ length: width }, (_, column) => rows.map((line) => ({ value: line[column] ?? "" })));
}
