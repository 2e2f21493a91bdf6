import { calculate } from "../../src/calc/calculate.ts";
import type { Cell } from "../../src/core/cell.ts";
import { isCellError } from "../../src/core/cell.ts";
import { placeName } from "../../src/workbook/address.ts";
import { readXlsx } from "../../src/xlsx/read/read.ts";

/** Errors of ours for what a sentence refuses, and errors beside a kept value that is none. */
export type Outcome = "agrees" | "refused" | "differs" | "error of ours";
export type Counts = Record<Outcome, number>;

export interface Fidelity {
  /** By the function that a formula starts with; of formulas without one by `(none)`. */
  functions: Map<string, Counts>;
  total: Counts;
  /** Formulas that come out otherwise each time; not compared. */
  volatile: number;
  /** Formulas without a kept value; not compared. */
  valueless: number;
  differing: string[];
}

export const noCounts = (): Counts => ({ agrees: 0, refused: 0, differs: 0, "error of ours": 0 });
export const newFidelity = (): Fidelity => ({ functions: new Map(), total: noCounts(), volatile: 0, valueless: 0, differing: [] });

const VOLATILE = /\b(?:NOW|TODAY|RAND|RANDBETWEEN|RANDARRAY|OFFSET|INDIRECT|CELL|INFO)\s*\(/i;
const FIRST = /([A-Z][A-Z0-9.]*)\s*\(/i;
/** As sheets compare numbers, and some more for sums in another order. */
const DIGITS = 12;

function isSame(ours: Cell, kept: Cell): boolean {
  if (isCellError(kept)) return isCellError(ours) && ours.error === kept.error;
  if (typeof ours === "number" && typeof kept === "number")
    return ours === kept || Number(ours.toPrecision(DIGITS)) === Number(kept.toPrecision(DIGITS)) || Math.abs(ours - kept) < 1e-12;
  return (ours ?? "") === (kept ?? "");
}

/** Days and seeds at which a workbook is calculated again, to see what rests on the clock or on chance. */
const OTHERWISE = [
  { days: 1000, chance: 0.37 },
  { days: -5003, chance: 0.83 },
];

/** The values of a workbook as they come out on another day and with other chances. */
function calculatedOtherwise(bytes: Uint8Array, { days, chance }: (typeof OTHERWISE)[number]): ReturnType<typeof calculate>["sheets"] {
  const { random } = Math;
  const Today = Date;
  let seed = chance;
  Math.random = () => {
    seed = (seed * 9301 + 0.49297) % 1;
    return seed;
  };
  const now = (): number => Today.now() + days * 86_400_000;
  class Other extends Today {
    constructor(...given: [] | [number]) {
      super(...((given.length ? given : [now()]) as [number]));
    }
    static override now = now;
  }
  globalThis.Date = Other as DateConstructor;
  try {
    return calculate(readXlsx(bytes)).sheets;
  } finally {
    Math.random = random;
    globalThis.Date = Today;
  }
}

/** Calculates a workbook and adds to the counts how its formulas compare with the values that the file keeps. */
export function compareWithKept(bytes: Uint8Array, name: string, into: Fidelity): void {
  const book = readXlsx(bytes);
  const { sheets, unknown } = calculate(book);
  const refused = unknown();
  const isRestless = book.sheets.some(({ cells }) => cells.some(({ formula }) => formula !== undefined && VOLATILE.test(formula)));
  const others = isRestless ? OTHERWISE.map((way) => calculatedOtherwise(bytes, way)) : [];
  for (const [place, { cells, name: sheet }] of book.sheets.entries()) {
    for (const cell of cells) {
      const { formula, value: kept, row, column } = cell;
      if (formula === undefined) continue;
      const ownValue = sheets[place]!.values[row]?.[column];
      const isMoved = others.some((other) => JSON.stringify(other[place]!.values[row]?.[column]) !== JSON.stringify(ownValue));
      if (VOLATILE.test(formula) || isMoved) into.volatile++;
      else if (kept === null || kept === undefined) into.valueless++;
      else {
        const outcome: Outcome = isSame(ownValue, kept)
          ? "agrees"
          : refused.has(cell)
            ? "refused"
            : isCellError(ownValue) && !isCellError(kept)
              ? "error of ours"
              : "differs";
        const key = FIRST.exec(formula)?.[1]?.toUpperCase() ?? "(none)";
        const counts = into.functions.get(key) ?? noCounts();
        into.functions.set(key, counts);
        counts[outcome]++;
        into.total[outcome]++;
        const said = (one: Cell): string => (isCellError(one) ? `${one.error}${one.message ? ` (${one.message})` : ""}` : JSON.stringify(one ?? ""));
        if (outcome === "differs" || outcome === "error of ours")
          into.differing.push(`${name} ${placeName({ sheet, row, column })}: =${formula.slice(0, 120)} is ${said(ownValue)}, kept is ${said(kept)}`);
      }
    }
  }
}

const COLUMNS: readonly Outcome[] = ["agrees", "refused", "differs", "error of ours"];

/** A table of the counts, the functions that differ most first. */
export function fidelityTable({ functions, total, volatile, valueless }: Fidelity): string {
  const line = (name: string, counts: Counts): string => `| ${name} | ${COLUMNS.map((column) => counts[column]).join(" | ")} |`;
  const weight = (counts: Counts): number => counts.differs + counts["error of ours"];
  const lines = [...functions]
    .sort(([a, x], [b, y]) => weight(y) - weight(x) || y.refused - x.refused || a.localeCompare(b))
    .map(([name, counts]) => line(name, counts));
  return [
    `| function | ${COLUMNS.join(" | ")} |`,
    `|---|${COLUMNS.map(() => "---|").join("")}`,
    ...lines,
    line("all", total),
    "",
    `Not compared: ${volatile} volatile, ${valueless} without a kept value.`,
  ].join("\n");
}
