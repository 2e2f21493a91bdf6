import { readFileSync } from "node:fs";
import fc from "fast-check";
import { calculate } from "../../src/calc/calculate.ts";
import { evaluateWithModel } from "../../src/calc/evaluate-with-model.ts";
import { evaluateWithoutModel } from "../../src/calc/evaluate-without-model.ts";
import { TooMuchWork } from "../../src/calc/grid-model.ts";
import type { Computed } from "../../src/calc/results.ts";
import type { CellFile, WorkbookFile } from "../../src/xlsx/model.ts";
import { positionIn } from "../../src/xlsx/model.ts";
import { readXlsx } from "../../src/xlsx/read/read.ts";
import { books, formula, functionNames } from "./arbitrary-books.ts";

/** The whole of a calculation as text: 0 and −0 differ, so do errors with other sentences. */
function all(book: WorkbookFile, computed: Computed): string[] {
  const shown = (value: unknown): string => (typeof value === "number" ? (Object.is(value, -0) ? "-0" : String(value)) : JSON.stringify(value));
  const found = book.sheets.flatMap(({ name }, sheet) =>
    [...computed.values(sheet)].map(
      ({ row, column, value, isError, message }) => `${name} ${row},${column}: ${shown(value)}${isError ? ` is an error: ${String(message ?? "")}` : ""}`,
    ),
  );
  const refused = [...computed.refused].flatMap(([{ row, column }, { wholly, reasons }]) =>
    reasons.map(({ code, message }) => `${row},${column} ${wholly ? "" : "in a branch "}${code} ${message}`),
  );
  return [...found, ...refused].sort();
}

/** Both ways of calculating; the engine's remarks on what goes wrong inside its functions are kept off the console. */
function bothWays(book: WorkbookFile): { directly: string[] | undefined; byModel: string[] } {
  const { error } = console;
  console.error = () => {};
  try {
    const direct = evaluateWithoutModel(book);
    return { directly: direct && all(book, direct), byModel: all(book, evaluateWithModel(book)) };
  } catch (reason) {
    // What takes more work than is done for one workbook has no values to compare.
    fc.pre(!(reason instanceof TooMuchWork));
    throw reason;
  } finally {
    console.error = error;
  }
}

type Content = CellFile["value"] | { f: string; array?: CellFile["array"] };
const spilling = (f: string): Content => ({ f, array: { rows: 1, columns: 1, grows: true } });

/** A workbook of one sheet, or of several, cells by their names. */
function bookOf(...sheets: Record<string, Content>[]): WorkbookFile {
  const cellFile = ([name, content]: [string, Content]): CellFile => {
    const formula = typeof content === "object" && content !== null && "f" in content ? content : undefined;
    return formula
      ? { ...positionIn(name, ""), value: null, formula: formula.f, ...(formula.array ? { array: formula.array } : {}) }
      : { ...positionIn(name, ""), value: content as CellFile["value"] };
  };
  return {
    sheets: sheets.map((cells, i) => ({ name: `Sheet${i + 1}`, hidden: false, cells: Object.entries(cells).map(cellFile), hiddenRows: [] })),
    names: [{ name: "Limit", formula: "Sheet1!$A$1" }],
    tables: [],
    from1904: false,
    storedTexts: new Map(),
  };
}

/** Each cell adds 1 to the one below; the last holds 1. */
const chain = (length: number): Record<string, Content> =>
  Object.fromEntries(Array.from({ length }, (_, i) => [`A${i + 1}`, i === length - 1 ? 1 : { f: `A${i + 2}+1` }]));

