import fc from "fast-check";
import type { Cell } from "../../src/core/cell.ts";
import { evaluateNode } from "../../src/formula/evaluate.ts";
import { callsOf, wordsOf } from "../../src/formula/own-calls.ts";
import { readFormula, references } from "../../src/formula/parse.ts";
import { argumentArea } from "../../src/formula/precedents.ts";

import { WorkbookCells } from "../../src/formula/workbook-cells.ts";
import { specs } from "../../src/functions/index.ts";
import type { WorkbookSnapshot } from "../../src/workbook/port.ts";
import { formula, typed, type Written } from "../calc/arbitrary-books.ts";

const ROWS = 12;
const COLUMNS = 9;

/** Two sheets of typed cells with a name and a table, as the formulas of the generator know them. */
const snapshotOf = (cells: readonly Cell[]): WorkbookSnapshot => {
  const values = Array.from({ length: ROWS }, (_, r) => Array.from({ length: COLUMNS }, (__, c) => cells[(r * COLUMNS + c) % cells.length] ?? null));
  const formulas = values.map((line) => line.map(() => null));
  return {
    name: "Any",
    sheets: ["Data", "It's"].map((name) => ({ name, row: 0, column: 0, values, formulas })),
    names: [{ name: "Limit", formula: "=Data!$B$2" }],
    tables: [
      { name: "Readings", sheet: "Data", area: { row: 0, column: 0, rows: 5, columns: 2 }, headerRows: 1, totalsRows: 0, columns: ["Bore", "Skirt #1"] },
    ],
  };
};

const written = formula([...specs.map(({ name }) => `HATCH.${name}`), "SUM", "IF"]);

/** Everything that is asked of a formula: its value, where its references lead, and of its calls the arguments and their words. */
function answers(book: WorkbookCells, text: string, row: number, column: number) {
  const at = { sheet: "Data", row, column };
  const { tree, places } = readFormula(book, text);
  const context = { book, sheet: at.sheet, cell: at, places };
  const calls = callsOf(book, at, text).map((call) => ({
    ...{ name: call.spec.name, isWhole: call.isWhole, refers: call.refers },
    args: call.args.map((arg, i) => [arg && evaluateNode(arg, call.context), argumentArea(arg, call.context), wordsOf(call, i)]),
  }));
  return { value: tree && evaluateNode(tree, context), areas: references(tree).map((node) => argumentArea(node, context)), calls };
}

const filled = fc.record({ written, down: fc.integer({ min: 1, max: 4 }), right: fc.integer({ min: 0, max: 3 }) });

test("a formula that shares the tree of another one of its shape is understood as if it were read alone", () => {
  let shared = 0;
  const holds = (fills: readonly { written: Written; down: number; right: number }[], cells: readonly Cell[]): void => {
    const snapshot = snapshotOf(cells);
    const together = new WorkbookCells(snapshot);
    for (const fill of fills) {
      for (let step = 0; step < 4; step++) {
        const [row, column] = [step * fill.down, step * fill.right];
        const text = `=${fill.written(row, column)}`;
        if (readFormula(together, text).places) shared++;
        expect(answers(together, text, row, column)).toEqual(answers(new WorkbookCells(snapshot), text, row, column));
      }
    }
  };
  fc.assert(fc.property(fc.array(filled, { minLength: 1, maxLength: 4 }), fc.array(typed, { minLength: 20, maxLength: 40 }), holds), { numRuns: 150 });
  expect(shared).toBeGreaterThan(200);
});

describe("what depends on more than the cells that a formula names is read anew each time", () => {
  const book = new WorkbookCells(snapshotOf([73.01, 73.02]));
  test.each(["=Readings[@Bore]+A1", "=SUM(A1:A1)", "=A1+", "=SUM(A1.:.B2)", "=SUM(A1:XFD1048576)"])("%s", (text) => {
    readFormula(book, text);
    expect(readFormula(book, text).places).toBeUndefined();
  });
});

test("where every formula has a shape of its own, only the first thousand are kept", () => {
  const book = new WorkbookCells(snapshotOf([73.01]));
  const isShared = (n: number): boolean => readFormula(book, `=A1+${n}`).places !== undefined;
  for (let n = 0; n < 1500; n++) readFormula(book, `=A1+${n}`);
  expect([0, 999, 1000, 1499].map(isShared)).toEqual([true, true, false, false]);
});
