import { wearLife } from "../../../src/functions/wear/wear-life.ts";
import { studentQuantile } from "../../../src/math/distributions.ts";
import { lineThrough, meetingOf } from "../../../src/math/regression.ts";
import { SeededNormal } from "../../helpers/normal.ts";
import { ask } from "../ask.ts";

const U = 0.004;
const u = U / 2;
/** The coarsest gauge of which such a U is honest. */
const RESOLUTION = U / 5;
const LAST = 1000;
/** The limit is worn to half as much again as has been seen. */
const LIFE = 1500;
const RUNS = 8000;

/** Sizes of a part that wears by so much over the measurings, as an honest gauge of this resolution reads them. */
function measured(random: SeededNormal, use: readonly number[], wear: number): { size: number[]; limit: number } {
  // Where the sizes lie on the gauge's steps is chance.
  const start = 73 + random.next() * RESOLUTION;
  const own = Math.sqrt(u ** 2 - RESOLUTION ** 2 / 12);
  const size = use.map((x) => Math.round((start + (wear * x) / LAST + random.normal(own)) / RESOLUTION) * RESOLUTION);
  return { size, limit: start + (wear * LIFE) / LAST };
}

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;

describe.each([
  [3, 6],
  [3, 12],
  [4, 6],
  [4, 12],
  [6, 6],
  [6, 12],
])("%p measurings of a wear of %p U, with a gauge as good as its U", (n, timesU) => {
  const random = new SeededNormal(811_000 + 100 * n + timesU);
  const use = Array.from({ length: n }, (_, i) => (LAST * i) / (n - 1));
  const found = { covered: 0, tooEarly: 0, widths: [] as number[], withVarianceKnown: [] as number[] };
  for (let run = 0; run < RUNS; run++) {
    const { size, limit } = measured(random, use, timesU * U);
    const [, values] = ask(wearLife, [use], [size], limit, U) as (number | string)[][];
    const [, earliest, latest, notBefore] = values!.map((value) => (value === "" ? undefined : (value as number)));
    const [from, to] = [earliest ?? notBefore ?? Number.NEGATIVE_INFINITY, latest ?? Number.POSITIVE_INFINITY];
    if (LIFE >= from && LIFE <= to) found.covered++;
    if (LIFE < from) found.tooEarly++;
    found.widths.push(to - from);
    const known = meetingOf(lineThrough(use, size)!, limit, studentQuantile(0.95, Number.POSITIVE_INFINITY), u ** 2);
    found.withVarianceKnown.push(known.slopeIsReal ? known.latest - known.earliest : Number.POSITIVE_INFINITY);
  }

  test("the band holds the true life in at least 93 of 100 cases", () => {
    expect(found.covered / RUNS).toBeGreaterThanOrEqual(0.93);
  });

  test("the part is worn out before the earliest in at most 2.5 of 100 cases", () => {
    expect(found.tooEarly / RUNS).toBeLessThanOrEqual(0.025);
  });

  test("the band is at most 1.3 times as wide as if the variance were known, by the median", () => {
    expect(median(found.widths) / median(found.withVarianceKnown)).toBeLessThanOrEqual(1.3);
  });
});