describe("without its model the engine comes to the same values and sentences", () => {
  const agrees = (book: WorkbookFile): void => {
    const { directly, byModel } = bothWays(book);
    // A call with too many inputs that also rests on itself has two faults, and each way may tell the other of them.
    fc.pre(!(byModel.some((line) => line.includes("Invalid number of arguments")) && directly?.some((line) => line.includes("#CYCLE"))));
    expect(directly ?? byModel).toEqual(byModel);
  };

  test("for formulas of any of its functions and ours, sensible or not", () => {
    fc.assert(fc.property(books(formula(functionNames())), agrees), { numRuns: 40 });
  });

  test("for formulas that build sheets have", () => {
    const usual = /^(?:HATCH\..*|SUM|IF|AND|OR|NOT|ROUND|ABS|MIN|MAX|AVERAGE|COUNT|COUNTA|COUNTIF|IFERROR|INDEX|ISBLANK|ISNUMBER|SQRT|PI|VLOOKUP|MATCH)$/;
    fc.assert(fc.property(books(formula(functionNames().filter((name) => usual.test(name))), 3), agrees), { numRuns: 40 });
  });

  test.each(["build-sheet", "self-check", "layouts/cylinders-across", "layouts/one-row-a-cylinder", "layouts/one-row-a-reading"])(
    "for the sample %s, which does not need it",
    (sample) => {
      const { directly, byModel } = bothWays(readXlsx(readFileSync(`samples/${sample}.xlsx`)));
      expect(directly).toEqual(byModel);
    },
  );

  test.each<[string, WorkbookFile]>([
    ["a blank that is referred to is 0", bookOf({ A2: { f: "A1" }, A3: { f: 'A1&"!"' }, A4: { f: "A1=0" } })],
    ["no cell holds −0", bookOf({ A1: -0, A2: { f: "-A1" }, A3: { f: "0*-1" } })],
    [
      "an error keeps its sentence from cell to cell",
      bookOf({ A1: { f: "1/0" }, A2: { f: "A1+1" }, A3: { f: "HATCH.CLEARANCE(A2,73)" }, A4: { f: "SUM(A1:A2)" } }),
    ],
    ["typed errors and text that only looks like one", bookOf({ A1: { error: "#DIV/0!" }, A2: "#N/A", A3: { f: "A1" }, A4: { f: "ISNA(A2)" } })],
    ["text that looks like something else", bookOf({ A1: "73.01", A2: "TRUE", A3: "2024-01-01", A4: { f: "A1+1" }, A5: { f: "A2=TRUE" }, A6: { f: "A3+1" } })],
    ["dates and shares keep their form on the way", bookOf({ A1: { f: "DATE(2024,2,28)+2" }, A2: { f: "A1&5%" }, A3: { f: "10%" }, A4: { f: "A3*2" } })],
    ["other sheets, read before and after", bookOf({ A1: { f: "Sheet2!A2*2" }, A2: 4 }, { A1: { f: "Sheet1!A1+Sheet1!A2" }, A2: { f: "Sheet1!A2" } })],
    [
      "formulas that grow as they are filled down",
      bookOf({ A1: 1, A2: 2, A3: 3, B1: { f: "SUM(A$1:A1)" }, B2: { f: "SUM(A$1:A2)" }, B3: { f: "SUM(A$1:A3)" } }),
    ],
    ["a range that stands for the cell in its own row", bookOf({ A1: 1, A2: 2, A3: 3, B1: { f: "A1:A3*2" }, B2: { f: "A1:A3*2" }, B3: { f: "Limit+A1:A3" } })],
    ["what cannot be calculated, each with its cell", bookOf({ A1: { f: "FOO()" }, A2: { f: "FOO()" }, A3: { f: "Nowhere" }, A4: { f: "A3" } })],
    [
      "what cannot be calculated in a branch of IF",
      bookOf({ A1: { f: "IF(1=1,2,FOO())" }, A2: { f: "IF(1=2,2,FOO())" }, A3: spilling("IF(A1:A2=2,1,Nowhere)") }),
    ],
    ["a result that spills", bookOf({ A1: 1, A2: 2, B1: { f: "A1:A2*2" }, C1: spilling("A1:A2*2"), D1: { f: "C2" } })],
    ["a spilled cell that is read before it is there", bookOf({ A1: { f: "D2+SUM(C1:D20)" }, B1: 1, B2: 2, B3: 3, D1: spilling("B1:B3*2") })],
    ["spills that wait for spills", bookOf({ A1: { f: "F2" }, B1: 1, B2: 2, D1: spilling("F1:F2*2"), F1: spilling("B1:B2*2"), H1: { f: "D2" } })],
    ["an array formula of the old kind", bookOf({ A1: 1, A2: 2, B1: { f: "A1:A2*2", array: { rows: 3, columns: 1, grows: false } }, C1: { f: "B3" } })],
    ["formulas that wait for one another", bookOf(chain(90))],
    ["many formulas that wait for one another", bookOf({ ...chain(700), C1: { f: "SUM(A1:A700)" }, D1: spilling("A1:A700*2"), E1: { f: "D700+A1" } })],
    ["formulas that rest on themselves, and one that rests on them", bookOf({ A1: { f: "B1" }, B1: { f: "A1" }, C1: { f: "B1+1" }, C2: { f: "ISERROR(A1)" } })],
    ["a block kept for the formulas that share it", bookOf({ A3: 5, B1: { f: "SUM(A1:A40)" }, B2: { f: "MAX(A1:A40)" }, B3: { f: "A3/SUM(A1:A40)" } })],
  ])("%s", (_, book) => {
    const { directly, byModel } = bothWays(book);
    expect(directly).toEqual(byModel);
  });

  test.each<[string, WorkbookFile]>([
    ["a spill that depends on itself", bookOf({ A1: spilling("A2:A3*2") })],
    ["a spill with something in its way", bookOf({ A1: 1, A2: 2, C1: spilling("A1:A2*2"), C2: "note" })],
    ["two spills into one cell", bookOf({ A1: 1, A2: 2, C1: spilling("A1:A2*2"), B2: spilling("TRANSPOSE(A1:A2)") })],
    ["a spill beyond the room that there is", bookOf({ A1: spilling("SEQUENCE(300)") })],
    ["where a cell stands", bookOf({ A2: { f: "ROW()" }, A3: { f: "ROW(A1)" } })],
    ["the end of a spill", bookOf({ A1: 1, A2: 2, C1: spilling("A1:A2*2"), D1: { f: "SUM(C1#)" } })],
    ["a cell named in text", bookOf({ A1: 1, A2: { f: 'INDIRECT("A1")' } })],
    ["a whole column", bookOf({ A1: 1, B1: { f: "SUM(A:A)" } })],
    ["cells far from all others", bookOf({ A1: { f: "B2" }, A2: { f: "ZZ9" } })],
    ["cells far below all others", bookOf({ A1: { f: "A5009" } })],
    ["text that the engine takes for a link", bookOf({ A1: "[5](x)", A2: { f: "A1&1" } })],
    ["a number that the engine does not read", bookOf({ A1: 5e-324, A2: { f: "A1*1" } })],
  ])("the model is left to say: %s", (_, book) => {
    expect(bothWays(book).directly).toBeUndefined();
  });
});

