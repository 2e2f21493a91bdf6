import fc from "fast-check";
import { compareAsSheets, compareDecimals, compareTexts, decimal, HALF_STEP, isAbove, isBelow, slack } from "../../src/core/decimal.ts";

/** A decimal of up to nine places as its digits, with the number that a person's typing gives. */
const typedUpTo = (largest: bigint) =>
  fc.integer({ min: 0, max: 9 }).chain((places) => {
    const most = largest * 10n ** BigInt(places);
    return fc.bigInt({ min: -most, max: most }).map((digits) => ({ digits, places, number: Number(`${digits}e-${places}`) }));
  });

/** The next double up, or down. */
function besides(x: number, direction: number): number {
  const bits = new BigInt64Array(new Float64Array([x === 0 ? Number.MIN_VALUE : x]).buffer);
  bits[0] = bits[0]! + (x >= 0 === direction > 0 ? 1n : -1n);
  return new Float64Array(bits.buffer)[0]!;
}

describe("decimal", () => {
  test("a typed decimal of up to nine places is itself", () => {
    fc.assert(
      fc.property(typedUpTo(4_000_000n), ({ number }) => expect(decimal(number)).toBe(number + 0)),
      { numRuns: 2000 },
    );
  });

  test("a difference of typed decimals is the typed difference", () => {
    expect(decimal(73.04 - 73.0)).toBe(0.04);
    expect(decimal(0.3 - 0.1)).toBe(0.2);
    expect(decimal(4.631 - 4.626)).toBe(0.005);
  });

  test("nothing is 0, never -0", () => {
    expect(Object.is(decimal(-0), 0)).toBe(true);
    expect(Object.is(decimal(-1e-12), 0)).toBe(true);
  });

  test("beyond four million units, and for what is no number, it changes nothing", () => {
    expect(decimal(123_456_789.123_456_7)).toBe(123_456_789.123_456_7);
    expect(decimal(-1e300)).toBe(-1e300);
    expect(decimal(1e300)).toBe(1e300);
    expect(decimal(Number.POSITIVE_INFINITY)).toBe(Number.POSITIVE_INFINITY);
    expect(decimal(Number.NaN)).toBeNaN();
  });
});

describe("comparison", () => {
  const exact = (a: { digits: bigint; places: number }, b: { digits: bigint; places: number }) => {
    const left = a.digits * 10n ** BigInt(9 - a.places);
    const right = b.digits * 10n ** BigInt(9 - b.places);
    return left > right ? 1 : left < right ? -1 : 0;
  };

  const typed = typedUpTo(500_000n);

  test("up to half a million units two typed decimals compare as exact integers do", () => {
    fc.assert(
      fc.property(typed, typed, (a, b) => expect(compareDecimals(a.number, b.number)).toBe(exact(a, b))),
      { numRuns: 2000 },
    );
  });

  test("so do neighbours on the ninth place", () => {
    fc.assert(
      fc.property(fc.bigInt({ min: -5n * 10n ** 14n, max: 5n * 10n ** 14n }), fc.constantFrom(-1n, 0n, 1n), (digits, step) => {
        const [a, b] = [Number(`${digits}e-9`), Number(`${digits + step}e-9`)];
        expect(compareDecimals(a, b)).toBe(Number(-step));
      }),
      { numRuns: 2000 },
    );
  });

  test("above, below and compare agree", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true }), fc.double({ noNaN: true }), (a, b) => {
        expect(isAbove(a, b)).toBe(compareDecimals(a, b) === 1);
        expect(isBelow(a, b)).toBe(compareDecimals(a, b) === -1);
        expect(isAbove(a, b)).toBe(isBelow(b, a));
      }),
    );
  });

  test("at the slack between two numbers and a few doubles to either side, above and below are decided by the slack alone", () => {
    const size = fc.tuple(fc.double({ min: -1, max: 1, noNaN: true }), fc.integer({ min: -12, max: 300 })).map(([x, power]) => x * 10 ** power);
    const apart = fc.constantFrom<(b: number) => number>(
      () => 0,
      () => HALF_STEP,
      (b) => slack(b, b),
      (b) => 2 * slack(b, b),
    );
    fc.assert(
      fc.property(size, apart, fc.integer({ min: -3, max: 3 }), fc.constantFrom(1, -1), (b, gap, doubles, sign) => {
        let a = b + sign * gap(b);
        for (let i = 0; i < Math.abs(doubles); i++) a = besides(a, doubles);
        expect(isAbove(a, b)).toBe(a - b > slack(a, b));
        expect(isBelow(a, b)).toBe(b - a > slack(a, b));
        expect(compareDecimals(a, b)).toBe(Number(isAbove(a, b)) - Number(isBelow(a, b)));
      }),
      { numRuns: 20_000 },
    );
  });

  test("half a step of the grid is still the same decimal, on either side; the next double is not", () => {
    const more = HALF_STEP * (1 + Number.EPSILON);
    for (const sign of [1, -1]) {
      expect(compareDecimals(sign * HALF_STEP, 0)).toBe(0);
      expect(compareDecimals(sign * more, 0)).toBe(sign);
    }
    expect([isAbove(HALF_STEP, 0), isBelow(0, HALF_STEP), isAbove(more, 0), isBelow(0, more)]).toEqual([false, false, true, true]);
  });

  test("infinities are equal to themselves and beyond every number", () => {
    expect(compareDecimals(Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY)).toBe(0);
    expect(compareDecimals(Number.POSITIVE_INFINITY, 1)).toBe(1);
    expect(compareDecimals(Number.NEGATIVE_INFINITY, 1)).toBe(-1);
  });

  test("large values are compared to a few units of their last place", () => {
    expect(slack(0.04, 0.03)).toBe(0.5e-9);
    // The larger one counts, on whichever side it stands.
    for (const pair of [slack(1e12, 1), slack(1, -1e12)]) expect(pair).toBe(4e12 * Number.EPSILON);
    expect(compareDecimals(1e12 + 0.0001, 1e12)).toBe(0);
    expect(compareDecimals(1e12 + 1, 1e12)).toBe(1);
    // Below 2^54 doubles are 2 apart and the slack of 2^54 is four times their last place, 16.
    expect([16, 18].map((gap) => isAbove(2 ** 54, 2 ** 54 - gap))).toEqual([false, true]);
  });
});

