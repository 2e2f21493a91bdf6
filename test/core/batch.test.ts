import fc from "fast-check";
import { BATCH_FROM } from "../../src/core/batch.ts";
import type { Argument, Cell } from "../../src/core/cell.ts";
import type { Spec } from "../../src/core/define.ts";
import { call } from "../../src/core/lift.ts";
import type { Param } from "../../src/core/param.ts";
import { specs } from "../../src/functions/index.ts";

const looped = specs.filter((spec) => spec.loop);

/** Mostly numbers that fit the param, then its bounds and their neighbours, and whatever else a cell can hold. */
function cellFor({ bounds, quantity }: Param<unknown>): fc.Arbitrary<Cell> {
  const { low = -5, high = low + 100, choices } = bounds;
  if (choices) return fc.constantFrom(...choices);
  if (quantity === "text" || quantity === "truth") return fc.constantFrom("in", "mm", "iron", "aluminium", true);
  const edges = [low, high, low + 1e-9, low - 1e-9, high + 1e-10, high - 1e-9, 0, -0, 1e15];
  return fc.oneof(
    { weight: 30, arbitrary: fc.double({ min: low, max: high, noNaN: true }) },
    { weight: 30, arbitrary: fc.integer({ min: Math.ceil(low), max: Math.floor(Math.max(high, low + 1)) }) },
    { weight: 3, arbitrary: fc.constantFrom(...edges) },
    {
      weight: 1,
      arbitrary: fc.constantFrom<Cell[]>(null, undefined, "", " ", "73.01", "73,01", "text", true, Number.NaN, "#N/A", { error: "#DIV/0!" }, "check: x"),
    },
  );
}

const block = (param: Param<unknown>, rows: number, columns: number): fc.Arbitrary<Argument> =>
  fc.array(fc.array(cellFor(param), { minLength: columns, maxLength: columns }), { minLength: rows, maxLength: rows });

/** Arguments of one call: whole blocks, one row or column, one cell, or left out at the end. */
function argumentsFor({ inputs }: Spec): fc.Arbitrary<Argument[]> {
  const shape = fc.record({ rows: fc.integer({ min: 8, max: 12 }), columns: fc.integer({ min: 8, max: 12 }) });
  return shape.chain(({ rows, columns }) => {
    const given = inputs.map(({ param }, i): fc.Arbitrary<Argument> => {
      const whole = block(param, rows, columns);
      if (i === 0) return whole;
      return fc.oneof(whole, block(param, 1, columns), block(param, rows, 1), cellFor(param));
    });
    const needed = inputs.filter(({ param }) => !param.isOptional).length;
    return fc.tuple(fc.tuple(...given), fc.integer({ min: needed, max: inputs.length })).map(([args, count]) => args.slice(0, count));
  });
}

describe("a large block comes to what its elements come to one by one", () => {
  test.each(looped.map((spec) => [spec.name, spec] as const))("%s", (_, spec) => {
    fc.assert(
      fc.property(argumentsFor(spec), (args) => {
        expect(call(spec, args)).toStrictEqual(call({ ...spec, loop: undefined }, args));
      }),
      { numRuns: 15 },
    );
  });
});

test("the loop of a function is what fills a large block, and asks for a closer look where one is needed", () => {
  const { loop } = looped.find(({ name }) => name === "CLEARANCE")!;
  const rows: number[] = [];
  const spec: Spec = {
    ...looped.find(({ name }) => name === "CLEARANCE")!,
    loop: (compute, feeds, row, columns, closer) => {
      rows.push(row);
      return loop!(compute, feeds, row, columns, closer);
    },
  };
  const holes = Array.from({ length: BATCH_FROM }, (_, i): Cell[] => [i === 3 ? "x" : i === 5 ? null : 73.04]);
  const made = call(spec, [holes, 73]) as Cell[][];
  expect(rows).toHaveLength(BATCH_FROM);
  expect(made.flat().slice(0, 6)).toEqual([0.04, 0.04, 0.04, expect.stringMatching(/^check: hole/), 0.04, ""]);
});
