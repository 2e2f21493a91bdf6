import type { Book } from "../buildsheet/formula/book.ts";
import type { Block } from "../core/cell.ts";
import { decimal } from "../core/decimal.ts";
import { Fault } from "../core/fault.ts";
import { call } from "../core/lift.ts";
import type { Grid } from "../core/param.ts";
import { boreSummary } from "../functions/cylinder/bore-summary.ts";
import { type Choice, choicesOf, cleansUp } from "../functions/cylinder/oversize.ts";
import { argumentOf, blockOf, type Given, lengthsIn } from "./inputs.ts";
import type { BoreRow, ReboreInputs } from "./rebore.ts";

/** One bore at one oversize. */
export interface OversizeBore {
  name: string;
  cleansUp: boolean;
  /** Finish bore less the needed size: what is to spare, or negative what is lacking. */
  spare: number;
  says: string;
}

export interface OversizeRow {
  oversize: number;
  /** The bore that it is finished to. */
  finish: number;
  cleansUpAll: boolean;
  /** The bores for which it is chosen. */
  chosenFor: string[];
  bores: OversizeBore[];
  says: string;
}

/** Every listed oversize against every bore that can be judged. */
export function oversizeRows(book: Book, inputs: ReboreInputs, lines: Block, planned: readonly BoreRow[]): OversizeRow[] {
  const standard = argumentOf(book, inputs.standard) as number;
  const pistonClearance = lengthsIn(book, inputs.pistonClearance)[0] ?? undefined;
  const choices = choicesOf(standard, gridOf(book, inputs.oversizes)!, gridOf(book, inputs.pistons), pistonClearance);
  // The plan itself has been made from the same list, so there is no fault here.
  if (choices instanceof Fault) return [];
  const measured = planned.flatMap((bore, at) =>
    bore.needed === null ? [] : [{ name: bore.name, needed: bore.needed, need: needWords(book, inputs, lines[at]!) }],
  );
  return choices.map((choice) => {
    const bores = measured.map(({ name, needed, need }): OversizeBore => {
      const spare = decimal(choice.finish - needed);
      const does = cleansUp(choice.finish, needed);
      return { name, cleansUp: does, spare, says: `${spareWords(choice.finish, needed, spare, does)} (${need})` };
    });
    const chosenFor = planned.filter(({ oversize }) => oversize === choice.oversize).map(({ name }) => name);
    const row = { ...choice, cleansUpAll: bores.every((bore) => bore.cleansUp), chosenFor, bores };
    return { ...row, says: rowWords(row, planned) };
  });
}

function spareWords(finish: number, needed: number, spare: number, does: boolean): string {
  if (!does) return `does not clean up: ${finish} is ${-spare} short of the ${needed} needed`;
  return `cleans up: ${finish} is ${spare > 0 ? `${spare} above the ${needed}` : "exactly what is"} needed`;
}

/** Cells of a range as REBOREPLAN reads them; `undefined` for none. */
function gridOf(book: Book, given: Given): Grid | undefined {
  const values = lengthsIn(book, given);
  const block = blockOf(book, given);
  return values.every((value) => value === null) ? undefined : { rows: block.length, columns: block[0]!.length, values };
}

/** Where the needed size comes from. */
function needWords(book: Book, { standard, allowance, centring }: ReboreInputs, readings: Block[number]): string {
  const summary = call(boreSummary, [[readings]]) as (number | string)[][];
  const [, largest] = summary[1] as [number, number];
  const base = argumentOf(book, standard) as number;
  const stock = lengthsIn(book, allowance)[0] ?? 0;
  const isTrue =
    String(argumentOf(book, centring) ?? "")
      .trim()
      .toLowerCase() === "true";
  const wear = decimal(largest - base);
  const sum = isTrue && wear > 0 ? `standard ${base} and twice the wear of ${wear}, which may all be on one side` : `largest reading ${largest}`;
  return `${sum}${stock > 0 ? `, ${stock} to leave for honing` : ""}`;
}

function rowWords({ bores, chosenFor, cleansUpAll }: Omit<OversizeRow, "says"> & Choice, planned: readonly BoreRow[]): string {
  if (bores.length === 0) return "no bore is measured yet";
  const short = bores.filter((bore) => !bore.cleansUp).map(({ name, spare }) => `${name} (${-spare} short)`);
  const chosen = chosenFor.length === 0 ? "" : chosenFor.length === planned.length ? ", chosen" : `, chosen for ${chosenFor.join(", ")}`;
  if (cleansUpAll) return `cleans up every bore measured${chosen}`;
  return short.length === bores.length ? `cleans up no bore: ${short.join(", ")}` : `does not clean up ${short.join(", ")}${chosen}`;
}
