import { expectCirclesTold } from "./circular-references.ts";
import { figuresOf, withRun } from "./figures.ts";
import { expectCounts, expectReadersAgree, expectSame, expectSentence, orRefused } from "./oracles.ts";
import { FuzzRandom } from "./random.ts";
import { fuzz } from "./run.ts";
import { BOOKS, calculated, copyOf, untouched } from "./samples.ts";
import { expectUntouched } from "./unchanged-formulas.ts";

test("damaged samples end in a result or a sentence", async () => {
  const fuzzed = await fuzz({ seed: 20, inputs: 400, processes: 2 });
  expect(fuzzed.defects).toEqual([]);
  const figures = figuresOf({ seed: 20 }, fuzzed);
  expect([figures.inputs, figures.code]).toEqual([400, expect.stringMatching(/^[0-9a-f]{12}$/)]);
  expect(figures.results + figures.refusals).toBe(400);
  expect(Object.keys(figures.levels)).toHaveLength(8);
}, 180_000);

test("processes that hang, end or take too long are defects of the input that they were at, and the others go on", async () => {
  const fuzzed = await fuzz({ seed: 1, inputs: 10, processes: 1, entry: "test/hostile/failing-worker.ts", silence: 1 });
  expect(fuzzed.defects).toEqual([
    { index: 3, level: "lost", what: "said nothing for 10 s" },
    { index: 5, level: "lost", what: "ended the process (7)" },
    { index: 6, level: "told", what: "took 11 s of the processor" },
    { index: 6, level: "memory", what: "600 MB from there to 10" },
    { index: 8, level: "told", what: "two and two are five" },
  ]);
  expect(figuresOf({ seed: 1 }, fuzzed)).toMatchObject({ inputs: 10, results: 4, refusals: 3, defects: 5, peakMegabytes: 600 });
}, 60_000);

test("a run that is repeated takes the place of the earlier one; others of the same code stand beside it, those of other code go", () => {
  const run = (code: string, seed: number, from: number, inputs: number) => ({ code, seed, from, inputs }) as Parameters<typeof withRun>[1];
  const kept = [run("a", 1, 0, 10), run("a", 2, 0, 20)];
  expect(withRun(withRun(kept, run("a", 2, 0, 30)), run("a", 1, 500, 5))).toEqual([run("a", 1, 0, 10), run("a", 1, 500, 5), run("a", 2, 0, 30)]);
  expect(withRun(kept, run("b", 1, 500, 5))).toEqual([run("b", 1, 500, 5)]);
});

test("the same seed and input give the same numbers, others give others", () => {
  const numbers = (seed: number, index: number) => {
    const random = new FuzzRandom(seed, index);
    return Array.from({ length: 5 }, () => random.next());
  };
  expect(numbers(1, 2)).toEqual(numbers(1, 2));
  expect(new Set([...numbers(1, 2), ...numbers(1, 3), ...numbers(2, 2)]).size).toBe(15);
});

describe("what must never be is noticed", () => {
  const NOTHING = { findings: [], rowsIn: 0, checked: 0, refused: 0, inputs: 0 };

  test("a row that is lost, or refused without a word", () => {
    expect(() => expectCounts({ ...NOTHING, rowsIn: 3, checked: 2 })).toThrow("3 rows in, 2 checked, 0 refused");
    expect(() => expectCounts({ ...NOTHING, rowsIn: 1, refused: 1 })).toThrow("1 rows refused, and 0 findings say so");
    expect(() => expectCounts({ ...NOTHING, rowsIn: 3, checked: 3 }, 2)).toThrow("3 rows in, of 2 that there are");
  });

  test("a sentence that no person wrote, unless it stood in the input", () => {
    expect(() => expectSentence("the row undefined is blank", "")).toThrow("a sentence that a program wrote");
    expect(() => expectSentence(" ", "")).toThrow("without a word");
    expect(() => expectSentence("the row undefined is blank", "<undefined/>")).not.toThrow();
  });

  test("two results that differ, with the place where they part", () => {
    expect(() => expectSame("a book", [1, 2], [1, 3])).toThrow("a book: …[1,2]… where there was …[1,3]…");
  });

  test("an exception that is no refusal", async () => {
    await expect(
      orRefused(() => {
        throw new TypeError("x is not a function");
      }),
    ).rejects.toThrow(TypeError);
  });

  test("a value on which the two readers of formulas differ", () => {
    const sheet = { name: "S", row: 0, column: 0, values: [[2, 5]], formulas: [[null, "=A1*2"]] };
    expect(() => expectReadersAgree({ name: "x", sheets: [sheet] })).toThrow("S!B1 =A1*2: 5 and 4");
  });

  test("an error where there is none, unless its code stands as text in the formula or in a cell", () => {
    const agree = (formula: string, cell: string | number, error: string) => {
      const sheet = { name: "S", row: 0, column: 0, values: [[cell, { error }]], formulas: [[null, formula]] };
      return () => expectReadersAgree({ name: "x", sheets: [sheet] });
    };
    expect(agree('="#REF!"&A1', 7, "#REF!")).not.toThrow();
    expect(agree("=A1&1", "#REF!", "#REF!")).not.toThrow();
    expect(agree('="#REF!"&A1', 7, "#N/A")).toThrow('S!B1 ="#REF!"&A1: {"error":"#N/A"} and "#REF!7"');
    expect(agree("=A1&1", 7, "#REF!")).toThrow('S!B1 =A1&1: {"error":"#REF!"} and "71"');
  });

  test("a formula that rests on itself and shows a number", async () => {
    const { book } = BOOKS.find(({ name }) => name === "build-sheet.xlsx")!;
    const circular = copyOf(book);
    circular.sheets[0]!.cells.push({ row: 900, column: 0, value: null, formula: "IFERROR(A902,7)" }, { row: 901, column: 0, value: null, formula: "A901" });
    const { snapshot } = await calculated(circular);
    expect(() => expectCirclesTold(circular, snapshot)).not.toThrow();
    snapshot.sheets[0]!.values[900]![0] = 7;
    expect(() => expectCirclesTold(circular, snapshot)).toThrow(/!A901 =IFERROR\(A902,7\) rests on itself and shows 7$/);
  });

  test("a formula that changes though nothing in its reach was touched, and only that", async () => {
    const sample = BOOKS.find(({ name }) => name === "build-sheet.xlsx")!;
    const { snapshot: was } = await untouched(sample);
    const is = structuredClone(was);
    const sheet = sample.book.sheets.findIndex(({ name }) => name === "Rings");
    const cell = sample.book.sheets[sheet]!.cells.find(({ formula }) => formula !== undefined)!;
    is.sheets[sheet]!.values[cell.row]![cell.column] = 9.99;
    const before = sample.book;
    const after = copyOf(before);
    expect(() => expectUntouched({ before, after, places: [{ sheet: 0, row: 900, column: 90 }], was, is })).toThrow(
      /^Rings!.* was not touched, was .* and is 9\.99$/,
    );
    expect(() => expectUntouched({ before, after, places: [{ sheet, row: cell.row, column: cell.column }], was, is })).not.toThrow();
  });
});
