import { openWorkbook } from "../../src/hosts/file.ts";
import { bookFile, clearanceRows, NATIVE, OURS } from "./book-file.ts";
import { type BenchmarkLine, ratioLine, summary } from "./measure.ts";
import { selfTimes } from "./profile.ts";
import { report } from "./report.ts";

test("a timing is the median of the runs with the least and the most", () => {
  expect(summary([30, 10, 50, 20, 40])).toEqual({ median: 30, least: 10, most: 50 });
});

describe("the page of results", () => {
  const line = (rest: Partial<BenchmarkLine>): BenchmarkLine => ({ what: "work", measured: "2.0 ms", yardstick: "1.0 ms", unit: "×", ...rest });
  const rowOf = (rest: Partial<BenchmarkLine>): string =>
    report([line(rest)], [], 1)
      .split("\n")
      .find((text) => text.startsWith("| work"))!;

  test.each<[string, Partial<BenchmarkLine>, string]>([
    ["at most", { value: 2, aim: 2 }, "| 2.00 × | ≤ 2 × | met |"],
    ["at most", { value: 2.1, aim: 2 }, "| 2.10 × | ≤ 2 × | **missed** |"],
    ["at least", { value: 1.8, aim: 1.7, atLeast: true }, "| 1.80 × | ≥ 1.7 × | met |"],
    ["at least", { value: 1.6, aim: 1.7, atLeast: true }, "| 1.60 × | ≥ 1.7 × | **missed** |"],
    ["only told", { value: 3 }, "| 3.00 × | – | – |"],
    ["without its yardstick", { aim: 2 }, "| – | ≤ 2 × | not measured |"],
  ])("says of an aim whether it is met: %s", (_, rest, wanted) => {
    expect(rowOf(rest)).toBe(`| work | 2.0 ms | 1.0 ms ${wanted}`);
  });

  test("explains what is missed by its profile, and only that", () => {
    const timing = (median: number) => ({ median, least: median, most: median });
    const lines = [
      ratioLine("slow", timing(9), timing(1), { aim: 2, profile: "slow work" }),
      ratioLine("quick", timing(1), timing(1), { aim: 2, profile: "quick work" }),
    ];
    const page = report(
      lines,
      [
        { of: "slow work", self: [{ where: "spin — spin.ts:3", share: 0.75 }] },
        { of: "quick work", self: [] },
      ],
      1,
    );
    expect(page).toContain("### slow work\n\n| share | where |\n|---|---|\n| 75.0 % | `spin — spin.ts:3` |");
    expect(page).not.toContain("### quick work");
  });
});

test("time spent in a function itself is told by its share of what was not waiting", () => {
  const frame = (id: number, functionName: string, url = "", lineNumber = 0) => ({ id, callFrame: { functionName, url, lineNumber } });
  const nodes = [frame(1, "(idle)"), frame(2, "add", "file:///a/sum.ts", 9), frame(3, ""), frame(4, "add", "file:///a/sum.ts", 9)];
  expect(selfTimes({ nodes, samples: [1, 2, 3, 4], timeDeltas: [500, 20, 10, 10] })).toEqual({
    self: [
      { where: "add — sum.ts:10", share: 0.75 },
      { where: "(anonymous)", share: 0.25 },
    ],
    busy: 40,
  });
});

test("the sheet of our formulas and that of native ones come to the same", async () => {
  const [ours, native] = await Promise.all(
    [OURS, NATIVE].map(async (formulas) => (await (await openWorkbook(bookFile(clearanceRows(200, formulas)), "x.xlsx")).read()).sheets[0]!),
  );
  const verdicts = (sheet: typeof ours) => sheet!.values.slice(1).map((row) => row[3]);
  expect(verdicts(ours)).toHaveLength(100);
  expect(new Set(verdicts(ours))).toEqual(new Set(["within", "over", "under"]));
  expect(verdicts(ours)).toEqual(verdicts(native));
  for (const [i, row] of ours!.values.slice(1).entries()) expect(row[2]).toBeCloseTo(native!.values[i + 1]![2] as number, 9);
});
