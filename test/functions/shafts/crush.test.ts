import fc from "fast-check";
import { crush } from "../../../src/functions/shafts/crush.ts";
import { ask, BLANKS, number } from "../ask.ts";

describe("cited values", () => {
  // Geometry: a strip of circumference 50π + 0.314159 closed to 50π is pressed by 0.1 on the diameter.
  test("ends that stand proud by 0.314159 in all are a press fit of 0.1", () => {
    expect(number(crush, [[0.1, 0.1, 0.1, 0.014159]])).toBeCloseTo(0.1, 6);
  });
});

describe("against the circumferences of two circles", () => {
  test("the shells' own diameter when closed less that of the housing", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 120 }), { minLength: 1, maxLength: 4 }), fc.integer({ min: 30, max: 90 }), (ends, housing) => {
        const round = Math.PI * housing + ends.reduce((a, b) => a + b, 0) / 1000;
        expect(number(crush, [ends.map((end) => end / 1000)])).toBeCloseTo(round / Math.PI - housing, 8);
        expect(number(crush, [ends.map((end) => end / 25_400)]) * 25.4).toBeCloseTo(round / Math.PI - housing, 7);
      }),
      { numRuns: 400 },
    );
  });

  test("the order of the ends, and whether they stand in a row or a column, is the same", () => {
    expect(ask(crush, [[0.01], [0.03], [0.02], [0]])).toBe(ask(crush, [[0.03, 0, 0.01, 0.02]]));
    expect(
      ask(crush, [
        [0.01, 0.03],
        [0.02, 0],
      ]),
    ).toBe(ask(crush, 0.06));
  });
});

describe("at the limits", () => {
  test("ends that are all flush have no crush; noise of the computer below the face counts as flush", () => {
    expect(ask(crush, [[0, 0, 0, 0]])).toBe(0);
    expect(ask(crush, 0.3 - 0.1 - 0.2)).toBe(0);
  });
});

describe("faults", () => {
  test("an end below the face is refused, with what to do", () => {
    expect(ask(crush, [[0.03, -0.01, 0.02, 0.02]])).toEqual({
      code: "unfit",
      sentence: "CRUSH: standing -0.01: an end cannot count as sunk: push that end flush and measure the other (column 2)",
    });
  });

  test("in a block of two shells the end is told by row and column, the first one too", () => {
    const place = (...ends: number[][]) => (ask(crush, ends) as { sentence: string }).sentence.replace(/.*\(/, "(");
    expect(place([0.01, 0.02], [-0.01, 0.02])).toBe("(row 2, column 1)");
    expect(place([-0.01, 0.02], [0.01, 0.02])).toBe("(row 1, column 1)");
  });

  test("more ends than two shells have are refused", () => {
    expect(ask(crush, [[0.03, 0.02, 0.03, 0.02, 0.03]])).toEqual({
      code: "unfit",
      sentence: "CRUSH: standing 5: ends are too many: a pair of shells has 4",
    });
  });
});

describe("blanks", () => {
  test("an end not filled in leaves the crush blank, one of 0 counts", () => {
    for (const blank of BLANKS) {
      expect(ask(crush, blank)).toBe("");
      expect(ask(crush, [[0.03, 0.02, 0.03, blank as string]])).toBe("");
    }
    expect(ask(crush, [[0.03, 0, 0.03, 0]])).toBe(0.019098593);
  });
});
