import { broadcast, type CallResult } from "../../src/core/broadcast.ts";
import type { Argument, Cell } from "../../src/core/cell.ts";
import { Fault } from "../../src/core/fault.ts";
import { sentence } from "../../src/core/sentences.ts";
import type { Given } from "./held.ts";
import type { Input } from "./inputs.ts";

/** What a host shows for a call: a block of values, or the sentence of the error that stands for the whole call. */
export type Answer = { rows: Cell[][] } | { fault: string };

export const answerOf = (outcome: CallResult): Answer =>
  outcome instanceof Fault ? { fault: sentence(outcome) } : { rows: Array.isArray(outcome) ? outcome : [[outcome]] };

/** What is left out at the end is not given at all, in every host. */
export function givenCount(given: readonly Given[]): number {
  let count = given.length;
  while (count > 0 && given[count - 1] === null) count--;
  return count;
}

/**
 * The call without any host, blank cells as blanks. One cell is itself, several are a block. With `zeros`
 * a blank is 0 in the inputs that say of themselves that it passes for a reading there, and nowhere else.
 */
export function bare({ spec, given }: Input, zeros = false): Answer {
  const args = given.slice(0, givenCount(given)).map((one, i): Argument => {
    const blank = zeros && spec.inputs[i]?.param.zeroPasses ? 0 : null;
    const rows = one?.rows.map((row) => row.map(({ value }) => value ?? blank));
    return rows?.length === 1 && rows[0]!.length === 1 ? rows[0]![0] : rows;
  });
  return answerOf(broadcast(spec, args));
}

const sameCell = (one: Cell, other: Cell): boolean =>
  typeof one === "object" && one
    ? typeof other === "object" && other !== null && one.error === other.error && one.message === other.message
    : Object.is(one, other);

export function same(one: Answer, other: Answer): boolean {
  if ("fault" in one || "fault" in other) return "fault" in one && "fault" in other && one.fault === other.fault;
  const { rows } = other;
  return one.rows.length === rows.length && one.rows.every((row, r) => row.length === rows[r]!.length && row.every((cell, c) => sameCell(cell, rows[r]![c])));
}
