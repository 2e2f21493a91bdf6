import fc from "fast-check";
import { combine } from "../../../src/functions/measurement/combine.ts";
import { ask, BLANKS, number } from "../ask.ts";

describe("cited values", () => {
  // JCGM 100:2008, H.1.3.2: 5.8, 3.9 and 6.7 nm come to 9.68194195397 nm.
  test("GUM H.1: 5.8, 3.9 and 6.7 nm are 9.682 nm together", () => {
    expect(number(combine, [[5.8, 3.9, 6.7]])).toBeCloseTo(9.68194195397, 10);
  });

  // JCGM 100:2008, H.1.5: 25, 9.7, 2.9 and 16.6 nm come to 32 nm.
  test("GUM H.1: the end gauge's 25, 9.7, 2.9 and 16.6 nm are 32 nm together", () => {
    expect(Math.round(number(combine, [[25], [9.7], [2.9], [16.6]]))).toBe(32);
  });

  // JCGM 100:2008, G.4.1 (inputs from memory, result computed).
  test("GUM G.4.1: 0.25, 0.57 and 0.82 % are 1.02947 %", () => {
    expect(number(combine, [[0.25, 0.57, 0.82]])).toBeCloseTo(1.02947, 5);
  });
});

describe("identities", () => {
  const list = fc.array(fc.integer({ min: 0, max: 1000 }), { minLength: 1, maxLength: 12 }).filter((values) => values.some((u) => u > 0));

  test("the order is no matter, and ten times each is ten times the whole", () => {
    fc.assert(
      fc.property(list, (values) => {
        const whole = number(combine, [values]);
        expect(number(combine, [[...values].reverse()])).toBeCloseTo(whole, 9);
        expect(number(combine, [values.map((u) => u * 10)])).toBeCloseTo(whole * 10, 7);
      }),
    );
  });

  test("the whole is at least the largest and at most the plain sum", () => {
    fc.assert(
      fc.property(list, (values) => {
        const whole = number(combine, [values]);
        expect(whole).toBeGreaterThanOrEqual(Math.max(...values) - 1e-9);
        expect(whole).toBeLessThanOrEqual(values.reduce((sum, u) => sum + u, 0) + 1e-9);
      }),
    );
  });

  test("combining in two steps is combining at once", () => {
    fc.assert(
      fc.property(list, list, (one, other) => {
        expect(number(combine, [[number(combine, [one]), number(combine, [other])]])).toBeCloseTo(number(combine, [[...one, ...other]]), 8);
      }),
    );
  });
});

test("one uncertainty stands for itself", () => {
  expect(ask(combine, 0.004)).toBe(0.004);
});

describe("faults", () => {
  test("a negative uncertainty is refused where it stands", () => {
    expect(ask(combine, [[0.003], [-0.004]])).toEqual({
      code: "too-small",
      sentence: "COMBINE: uncertainties -0.004 is too small: it must be a number of at least 0 (row 2)",
    });
  });

  test("text among the uncertainties is refused where it stands", () => {
    expect(ask(combine, [[0.003, "0,004"]])).toEqual({
      code: "decimal-comma",
      sentence: 'COMBINE: uncertainties holds the text "0,004": a decimal comma is not read, type it with this sheet\'s decimal sign (column 2)',
    });
  });
});

test("blank cells are left out, and nothing but blanks leaves it blank", () => {
  expect(ask(combine, [[0.003], [null], [0.004], [""]])).toBe(0.005);
  for (const blank of BLANKS) expect(ask(combine, blank)).toBe("");
});
