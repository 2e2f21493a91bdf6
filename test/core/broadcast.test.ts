import type { Argument, Block } from "../../src/core/cell.ts";
import type { Spec } from "../../src/core/define.ts";
import { clearance } from "../../src/functions/cylinder/clearance.ts";
import { specs } from "../../src/functions/index.ts";
import { ask, BLANKS, type Refusal } from "../functions/ask.ts";
import { isMeasured, scalarExample } from "../functions/scalar-example.ts";

/** Functions that give one value for each element, and of them those with an input taken cell by cell. */
const valued = specs.filter((spec) => spec.returns.kind === "value");
const positions = (spec: Spec) => spec.inputs.map((_, i) => i).filter((i) => isMeasured(spec, i));
/** Of a bore one height alone: beside as many values as a bore has rows, its axes would have to be given. */
const oneHeight = (spec: Spec, args: readonly Argument[]): Argument[] =>
  args.map((arg, i) => (spec.inputs[i]!.param.broadcastKind === "bore" && Array.isArray(arg) ? [arg[0]!] : arg));
const tried = valued.map((spec) => {
  const at = positions(spec);
  const args = scalarExample(spec);
  return { name: spec.name, spec, args: at.length > 0 ? oneHeight(spec, args) : args, at };
});
const withElements = tried.filter(({ at, args }) => at.some((i) => i < args.length && args[i] !== undefined));
const withTwo = withElements.filter(({ at, args }) => at.filter((i) => typeof args[i] === "number").length > 1);

const put = (args: readonly Argument[], index: number, given: Argument): Argument[] => args.map((arg, i) => (i === index ? given : arg));
const given = (at: readonly number[], args: readonly Argument[]) => at.filter((i) => typeof args[i] === "number");

test("there are functions of every kind to try", () => {
  expect(withElements.length).toBeGreaterThan(10);
  expect(withTwo.length).toBeGreaterThan(5);
});

describe.each(withElements)("$name over a range", ({ spec, args, at }) => {
  const answer = ask(spec, ...args);
  const places = given(at, args);

  test("a column, a row and a block of one reading give as many equal answers", () => {
    for (const i of places) {
      const cell = args[i] as number;
      expect(ask(spec, ...put(args, i, [[cell], [cell], [cell]]))).toEqual([[answer], [answer], [answer]]);
      expect(ask(spec, ...put(args, i, [[cell, cell]]))).toEqual([[answer, answer]]);
      expect(
        ask(
          spec,
          ...put(args, i, [
            [cell, cell],
            [cell, cell],
          ]),
        ),
      ).toEqual([
        [answer, answer],
        [answer, answer],
      ]);
      expect(ask(spec, ...put(args, i, [[cell]]))).toEqual(answer);
    }
  });

  test("a bad cell keeps to itself and says why in its place", () => {
    for (const i of places) {
      const cell = args[i] as number;
      const { name } = spec.inputs[i]!;
      const column = ask(spec, ...put(args, i, [[cell], ["worn"], [{ error: "#REF!" }], [Number.NaN], [cell]])) as Block;
      expect(column[0]).toEqual([answer]);
      expect(column[4]).toEqual([answer]);
      expect(column[1]![0]).toMatch(new RegExp(`^check: ${name} holds the text "worn": it must be `));
      expect(column[2]![0]).toBe(`check: ${name} holds the error #REF!: correct that cell first`);
      expect(column[3]![0]).toMatch(new RegExp(`^check: ${name} is not a finite number: it must be `));
    }
  });

  test("a blank cell of a needed input stays blank, of an optional one is not given", () => {
    for (const i of places) {
      const cell = args[i] as number;
      const { param } = spec.inputs[i]!;
      const without = param.isOptional ? ask(spec, ...put(args, i, undefined)) : "";
      // A lone optional input can be needed by another one: then the fault is that of the call.
      if (typeof without === "object") continue;
      for (const blank of BLANKS) expect(ask(spec, ...put(args, i, [[cell], [blank as null]]))).toEqual([[answer], [without]]);
      if (param.zeroIsBlank) expect(ask(spec, ...put(args, i, [[0], [cell]]))).toEqual([[without], [answer]]);
    }
  });

  test("a hundred rows are calculated as a hundred cells are, blanks, faults and next to nothing among them", () => {
    for (const i of places) {
      const cell = args[i] as number;
      const column = Array.from({ length: 100 }, (_, n) => [
        n % 9 === 4 ? "" : n % 11 === 5 ? "worn" : n % 13 === 6 ? 0.1 + 0.2 - 0.3 : cell * (1 + (n % 7) / 1e6),
      ]);
      const alone = column.map(([value]) => ask(spec, ...put(args, i, value)));
      const shown = alone.map((one) => [typeof one === "object" ? (one as Refusal).sentence.replace(`${spec.name}: `, "check: ") : one]);
      expect(ask(spec, ...put(args, i, column))).toEqual(shown);
    }
  });
});

