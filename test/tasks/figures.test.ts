import { growthOf, type Moment } from "../long-use/figures.ts";
import { FOLDERS, sharesOf } from "./coverage.ts";
import { figuresTable } from "./figures.ts";

const run = {
  code: "a",
  seed: 1,
  from: 0,
  inputs: 60_000,
  results: 40_000,
  refusals: 19_999,
  defects: 1,
  worstMilliseconds: 1500,
  peakMegabytes: 180,
  open: [7],
  levels: {},
};
const moment = (edits: number, megabytes: number): Moment => ({ edits, checks: edits / 10, megabytes, nodes: 900, listeners: 90 });

test("the table says what each task has kept, runs of one task together", () => {
  const table = figuresTable({
    fuzz: [run, { ...run, seed: 2, defects: 0, results: 40_001, worstMilliseconds: 2340, peakMegabytes: 170 }],
    longUse: {
      edits: 10_000,
      checks: 1000,
      series: [moment(250, 30), moment(10_000, 30.2)],
      growth: 0.02,
      large: [{ workbook: "100 sheets", opened: 5.8, checked: 3, scrolled: 2.2, megabytes: 32.1 }],
    },
    parity: { functions: 51, hosts: [{ host: "bench in a browser", inputs: 5100, differences: 0 }] },
    mutation: [
      { folder: "rings", tried: 10, noticed: 10, score: 100 },
      { folder: "all", tried: 2697, noticed: 2574, score: 95.4 },
    ],
    coverage: [{ folder: "src/core", statements: 99.1, branches: 97.5 }],
  });
  expect(table.split("\n")).toEqual([
    "| what | figure | from |",
    "|---|---|---|",
    "| damaged inputs tried | 120,000: 80,001 results, 39,998 refused in a sentence, 1 defects | `npm run fuzz` |",
    "| longest input, largest process | 2.3 s of the processor, 180 MB | `npm run fuzz` |",
    "| bench and pane through 10,000 edits and 1,000 checks | 30.0 → 30.2 MB, 900 → 900 nodes, 90 → 90 listeners | `npm run long-use` |",
    "| a workbook of 100 sheets in the browser, other work beside it | opened in 5.8 s, checked in 3.0 s, scrolled in 2.2 s, 32.1 MB | `npm run long-use` |",
    "| same answer: bench in a browser | 5,100 calls, 0 differences | `npm run parity` |",
    "| changes of the code that a test notices | 95.4 % (2,574 of 2,697) | `npm run mutation` |",
    "| run by tests: src/core | 99.1 % of statements, 97.5 % of branches | `npm run coverage` |",
    "",
  ]);
});

test("a task that has not run has no line", () => {
  expect(figuresTable({})).toBe("");
  expect(figuresTable({ coverage: [] })).toBe("");
});

test("memory that grows with the edits is told from memory that only moves about", () => {
  const growing = Array.from({ length: 20 }, (_, i) => moment(500 * (i + 1), 30 + i));
  const still = Array.from({ length: 20 }, (_, i) => moment(500 * (i + 1), 30 + (i % 2)));
  // 1 MB in 500 edits.
  expect(growthOf(growing)).toBe(2);
  expect(Math.abs(growthOf(still))).toBeLessThan(0.05);
  expect(growthOf([moment(1, 30)])).toBe(0);
  // What the engine fills at first is not growth.
  expect(growthOf([moment(1, 5), moment(2, 15), ...Array.from({ length: 6 }, (_, i) => moment(100 * (i + 1), 30))])).toBe(0);
});

test("shares of statements and branches are those of each folder's own files", () => {
  const files = {
    "src/core/a.ts": { s: { 0: 1, 1: 0 }, b: { 0: [1, 0, 3, 4] } },
    "src/math/b.ts": { s: { 0: 9 }, b: {} },
    "src/pane/c.ts": { s: { 0: 0 }, b: {} },
  };
  const shares = new Map(sharesOf(files).map(({ folder, ...share }) => [folder, share]));
  expect([...shares.keys()]).toEqual(FOLDERS);
  expect(shares.get("src/core")).toEqual({ statements: 50, branches: 75 });
  for (const folder of FOLDERS.filter((one) => one !== "src/core")) expect([folder, shares.get(folder)]).toEqual([folder, { statements: 100, branches: 100 }]);
});
