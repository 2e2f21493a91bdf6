import fc from "fast-check";
import { deckClearance } from "../../../src/functions/faces/deck-clearance.ts";
import { pistonTravel } from "../../../src/functions/volumes/piston-travel.ts";
import { ask, BLANKS_AND_ZERO, number } from "../ask.ts";

const parts = fc.record({
  stroke: fc.integer({ min: 500, max: 1100 }),
  rod: fc.integer({ min: 1000, max: 1900 }),
  piston: fc.integer({ min: 250, max: 600 }),
  gap: fc.integer({ min: -10, max: 20 }),
});

describe("cited values", () => {
  // Geometry of the slider-crank, subtracted by hand: 9.025 − 1.74 − 5.7 − 1.56.
  test("a deck of 9.025 in over 3.48, 5.7 and 1.56 in leaves .025 in", () => {
    expect(ask(deckClearance, 9.025, 3.48, 5.7, 1.56)).toBe(0.025);
  });
});

describe("identities", () => {
  test("block = half the stroke + rod + piston + clearance to the typed digit; in inches the same", () => {
    fc.assert(
      fc.property(parts, ({ stroke, rod, piston, gap }) => {
        // Twentieths of a millimetre, so that half a stroke is one as well.
        const [s, r, p, block] = [stroke / 10, rod / 10, piston / 10, (stroke * 5 + rod * 10 + piston * 10 + gap * 10) / 100];
        expect(number(deckClearance, block, s, r, p)).toBe(gap / 10 + 0);
        expect(number(deckClearance, block / 25.4, s / 25.4, r / 25.4, p / 25.4) * 25.4).toBeCloseTo(gap / 10, 6);
      }),
      { numRuns: 400 },
    );
  });

  test("PISTONTRAVEL from bottom dead centre brings the piston up to it", () => {
    fc.assert(
      fc.property(parts, ({ stroke, rod, piston, gap }) => {
        const [s, r, p] = [stroke / 10, rod / 10, piston / 10];
        const block = s / 2 + r + p + gap / 10;
        const crownAtBottom = r - s / 2 + p;
        expect(block - crownAtBottom - number(pistonTravel, 180, s, r)).toBeCloseTo(number(deckClearance, block, s, r, p), 6);
      }),
      { numRuns: 400 },
    );
  });
});

describe("at the limits", () => {
  test("half the compression height either way is taken, more is not", () => {
    expect(ask(deckClearance, 225, 80, 130, 40)).toBe(15);
    expect(ask(deckClearance, 230, 80, 130, 40)).toBe(20);
    expect(ask(deckClearance, 230.1, 80, 130, 40)).toMatchObject({ code: "unfit" });
    expect(ask(deckClearance, 190, 80, 130, 40)).toBe(-20);
    expect(ask(deckClearance, 189.9, 80, 130, 40)).toMatchObject({ code: "unfit" });
  });
});

describe("faults", () => {
  test("one size in another unit is refused, whichever it is", () => {
    expect(ask(deckClearance, 8.27, 80, 130, 40)).toEqual({
      code: "units",
      sentence:
        "DECKCLEARANCE: blockHeight 8.27 is about 1/25.4 of half the stroke with rod and pistonHeight, 210: is one in inches, the other in millimetres?",
    });
    expect(ask(deckClearance, 210, 80, 5.118, 40)).toMatchObject({ code: "units" });
    expect(ask(deckClearance, 210, 3.15, 130, 40)).toMatchObject({ code: "unfit" });
    expect(ask(deckClearance, 210, 80, 130, 1.575)).toEqual({
      code: "unfit",
      sentence: "DECKCLEARANCE: blockHeight 210: it leaves 38.425, more than half the pistonHeight 1.575: are all four in one unit?",
    });
  });
});

describe("blanks", () => {
  test("any size not filled in leaves it blank", () => {
    for (const blank of BLANKS_AND_ZERO) {
      for (let i = 0; i < 4; i++)
        expect(ask(deckClearance, ...([210, 80, 130, 40] as (number | null)[]).map((size, at) => (at === i ? (blank as null) : size)))).toBe("");
    }
  });
});
