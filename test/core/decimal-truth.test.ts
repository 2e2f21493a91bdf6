import fc from "fast-check";
import { clearance } from "../../src/functions/cylinder/clearance.ts";
import { cleansUp } from "../../src/functions/cylinder/oversize.ts";
import { taper } from "../../src/functions/cylinder/taper.ts";
import { margin } from "../../src/functions/verdict/margin.ts";
import { verdict } from "../../src/functions/verdict/verdict.ts";
import { ask } from "../functions/ask.ts";

/*
 * Whoever types 73.04, 73.00 and a limit of 0.04 means those decimals. Each case is drawn as whole
 * numbers of the last typed digit; the yardstick is exact arithmetic on these whole numbers, and what
 * the functions get is what a sheet makes of the typed text.
 */
interface Case {
  /** Hole, shaft and limit as whole numbers of the last digit. */
  hole: bigint;
  shaft: bigint;
  limit: bigint;
  places: number;
}

/** What a sheet makes of a typed decimal. */
function typed(digits: bigint, places: number): number {
  const text = String(digits).padStart(places + 1, "0");
  return Number(places === 0 ? text : `${text.slice(0, -places)}.${text.slice(-places)}`);
}

/** A fit of this size in the unit, its clearance on the limit or one last digit to either side of it. */
const fitUpTo = (largest: bigint): fc.Arbitrary<Case> =>
  fc.integer({ min: 0, max: 4 }).chain((places) => {
    const unit = 10n ** BigInt(places);
    return fc
      .tuple(
        fc.bigInt({ min: unit === 1n ? 12n : 5n * unit, max: largest * unit }),
        fc.bigInt({ min: 1n, max: unit === 1n ? 2n : unit }),
        fc.constantFrom(-1n, 0n, 0n, 1n),
      )
      .map(([shaft, limit, step]) => ({ shaft, limit, hole: shaft + limit + step, places }));
  });

/** 10 000 cases for each unit: sizes to 500 mm, to 20 in, and the same in thou. */
const UNITS = [
  { unit: "mm", sizes: fitUpTo(500n) },
  { unit: "in", sizes: fitUpTo(20n) },
  { unit: "thou", sizes: fitUpTo(20_000n) },
];
const RUNS = { numRuns: 10_000, seed: 7304 };

/** Mirrored about zero an upper limit is a lower one, and over is under. */
const MIRRORED: Record<string, string> = { over: "under", within: "within", "not proven": "not proven", "near limit": "near limit" };
const judged = (value: number, upper: number, ...more: number[]) => {
  const answer = ask(verdict, value, undefined, upper, ...more) as string;
  return ask(verdict, -value, -upper, undefined, ...more) === MIRRORED[answer] ? answer : `${answer}, but not below zero`;
};

describe.each(UNITS)("typed in $unit", ({ sizes }) => {
  const drawn = fc.sample(sizes, RUNS);
  const cases = drawn.map(({ hole, shaft, limit, places }) => ({
    exact: hole - shaft,
    limit,
    text: `${typed(hole, places)} − ${typed(shaft, places)} against ${typed(limit, places)}`,
    numbers: [typed(hole, places), typed(shaft, places), typed(limit, places)] as const,
    gap: typed(hole - shaft, places),
    places,
  }));

  test("the cases bite: binary subtraction and comparison gets many of them wrong", () => {
    const wrong = cases.filter(({ exact, limit, numbers: [hole, shaft, bound] }) => hole - shaft > bound !== exact > limit);
    expect(wrong.length).toBeGreaterThan(1000);
  });

  test("the clearance is the typed difference, to the last bit", () => {
    const wrong = cases.filter(({ numbers: [hole, shaft], gap }) => ask(clearance, hole, shaft) !== gap);
    expect(wrong.map(({ text }) => text)).toEqual([]);
  });

  test("over the upper limit by one last digit is over, on it is within", () => {
    const wrong = cases.filter(({ exact, limit, numbers: [hole, shaft, bound] }) => {
      const expected = exact > limit ? "over" : "within";
      return judged(ask(clearance, hole, shaft) as number, bound) !== expected || judged(hole - shaft, bound) !== expected;
    });
    expect(wrong.map(({ text }) => text)).toEqual([]);
  });

  test("under the lower limit by one last digit is under, on it is within", () => {
    const wrong = cases.filter(({ exact, limit, numbers: [hole, shaft, bound] }) => ask(verdict, hole - shaft, bound) !== (exact < limit ? "under" : "within"));
    expect(wrong.map(({ text }) => text)).toEqual([]);
  });

  test("limits drawn in and let out by an uncertainty of the same digits decide exactly", () => {
    const wrong = cases.filter(({ exact, limit, numbers: [hole, shaft, bound], places }) => {
      const [u, uncertainty] = [limit / 3n, typed(limit / 3n, places)];
      const expected = exact > limit + u ? "over" : exact > limit - u ? "not proven" : "within";
      // The value itself, and the values exactly on both drawn and let out limits.
      const onInner = judged(typed(limit - u, places), bound, uncertainty);
      const onOuter = judged(typed(limit + u, places), bound, uncertainty);
      return judged(hole - shaft, bound, uncertainty) !== expected || onInner !== "within" || onOuter !== (u === 0n ? "within" : "not proven");
    });
    expect(wrong.map(({ text }) => text)).toEqual([]);
  });

  test("near its limit by exactly the typed distance is near", () => {
    const wrong = cases.filter(({ exact, limit, numbers: [hole, shaft, bound], places }) => {
      const expected = exact > limit ? "over" : limit - exact <= 1n ? "near limit" : "within";
      return judged(hole - shaft, bound, 0, typed(1n, places)) !== expected;
    });
    expect(wrong.map(({ text }) => text)).toEqual([]);
  });

  test("the margin is the typed difference of limit and clearance, to the last bit", () => {
    const wrong = cases.filter(({ exact, limit, numbers: [hole, shaft, bound], places }) => {
      const distance = limit - exact;
      const expected = distance < 0n ? -typed(-distance, places) : typed(distance, places);
      return ask(margin, hole - shaft, undefined, bound) !== expected;
    });
    expect(wrong.map(({ text }) => text)).toEqual([]);
  });

  test("a bore's taper is the typed difference, and a size cleans up exactly when whole numbers say so", () => {
    const wrong = cases.filter(({ exact, limit, numbers: [hole, shaft, bound], gap }) => {
      const [bare, withStock] = [0, 1].map((allowance) => cleansUp(shaft + bound, hole, allowance));
      return ask(taper, [[hole], [shaft]]) !== gap || bare !== exact < limit || withStock !== exact <= limit;
    });
    expect(wrong.map(({ text }) => text)).toEqual([]);
  });
});
