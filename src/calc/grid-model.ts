import * as engine from "@odoo/o-spreadsheet";
import type { Edges } from "../formula/template.ts";
import { specs } from "../functions/index.ts";
import { UnreadableFile } from "../xlsx/file-limits.ts";
import { applyCompatibility } from "./grid/compatibility.ts";
import { countSteps, notHere } from "./grid/own-function.ts";
import { registerFunctions } from "./grid/register-functions.ts";
import { applyWorkLimits } from "./grid/work-limits.ts";
import { ERROR, type Signatures, signaturesOf } from "./grid-terms.ts";
import { FILL, ONE } from "./translate.ts";

type Value = { value: string | number | boolean | null; message?: string };
type Given = Value | undefined | (Value | undefined)[][];

export type Model = engine.Model;
export type ModelData = ConstructorParameters<typeof engine.Model>[0];

let ready: Signatures | undefined;
let effort: ReturnType<typeof applyWorkLimits> | undefined;

/** A formula of the model that has gone to cells which it does not name. */
export interface ReadBeyond {
  sheetId: string;
  row: number;
  col: number;
  to: { sheetId: string; zone: Edges };
}

let readBeyond: ReadBeyond[] = [];

/** What a calculation may take is counted from here, and where its formulas go is noted. */
export function startCalculation(work?: number): void {
  signatures();
  effort!.restart(work);
  readBeyond = [];
}

/** Where formulas have gone since then beside the cells that they name. */
export const readBeyondReferences = (): readonly ReadBeyond[] => readBeyond;

/** Why a part of what was calculated since then was left out, as a sentence. */
export const omissionNote = (): string | undefined => effort?.refused;

/** Refuses the file whose formulas have run out of what one file may take: what was calculated after that is worth nothing. */
export function refuseExhausted(): void {
  if (effort?.exhausted === "work") throw new TooMuchWork(EXHAUSTED.work);
  if (effort?.exhausted) throw new UnreadableFile(EXHAUSTED[effort.exhausted]);
}

/** More may be allowed. */
export class TooMuchWork extends UnreadableFile {}

const EXHAUSTED = {
  work: "takes more work to calculate than is done for one workbook",
  cells: "fills more cells with results of its formulas than there is room for in one workbook",
  time: "takes longer to calculate than is waited for one workbook",
};

/** The grid with our functions, and with its own brought to what other sheets do; done once in a process. */
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
  engine.addFunction(ONE, {
    description: "one value",
    hidden: true,
    args: [any("value")],
    compute: (given: Given) => (Array.isArray(given) && given.length * given[0]!.length > 1 ? new engine.EvaluationError(SEVERAL, "#VALUE!") : oneOf(given)),
  });
  applyCompatibility(engine);
  noteWays();
  effort = applyWorkLimits(engine);
  return signaturesOf(engine.registries.functionRegistry as never);
}

const SEVERAL = notHere("This comes to several cells where one value is wanted: which of them is meant is not worked out here.");
const oneOf = (given: Given): Value => (Array.isArray(given) ? given[0]?.[0] : given) ?? { value: null };

interface Roving {
  addDependencies?(from: Omit<ReadBeyond, "to">, ranges: ReadBeyond["to"][]): void;
}

/** The model learns of the cells that these functions find out by themselves; so do we. */
function noteWays(): void {
  const registry = engine.registries.functionRegistry as unknown as {
    content: Record<string, { compute(this: Roving, ...args: Given[]): Given }>;
    replace(name: string, own: object): void;
  };
  for (const name of ["INDIRECT", "OFFSET"]) {
    const own = registry.content[name]!;
    registry.replace(name, {
      ...own,
      compute(this: Roving, ...args: Given[]) {
        const addDependencies: Roving["addDependencies"] = ({ sheetId, row, col }, ranges) => {
          for (const to of ranges) {
            readBeyond.push({ sheetId, row, col, to });
            countSteps((to.zone.bottom - to.zone.top + 1) * (to.zone.right - to.zone.left + 1));
          }
          this.addDependencies?.({ sheetId, row, col }, ranges);
        };
        return own.compute.apply(Object.create(this, { addDependencies: { value: addDependencies } }), args);
      },
    });
  }
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

/** A calculated model. The grid's remarks on its own running are kept off the console; `hurried` tells that it gave up before all was settled. */
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
