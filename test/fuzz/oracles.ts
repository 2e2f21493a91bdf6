import type { CheckResult } from "../../src/check/finding.ts";
import { type Cell, isBlank, isCellError, isErrorCode } from "../../src/core/cell.ts";
import { type CannotTell, evaluateFormula } from "../../src/formula/evaluate.ts";
import { WorkbookCells } from "../../src/formula/workbook-cells.ts";
import { cellName } from "../../src/workbook/address.ts";
import type { WorkbookSnapshot } from "../../src/workbook/port.ts";
import { UnreadableFile } from "../../src/xlsx/file-limits.ts";
import { Defect, type FuzzOutcome } from "./outcome.ts";

/** Pieces of sentences that only a fault of ours writes. */
const OURS = /\bundefined\b|\[object |\bNaN\b/;
const INPUT_HOLDS = /undefined|object|NaN/;

/** What is said of an exception inside a function. In the engine's own functions that is a sentence like any other; in ours it is a fault. */
const FAULT = "led to a fault in its function";
const OWN = /HATCH/i;

/** A sentence for people: it says something, and nothing that slipped out of a program. */
export function expectSentence(said: string, input: string): void {
  if (said.trim() === "") throw new Defect("a refusal without a word");
  if (said.includes(FAULT) && OWN.test(input)) throw new Defect(`${said}: ${input.slice(0, 300)}`);
  if (OURS.test(said) && !INPUT_HOLDS.test(input)) throw new Defect(`a sentence that a program wrote: ${said.slice(0, 200)}`);
}

/** Rows in = checked + refused, and each refused row is a finding of its own. */
export function expectCounts({ rowsIn, checked, refused, findings }: CheckResult, most = Number.POSITIVE_INFINITY): void {
  if (rowsIn !== checked + refused) throw new Defect(`${rowsIn} rows in, ${checked} checked, ${refused} refused`);
  const told = findings.filter(({ kind }) => kind === "refused").length;
  if (told !== refused) throw new Defect(`${refused} rows refused, and ${told} findings say so`);
  if (rowsIn > most) throw new Defect(`${rowsIn} rows in, of ${most} that there are`);
}

export function expectSame(what: string, got: unknown, want: unknown): void {
  const [a, b] = [JSON.stringify(got), JSON.stringify(want)];
  if (a === b) return;
  let at = 0;
  while (a[at] === b[at]) at++;
  throw new Defect(`${what}: …${a.slice(Math.max(0, at - 80), at + 80)}… where there was …${b.slice(Math.max(0, at - 80), at + 80)}…`);
}

/** Runs what may refuse its input; anything else that it throws is a fault of ours. */
export async function orRefused(work: () => FuzzOutcome | Promise<FuzzOutcome>, input = ""): Promise<FuzzOutcome> {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof UnreadableFile)) throw error;
    expectSentence(error.message, input);
    return "refused";
  }
}

/**
 * Two readers of formulas, written apart, must agree: the spreadsheet engine's values in the
 * snapshot, and those of the small reader behind Check wherever it can tell.
 */
export function expectReadersAgree(snapshot: WorkbookSnapshot): void {
  const book = new WorkbookCells(snapshot);
  const codes = typedCodes(snapshot);
  for (const { name, row, column, values, formulas } of snapshot.sheets) {
    for (const [r, line] of formulas.entries()) {
      for (const [c, formula] of line.entries()) {
        if (!formula) continue;
        const value = values[r]![c];
        if (isCellError(value) && value.message?.includes(FAULT) && OWN.test(formula)) throw new Defect(`${value.message}: ${formula.slice(0, 300)}`);
        const read = evaluateFormula(formula, { book, sheet: name });
        if (isUnknown(read) || Array.isArray(read)) continue;
        if (!agree(value, read) && !isTextForError(value, formula, codes))
          throw new Defect(`${name}!${cellName({ row: row + r, column: column + c })} ${formula.slice(0, 200)}: ${show(value)} and ${show(read)}`);
      }
    }
  }
}

/**
 * To the engine, text that reads as an error's code is that error; to the small reader it is text, as
 * in other sheets. An error counts as one of these only where just this text is in the formula or in a typed cell.
 */
const isTextForError = (value: Cell, formula: string, codes: ReadonlySet<string>): boolean =>
  isCellError(value) && (codes.has(value.error) || formula.includes(`"${value.error}"`));

const typedCodes = ({ sheets }: WorkbookSnapshot): Set<string> =>
  new Set(sheets.flatMap(({ values }) => values.flatMap((line) => line.filter((cell) => typeof cell === "string" && isErrorCode(cell)) as string[])));

const isUnknown = (read: unknown): read is CannotTell => typeof read === "object" && read !== null && "why" in read;
const show = (cell: Cell): string => JSON.stringify(cell)?.slice(0, 120) ?? "undefined";

export function agree(a: Cell, b: Cell): boolean {
  if (isCellError(a) || isCellError(b)) return isCellError(a) && isCellError(b);
  if (isBlank(a) || isBlank(b)) return (isBlank(a) || a === 0) && (isBlank(b) || b === 0);
  if (typeof a === "number" && typeof b === "number") return a === b || Math.abs(a - b) <= 1e-12 * Math.max(Math.abs(a), Math.abs(b));
  return a === b;
}
