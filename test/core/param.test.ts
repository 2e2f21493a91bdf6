import fc from "fast-check";
import type { Cell } from "../../src/core/cell.ts";
import { Fault } from "../../src/core/fault.ts";
import {
  angle,
  area,
  axes,
  cells,
  choice,
  count,
  force,
  grid,
  labels,
  length,
  list,
  number,
  pressure,
  ratio,
  readings,
  speed,
  temperature,
  text,
  truth,
  volume,
} from "../../src/core/inputs.ts";
import { BLANK, type Param } from "../../src/core/param.ts";
import { faultBody } from "../../src/core/sentences.ts";

const bore = length("bore");
const take = (param: Param<unknown>, cell: Cell) => {
  const taken = param.take(cell, "bore");
  return taken instanceof Fault ? `${taken.code}: ${faultBody(taken)}` : taken;
};

describe("a number", () => {
  test("inside its bounds is itself", () => {
    fc.assert(fc.property(fc.double({ min: 1e-3, max: 1e9, noNaN: true }), (x) => expect(take(bore, x)).toBe(x)));
  });

  test.each([
    ["73.02", 'number-as-text: bore holds "73.02" as text: type it again as a number'],
    [" 73.02 ", 'number-as-text: bore holds " 73.02 " as text: type it again as a number'],
    ["'73.02", 'number-as-text: bore holds "\'73.02" as text: type it again as a number'],
    [".5", 'number-as-text: bore holds ".5" as text: type it again as a number'],
    ["1e3", 'number-as-text: bore holds "1e3" as text: type it again as a number'],
    ["73,02", 'decimal-comma: bore holds the text "73,02": a decimal comma is not read, type it with this sheet\'s decimal sign'],
    ["73.02 mm", 'text: bore holds the text "73.02 mm": it must be a length above 0'],
    ["2 7/8", 'text: bore holds the text "2 7/8": it must be a length above 0'],
    ["1.234,5", 'text: bore holds the text "1.234,5": it must be a length above 0'],
    [".55", 'number-as-text: bore holds ".55" as text: type it again as a number'],
    ["+73", 'number-as-text: bore holds "+73" as text: type it again as a number'],
    ["-73.02", 'number-as-text: bore holds "-73.02" as text: type it again as a number'],
    ["73.", 'number-as-text: bore holds "73." as text: type it again as a number'],
    ["’73", 'number-as-text: bore holds "’73" as text: type it again as a number'],
    ["1.5E-12", 'number-as-text: bore holds "1.5E-12" as text: type it again as a number'],
    ["2e+3", 'number-as-text: bore holds "2e+3" as text: type it again as a number'],
    [" -0,55 ", 'decimal-comma: bore holds the text " -0,55 ": a decimal comma is not read, type it with this sheet\'s decimal sign'],
    ["+,5", 'decimal-comma: bore holds the text "+,5": a decimal comma is not read, type it with this sheet\'s decimal sign'],
    ["  73,025  ", 'decimal-comma: bore holds the text " 73,025 ": a decimal comma is not read, type it with this sheet\'s decimal sign'],
    ["about 73", 'text: bore holds the text "about 73": it must be a length above 0'],
    ["about 73,02", 'text: bore holds the text "about 73,02": it must be a length above 0'],
    ["73,02 mm", 'text: bore holds the text "73,02 mm": it must be a length above 0'],
    ["73,", 'text: bore holds the text "73,": it must be a length above 0'],
    ["73.0.2", 'text: bore holds the text "73.0.2": it must be a length above 0'],
    [".", 'text: bore holds the text ".": it must be a length above 0'],
    ["1e", 'text: bore holds the text "1e": it must be a length above 0'],
    ["1ee3", 'text: bore holds the text "1ee3": it must be a length above 0'],
    ["--73", 'text: bore holds the text "--73": it must be a length above 0'],
    ["tbd", 'text: bore holds the text "tbd": it must be a length above 0'],
  ])("typed as the text %p is refused for what it is", (cell, said) => {
    expect(take(bore, cell)).toBe(said);
  });

  test("long text is quoted in one short line", () => {
    expect(take(bore, `by\n${"hand ".repeat(20)}`)).toBe(`text: bore holds the text "by ${"hand ".repeat(20).slice(0, 37)}…": it must be a length above 0`);
  });

  test.each([
    [true, "truth: bore holds TRUE: it must be a length above 0"],
    [false, "truth: bore holds FALSE: it must be a length above 0"],
    [{ error: "#DIV/0!" }, "cell-error: bore holds the error #DIV/0!: correct that cell first"],
    ["#VALUE!", "cell-error: bore holds the error #VALUE!: correct that cell first"],
    [Number.NaN, "not-finite: bore is not a finite number: it must be a length above 0"],
    [Number.POSITIVE_INFINITY, "not-finite: bore is not a finite number: it must be a length above 0"],
    [-73.02, "too-small: bore -73.02 is too small: it must be a length above 0"],
    ["check: skirt 2 is larger than bore 1: are they swapped?", "upstream: skirt 2 is larger than bore 1: are they swapped?"],
  ])("%p is refused", (cell, said) => {
    expect(take(bore, cell)).toBe(said);
  });
});

