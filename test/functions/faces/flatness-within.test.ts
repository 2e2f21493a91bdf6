import fc from "fast-check";
import { flatness } from "../../../src/functions/faces/flatness.ts";
import { flatnessWithin } from "../../../src/functions/faces/flatness-within.ts";
import { faceFromScipy, fromScipy } from "../../reference/scipy-values.ts";
import { ask, BLANKS, BLANKS_AND_ZERO, number } from "../ask.ts";

describe("cited values", () => {
  // SciPy: the worst of every 3 × 3 window by lstsq and linprog.
  test.each(["head", "deck"])("the face called %s", (name) => {
    const [leastSquares, zone] = fromScipy(`${name}-within`) as [number, number];
    expect(number(flatnessWithin, faceFromScipy(name), 3, 3)).toBeCloseTo(leastSquares, 9);
    expect(number(flatnessWithin, faceFromScipy(name), 3, 3, "MZ")).toBeCloseTo(zone, 9);
  });
});

const cell = fc.option(
  fc.integer({ min: -30, max: 30 }).map((n) => n / 100),
  { freq: 8, nil: "" },
);
const face = fc
  .tuple(fc.integer({ min: 2, max: 4 }), fc.integer({ min: 3, max: 6 }))
  .chain(([rows, columns]) => fc.array(fc.array(cell, { minLength: columns, maxLength: columns }), { minLength: rows, maxLength: rows }));
const method = fc.constantFrom("LS", "MZ");

describe("against FLATNESS of every window cut out", () => {
  test("the worst of them, those with too few points passed over", () => {
    fc.assert(
      fc.property(face, fc.integer({ min: 1, max: 4 }), fc.integer({ min: 2, max: 5 }), method, (heights, tall, wide, how) => {
        const [rows, columns] = [Math.min(tall, heights.length), Math.min(wide, heights[0]!.length)];
        fc.pre(rows === 1 ? columns >= 3 : true);
        const found: number[] = [];
        for (let r = 0; r + rows <= heights.length; r++)
          for (let c = 0; c + columns <= heights[0]!.length; c++) {
            const one = ask(
              flatness,
              heights.slice(r, r + rows).map((line) => line.slice(c, c + columns)),
              how,
            );
            if (typeof one === "number") found.push(one);
          }
        expect(ask(flatnessWithin, heights, rows, columns, how)).toBe(found.length ? Math.max(...found) : "");
      }),
      { numRuns: 500 },
    );
  });

  test("the whole face as one window is FLATNESS; a larger window never shows less; in inches the same", () => {
    fc.assert(
      fc.property(face, method, (heights, how) => {
        const whole = ask(flatness, heights, how);
        expect(ask(flatnessWithin, heights, heights.length, heights[0]!.length, how)).toBe(whole);
        const parts = ask(flatnessWithin, heights, 2, 3, "MZ");
        const all = ask(flatness, heights, "MZ");
        if (typeof parts === "number" && typeof all === "number") expect(parts).toBeLessThanOrEqual(all + 1e-9);
        const inch = ask(
          flatnessWithin,
          heights.map((line) => line.map((height) => (height === "" ? "" : (height as number) / 25.4))),
          2,
          3,
          "MZ",
        );
        if (typeof parts === "number") expect((inch as number) * 25.4).toBeCloseTo(parts, 7);
      }),
      { numRuns: 400 },
    );
  });
});

describe("faults", () => {
  const HEIGHTS = [
    [0, 0.01, 0],
    [0.02, 0, 0.01],
  ];
  test.each<[string, unknown[], string]>([
    ["a window taller than the face", [HEIGHTS, 3, 2], "FLATNESSWITHIN: rows 3: the heights have only 2"],
    ["a window wider than the face", [HEIGHTS, 2, 4], "FLATNESSWITHIN: columns 4: the heights have only 3"],
    ["a window of two points", [HEIGHTS, 1, 2], "FLATNESSWITHIN: rows 2: heights are too few, at least 3 are needed"],
    ["one of two, upright", [HEIGHTS, 2, 1], "FLATNESSWITHIN: columns 2: heights are too few, at least 3 are needed"],
    ["one of a single point", [HEIGHTS, 1, 1], "FLATNESSWITHIN: columns 1: heights are too few, at least 3 are needed"],
    ["half a point", [HEIGHTS, 1.5, 2], "FLATNESSWITHIN: rows 1.5 is not a whole number: it must be a whole number of at least 1"],
  ])("%s", (_, args, sentence) => {
    expect(ask(flatnessWithin, ...(args as never[]))).toMatchObject({ sentence });
  });
});

describe("blanks", () => {
  test("no heights, or no size of the window, leave it blank", () => {
    for (const blank of BLANKS) expect(ask(flatnessWithin, blank, 1, 3)).toBe("");
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(flatnessWithin, [[0, 1, 0]], blank, 3)).toBe("");
      expect(ask(flatnessWithin, [[0, 1, 0]], 1, blank)).toBe("");
    }
  });
});
