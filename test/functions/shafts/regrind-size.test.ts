import fc from "fast-check";
import { reboreSize } from "../../../src/functions/cylinder/rebore-size.ts";
import { regrindSize } from "../../../src/functions/shafts/regrind-size.ts";
import { inInches } from "../arbitrary.ts";
import { ask, BLANKS_AND_ZERO } from "../ask.ts";

const STEPS = [[0.25, 0.5, 0.75]];
const NONE = "none: new shaft";

describe("cited values", () => {
  // Undersizes of .010, .020 and .030 in: common practice. Geometry: on the original centre line 2 − 2 × .0025 is needed.
  test("a 2 in pin worn to 1.9975 goes to .010 under, worn to 1.995 to .020", () => {
    const undersizes = [[0.01, 0.02, 0.03]];
    expect(ask(regrindSize, [[1.9985, 1.9975]], 2, undersizes)).toBe(0.01);
    expect(ask(regrindSize, [[1.9985, 1.995]], 2, undersizes)).toBe(0.02);
    expect(ask(regrindSize, [[1.9985, 1.995]], 2, undersizes, 0, "worn")).toBe(0.01);
  });
});

/** Readings of one journal near 50 mm, in hundredths. */
const journal = fc.array(fc.integer({ min: 4930, max: 5005 }), { minLength: 1, maxLength: 6 });
const stock = fc.integer({ min: 0, max: 8 });
const centring = fc.constantFrom("true", "worn");

describe("against every undersize there is", () => {
  test("the first of the list that leaves at least the allowance to grind off, or with none anything", () => {
    fc.assert(
      fc.property(journal, stock, centring, fc.shuffledSubarray([25, 50, 75, 100], { minLength: 1 }), (readings, allowance, how, list) => {
        const least = Math.min(...readings);
        const needed = (how === "true" && least < 5000 ? 5000 - 2 * (5000 - least) : least) - allowance;
        const fits = [...list].sort((a, b) => a - b).find((undersize) => (allowance ? 5000 - undersize <= needed : 5000 - undersize < needed));
        const given = readings.map((reading) => [reading / 100]);
        const answer = ask(regrindSize, given, 50, [list.map((undersize) => undersize / 100)], allowance / 100, how);
        expect(answer).toBe(fits === undefined ? NONE : fits / 100);
        const inch = ask(regrindSize, inInches(given), 50 / 25.4, inInches([list.map((undersize) => undersize / 100)]), allowance / 2540, how);
        expect(typeof inch === "number" ? Number((inch * 25.4).toFixed(6)) : inch).toBe(answer);
      }),
      { numRuns: 800 },
    );
  });

  test("it is REBORESIZE of the bore that the journal is when turned inside out", () => {
    fc.assert(
      fc.property(journal, stock, centring, (readings, allowance, how) => {
        const inside = ask(
          reboreSize,
          readings.map((reading) => [(10_000 - reading) / 100]),
          50,
          STEPS,
          allowance / 100,
          how,
        );
        const outside = ask(
          regrindSize,
          readings.map((reading) => [reading / 100]),
          50,
          STEPS,
          allowance / 100,
          how,
        );
        expect(outside).toBe(inside === "none: sleeve" ? NONE : inside);
      }),
      { numRuns: 400 },
    );
  });
});

describe("at the limits", () => {
  test("a journal at the very size leaves nothing to grind and goes to the next; with an allowance that size does", () => {
    expect(ask(regrindSize, 49.75, 50, STEPS, 0, "worn")).toBe(0.5);
    expect(ask(regrindSize, 49.751, 50, STEPS, 0, "worn")).toBe(0.25);
    expect(ask(regrindSize, 49.78, 50, STEPS, 0.03, "worn")).toBe(0.25);
    expect(ask(regrindSize, 49.78, 50, STEPS, 0.031, "worn")).toBe(0.5);
  });

  test("above its standard a journal has no wear to count twice", () => {
    expect(ask(regrindSize, 50.01, 50, [[0.01, 0.25]], 0.02, "true")).toBe(0.01);
  });
});

describe("faults", () => {
  test.each<[string, unknown[], string]>([
    [
      "finished sizes for undersizes",
      [49.9, 50, [[49.75, 49.5]]],
      "REGRINDSIZE: undersizes 49.75: type what is taken off the standard journal 50, not the finished size",
    ],
    [
      "undersizes in another unit than the journal",
      [1.97, 2, STEPS],
      "REGRINDSIZE: undersizes 0.25: no undersize is more than a twentieth of the standard journal, 2: are both in one unit?",
    ],
    [
      "undersizes that may be in inches condemn no shaft",
      [49.9, 50, [[0.01, 0.02]]],
      "REGRINDSIZE: undersizes 0.02: even the largest cleans nothing up, and is less than a thousandth of the standard journal, 50: are both in one unit?",
    ],
    ["readings in inches", [1.96, 50, STEPS], "REGRINDSIZE: readings 1.96 is about 1/25.4 of standard 50: is one in inches, the other in millimetres?"],
    ["an unknown centring", [49.9, 50, STEPS, 0, "old"], 'REGRINDSIZE: centring "old" is not known: it must be one of worn, true'],
  ])("%s", (_, args, sentence) => {
    expect(ask(regrindSize, ...(args as never[]))).toMatchObject({ sentence });
  });
});

describe("blanks", () => {
  test("a reading, the standard or the list not filled in leaves it blank; a blank in the list is left out", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(regrindSize, [[49.9, blank as number]], 50, STEPS)).toBe("");
      expect(ask(regrindSize, 49.9, blank, STEPS)).toBe("");
      expect(ask(regrindSize, 49.9, 50, blank)).toBe("");
      expect(ask(regrindSize, 49.9, 50, [[0.5, blank as number, 0.25]])).toBe(0.25);
      expect(ask(regrindSize, 49.9, 50, STEPS, blank, blank)).toBe(0.25);
    }
  });
});
