import fc from "fast-check";
import { squish } from "../../../src/functions/volumes/squish.ts";
import { ask, BLANKS, BLANKS_AND_ZERO, number } from "../ask.ts";

const deck = fc.integer({ min: -100, max: 100 }).map((hundredths) => hundredths / 100);
const gasket = fc.integer({ min: 20, max: 250 }).map((hundredths) => hundredths / 100);

describe("cited values", () => {
  // Common practice; computed by hand.
  test.each([
    [0.15, 0.9, 1.05],
    [-0.15, 0.9, 0.75],
    [0.005, 0.04, 0.045],
  ])("a deck of %p and a gasket of %p leave %p", (height, thickness, gap) => {
    expect(ask(squish, height, thickness)).toBe(gap);
  });
});

describe("identities", () => {
  test("a thicker gasket opens the squish by as much, a lower deck closes it by as much", () => {
    fc.assert(
      fc.property(deck, gasket, (height, thickness) => {
        const plain = number(squish, height, thickness);
        expect(number(squish, height, thickness + 0.1)).toBeCloseTo(plain + 0.1, 9);
        expect(number(squish, height - 0.1, thickness)).toBeCloseTo(plain - 0.1, 9);
      }),
    );
  });

  test("in inches it is the same gap", () => {
    fc.assert(fc.property(deck, gasket, (h, t) => expect(number(squish, h / 25.4, t / 25.4) * 25.4).toBeCloseTo(number(squish, h, t), 7)));
  });
});

describe("at the limits", () => {
  test("0.1 + 0.2 is 0.3, which in binary it is not", () => {
    expect(ask(squish, 0.1, 0.2)).toBe(0.3);
  });

  test("a piston that meets the head gives 0 or less, not a fault: the verdict on it is for the limits", () => {
    expect(ask(squish, -0.9, 0.9)).toBe(0);
    expect(ask(squish, -1, 0.9)).toBe(-0.1);
  });

  test("one gasket serves a row of pistons", () => {
    expect(ask(squish, [[0.1, 0.15, -0.05]], 0.9)).toEqual([[1, 1.05, 0.85]]);
  });
});

describe("faults", () => {
  test("a negative gasket is refused", () => {
    expect(ask(squish, 0.15, -0.9)).toEqual({ code: "too-small", sentence: "SQUISH: gasket -0.9 is too small: it must be a length above 0" });
  });

  test("text among the decks keeps to its own cell", () => {
    expect(ask(squish, [[0.15], ["0,2"]], 0.9)).toEqual([
      [1.05],
      ['check: deck holds the text "0,2": a decimal comma is not read, type it with this sheet\'s decimal sign'],
    ]);
  });
});

describe("blanks", () => {
  test("a blank deck or gasket leaves it blank, a deck of 0 counts", () => {
    for (const blank of BLANKS) expect(ask(squish, blank, 0.9)).toBe("");
    for (const blank of BLANKS_AND_ZERO) expect(ask(squish, 0.15, blank)).toBe("");
    expect(ask(squish, 0, 0.9)).toBe(0.9);
  });
});
