import type { NumberGrid } from "../../../src/core/param.ts";
import { liftCurve } from "../../../src/functions/valves/lift-curve.ts";

const gridOf = (rows: (number | null)[][]): NumberGrid => ({ rows: rows.length, columns: rows[0]!.length, values: rows.flat() });
const across = (...cells: (number | null)[]) => gridOf([cells]);
const down = (...cells: (number | null)[]) => gridOf(cells.map((cell) => [cell]));

const PAIRS = [
  { angle: 0, lift: 1 },
  { angle: 10, lift: 2 },
];

test("angles and lifts may stand in rows, in columns, or one so and the other so", () => {
  for (const angles of [across(0, 10), down(0, 10)]) for (const lifts of [across(1, 2), down(1, 2)]) expect(liftCurve(angles, lifts)).toEqual(PAIRS);
});

test("blocks pair cell by cell where they are of one shape, and are refused where they are not", () => {
  const block = gridOf([
    [0, 10],
    [20, 30],
  ]);
  expect(liftCurve(block, block)).toHaveLength(4);
  const wide = gridOf([
    [0, 10, 20],
    [30, 40, 50],
  ]);
  const high = gridOf([
    [0, 10],
    [20, 30],
    [40, 50],
  ]);
  expect(liftCurve(wide, high)).toMatchObject({ code: "shape", param: "angles", got: "2×3", want: "lifts of 3×2" });
  expect(liftCurve(across(0, 10), across(1, 2, 3))).toMatchObject({ code: "shape", param: "angles", got: "1×2", want: "lifts of 1×3" });
  expect(liftCurve(across(0, 10, 20, 30), block)).toHaveLength(4);
});

test("unused cells at the end of both are none, one that only one of both has waits", () => {
  expect(liftCurve(across(0, 10, null), across(1, 2, null))).toEqual(PAIRS);
  for (const [angles, lifts] of [
    [across(0, 10, 20), across(1, 2, null)],
    [across(0, 10, null), across(1, 2, 3)],
    [across(0, null, 20), across(1, 2, 3)],
    [across(0, 10, 20), across(1, null, 3)],
  ] as const)
    expect(liftCurve(angles, lifts)).toBeUndefined();
});
