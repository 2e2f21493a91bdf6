import fc from "fast-check";
import { broadcast } from "../../src/core/broadcast.ts";
import type { Argument, Cell } from "../../src/core/cell.ts";
import { define, type Spec, value } from "../../src/core/define.ts";
import { Fault } from "../../src/core/fault.ts";
import { count, number, text } from "../../src/core/inputs.ts";
import type { Param } from "../../src/core/param.ts";
import { checkText } from "../../src/core/sentences.ts";
import { specs } from "../../src/functions/index.ts";
import { ask } from "../functions/ask.ts";
import { about } from "./about.ts";

/** Functions that give one value for single cells, numbers among them. */
const elementWise = specs.filter(
  ({ returns, inputs }) =>
    returns.kind === "value" && inputs.every(({ param }) => param.broadcastKind === "element") && inputs.some(({ param }) => param.takesAnyNumber),
);

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

/** The cell of an argument that one element of the results is made from. */
function cellAt(given: Argument, row: number, column: number): Cell {
  if (!Array.isArray(given)) return given as Cell;
  const line = given[given.length === 1 ? 0 : row]!;
  return line[line.length === 1 ? 0 : column];
}

/** What each element comes to when it is asked for alone, a fault as the text of its cell. */
function oneByOne(spec: Spec, args: readonly Argument[]): unknown[][] {
  const blocks = args.filter(Array.isArray);
  const rows = Math.max(...blocks.map((block) => block.length));
  const columns = Math.max(...blocks.map((block) => block[0].length));
  return Array.from({ length: rows }, (_, r) =>
    Array.from({ length: columns }, (__, c) => {
      const alone = broadcast(
        spec,
        args.map((given) => cellAt(given, r, c)),
      );
      return alone instanceof Fault ? checkText(alone) : alone;
    }),
  );
}

describe("a large block comes to what its elements come to one by one", () => {
  test.each(elementWise.map((spec) => [spec.name, spec] as const))("%s", (_, spec) => {
    fc.assert(
      fc.property(argumentsFor(spec), (args) => {
        expect(broadcast(spec, args)).toStrictEqual(oneByOne(spec, args));
      }),
      { numRuns: 15 },
    );
  });
});

describe("what all elements of a block share", () => {
  const product = define({
    ...about,
    name: "PRODUCT",
    params: { a: number("a"), b: number("b").default(2) },
    returns: value(""),
    compute: ({ a, b }) => a * b,
  });
  const column = (cell: Cell) => Array.from({ length: 100 }, () => [cell]);

  test("is one cell, a range of one cell, a row beside a column, or left out", () => {
    expect(ask(product, column(3), 5)).toEqual(column(15));
    expect(ask(product, [new Array(100).fill(1)], [[5]])).toEqual([new Array(100).fill(5)]);
    expect(ask(product, column(3), [[1, 2]])).toEqual(column(3).map(() => [3, 6]));
    expect(ask(product, column(3))).toEqual(column(6));
  });

  test("leaves every element blank where it is blank, and is said in every cell where it is bad", () => {
    expect(ask(product, "", column(1))).toEqual(column(""));
    expect(ask(product, column(3), "x")).toEqual(column('check: b holds the text "x": it must be a number'));
  });

  test("may be a word, and what may be left out is not given to compute", () => {
    const worded = define({
      ...about,
      name: "WORDED",
      params: { a: number("a"), b: number("b").optional(), c: text("c") },
      returns: value(""),
      compute: ({ a, b, c }) => `${a} ${b} ${c}`,
    });
    expect(ask(worded, column(3), undefined, "iron")).toEqual(column("3 undefined iron"));
    expect(ask(worded, column(3), 7, "iron")).toEqual(column("3 7 iron"));
  });

  test("goes the same way where every element is a whole number", () => {
    const counted = define({ ...about, name: "COUNTED", params: { n: count("n") }, returns: value(""), compute: ({ n }) => n });
    expect(ask(counted, column(3))).toEqual(column(3));
    expect(ask(counted, column(3.5))).toEqual(column("check: n 3.5 is not a whole number: it must be a whole number of at least 1"));
  });
});
