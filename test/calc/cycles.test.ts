import fc from "fast-check";
import type { FormulaPrecedents } from "../../src/calc/cycles.ts";
import { cellsInCycles, TooManySteps } from "../../src/calc/cycles.ts";

const cell = (row: number, column = 0) => ({ row, column, value: null });
const area = (top: number, left: number, bottom = top, right = left, sheet = 0) => ({ sheet, top, left, bottom, right });
const own = ({ cell: { row, column } }: FormulaPrecedents) => ({ top: row, left: column, bottom: row, right: column });
const cyclesOf = (formulas: FormulaPrecedents[]): number[] => cellsInCycles(formulas, own).map(({ row }) => row);

/** Formulas below one another, each looking at some of the others. */
const column = (looks: readonly (readonly number[])[]): FormulaPrecedents[] =>
  looks.map((rows, row) => ({ cell: cell(row), sheet: 0, areas: rows.map((at) => area(at, 0)) }));

test("a formula goes round when it can be come back to from what it looks at, whoever is asked first", () => {
  const graph = fc
    .integer({ min: 1, max: 9 })
    .chain((size) => fc.array(fc.uniqueArray(fc.integer({ min: 0, max: size - 1 })), { minLength: size, maxLength: size }));
  fc.assert(
    fc.property(graph, (looks) => {
      const reach = looks.map((rows) => new Set(rows));
      for (const _ of looks) for (const seen of reach) for (const at of [...seen]) for (const next of reach[at]!) seen.add(next);
      expect(cyclesOf(column(looks)).sort()).toEqual([...looks.keys()].filter((row) => reach[row]!.has(row)));
    }),
    { numRuns: 500 },
  );
});

test("ranges are looked through for the formulas in them, on their own sheet", () => {
  const formulas = [
    { cell: cell(3, 1), sheet: 0, areas: [area(0, 0, 9, 9)] },
    { cell: cell(4, 12), sheet: 0, areas: [area(0, 0, 1_048_575, 16_383, 1)] },
    { cell: cell(5, 16_000), sheet: 1, areas: [area(0, 0, 1_048_575, 12)] },
    { cell: cell(6, 0), sheet: 0, areas: [area(0, 1, 2, 9), area(4, 0, 5, 0), area(7, 0, 9, 0)] },
  ];
  expect(cyclesOf(formulas).sort()).toEqual([3, 4, 5]);
});

test("what a result fills is looked at as well as its own cell", () => {
  const formulas = [
    { cell: cell(0), sheet: 0, areas: [area(0, 5)] },
    { cell: cell(0, 5), sheet: 0, areas: [area(2, 0)] },
  ];
  expect(cellsInCycles(formulas, own)).toEqual([]);
  expect(cellsInCycles(formulas, ({ cell: { column: left } }) => ({ top: 0, bottom: 2, left, right: left }))).toHaveLength(2);
});

test("a row of a hundred thousand formulas that comes back to its beginning", () => {
  expect(cyclesOf(column(Array.from({ length: 100_000 }, (_, row) => [(row + 1) % 100_000])))).toHaveLength(100_000);
});

test("formulas that rest on one another beyond all measure are given up", () => {
  const formulas = Array.from({ length: 50 }, (_, row) => ({ cell: cell(row), sheet: 0, areas: [area(0, 0, 49, 0)] }));
  expect(cellsInCycles(formulas, own, 50 * 51)).toHaveLength(50);
  expect(() => cellsInCycles(formulas, own, 50 * 51 - 1)).toThrow(TooManySteps);
});
