import fc from "fast-check";
import { compareAsSheets, compareTexts } from "../../src/core/sheet-order.ts";

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
