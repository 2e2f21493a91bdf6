import { drawFaceHeights, type FaceHeights } from "../../src/drawings/face-heights.ts";
import { at, classed, drawingOf, everyNode, HOSTILE, numberIn, sentenceOf, TAMED } from "./tree.ts";

/** A face that is tilted and otherwise flat but for its middle, which is 0.09 high. */
const FACE: FaceHeights = {
  name: "Head",
  unit: "mm",
  rows: ["front", "middle", "rear"],
  columns: ["1", "2", "3"],
  heights: [
    [0, 0.1, 0.2],
    [0.3, 0.49, 0.5],
    [0.6, 0.7, 0.8],
  ],
};

describe("the drawing says what was measured", () => {
  // By hand: tilt taken out leaves 0.09 in the middle of nine places, of which the least-squares plane takes the mean, 0.01.
  test("each place has its distance from the plane, without the tilt", () => {
    const { tree, description } = drawingOf(drawFaceHeights(FACE));
    expect(classed(tree, "distance").map(({ text }) => numberIn(text))).toEqual([-0.01, -0.01, -0.01, -0.01, 0.08, -0.01, -0.01, -0.01, -0.01]);
    expect(
      classed(tree, "summary")
        .map(({ text }) => text)
        .join(" "),
    ).toBe("flatness 0.090 mm about the least-squares plane, 0.090 mm minimum zone");
    expect(description).toContain("middle: 1 −0.010, 2 +0.080, 3 −0.010.");
  });

  test("spots are filled above and open below, and their areas go with the distances", () => {
    const { tree } = drawingOf(drawFaceHeights(FACE));
    const spots = classed(tree, "spot");
    expect(spots.map(({ attributes }) => attributes.fill ?? "filled")).toEqual(["none", "none", "none", "none", "filled", "none", "none", "none", "none"]);
    const areas = spots.map((spot) => at(spot, "r") ** 2);
    expect(areas[4]! / areas[0]!).toBeCloseTo(8, 1);
    expect(spots.map((spot) => [at(spot, "cx"), at(spot, "cy")]).slice(0, 2)[0]![1]).toBe(at(spots[1]!, "cy"));
    expect(at(spots[3]!, "cy")).toBeGreaterThan(at(spots[0]!, "cy"));
  });

  // By hand: about the line through 0, 0.02, 0.03, 0 the slope is 0.001 and the middle 0.0125, which leaves −0.011, 0.008, 0.017, −0.014.
  test("one row is a line, and its straightness is said", () => {
    const line: FaceHeights = { name: "Mains", unit: "mm", rows: ["height"], columns: ["1", "2", "3", "4"], heights: [[0, 0.02, 0.03, 0]] };
    const { tree } = drawingOf(drawFaceHeights(line));
    expect(classed(tree, "distance").map(({ text }) => text)).toEqual(["−0.011", "+0.008", "+0.017", "−0.014"]);
    expect(classed(tree, "summary")[0]!.text).toContain("straightness 0.031 mm");
    expect(
      classed(tree, "distance")
        .filter(({ attributes }) => attributes["font-weight"])
        .map(({ text }) => text),
    ).toEqual(["+0.017", "−0.014"]);
  });

  test("a wide face in a narrow place keeps its spots and leaves the numbers to the description", () => {
    const heights = [0, 1, 2].map((r) => Array.from({ length: 9 }, (_, c) => ((r * c) % 5) / 100));
    const wide = { ...FACE, columns: heights[0]!.map((_, c) => String(c + 1)), heights };
    const { tree, description } = drawingOf(drawFaceHeights(wide, { width: 300 }));
    expect(classed(tree, "distance")).toHaveLength(0);
    expect(classed(tree, "spot")).toHaveLength(27);
    expect(
      classed(tree, "note")
        .map(({ text }) => text)
        .join(" "),
    ).toContain("The numbers stand in the description.");
    expect(description).toMatch(/front: 1 [+−]?0\.\d{3}/);
  });
});

describe("what is missing or strange", () => {
  test("a hole is a dash, and the others stand by the plane through them", () => {
    const heights = FACE.heights.map((line) => [...line]);
    heights[1]![1] = null as never;
    const { tree, description } = drawingOf(drawFaceHeights({ ...FACE, heights }));
    expect(classed(tree, "hole")).toHaveLength(1);
    expect(new Set(classed(tree, "distance").map(({ text }) => text))).toEqual(new Set(["0"]));
    expect(description).toContain("2 none");
  });

  test("too few heights give a sentence instead", () => {
    const heights = [
      [0, 0.1, null],
      [0.2, null, null],
    ];
    expect(sentenceOf(drawFaceHeights({ ...FACE, heights }))).toBe(
      "Head: 3 of 6 heights are there, too few for a plane through them, so there is no face to draw",
    );
  });

  test("hostile names stay text", () => {
    const { tree, title, description } = drawingOf(drawFaceHeights({ ...FACE, name: HOSTILE, rows: [HOSTILE, "b", "c"], unit: undefined }));
    expect([...everyNode(tree)].some(({ name }) => name === "script")).toBe(false);
    expect(title).toContain(TAMED);
    expect(description).toContain("The sheet names no unit.");
  });
});