/**
 * What spreadsheets give is told by people who tried it: that the operands of a comparison are rounded to 15
 * significant digits, in a thread on 252.03 (mrexcel.com/board/threads/…1149146); 10.01 − 10 = 0.01 and
 * 2013.13 − 2013 = 0.13 being FALSE (r/excel 1m4duqy and another thread); 0 = 0.5 − 0.4 − 0.1 being
 * FALSE (forum.bebac.at 22128).
 */
test.each([
  ["10.01 − 10 is not 0.01", 10.01 - 10, 0.01, -1],
  ["2013.13 − 2013 is not 0.13", 2013.13 - 2013, 0.13, 1],
  ["0.5 − 0.4 − 0.1 is not 0", 0.5 - 0.4 - 0.1, 0, -1],
  ["252.03 with something in the 17th digit is 252.03", 252.03000000000003, 252.03, 0],
] as const)("%s", (_, a, b, order) => {
  expect(compareAsSheets(a, b)).toBe(order);
  expect(compareAsSheets(b, a)).toBe(0 - order);
});

test("sums of readings are what they would be on paper", () => {
  expect(73.02 + 0.02).toBeLessThan(73.04);
  expect([compareAsSheets(73.02 + 0.02, 73.04), compareAsSheets(0.1 + 0.2, 0.3), compareAsSheets(73.04 - 73, 0.04)]).toEqual([0, 0, 1]);
});

test("no number but 0 is 0", () => {
  expect([1e-300, -1e-17, 5e-324].map((small) => compareAsSheets(small, 0))).toEqual([1, -1, 1]);
  expect([compareAsSheets(0, -0), compareAsSheets(1e-300, 2e-300)]).toEqual([0, -1]);
});

test("any two numbers compare as what their first 15 digits say", () => {
  const near = fc.tuple(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e6, max: 1e6 }), fc.integer({ min: -80, max: 80 }));
  fc.assert(
    fc.property(near, ([a, steps]) => {
      const b = a + steps * Math.abs(a) * Number.EPSILON;
      const [x, y] = [Number(a.toPrecision(15)), Number(b.toPrecision(15))];
      expect(compareAsSheets(a, b)).toBe(x === y ? 0 : x < y ? -1 : 1);
    }),
    { numRuns: 3000 },
  );
});

test("text is ordered without regard to case, signs before letters", () => {
  const pairs = [
    ["Bore", "bORE"],
    ["Bore", "Taper"],
    ["_bore", "Bore"],
    ["", "Bore"],
    ["Maß", "Mass"],
  ] as const;
  expect(pairs.map(([a, b]) => compareTexts(a, b))).toEqual([0, -1, -1, -1, 1]);
  expect(pairs.map(([a, b]) => compareTexts(b, a))).toEqual([0, 1, 1, 1, -1]);
});
