import { FACE_NOTES, isEnough, pointsIn, tooSmall } from "../../../src/functions/faces/face-points.ts";
import { flatness } from "../../../src/functions/faces/flatness.ts";
import { flatnessWithin } from "../../../src/functions/faces/flatness-within.ts";

/** Two rows of three, with a hole in the middle of the second. */
const GRID = { rows: 2, columns: 3, values: [1, 2, 3, 4, null, 6] };

test("filled cells are points with the row and column that they stand in, holes are none", () => {
  expect(pointsIn(GRID, 0, 0, 2, 3)).toEqual([
    { height: 1, at: [0, 0] },
    { height: 2, at: [0, 1] },
    { height: 3, at: [0, 2] },
    { height: 4, at: [1, 0] },
    { height: 6, at: [1, 2] },
  ]);
});

test("a part of the range counts from its own corner; one row or column has one coordinate", () => {
  expect(pointsIn(GRID, 0, 1, 2, 2)).toEqual([
    { height: 2, at: [0, 0] },
    { height: 3, at: [0, 1] },
    { height: 6, at: [1, 1] },
  ]);
  expect(pointsIn(GRID, 1, 0, 1, 3)).toEqual([
    { height: 4, at: [0] },
    { height: 6, at: [2] },
  ]);
  expect(pointsIn(GRID, 0, 2, 2, 1)).toEqual([
    { height: 3, at: [0] },
    { height: 6, at: [1] },
  ]);
});

// Geometry: a plane goes through any three points, a line through any two, and no plane is told by points in one line.
test("three points make a line worth measuring, four a face, unless those lie in one line", () => {
  const on = (...at: (readonly number[])[]) => at.map((place) => ({ height: 0, at: place }));
  expect(isEnough(on([0], [1]))).toBe(false);
  expect(isEnough(on([0], [1], [3]))).toBe(true);
  expect(isEnough(on([0, 0], [0, 1], [1, 0]))).toBe(false);
  expect(isEnough(on([0, 0], [0, 1], [1, 0], [1, 1]))).toBe(true);
  expect(isEnough(on([0, 0], [1, 1], [2, 2], [3, 3]))).toBe(false);
  expect(isEnough([])).toBe(false);
});

test("a range too small even when it is filled is refused with how many it must be", () => {
  expect(tooSmall("heights", 1, 2)).toMatchObject({ param: "heights", got: 2, want: "heights are too few, at least 3 are needed" });
  expect(tooSmall("rows", 2, 1)).toMatchObject({ param: "rows", got: 2 });
  expect([tooSmall("heights", 1, 3), tooSmall("heights", 3, 1), tooSmall("heights", 2, 2)]).toEqual([undefined, undefined, undefined]);
});

test("both functions tell what holes, a straightedge and a warm head do", () => {
  expect(FACE_NOTES.map((note) => note.split(" ").slice(0, 2).join(" "))).toEqual(["Empty cells", "A straightedge", "Clean and"]);
  for (const { notes } of [flatness, flatnessWithin]) expect(notes).toEqual(expect.arrayContaining([...FACE_NOTES]));
});

// By count: of n points the programme looks at every one for each that it takes in, and there are up to a quarter of n² windows.
test("both say what a call costs", () => {
  expect(flatness.steps!({ heights: 100, method: 1 })).toBe(1000);
  expect(flatnessWithin.steps!({ heights: 100, rows: 1, columns: 1, method: 1 })).toBe(25_000);
});
