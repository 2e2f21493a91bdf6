import fc from "fast-check";
import { holm } from "../../src/math/holm.ts";

// R 4.2.2: p.adjust(c(0.01, 0.02, 0.03, 0.04), "holm") and p.adjust(c(0.04, 0.001, 0.03, 0.005), "holm").
test.each([
  [
    [0.01, 0.02, 0.03, 0.04],
    [0.04, 0.06, 0.06, 0.06],
  ],
  [
    [0.04, 0.001, 0.03, 0.005],
    [0.06, 0.004, 0.06, 0.015],
  ],
  [
    [0.6, 0.7],
    [1, 1],
  ],
  [[0.03], [0.03]],
  [[], []],
])("of %p are adjusted %p", (chances, adjusted) => {
  expect(holm(chances)).toEqual(adjusted.map((p) => expect.closeTo(p, 12)));
});

const chance = fc.double({ min: 0, max: 1, noNaN: true });

test("each lies between its own and Bonferroni's, and no order is turned round", () => {
  fc.assert(
    fc.property(fc.array(chance, { minLength: 1, maxLength: 20 }), (chances) => {
      const adjusted = holm(chances);
      for (const [i, p] of chances.entries()) {
        expect(adjusted[i]).toBeGreaterThanOrEqual(p);
        expect(adjusted[i]).toBeLessThanOrEqual(Math.min(1, chances.length * p) + 1e-12 + (chances.some((q) => q < p) ? 1 : 0));
        for (const [j, q] of chances.entries()) if (p < q) expect(adjusted[i]).toBeLessThanOrEqual(adjusted[j]!);
      }
    }),
  );
});
