import type { Cell } from "../../src/core/cell.ts";
import type { CellFile, SheetFile, WorkbookFile } from "../../src/xlsx/model.ts";
import { expectCirclesTold } from "./circular-references.ts";
import { edge, NUMBERS } from "./edge-values.ts";
import { type FormulaScope, formulaOf } from "./grammar.ts";
import { expectCounts, expectReadersAgree } from "./oracles.ts";
import type { FuzzOutcome, Level } from "./outcome.ts";
import type { FuzzRandom } from "./random.ts";
import { BOOKS, calculated, copyOf, untouched } from "./samples.ts";
import { type ChangedCell, expectUntouched } from "./unchanged-formulas.ts";

/** Cells of a sample typed over, emptied or filled: formulas that do not depend on them keep their values. */
export const cellsLevel: Level = {
  name: "cells and formulas",
  weight: 5,
  async run(random): Promise<FuzzOutcome> {
    const sample = random.pick(BOOKS);
    const book = copyOf(sample.book);
    const places = Array.from({ length: 1 + random.below(4) }, () => typeOver(book, random));
    const now = await calculated(book);
    expectCounts(now.result);
    expectReadersAgree(now.snapshot);
    expectCirclesTold(book, now.snapshot);
    expectUntouched({ before: sample.book, after: book, places, was: (await untouched(sample)).snapshot, is: now.snapshot });
    return "result";
  },
};

function typeOver(book: WorkbookFile, random: FuzzRandom): ChangedCell {
  const sheet = random.below(book.sheets.length);
  const page = book.sheets[sheet]!;
  const place = random.chance(0.8) && page.cells.length > 0 ? random.pick(page.cells) : { row: random.below(60), column: random.below(20) };
  const { row, column } = place;
  page.cells = page.cells.filter((cell) => cell.row !== row || cell.column !== column);
  const cell = contentOf(book, page, random);
  if (cell) page.cells.push({ row, column, ...cell });
  page.cells.sort((a, b) => a.row - b.row || a.column - b.column);
  return { sheet, row, column };
}

function contentOf(book: WorkbookFile, page: SheetFile, random: FuzzRandom): Pick<CellFile, "value" | "formula" | "array"> | undefined {
  const kind = random.below(10);
  if (kind === 0) return undefined;
  if (kind < 5) return { value: random.pick(NUMBERS) };
  if (kind < 7) return { value: random.pick<Cell>([edge(random), true, false, { error: "#DIV/0!" }, { error: "#N/A" }]) };
  const formula = formulaOf(random, reachOf(book, page));
  return { value: null, formula, ...(random.chance(0.5) ? { array: { rows: 1, columns: 1, grows: random.chance(0.5) } } : {}) };
}

function reachOf(book: WorkbookFile, { cells }: SheetFile): FormulaScope {
  return {
    sheets: book.sheets.map(({ name }) => name),
    names: [...book.names.map(({ name }) => name), ...book.tables.map(({ name }) => name)],
    rows: Math.max(1, ...cells.map(({ row }) => row)),
    columns: Math.max(1, ...cells.map(({ column }) => column)),
  };
}
