import { broadcast } from "../../src/core/broadcast.ts";
import { define, row, table, value } from "../../src/core/define.ts";
import { type Fault, refuse } from "../../src/core/fault.ts";
import { length, number } from "../../src/core/inputs.ts";
import { ask } from "../functions/ask.ts";
import { about } from "./about.ts";

const product = define({
  ...about,
  name: "PRODUCT",
  params: { a: number("a"), b: number("b").default(2) },
  returns: value(""),
  compute: ({ a, b }) => (a === 13 ? refuse("a", a, "not this one") : a * b),
});

const pair = define({ ...about, name: "PAIR", params: { a: length("a") }, returns: row(["once", "twice"], ""), compute: ({ a }) => [a, 2 * a] });
const plan = define({ ...about, name: "PLAN", params: { a: length("a") }, returns: table(""), compute: ({ a }) => [["a"], [a]] });

const faultOf = (...asked: Parameters<typeof ask>) => (ask(...asked) as { sentence: string }).sentence;

describe("numbers taken one by one", () => {
  test("spread a line, a column and a block over one another", () => {
    expect(ask(product, 3)).toBe(6);
    expect(ask(product, [[3]], [[5]])).toBe(15);
    expect(ask(product, [[1], [2]], [[10, 20, 30]])).toEqual([
      [10, 20, 30],
      [20, 40, 60],
    ]);
    expect(
      ask(
        product,
        [
          [1, 2],
          [3, 4],
        ],
        [[10], [100]],
      ),
    ).toEqual([
      [10, 20],
      [300, 400],
    ]);
    expect(
      ask(
        product,
        [
          [1, 2],
          [3, 4],
        ],
        [[10, 100]],
      ),
    ).toEqual([
      [10, 200],
      [30, 400],
    ]);
  });

  test("take their default where a cell is blank or nothing is given, and stay blank where there is none", () => {
    expect(ask(product, [[3], [null], [4]], [[null], [5], [6]])).toEqual([[6], [""], [24]]);
    expect(ask(product, 3, "")).toBe(6);
    expect(ask(product, null)).toBe("");
  });

  test("that the function refuses, or that give no finite number, are said in their own place", () => {
    expect(ask(product, [[13], [1]])).toEqual([["check: a 13: not this one"], [2]]);
    expect(faultOf(product, 13)).toBe("PRODUCT: a 13: not this one");
    expect(faultOf(product, 1e300, 1e300)).toBe("PRODUCT: a 1e+300: the result is not a finite number with these inputs");
  });

  test("of sizes that do not go together are refused with both", () => {
    const rule = "ranges must be of one size, or one row, one column or one cell";
    expect(faultOf(product, [[1, 2]], [[1, 2, 3]])).toBe(`PRODUCT: a is 1×2 cells, which does not fit b of 1×3: ${rule}`);
    expect(faultOf(product, [[1], [2], [3]], [[1], [2]])).toBe(`PRODUCT: b is 2×1 cells, which does not fit a of 3×1: ${rule}`);
  });

  test("too many or too few are refused, and said in words", () => {
    const none = define({ ...about, name: "NONE", params: {}, returns: value(""), compute: () => 1 });
    expect(ask(none)).toBe(1);
    expect(faultOf(none, 1)).toBe("NONE: takes no inputs, 1 is given");
    expect(faultOf(pair, 1, 2)).toBe("PAIR: takes 1 input (a), 2 are given");
    expect(faultOf(product, 1, 2, 3)).toBe("PRODUCT: takes 2 inputs (a, b), 3 are given");
    expect(faultOf(product)).toBe("PRODUCT: a is not given: it must be a number");
    expect((broadcast(none, [1]) as Fault).param).toBe("");
    expect((broadcast(pair, [1, 2]) as Fault).param).toBe("a");
  });
});

describe("of three ranges that do not go together", () => {
  const three = define({
    ...about,
    name: "THREE",
    params: { a: number("a"), b: number("b"), c: number("c") },
    returns: value(""),
    compute: ({ a, b, c }) => a + b + c,
  });
  const block = (rows: number, columns: number) => Array.from({ length: rows }, () => new Array<number>(columns).fill(1));
  const said = (misfit: string, other: string) =>
    `THREE: ${misfit} cells, which does not fit ${other}: ranges must be of one size, or one row, one column or one cell`;

  test("a row too short is set beside the one that is as wide as the answer, not the one that is as tall", () => {
    expect(faultOf(three, block(3, 1), block(1, 2), block(1, 3))).toBe(said("b is 1×2", "c of 1×3"));
  });

  test("a block too narrow is set beside the one that is wider, not the one that is just as tall", () => {
    expect(faultOf(three, block(2, 1), block(2, 3), block(2, 2))).toBe(said("c is 2×2", "b of 2×3"));
  });

  test("a column too short is set beside the one that is taller", () => {
    expect(faultOf(three, block(1, 3), block(3, 1), block(2, 1))).toBe(said("c is 2×1", "b of 3×1"));
  });

  test("too many results are put down to the first range, not to what one cell holds", () => {
    const sentence = "THREE: b of several cells: the ranges ask for 5000×5000 results, more than 5000000";
    expect(faultOf(three, 1, block(1, 5000), block(5000, 1))).toBe(sentence);
    expect(faultOf(three, 1, block(5000, 1), block(1, 5000))).toBe(sentence);
  });
});

describe("rows under labels", () => {
  test("are one for each element; a blank one stays blank, a bad one says why", () => {
    expect(ask(pair, 3)).toEqual([
      ["once", "twice"],
      [3, 6],
    ]);
    expect(
      ask(pair, [
        [3, ""],
        ["x", 4],
      ]),
    ).toEqual([
      ["once", "twice"],
      [3, 6],
      ["", ""],
      ['check: a holds the text "x": it must be a length above 0', ""],
      [4, 8],
    ]);
    expect(faultOf(pair, [["x"]])).toBe('PAIR: a holds the text "x": it must be a length above 0');
    expect(faultOf(pair, 1.7e308)).toBe("PAIR: a 1.7e+308: the result is not a finite number with these inputs");
  });
});

describe("a table", () => {
  test("stands for one cell", () => {
    expect(ask(plan, [[3]])).toEqual([["a"], [3]]);
    expect(ask(plan, null)).toBe("");
    expect(faultOf(plan, "x")).toBe('PLAN: a holds the text "x": it must be a length above 0');
    expect(faultOf(plan, [[1], [2]])).toBe(
      "PLAN: a is 2×1 cells, which does not fit one cell for the whole call: ranges must be of one size, or one row, one column or one cell",
    );
  });

  test("is the caller's own: writing into it changes no later answer", () => {
    const rows = [["a"], [1]];
    const kept = define({ ...about, name: "KEPT", params: {}, returns: table(""), compute: () => rows });
    const first = ask(kept) as (string | number)[][];
    first[1]![0] = 2;
    expect(ask(kept)).toEqual([["a"], [1]]);
  });
});
