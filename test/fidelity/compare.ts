import { calculate, restingOn } from "../../src/calc/calculate.ts";
import { letterOf } from "../../src/calc/grid/added.ts";
import { type Cell, isCellError } from "../../src/core/cell.ts";
import { placeName } from "../../src/workbook/address.ts";
import type { CellFile } from "../../src/xlsx/model.ts";
import { readXlsx } from "../../src/xlsx/read/read.ts";

/** Errors of ours for what a sentence refuses, and errors beside a kept value that is none. */
export type Outcome = "agrees" | "refused" | "differs" | "error of ours";
export type Counts = Record<Outcome, number>;

export interface Fidelity {
  /** By the function that a formula starts with; of formulas without one by `(none)`. */
  functions: Map<string, Counts>;
  total: Counts;
  /** Formulas that come out otherwise each time, and what rests on them; not compared. */
  volatile: number;
  /** Formulas without a kept value; not compared. */
  valueless: number;
  /** Formulas of which the program that saved the file did not know a function, and what rests on them; not compared. */
  unknownThere: number;
  /** CHAR above 127 by the letters of the Macintosh, and what rests on it; not compared. */
  letters: number;
  differing: string[];
}

export const noCounts = (): Counts => ({ agrees: 0, refused: 0, differs: 0, "error of ours": 0 });
export const newFidelity = (): Fidelity => ({ functions: new Map(), total: noCounts(), volatile: 0, valueless: 0, unknownThere: 0, letters: 0, differing: [] });

const VOLATILE = /\b(?:NOW|TODAY|RAND|RANDBETWEEN|RANDARRAY|OFFSET|INDIRECT|CELL|INFO)\s*\(/i;
const FIRST = /([A-Z][A-Z0-9.]*)\s*\(/i;
const LATER_ERRORS = new Set(["#SPILL!", "#CALC!"]);
/** As sheets compare numbers, and some more for sums in another order. */
const DIGITS = 12;

function isSame(ours: Cell, kept: Cell): boolean {
  if (isCellError(ours)) {
    // Errors of later years are kept as #VALUE!; some programs keep an error as text.
    const code = isCellError(kept) ? kept.error : kept;
    return code === ours.error || (isCellError(kept) && kept.error === "#VALUE!" && LATER_ERRORS.has(ours.error));
  }
  if (typeof ours === "number" && typeof kept === "number")
    return ours === kept || Number(ours.toPrecision(DIGITS)) === Number(kept.toPrecision(DIGITS)) || Math.abs(ours - kept) < 1e-12;
  return (ours ?? "") === (kept ?? "");
}

const OF_MACINTOSH = new Map(
  Array.from(new TextDecoder("macintosh").decode(Uint8Array.from({ length: 128 }, (_, i) => 128 + i)), (letter, i) => [letterOf(128 + i), letter]),
);
/** Excel for Macintosh counts the letters above 127 as that machine does, Excel for Windows by code page 1252. */
const isOfMacintosh = (formula: string, kept: Cell, ours: Cell): boolean =>
  /\bCHAR\(/i.test(formula) && kept !== ours && kept === OF_MACINTOSH.get(String(ours));

/** A reference alone: its value is never an empty text where what it names holds a number. */
const REFERENCE = /^[$A-Z]+[$\d]+$/i;

/** What a program left that had no value: nothing, a number that no sheet holds, or an empty text for the number of another cell. */
const isNoValue = (kept: Cell, ours: Cell, formula: string): boolean =>
  kept === null ||
  kept === undefined ||
  (isCellError(kept) && kept.message !== undefined) ||
  (kept === "" && typeof ours === "number" && REFERENCE.test(formula));

/** Calculates a workbook and adds to the counts how its formulas compare with the values that the file keeps. */
export function compareWithKept(bytes: Uint8Array, name: string, into: Fidelity): void {
  const book = readXlsx(bytes);
  const { sheets, unknown } = calculate(book);
  const refused = unknown();
  const oursOf = (sheet: number, { row, column }: CellFile): Cell => sheets[sheet]!.values[row]?.[column];
  const cells = book.sheets.flatMap(({ cells }, sheet) =>
    cells.flatMap((cell) => (cell.formula === undefined ? [] : [{ cell, formula: cell.formula, sheet }])),
  );
  const restless = book.names.filter(({ formula }) => VOLATILE.test(formula)).map((one) => one.name);
  const isVolatile = (formula: string): boolean => VOLATILE.test(formula) || restless.some((one) => formula.includes(one));
  const volatile = restingOn(
    book,
    cells.filter(({ formula }) => isVolatile(formula)).map(({ cell }) => cell),
  );
  // A program that does not know a function keeps #NAME? for it.
  const isUnknownThere = (kept: Cell, ours: Cell): boolean => isCellError(kept) && kept.error === "#NAME?" && !isSame(ours, kept);
  const older = restingOn(
    book,
    cells.filter(({ cell, sheet }) => isUnknownThere(cell.value, oursOf(sheet, cell))).map(({ cell }) => cell),
  );
  const lettered = restingOn(
    book,
    cells.filter(({ cell, formula, sheet }) => isOfMacintosh(formula, cell.value, oursOf(sheet, cell))).map(({ cell }) => cell),
  );
  // A library that does not calculate keeps 0 for every formula.
  const isUncalculated = cells.every(({ cell }) => cell.value === 0);
  for (const { cell, formula, sheet } of cells) {
    const kept = cell.value;
    const ours = oursOf(sheet, cell);
    if (volatile.has(cell)) into.volatile++;
    else if (isUncalculated || isNoValue(kept, ours, formula)) into.valueless++;
    else if (lettered.has(cell) && !isSame(ours, kept)) into.letters++;
    else if (older.has(cell) && !refused.has(cell)) into.unknownThere++;
    else {
      const outcome: Outcome = isSame(ours, kept)
        ? "agrees"
        : refused.has(cell)
          ? "refused"
          : isCellError(ours) && !isCellError(kept)
            ? "error of ours"
            : "differs";
      const key = FIRST.exec(formula)?.[1]?.toUpperCase() ?? "(none)";
      const counts = into.functions.get(key) ?? noCounts();
      into.functions.set(key, counts);
      counts[outcome]++;
      into.total[outcome]++;
      const said = (one: Cell): string => (isCellError(one) ? `${one.error}${one.message ? ` (${one.message})` : ""}` : JSON.stringify(one ?? ""));
      if (outcome === "differs" || outcome === "error of ours") {
        const place = placeName({ sheet: book.sheets[sheet]!.name, ...cell });
        into.differing.push(`${name} ${place}: =${formula.slice(0, 120)} is ${said(ours)}, kept is ${said(kept)}`);
      }
    }
  }
}

const COLUMNS: readonly Outcome[] = ["agrees", "refused", "differs", "error of ours"];

/** A table of the counts, the functions that differ most first. */
export function fidelityTable({ functions, total, volatile, valueless, unknownThere, letters }: Fidelity): string {
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
    `Not compared: ${volatile} volatile, ${valueless} without a kept value, ${unknownThere} with #NAME? for what the program that saved them did not know, ${letters} with letters of the Macintosh.`,
  ].join("\n");
}
