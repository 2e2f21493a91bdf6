import { specs } from "../../src/functions/index.ts";
import { type Built, builtAddin } from "../addin/built.ts";
import { bare } from "./answer.ts";
import { CHECK_READER, customFunctionsHost, HEADLESS, HEADLESS_BY_MODEL, tryOut } from "./hosts.ts";
import { inputs } from "./inputs.ts";

/** Some for each function, fewer where each takes a workbook; `npm run parity` tries as many as wanted. */
const COUNT = 30 * specs.length;
const IN_WORKBOOKS = 10 * specs.length;
const BATCH = 102;
const SEED = 730;

let built: Built;
beforeAll(async () => {
  built = await builtAddin();
}, 60_000);

describe("what is tried", () => {
  const calls = [...inputs(COUNT, SEED)];
  const answers = calls.map((call) => bare(call));
  const cells = answers.flatMap((answer) => ("rows" in answer ? answer.rows.flat() : []));

  test("gives numbers, blanks, texts and faults, each many times", () => {
    expect(cells.filter((cell) => typeof cell === "number").length).toBeGreaterThan(2000);
    expect(cells.filter((cell) => cell === "").length).toBeGreaterThan(500);
    expect(cells.filter((cell) => String(cell).startsWith("check: ")).length).toBeGreaterThan(400);
    expect(answers.filter((answer) => "fault" in answer).length).toBeGreaterThan(300);
  });

  test("each function gives a result to some of it", () => {
    const useful = new Set(calls.filter((_, i) => "rows" in answers[i]! && answers[i].rows.flat().some((cell) => cell !== "")).map(({ spec }) => spec.name));
    expect(specs.filter(({ name }) => !useful.has(name)).map(({ name }) => name)).toEqual([]);
  });

  test("never gives what no cell can show: nothing at all, no number, or −0", () => {
    expect(cells.filter((cell) => cell === null || cell === undefined || Object.is(cell, -0) || Number.isNaN(cell))).toEqual([]);
  });

  test("is the same for the same seed and another for another", () => {
    const as = (seed: number) => JSON.stringify([...inputs(51, seed)].map(({ given }) => given));
    expect(as(1)).toBe(as(1));
    expect(as(2)).not.toBe(as(1));
  });
});

describe("the same answer as the bare call gives", () => {
  test.each([
    ["the headless engine", HEADLESS, IN_WORKBOOKS],
    ["the engine's model of the whole workbook", HEADLESS_BY_MODEL, IN_WORKBOOKS],
    ["the reader that Check works with", CHECK_READER, COUNT],
  ] as const)(
    "%s",
    async (_, host, count) => {
      expect(await tryOut(host, inputs(count, SEED), BATCH)).toEqual({ inputs: count, differences: [] });
    },
    120_000,
  );

  test.each([
    ["0, as in older builds", 0],
    ["null, as in newer builds and on the web", null],
    ["empty text, as a formula gives it", ""],
  ] as const)("the add-in's script in Excel's hands, with a blank as %s, whose answers differ only as the inputs warn of", async (_, blank) => {
    const { inputs: tried, differences, blanksForZeros } = await tryOut(customFunctionsHost(built.folder, blank), inputs(COUNT, SEED), BATCH);
    expect(differences).toEqual([]);
    // A side that had the same zeros could not tell.
    expect((blanksForZeros ?? 0) > 10).toBe(blank === 0);
    expect(tried).toBeGreaterThan(COUNT * 0.95);
  });
});
