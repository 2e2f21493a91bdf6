import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Cell, Result } from "../../src/core/cell.ts";
import { associated, HostError, type HostFunction } from "../addin/built.ts";
import { type Answer, givenCount } from "./answer.ts";
import { isError } from "./held.ts";
import type { Input } from "./inputs.ts";

/** What Excel gives for a blank cell: 0 in older builds, null in newer ones and on the web. Empty text that a formula leaves stays text. */
export type BlankForm = 0 | null | "";

/** The built script, called as Excel calls it: by the id in functions.json, with rows of values and an object about the call. */
export function customFunctions(folder: string): (input: Input, blank: BlankForm) => Answer {
  const byId = associated(folder);
  const { functions } = JSON.parse(readFileSync(join(folder, "functions.json"), "utf8")) as {
    functions: { id: string; name: string; parameters: unknown[] }[];
  };
  const byName = new Map(functions.map(({ id, name, parameters }) => [name, { run: byId.get(id)!, count: parameters.length }]));
  return ({ spec, given }, blank) => {
    const { run, count } = byName.get(spec.name)!;
    const args = given.map((one) => one?.rows.map((row) => row.map(({ value }) => asGiven(value, blank))) ?? null);
    // Excel fills up what is left out, and refuses more than the function declares before it calls it.
    const filled = [...args, ...new Array(Math.max(0, count - args.length)).fill(null)];
    return answerTo(run, [...filled, { functionName: spec.name, address: "Sheet1!A1" }]);
  };
}

const asGiven = (value: Cell, blank: BlankForm): unknown => {
  if (value === null) return blank;
  return isError(value) ? new HostError(value.error) : value;
};

function answerTo(run: HostFunction, args: readonly unknown[]): Answer {
  try {
    return { rows: run(...args) as Result[][] };
  } catch (thrown) {
    if (!(thrown instanceof HostError) || thrown.code !== "#VALUE!") throw thrown;
    return { fault: thrown.message ?? "" };
  }
}

/** A call with more than the function takes never reaches it in Excel. */
export const reachesExcel = ({ spec, given }: Input): boolean => givenCount(given) <= spec.inputs.length;
