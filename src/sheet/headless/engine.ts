import * as engine from "@odoo/o-spreadsheet";
import { specs } from "../../functions/index.ts";
import { registerFunctions } from "../engine.ts";
import { boundEngine } from "../engine-bounds.ts";
import { likeOtherSheets } from "../engine-manners.ts";
import { ERROR } from "./literals.ts";
import { type Signatures, signaturesOf } from "./signatures.ts";
import { FILL } from "./translate.ts";

type Value = { value: string | number | boolean | null; message?: string };
type Given = Value | undefined | (Value | undefined)[][];

export type Model = engine.Model;
export type ModelData = ConstructorParameters<typeof engine.Model>[0];

let ready: Signatures | undefined;
let effort: ReturnType<typeof boundEngine> | undefined;

/** What a calculation may take is counted from here. */
export const startCalculation = (): void => effort?.restart();

/** Why a part of what was calculated since then was left out, as a sentence. */
export const leftOut = (): string | undefined => effort?.refused;

/** The engine with our functions, and with its own brought to what other sheets do; done once in a process. */
export function signatures(): Signatures {
  ready ??= prepare();
  return ready;
}

function prepare(): Signatures {
  registerFunctions(specs, engine);
  const any = (name: string) => ({ name, description: name, type: ["ANY" as const], acceptMatrix: true, acceptErrors: true });
  engine.addFunction(ERROR, {
    description: "an error",
    hidden: true,
    args: [any("code"), any("why")],
    compute: (code: Given, why: Given) => new engine.EvaluationError(String((why as Value).value), String((code as Value).value)),
  });
  engine.addFunction(FILL, {
    description: "a block of so many rows and columns",
    hidden: true,
    args: [any("block"), any("rows"), any("columns")],
    compute: (block: Given, rows: Given, columns: Given) => fill(block, Number((rows as Value).value), Number((columns as Value).value)),
  });
  likeOtherSheets(engine);
  effort = boundEngine(engine);
  return signaturesOf(engine.registries.functionRegistry as never);
}

/** What an array formula leaves in its cells: one row, column or value is repeated, what is missing is `#N/A`, what is over is cut. */
function fill(block: Given, rows: number, columns: number): Value[][] {
  const given = Array.isArray(block) ? block : [[block]];
  const missing = new engine.EvaluationError("The array formula fills more cells than it has results.", "#N/A");
  const at = (list: readonly unknown[], index: number): number => (list.length === 1 ? 0 : index);
  return Array.from({ length: columns }, (_, column) => {
    const line = given[at(given, column)];
    return Array.from({ length: rows }, (_, row) => (line ? (at(line, row) < line.length ? (line[at(line, row)] ?? { value: null }) : missing) : missing));
  });
}

/** A calculated model. The engine's remarks on its own running are kept off the console; `hurried` tells that it gave up before all was settled. */
export function modelOf(data: ModelData): { model: Model; hurried: boolean } {
  const { debug, warn } = console;
  let hurried = false;
  console.debug = () => {};
  console.warn = () => {
    hurried = true;
  };
  try {
    return { model: new engine.Model(data), hurried };
  } finally {
    Object.assign(console, { debug, warn });
  }
}
