import fc from "fast-check";
import { chanceAdjusted } from "../../../src/functions/wear/chance-adjusted.ts";
import { fromR } from "../../reference/r-values.ts";
import { ask, BLANKS } from "../ask.ts";

type Given = readonly (number | string | null)[];
const adjusted = (chances: Given) => (ask(chanceAdjusted, [[...chances]]) as unknown[][])[0]!;

describe("cited values", () => {
  // R's p.adjust(…, "holm").
  test("eight chances as R adjusts them", () => {
    expect(adjusted(fromR("chances"))).toEqual(fromR("holm").map((p) => expect.closeTo(p, 12)));
  });
});

describe("identities", () => {
  const chances = fc.array(
    fc.integer({ min: 0, max: 1000 }).map((n) => n / 1000),
    { minLength: 1, maxLength: 30 },
  );

  test("none becomes smaller, and none larger than the number of rows makes it", () => {
    fc.assert(
      fc.property(chances, (given) => {
        for (const [i, p] of (adjusted(given) as number[]).entries()) {
          expect(p).toBeGreaterThanOrEqual(given[i]!);
          expect(p).toBeLessThanOrEqual(Math.min(1, given[i]! * given.length + 1e-12) + (given[i] === 0 ? 0 : 1));
        }
        expect(Math.min(...(adjusted(given) as number[]))).toBeCloseTo(Math.min(1, Math.min(...given) * given.length), 12);
      }),
    );
  });

  test("they keep their order, however they stand", () => {
    fc.assert(
      fc.property(chances, (given) => {
        const down = ask(
          chanceAdjusted,
          given.map((p) => [p]),
        ) as number[][];
        expect(down.flat()).toEqual(adjusted(given));
        const order = [...given.keys()].sort((a, b) => given[a]! - given[b]!);
        for (const [at, i] of order.slice(1).entries()) expect(down[i]![0]).toBeGreaterThanOrEqual(down[order[at]!]![0]!);
      }),
    );
  });

  test("a row more makes none of the others clearer", () => {
    fc.assert(
      fc.property(chances, fc.constantFrom(0, 0.03, 1), (given, more) => {
        for (const [i, p] of (adjusted(given) as number[]).entries()) expect(adjusted([...given, more])[i] as number).toBeGreaterThanOrEqual(p);
      }),
    );
  });
});

describe("faults and blanks", () => {
  test("a chance in per cent is refused in its place, and counts as a row", () => {
    expect(adjusted([0.01, 5])).toEqual([0.02, "check: p 5 is too large: it must be a ratio from 0 to 1 (column 2)"]);
  });

  test("words stay in their place", () => {
    expect(adjusted([0.02, "cannot tell"])).toEqual([0.04, 'check: p holds the text "cannot tell": it must be a ratio from 0 to 1 (column 2)']);
  });

  test("a blank row does not count", () => {
    for (const blank of BLANKS) expect(adjusted([0.04, blank as null])).toEqual([0.04, ""]);
  });

  test("a chance too small to be told from 0 is one", () => {
    expect(adjusted([0, 0.5])).toEqual([0, 0.5]);
  });
});
