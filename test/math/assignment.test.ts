import fc from "fast-check";
import { assign, assignEvenly, type Costs } from "../../src/math/assignment.ts";
import { leastBy, pairings } from "../helpers/pairings.ts";
import { LAU_BOTTLENECK, lehmerTable, SCIPY_CASES, SCIPY_SUMS } from "../reference/assignment.ts";

const INF = Number.POSITIVE_INFINITY;
const costsOf = (costs: Costs, pairing: readonly number[]) => pairing.map((column, row) => (column < 0 ? 0 : costs[row]![column]!));
const sumOf = (costs: Costs, pairing: readonly number[]) => costsOf(costs, pairing).reduce((a, b) => a + b, 0);
const worstOf = (costs: Costs, pairing: readonly number[]) => costsOf(costs, pairing).reduce((a, b) => Math.max(a, b), 0);
const transpose = (costs: Costs) => costs[0]!.map((_, column) => costs.map((row) => row[column]!));

describe("cited values", () => {
  test.each(SCIPY_CASES)("SciPy's own case of costs $each", ({ costs, each }) => {
    expect(costsOf(costs, assign([costs])!)).toEqual(each);
    expect(
      costsOf(transpose(costs), assign([transpose(costs)])!)
        .filter((cost) => cost > 0)
        .sort(),
    ).toEqual([...each].sort());
  });

  test.each(SCIPY_SUMS)("the table of $rows × $columns from seed $seed costs what SciPy finds", (given) => {
    const costs = lehmerTable(given);
    expect(sumOf(costs, assign([costs])!)).toBe(given.sum);
    const even = assignEvenly(costs)!;
    expect([worstOf(costs, even), sumOf(costs, even)]).toEqual([given.worst, given.evenSum]);
  });

  test("Lau's bottleneck example has no pairing without a cost of 7", () => {
    expect(worstOf(LAU_BOTTLENECK.costs, assignEvenly(LAU_BOTTLENECK.costs)!)).toBe(LAU_BOTTLENECK.worst);
  });
});

/** Tables of one shape, of few different costs so that ties abound, some pairs forbidden. */
const tables = (sizes: readonly number[], count: number) =>
  fc.tuple(fc.constantFrom(...sizes), fc.constantFrom(...sizes)).chain(([rows, columns]) => {
    const table = (cost: fc.Arbitrary<number>) => fc.array(fc.array(cost, { minLength: columns, maxLength: columns }), { minLength: rows, maxLength: rows });
    const first = table(fc.oneof({ weight: 4, arbitrary: fc.nat(5) }, { weight: 1, arbitrary: fc.constant(INF) }));
    return fc.tuple(first, ...Array.from({ length: count - 1 }, () => table(fc.nat(3))));
  });

describe("against every pairing there is", () => {
  const bySum = (orders: readonly Costs[]) => leastBy(pairings(orders[0]!.length, orders[0]![0]!.length), (p) => orders.map((costs) => sumOf(costs, p)));
  const evenly = (costs: Costs) => leastBy(pairings(costs.length, costs[0]!.length), (p) => [worstOf(costs, p), sumOf(costs, p)]);

  test.each([
    ["1 to 5", [1, 2, 3, 4, 5], 600],
    ["6", [6], 40],
    ["7", [7], 12],
  ])("one table, sizes %s: the very pairing, ties to the earliest columns", (_, sizes, numRuns) => {
    fc.assert(
      fc.property(tables(sizes as number[], 1), ([costs]) => {
        const best = bySum([costs!]);
        expect(assign([costs!])).toEqual(best.keys[0] === INF ? undefined : best.pairing);
      }),
      { numRuns: numRuns as number },
    );
  });

  test.each([
    ["1 to 5", [1, 2, 3, 4, 5], 600],
    ["6 and 7", [6, 7], 20],
  ])("three tables, sizes %s: the first decides, then the second, then the third", (_, sizes, numRuns) => {
    fc.assert(
      fc.property(tables(sizes as number[], 3), (orders) => {
        const best = bySum(orders);
        expect(assign(orders)).toEqual(best.keys[0] === INF ? undefined : best.pairing);
      }),
      { numRuns: numRuns as number },
    );
  });

  test.each([
    ["1 to 5", [1, 2, 3, 4, 5], 600],
    ["6 and 7", [6, 7], 30],
  ])("evenly, sizes %s: the worst pair first, then the sum", (_, sizes, numRuns) => {
    fc.assert(
      fc.property(tables(sizes as number[], 1), ([costs]) => {
        const best = evenly(costs!);
        expect(assignEvenly(costs!)).toEqual(best.keys[0] === INF ? undefined : best.pairing);
      }),
      { numRuns: numRuns as number },
    );
  });
});

describe("identities", () => {
  test("adding the same to every cost of a row or a column changes no pairing", () => {
    fc.assert(
      fc.property(tables([4, 5], 1), fc.nat(9), ([costs], more) => {
        fc.pre(costs!.length <= costs![0]!.length);
        const shifted = costs!.map((row, r) => row.map((cost) => cost + (r === 1 ? more : 0)));
        expect(assign([shifted])).toEqual(assign([costs!]));
      }),
    );
  });

  test("a million times the costs is the same pairing", () => {
    fc.assert(
      fc.property(tables([3, 5, 7], 2), (orders) => {
        expect(assign(orders.map((costs) => costs.map((row) => row.map((cost) => cost * 1e6))))).toEqual(assign(orders));
      }),
    );
  });
});

describe("at the limits", () => {
  test("one row and one column meet, unless they must not", () => {
    expect(assign([[[5]]])).toEqual([0]);
    expect(assign([[[INF]]])).toBeUndefined();
    expect(assignEvenly([[INF]])).toBeUndefined();
  });

  test("where all costs are equal each row keeps its own place", () => {
    const flat = Array.from({ length: 40 }, () => new Array<number>(40).fill(3));
    expect(assign([flat])).toEqual(flat.map((_, row) => row));
    expect(assignEvenly(flat)).toEqual(flat.map((_, row) => row));
  });

  test("no pair allowed at all leaves no pairing, whichever side is the longer", () => {
    for (const [rows, columns] of [
      [1, 3],
      [2, 2],
      [2, 5],
      [4, 4],
    ]) {
      const none = Array.from({ length: rows! }, () => new Array<number>(columns!).fill(INF));
      expect(assign([none])).toBeUndefined();
      expect(assign([none.map((row) => row.map(() => 0)), none])).toBeUndefined();
      expect(assignEvenly(none)).toBeUndefined();
    }
  });

  // By hand: both rows like the first column best, and what it saves is lost by any pairing without it.
  test("a later table without any costs leaves what the first has decided", () => {
    const first = [
      [1, 2, 2],
      [1, 2, 2],
    ];
    expect(
      assign([
        first,
        [
          [0, 0, 0],
          [0, 0, 0],
        ],
      ]),
    ).toEqual([0, 1]);
  });

  test("two rows that share their only column cannot both be paired", () => {
    expect(
      assign([
        [
          [1, INF, INF],
          [2, INF, INF],
          [3, 4, 5],
        ],
      ]),
    ).toBeUndefined();
  });
});