describe("bounds", () => {
  const share = ratio("share").atLeast(0).atMost(1);

  test("closed ones include the bound, as a decimal", () => {
    expect(take(share, 0)).toBe(0);
    expect(take(share, 1)).toBe(1);
    expect(take(share, 0.1 * 3 + 0.7)).toBe(0.1 * 3 + 0.7);
    expect(take(share, 0.3 - 0.1 - 0.2)).toBe(0.3 - 0.1 - 0.2);
    expect(take(share, -1e-8)).toBe("too-small: bore -1e-8 is too small: it must be a ratio from 0 to 1");
    expect(take(share, 1.00000001)).toBe("too-large: bore 1.00000001 is too large: it must be a ratio from 0 to 1");
  });

  test("open ones exclude the bound, as a decimal", () => {
    const compression = ratio("ratio").above(1).below(50);
    expect(take(compression, 1)).toBe("too-small: bore 1 is too small: it must be a ratio above 1 and below 50");
    expect(take(compression, 0.7 + 0.1 + 0.2 + 1e-15)).toBe("too-small: bore 1 is too small: it must be a ratio above 1 and below 50");
    expect(take(compression, 50 - 1e-12)).toBe("too-large: bore 50 is too large: it must be a ratio above 1 and below 50");
    expect(take(compression, 1.000001)).toBe(1.000001);
  });

  test("a count is whole and at least 1", () => {
    expect(take(count("cylinders"), 3)).toBe(3);
    expect(take(count("cylinders"), 2.5)).toBe("not-whole: bore 2.5 is not a whole number: it must be a whole number of at least 1");
    expect(take(count("cylinders"), -1)).toBe("too-small: bore -1 is too small: it must be a whole number of at least 1");
  });

  test("unbounded takes anything finite", () => {
    expect(take(length("deck").unbounded(), -0.2)).toBe(-0.2);
    expect(take(number("value"), -1e300)).toBe(-1e300);
  });
});

describe("blanks", () => {
  test("nothing, empty text and spaces are blank", () => {
    for (const cell of [null, undefined, "", "   ", "\u00a0"]) expect(take(bore, cell)).toBe(BLANK);
  });

  test("zero is blank where it is impossible, and a number where it is not", () => {
    expect(take(bore, 0)).toBe(BLANK);
    expect(take(bore, -0)).toBe(BLANK);
    expect(take(bore, 0.1 + 0.2 - 0.3)).toBe(BLANK);
    expect(take(count("cylinders"), 0)).toBe(BLANK);
    // Half a step of the grid of nine decimals is the least that is something.
    expect(take(bore, 0.49e-9)).toBe(BLANK);
    expect(take(bore, -0.49e-9)).toBe(BLANK);
    expect(take(bore, 0.5e-9)).toBe(0.5e-9);
    expect(take(bore, -0.5e-9)).toBe("too-small: bore -5e-10 is too small: it must be a length above 0");
    expect(take(ratio("ratio").above(1), 0)).toBe(BLANK);
    expect(take(number("value").above(-1), 0)).toBe(0);
    expect(take(length("deck").atLeast(0), 0)).toBe(0);
    expect(take(number("value"), 0)).toBe(0);
  });
});