describe.each(withTwo)("$name over two ranges", ({ spec, args, at }) => {
  const [first, second] = given(at, args) as [number, number];
  const answer = ask(spec, ...args);
  const [a, b] = [args[first] as number, args[second] as number];
  const both = (one: Argument, other: Argument) => ask(spec, ...put(put(args, first, one), second, other));

  test("a column beside a row gives a block", () => {
    expect(both([[a], [a], [a]], [[b, b]])).toEqual([
      [answer, answer],
      [answer, answer],
      [answer, answer],
    ]);
    expect(both([[a, a]], [[b], [b], [b]])).toEqual([
      [answer, answer],
      [answer, answer],
      [answer, answer],
    ]);
  });

  test("ranges of one size go element by element, and each element knows its own blank", () => {
    expect(both([[a], [a]], [[b], [b]])).toEqual([[answer], [answer]]);
    if (spec.inputs[first]!.param.isOptional || spec.inputs[second]!.param.isOptional) return;
    expect(both([[a], [""], [a]], [[b], [b], [null]])).toEqual([[answer], [""], [""]]);
  });

  test("ranges of unequal size are refused with both sizes", () => {
    const [one, other] = [spec.inputs[first]!.name, spec.inputs[second]!.name];
    const rule = "ranges must be of one size, or one row, one column or one cell";
    expect(both([[a], [a]], [[b], [b], [b]])).toEqual({
      code: "shape",
      sentence: `${spec.name}: ${one} is 2×1 cells, which does not fit ${other} of 3×1: ${rule}`,
    });
    expect(both([[a, a, a]], [[b, b]])).toEqual({ code: "shape", sentence: `${spec.name}: ${other} is 1×2 cells, which does not fit ${one} of 1×3: ${rule}` });
  });
});

describe.each(specs.map((spec) => ({ name: spec.name, spec, args: scalarExample(spec) })))("$name", ({ spec, args }) => {
  test("more arguments than it takes are refused", () => {
    const many: Argument[] = [...args, ...new Array(spec.inputs.length + 1 - args.length).fill(null)];
    expect(ask(spec, ...many)).toMatchObject({ code: "surplus" });
  });

  test("fewer arguments than it needs are refused, and the missing one is named", () => {
    for (let count = 0; count <= spec.inputs.length; count++) {
      const absent = spec.inputs.find(({ param }, i) => i >= count && !param.isOptional);
      if (!absent) break;
      const sentence = `${spec.name}: ${absent.name} is not given: it must be ${absent.param.want}`;
      expect(ask(spec, ...args.slice(0, count))).toEqual({ code: "missing", sentence });
    }
  });

  test("a range without cells is refused by the name of its input", () => {
    for (const [i, { name, param }] of spec.inputs.entries()) {
      if (i >= args.length) continue;
      for (const none of [[], [[]]] as Block[]) {
        expect(ask(spec, ...put(args, i, none))).toEqual({ code: "empty", sentence: `${spec.name}: ${name} is an empty range: it must be ${param.want}` });
      }
    }
  });

  test("an error in any input is a fault of that input, whatever else is given", () => {
    for (const [i, { name }] of spec.inputs.entries()) {
      if (i >= args.length) continue;
      const sentence = `${spec.name}: ${name} holds the error #N/A: correct that cell first`;
      expect(ask(spec, ...put(args, i, { error: "#N/A" }))).toEqual({ code: "cell-error", sentence });
      // Some hosts hand over the code of an error as text.
      expect(ask(spec, ...put(args, i, "#N/A"))).toEqual({ code: "cell-error", sentence });
    }
  });

  test("the text of an earlier function's complaint is passed on from any input", () => {
    for (const [i] of spec.inputs.entries()) {
      if (i >= args.length) continue;
      expect(ask(spec, ...put(args, i, "check: shaft 2 is larger than hole 1: are they swapped?"))).toEqual({
        code: "upstream",
        sentence: `${spec.name}: shaft 2 is larger than hole 1: are they swapped?`,
      });
    }
  });
});

test("a whole column beside a whole row is refused before it fills the memory", () => {
  const column = Array.from({ length: 100_000 }, () => [73.04]);
  const row = [new Array<number>(16_384).fill(73)];
  expect(ask(clearance, column, row)).toEqual({
    code: "unfit",
    sentence: "CLEARANCE: hole of several cells: the ranges ask for 100000×16384 results, more than 5000000",
  });
});

test("five million results are not too many, a row more is", () => {
  const wide = [new Array<number>(2500).fill(73)];
  const tall = (rows: number) => Array.from({ length: rows }, () => [73.04]);
  expect(ask(clearance, tall(2000), wide)).toHaveLength(2000);
  expect(ask(clearance, tall(2001), wide)).toMatchObject({
    code: "unfit",
    sentence: expect.stringContaining("the ranges ask for 2001×2500 results, more than 5000000"),
  });
});
