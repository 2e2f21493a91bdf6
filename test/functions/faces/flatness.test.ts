import fc from "fast-check";
import { flatness } from "../../../src/functions/faces/flatness.ts";
import { faceFromScipy, fromScipy } from "../../reference/scipy-values.ts";
import { ask, BLANKS, number } from "../ask.ts";

const hundredths = fc.integer({ min: -30, max: 30 }).map((n) => n / 100);
const face = fc
  .tuple(fc.integer({ min: 2, max: 4 }), fc.integer({ min: 2, max: 6 }))
  .chain(([rows, columns]) => fc.array(fc.array(hundredths, { minLength: columns, maxLength: columns }), { minLength: rows, maxLength: rows }));
const method = fc.constantFrom("LS", "MZ");

describe("cited values", () => {
  // SciPy: lstsq and linprog; the faces stand in test/reference/scipy/shapes.txt.
  test.each(["head", "deck", "manifold", "rail"])("both planes of the face called %s", (name) => {
    const [leastSquares, zone] = fromScipy(`${name}-flatness`) as [number, number];
    expect(number(flatness, faceFromScipy(name))).toBeCloseTo(leastSquares, 9);
    expect(number(flatness, faceFromScipy(name), "MZ")).toBeCloseTo(zone, 9);
  });

  // ISO 12781-1, from memory: four corners, two opposite ones 1 higher.
  test("a twisted face of four corners", () => {
    expect(
      ask(
        flatness,
        [
          [0, 1],
          [1, 0],
        ],
        "LS",
      ),
    ).toBe(1);
    expect(
      ask(
        flatness,
        [
          [0, 1],
          [1, 0],
        ],
        "MZ",
      ),
    ).toBe(1);
  });
});

/** Least squares on a full grid, where rows and columns are independent: the slopes are sums of their own. */
function byGrid(heights: readonly (readonly number[])[]): number {
  const [rows, columns] = [heights.length, heights[0]!.length];
  const cells = heights.flatMap((line, r) => line.map((height, c) => ({ height, r: r - (rows - 1) / 2, c: c - (columns - 1) / 2 })));
  const sum = (of: (cell: (typeof cells)[number]) => number) => cells.reduce((total, cell) => total + of(cell), 0);
  const middle = sum(({ height }) => height) / cells.length;
  const [down, across] = [sum(({ height, r }) => height * r) / sum(({ r }) => r * r), sum(({ height, c }) => height * c) / sum(({ c }) => c * c)];
  const left = cells.map(({ height, r, c }) => height - middle - down * r - across * c);
  return Math.max(...left) - Math.min(...left);
}

describe("against the plane of a full grid", () => {
  test("least squares by sums along rows and columns", () => {
    fc.assert(
      fc.property(face, (heights) => expect(number(flatness, heights)).toBeCloseTo(byGrid(heights), 8)),
      { numRuns: 500 },
    );
  });

  test("in inches the same face; turned, mirrored, lifted and tilted it is as flat; the zone is never wider", () => {
    fc.assert(
      fc.property(face, method, hundredths, hundredths, (heights, how, lift, tilt) => {
        const flat = number(flatness, heights, how);
        const other = (block: number[][]) => expect(number(flatness, block, how)).toBeCloseTo(flat, 8);
        other(heights[0]!.map((_, c) => heights.map((line) => line[c]!)));
        other(heights.map((line) => [...line].reverse()));
        other(heights.map((line, r) => line.map((height, c) => height + lift + tilt * r - 2 * tilt * c)));
        expect(
          number(
            flatness,
            heights.map((line) => line.map((height) => height / 25.4)),
            how,
          ) * 25.4,
        ).toBeCloseTo(flat, 7);
        expect(number(flatness, heights, "MZ")).toBeLessThanOrEqual(number(flatness, heights, "LS") + 1e-9);
      }),
      { numRuns: 400 },
    );
  });
});

describe("at the limits", () => {
  test("three points of a line and four of a face are enough", () => {
    expect(ask(flatness, [[0, 1, 0]])).toBe(1);
    expect(ask(flatness, [[0], [1], [0]], "MZ")).toBe(1);
    expect(
      number(flatness, [
        [0, 0],
        [0, 1],
      ]),
    ).toBe(0.5);
  });

  test("a hole keeps its place: the heights beside it stay where they are", () => {
    expect(ask(flatness, [[0, "", 2, 3]])).toBe(0);
    expect(
      ask(flatness, [
        [0, 1, 2, "", 4],
        ["", 1, 2, 3, 4],
      ]),
    ).toBe(0);
    expect(number(flatness, [[0, "", 2, 4]])).toBeGreaterThan(0);
  });
});

describe("faults", () => {
  test("too few heights, an unknown plane and text are refused", () => {
    expect(ask(flatness, [[0, 0.01]])).toEqual({ code: "unfit", sentence: "FLATNESS: heights 2: heights are too few, at least 3 are needed" });
    expect(ask(flatness, 0.01)).toEqual({ code: "unfit", sentence: "FLATNESS: heights 1: heights are too few, at least 3 are needed" });
    expect(ask(flatness, [[0, 0, 0]], "MC")).toEqual({ code: "not-a-choice", sentence: 'FLATNESS: method "MC" is not known: it must be one of LS, MZ' });
    expect(ask(flatness, [[0, "flat", 0]])).toEqual({ code: "text", sentence: 'FLATNESS: heights holds the text "flat": it must be a number (column 2)' });
  });
});

describe("blanks", () => {
  test("a face not filled in, or with too few points so far, stays blank", () => {
    for (const blank of BLANKS) {
      const empty = blank as string;
      expect(ask(flatness, blank)).toBe("");
      expect(ask(flatness, [[0, 0.01, empty, empty]])).toBe("");
      expect(
        ask(flatness, [
          [0, 0.01],
          [0.02, empty],
        ]),
      ).toBe("");
      expect(
        ask(flatness, [
          [0, empty, empty, empty],
          [empty, 1, empty, empty],
          [empty, empty, 2, empty],
          [empty, empty, empty, 4],
        ]),
      ).toBe("");
      expect(ask(flatness, [[0, 1, 0]], blank)).toBe(1);
    }
  });
});