describe("what is declared", () => {
  test.each([
    [length("x"), "a length above 0", true],
    [volume("x"), "a volume above 0", true],
    [area("x"), "an area above 0", true],
    [ratio("x"), "a ratio above 0", true],
    [pressure("x"), "a pressure above 0", true],
    [force("x"), "a force above 0", true],
    [speed("x"), "a speed above 0", true],
    [angle("x"), "an angle in degrees", true],
    [temperature("x"), "a temperature", true],
    [number("x"), "a number", true],
    [count("x"), "a whole number of at least 1", false],
    [text("x"), "text", false],
    [truth("x"), "TRUE or FALSE", false],
    [choice("x", ["mm", "in"]), "one of mm, in", false],
    [readings(), "a length above 0", true],
    [axes(), "a whole number of at least 1", false],
    [list("number", "x"), "a number", true],
    [list("pressure", "x"), "a pressure above 0", true],
    [grid("number", "x"), "a number", true],
    [grid("length", "x"), "a length above 0", true],
    [cells("number", "x"), "a number", true],
    [cells("length", "x"), "a length above 0", true],
    [labels("x"), "text", false],
    [number("x").atLeast(-1).below(5), "a number of at least -1 and below 5", true],
    [length("x").unbounded(), "a length", true],
  ] as [Param<unknown>, string, boolean][])("%# is wanted as it is named, and is measured or looked up", (param, want, isMeasured) => {
    expect([param.want, param.takesAnyNumber]).toEqual([want, isMeasured]);
  });

  test("how each meets a range", () => {
    const met = [
      length("x"),
      text("x"),
      truth("x"),
      choice("x", ["a"]),
      readings(),
      axes(),
      list("length", "x"),
      grid("length", "x"),
      cells("length", "x"),
      labels("x"),
    ];
    expect(met.map(({ broadcastKind }) => broadcastKind)).toEqual([
      "element",
      "element",
      "element",
      "element",
      "bore",
      "axes",
      "list",
      "grid",
      "cells",
      "grid",
    ]);
  });

  test("a bound, a default or leaving out keeps the rest as it was", () => {
    const kept = length("deck").default(1.5);
    for (const param of [kept.above(1), kept.atLeast(1), kept.below(9), kept.atMost(9), kept.unbounded()]) {
      expect(param).toMatchObject({ quantity: "length", help: "deck", broadcastKind: "element", isOptional: true, fallback: 1.5 });
    }
    expect(kept.above(1).below(9).bounds).toEqual({ low: 1, lowOpen: true, high: 9, highOpen: true });
    expect(kept.atLeast(1).atMost(9).bounds).toEqual({ low: 1, lowOpen: false, high: 9, highOpen: false });
    expect(kept.unbounded().bounds).toEqual({});
    expect(length("deck")).toMatchObject({ isOptional: false, fallback: undefined });
    expect(kept.optional()).toMatchObject({ isOptional: true, fallback: undefined, bounds: { low: 0, lowOpen: true } });
    expect(axes().isOptional).toBe(true);
  });
});

describe("words", () => {
  const basis = choice("basis", ["smallest", "mean"]);

  test("a choice is read without regard to case or spaces around it", () => {
    expect(take(basis, " Mean ")).toBe("mean");
  });

  test("what is not among the choices is refused with them", () => {
    expect(take(basis, "median")).toBe('not-a-choice: bore "median" is not known: it must be one of smallest, mean');
    expect(take(basis, 3)).toBe('not-a-choice: bore "3" is not known: it must be one of smallest, mean');
    expect(take(basis, true)).toBe("truth: bore holds TRUE: it must be one of smallest, mean");
  });

  test("TRUE is the choice true, as sheets make it of the typed word", () => {
    const centring = choice("centring", ["worn", "true"]);
    expect(take(centring, true)).toBe("true");
    expect(take(centring, false)).toBe("truth: bore holds FALSE: it must be one of worn, true");
  });

  test("0 for a choice or a text is a blank cell", () => {
    expect(take(basis, 0)).toBe(BLANK);
    expect(take(text("material"), 0)).toBe(BLANK);
  });

  test("text takes a number as typed", () => {
    expect(take(text("material"), 11.4)).toBe("11.4");
  });

  test("a truth takes TRUE, FALSE, 1 and 0 and nothing else", () => {
    const common = truth("common");
    expect([take(common, true), take(common, false), take(common, 1), take(common, 0)]).toEqual([true, false, true, false]);
    expect(take(common, 2)).toBe("not-a-choice: bore 2 is not known: it must be TRUE or FALSE");
    expect(take(common, "yes")).toBe('text: bore holds the text "yes": it must be TRUE or FALSE');
  });
});

test("a quantity is measured unless it says otherwise, everything else an option, and whatever else is said of a param its role stays", () => {
  expect([length("bore"), readings(), list("length", "sizes"), axes(), count("cylinders"), text("name")].map(({ role }) => role)).toEqual([
    "measured",
    "measured",
    "measured",
    "option",
    "option",
    "option",
  ]);
  const limit = length("upper limit").as("upper");
  const said = [limit, limit.above(1), limit.atLeast(0), limit.below(9), limit.atMost(9), limit.unbounded(), limit.default(1), limit.optional()];
  expect(said.map(({ role }) => role)).toEqual(said.map(() => "upper"));
  expect(length("standard bore").optional().chosen()).toMatchObject({ role: "chosen", isOptional: true, help: "standard bore" });
});