test("the model alone finds the same cycles", () => {
  const book = bookOf({ A1: { f: "B1+1" }, B1: { f: "A1" }, B2: { f: "IF(B2=1,FOO(),2)" }, C1: { f: "SUM(A1:B2)" }, C2: { f: "ISERROR(A1)" } });
  const errors = (computed: Computed): string[] =>
    [...computed.values(0)].filter(({ isError }) => isError).map(({ row, column, value }) => `${row},${column} ${value}`);
  expect(errors(evaluateWithoutModel(book)!).sort()).toEqual(errors(evaluateWithModel(book)).sort());
  expect(errors(evaluateWithoutModel(book)!)).toHaveLength(4);
});

test("a cycle does not hide behind a function that passes errors over", () => {
  const book = bookOf({ A1: { f: "COUNTBLANK(A1:B2)" }, B1: { f: "COUNTBLANK(A1)+1" }, C1: { f: "COUNT(A1:B1)" } });
  const { sheets, unknown } = calculate(book);
  const error = { error: "#REF!", message: "This formula depends on itself." };
  expect(sheets[0]!.values[0]).toEqual([error, error, 0]);
  expect(unknown().size).toBe(3);
});

test("a row of 50,000 formulas, each resting on the next, is calculated from either end", () => {
  const book = bookOf(chain(50_000));
  expect(calculate(book).sheets[0]!.values[0]).toEqual([50_000]);
  book.sheets[0]!.cells.reverse();
  expect(calculate(book).sheets[0]!.values[0]).toEqual([50_000]);
});
