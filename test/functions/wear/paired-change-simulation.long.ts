import { pairedChange } from "../../../src/functions/wear/paired-change.ts";
import { SeededNormal } from "../../helpers/normal.ts";
import { fromR } from "../../reference/r-values.ts";
import { ask } from "../ask.ts";

const U = 0.004;
const u = U / 2;
const RUNS = 8000;
const PAIRS = [2, 3, 4, 8];

interface Study {
  n: number;
  /** What has really changed, and how the gauge's u splits: `shared` of it is one setting for all readings of a measuring. */
  change: number;
  shared: number;
  common: string | number;
  matters?: number;
}

/** In what share of such studies the verdict begins so. The places lie where they like, each reading with its own error. */
function share({ n, change, shared, common, matters }: Study, begins: string, seed: number): number {
  const random = new SeededNormal(seed);
  let found = 0;
  for (let run = 0; run < RUNS; run++) {
    const places = Array.from({ length: n }, () => 73 + random.next());
    const read = (moved: number) => {
      const setting = random.normal(shared);
      return places.map((size) => size + moved + setting + random.normal(Math.sqrt(u ** 2 - shared ** 2)));
    };
    const [, row] = ask(pairedChange, [read(0)], [read(change)], U, matters, undefined, common) as (number | string)[][];
    if (String(row!.at(-1)).startsWith(begins)) found++;
  }
  return found / RUNS;
}

/** Where the true share is just this, so many studies come out above it by chance in one case of 200. */
const byChance = (truth: number): number => truth + 2.576 * Math.sqrt((truth * (1 - truth)) / RUNS);

// A mean alone, with its split known exactly: one in 20 differs, or fewer where the rule takes the larger of scatter and gauge.
describe.each(PAIRS)("%p places that have not changed", (n) => {
  test.each([
    ["no common part, and none there", 0, "none"],
    ["all of it moved with the setting, not split", 0.4 * U, ""],
    ["some of it moved with the setting, not split", 0.15 * U, ""],
    ["some of it moved with the setting, typed", 0.25 * U, 0.5 * U],
    ["most of it moved with the setting, typed", 0.4 * U, 0.8 * U],
  ] as const)("%s: 5 in 100 differ at most, but for chance", (_, shared, common) => {
    expect(share({ n, change: 0, shared, common }, "differs", 851 + n)).toBeLessThanOrEqual(byChance(0.05));
  });
});

describe.each(PAIRS)("%p places that have changed by just what matters", (n) => {
  test.each([
    ["none", 0],
    ["", 0.25 * U],
  ] as const)("are called the same in at most 5.5 of 100 (common %p)", (common, shared) => {
    const matters = 2 * U;
    expect(share({ n, change: matters, shared, common, matters }, "same within", 857 + n)).toBeLessThanOrEqual(0.055);
  });
});

// Power of the paired t test by R's power.t.test(type = "paired", strict = TRUE), which knows nothing of the gauge.
test.each([
  [2, 1],
  [3, 2],
  [4, 3],
  [8, 4],
])("a change of one and a half deviations of a change over %p places is found as often as by the paired t, less 3 points at most", (n, at) => {
  const change = 1.5 * Math.SQRT2 * u;
  expect(share({ n, change, shared: 0, common: "none" }, "differs", 863 + n)).toBeGreaterThanOrEqual(fromR("power-paired-t")[at - 1]! - 0.03);
});
