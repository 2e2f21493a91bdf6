import fc from "fast-check";
import { maximise } from "../../src/math/linear-programme.ts";
import { cramer, threesOf } from "../helpers/cramer.ts";

const worth = (prices: readonly number[], column: readonly number[]) => prices.reduce((sum, price, r) => sum + price * column[r]!, 0);

/** The most that can be gained, by trying every three columns: an optimum of three rows needs no more of them. */
function mostGained(columns: readonly (readonly number[])[], gains: readonly number[], totals: readonly number[]): number {
  let most = Number.NEGATIVE_INFINITY;
  for (const three of threesOf([...columns.keys()])) {
    const shares = cramer(
      totals.map((_, r) => three.map((i) => columns[i]![r]!)),
      totals,
    );
    if (shares?.every((share) => share >= -1e-9))
      most = Math.max(
        most,
        shares.reduce((sum, share, n) => sum + share * gains[three[n]!]!, 0),
      );
  }
  return most;
}

describe("cited values", () => {
  // F. S. Hillier, G. J. Lieberman, Introduction to Operations Research, the glass company's doors and windows (from memory):
  // most 3x + 5y with x ≤ 4, 2y ≤ 12, 3x + 2y ≤ 18 is 36 at x = 2, y = 6; shadow prices 0, 3/2 and 1.
  test("doors and windows: prices 0, 1.5 and 1, with doors, windows and room to spare in the first plant", () => {
    const columns = [
      [1, 0, 3],
      [0, 2, 2],
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ];
    const { prices, support } = maximise(columns, [3, 5, 0, 0, 0], [4, 12, 18], [2, 3, 4]);
    for (const [r, price] of [0, 1.5, 1].entries()) expect(prices[r]).toBeCloseTo(price, 12);
    expect([...support].sort()).toEqual([0, 1, 2]);
  });

  // E. M. L. Beale, Cycling in the dual simplex algorithm, 1955 (from memory): the rule of the steepest gain runs in a circle
  // here; the optimum is 5/4 with shares of 1 in the first and third column.
  test("the example in which the simplex method can run in a circle comes to 5/4", () => {
    const columns = [
      [1 / 4, 1 / 2, 0],
      [-8, -12, 0],
      [-1, -1 / 2, 1],
      [9, 3, 0],
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ];
    const gains = [3 / 4, -20, 1 / 2, -6, 0, 0, 0];
    const { prices, support } = maximise(columns, gains, [0, 0, 1], [4, 5, 6]);
    expect(prices[2]).toBeCloseTo(5 / 4, 12);
    expect(support).toEqual(expect.arrayContaining([0, 2]));
    for (const [i, column] of columns.entries()) expect(worth(prices, column)).toBeGreaterThanOrEqual(gains[i]! - 1e-9);
  });
});

describe("identities", () => {
  const column = fc.tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 9 }));
  const programme = fc.record({ bought: fc.array(fc.tuple(column, fc.integer({ min: -3, max: 9 })), { minLength: 1, maxLength: 7 }), totals: column });

  test("at the optimum no column gains more than it costs, and those with a share gain just that", () => {
    fc.assert(
      fc.property(programme, ({ bought, totals }) => {
        // What is left over of each total is a column of no gain. Each column takes of the first total, so none grows without end.
        const columns = [...bought.map(([own]) => [...own]), [1, 0, 0], [0, 1, 0], [0, 0, 1]];
        const gains = [...bought.map(([, gain]) => gain), 0, 0, 0];
        const n = bought.length;
        const { prices, support } = maximise(columns, gains, totals, [n, n + 1, n + 2]);
        for (const [i, own] of columns.entries()) {
          expect(worth(prices, own)).toBeGreaterThanOrEqual(gains[i]! - 1e-9);
          if (support.includes(i)) expect(worth(prices, own)).toBeCloseTo(gains[i]!, 9);
        }
        // What a price is paid for is used up: its column of leftovers has no share.
        for (let r = 0; r < 3; r++) if (prices[r]! > 1e-9) expect(support).not.toContain(n + r);
        expect(support.length).toBeLessThanOrEqual(3);
        expect(worth(prices, totals)).toBeCloseTo(mostGained(columns, gains, totals), 6);
      }),
    );
  });
});

// Two readings opposite each other hold a circle, and the one beside them that the method needs for its three rows has no part in it.
test("a column of the basis that has no share is not told", () => {
  const points = [
    [1, 1, 0],
    [1, 0, 1],
    [1, -1, 0],
    [1, 0, -1],
  ];
  const { prices, support } = maximise(points, [1, 0, 1, 0], [1, 0, 0], [0, 1, 2]);
  expect(prices[0]).toBeCloseTo(1, 12);
  expect([...support].sort()).toEqual([0, 2]);
});

// Found by trial: two totals are 0, so that many steps gain nothing. A column that enters by its lowest index is not enough then:
// where of equals the first, the last or the highest column leaves, one of these runs in a circle.
test.each([
  {
    first: [-2, 1, 1, 9, -4, 0],
    second: [-4, 0, 7, 3, -9, 1],
    gains: [-5, 0, -5, 7, -8, 0],
    start: [1, 5],
  },
  {
    first: [0, -6, 6, -9, 5, 3, 1],
    second: [1, -5, 9, -4, 1, 10, 0],
    gains: [0, -4, 5, 6, -7, 7, 0],
    start: [6, 0],
  },
])("steps that gain nothing come to an end: %#", ({ first, second, gains, start }) => {
  const columns = [...first.map((share, i) => [share, second[i]!, 1]), [0, 0, 1]];
  const { prices } = maximise(columns, [...gains, 0], [0, 0, 1], [...start, first.length]);
  expect(prices[2]).toBeCloseTo(mostGained(columns, [...gains, 0], [0, 0, 1]), 9);
});
