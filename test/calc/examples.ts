import type { Cell, Result } from "../../src/core/cell.ts";
import type { Example } from "../../src/core/define.ts";
import { specs } from "../../src/functions/index.ts";

/** Every example of every function: its formula and the block that it gives. */
export const EXAMPLES: readonly (readonly [formula: string, gives: readonly (readonly Result[])[]])[] = specs.flatMap(({ examples }) =>
  examples.map(({ formula, gives }) => [formula, block(gives)] as const),
);

function block(gives: Example["gives"]): readonly (readonly Result[])[] {
  return Array.isArray(gives) ? gives : [[gives as Result]];
}

const decimals = (number: number): number => String(number).split(".")[1]?.length ?? 0;

/** What a host shows, with its numbers to the decimals that the example writes. */
export function asWritten(shown: readonly (readonly Cell[])[], gives: readonly (readonly Result[])[]): Cell[][] {
  return shown.map((line, r) =>
    line.map((cell, c) => {
      const wanted = gives[r]?.[c];
      return typeof cell === "number" && typeof wanted === "number" ? Number(cell.toFixed(decimals(wanted))) : cell;
    }),
  );
}
