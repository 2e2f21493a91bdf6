const INF = Number.POSITIVE_INFINITY;

/**
 * SciPy 1.17.1 (BSD licence), scipy/sparse/csgraph/tests/test_matching.py,
 * `linear_sum_assignment_test_cases`: cost table, and the cost of each row in the only best pairing.
 */
export const SCIPY_CASES: readonly { costs: number[][]; each: number[] }[] = [
  {
    costs: [
      [400, 150, 400],
      [400, 450, 600],
      [300, 225, 300],
    ],
    each: [150, 400, 300],
  },
  {
    costs: [
      [400, 150, 400, 1],
      [400, 450, 600, 2],
      [300, 225, 300, 3],
    ],
    each: [150, 2, 300],
  },
  {
    costs: [
      [10, 10, 8],
      [9, 8, 1],
      [9, 7, 4],
    ],
    each: [10, 1, 7],
  },
  {
    costs: [
      [10, 10, 8, 11],
      [9, 8, 1, 1],
      [9, 7, 4, 10],
    ],
    each: [10, 1, 4],
  },
  {
    costs: [
      [10, INF, INF],
      [INF, INF, 1],
      [INF, 7, INF],
    ],
    each: [10, 1, 7],
  },
];

/**
 * Tables of costs (Lehmer generator below, reduced by `modulus`) and what SciPy 1.17.1 finds for them:
 * `sum` by `scipy.optimize.linear_sum_assignment`; `worst`, the least largest cost of a pair, by the
 * same on 0 and 1 with a bisection of the costs; `evenSum`, the least sum with no pair above `worst`.
 */
export const SCIPY_SUMS = [
  { seed: 1, rows: 12, columns: 12, modulus: 1000, sum: 1149, worst: 177, evenSum: 1231 },
  { seed: 2, rows: 30, columns: 30, modulus: 50, sum: 65, worst: 9, evenSum: 65 },
  { seed: 3, rows: 20, columns: 35, modulus: 1_000_000, sum: 735_100, worst: 108_777, evenSum: 736_928 },
  { seed: 4, rows: 60, columns: 60, modulus: 7, sum: 0, worst: 0, evenSum: 0 },
  { seed: 5, rows: 9, columns: 40, modulus: 100_000_000, sum: 19_049_241, worst: 4_456_457, evenSum: 19_049_241 },
  { seed: 6, rows: 100, columns: 100, modulus: 5000, sum: 7060, worst: 279, evenSum: 7060 },
] as const;

/** Row by row, x ← 16807 x mod (2³¹ − 1) (Park and Miller, Comm. ACM 31(10), 1988), each reduced by `modulus`. */
export function lehmerTable({ seed, rows, columns, modulus }: { seed: number; rows: number; columns: number; modulus: number }): number[][] {
  let x = seed;
  const next = () => {
    x = (x * 16_807) % 2_147_483_647;
    return x % modulus;
  };
  return Array.from({ length: rows }, () => Array.from({ length: columns }, next));
}

/** The example of H. T. Lau, A Java Library of Graph Algorithms and Optimization, bottleneck assignment; its optimum by enumeration of all 120 pairings. */
export const LAU_BOTTLENECK = {
  costs: [
    [9, 6, 8, 4, 7],
    [8, 7, 6, 8, 3],
    [7, 4, 3, 5, 6],
    [9, 8, 3, 7, 6],
    [8, 7, 3, 6, 5],
  ],
  worst: 7,
} as const;
