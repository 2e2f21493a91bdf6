import fc from "fast-check";
import { compressionSpread } from "../../../src/functions/tests/compression-spread.ts";
import { ask, BLANKS, number } from "../ask.ts";

const pressures = fc.array(
  fc.integer({ min: 1, max: 400 }).map((tenths) => tenths / 10),
  { minLength: 2, maxLength: 12 },
);

describe("cited values", () => {
  // TM 10-3930-618-20: a spread of at most 10 psi, 120 to 125 psi being normal.
  test("cylinders of 120 to 125 psi spread by 5, those of 150, 148, 152 and 118 by 34", () => {
    expect(ask(compressionSpread, [[120, 125, 123, 121]])).toBe(5);
    expect(ask(compressionSpread, [[150], [148], [152], [118]])).toBe(34);
  });
});

describe("identities", () => {
  test("it is the largest difference between any two cylinders", () => {
    fc.assert(
      fc.property(pressures, (read) => {
        const differences = read.flatMap((a) => read.map((b) => Number((a - b).toFixed(9))));
        expect(ask(compressionSpread, [read])).toBe(Math.max(...differences));
      }),
    );
  });

  test("order and layout do not matter, nor does a zero point", () => {
    fc.assert(
      fc.property(pressures, (read) => {
        const spread = number(compressionSpread, [read]);
        expect(
          ask(
            compressionSpread,
            [...read].reverse().map((x) => [x]),
          ),
        ).toBe(spread);
        expect(number(compressionSpread, [read.map((x) => x + 10)])).toBeCloseTo(spread, 8);
      }),
    );
  });
});

describe("at the limits", () => {
  test("12.4 − 11.8 is 0.6, which in binary it is not", () => {
    expect(12.4 - 11.8).not.toBe(0.6);
    expect(ask(compressionSpread, [[12.4, 11.8]])).toBe(0.6);
  });

  test("a dead cylinder is a reading", () => {
    expect(ask(compressionSpread, [[150], [0], [152]])).toBe(152);
    expect(ask(compressionSpread, [[0, 0]])).toBe(0);
  });

  test("two equal cylinders have no spread; a hundred thousand cylinders do not choke it", () => {
    expect(ask(compressionSpread, [[0.3, 0.1 + 0.2]])).toBe(0);
    expect(ask(compressionSpread, [Array.from({ length: 100_000 }, (_, at) => 100 + (at % 7))])).toBe(6);
  });
});

describe("faults", () => {
  test("a bad reading is named with its place", () => {
    expect(ask(compressionSpread, [[150], ["14,8"]])).toEqual({
      code: "decimal-comma",
      sentence: 'COMPRESSIONSPREAD: pressures holds the text "14,8": a decimal comma is not read, type it with this sheet\'s decimal sign (row 2)',
    });
  });

  test("a negative reading is refused", () => {
    expect(ask(compressionSpread, [[150, -3]])).toEqual({
      code: "too-small",
      sentence: "COMPRESSIONSPREAD: pressures -3 is too small: it must be a pressure of at least 0 (column 2)",
    });
  });
});

describe("blanks", () => {
  test("blank cylinders are left out; until two are measured there is no spread", () => {
    for (const blank of BLANKS) {
      const cell = blank as number;
      expect(ask(compressionSpread, [[cell, cell]])).toBe("");
      expect(ask(compressionSpread, [[150, cell]])).toBe("");
      expect(ask(compressionSpread, [[150, cell, 148]])).toBe(2);
    }
  });
});
