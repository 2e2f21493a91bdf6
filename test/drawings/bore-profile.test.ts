import fc from "fast-check";
import { type BoreReadings, commonExaggeration, exaggerationOf } from "../../src/drawings/bore.ts";
import { drawBoreProfile } from "../../src/drawings/bore-profile.ts";
import { at, classed, drawingOf, everyNode, HOSTILE, type Node, numberIn, pointsOf, sentenceOf, TAMED } from "./tree.ts";

const BORE: BoreReadings = {
  name: "Engine A, Cylinder 2",
  unit: "mm",
  heights: ["top", "middle", "bottom"],
  axes: ["Thrust", "Pin"],
  readings: [
    [73.06, 73.035],
    [73.05, 73.03],
    [73.035, 73.025],
  ],
  standard: 73,
};

const bore = (readings: (number | null)[][], more: Partial<BoreReadings> = {}): BoreReadings => ({ ...BORE, readings, ...more });

/** The factor that the drawing itself states. */
const statedFactor = (tree: Node): number =>
  numberIn(
    /drawn ([\d.]+) times as large/.exec(
      classed(tree, "note")
        .map(({ text }) => text)
        .join(" "),
    )![1]!,
  );

/** Left and right tips of the dimension lines of one axis, by height. */
function tips(axis: Node): { left: number; right: number; y: number }[] {
  return classed(axis, "dimension").map((dimension) => {
    const [[left, y], [right]] = classed(dimension, "mark").map((mark) => pointsOf(mark)[0]!) as [[number, number], [number, number]];
    return { left, right, y };
  });
}

const nominalOf = (axis: Node): [number, number] => classed(axis, "nominal").map((line) => at(line, "x1")) as [number, number];

/** What a tip says of the diameter, by the drawing's own nominal lines and its stated factor alone. */
function readingAt(axis: Node, tip: { left: number; right: number }, standard: number, factor: number): number {
  const [left, right] = nominalOf(axis);
  const drawnBore = right - left;
  return standard + ((tip.right - tip.left - drawnBore) / drawnBore / factor) * standard;
}

describe("the drawing says what was measured", () => {
  test("each wall stands as far off the dashed line as the stated factor and the reading ask", () => {
    const { tree } = drawingOf(drawBoreProfile(BORE));
    const factor = statedFactor(tree);
    for (const [a, axis] of classed(tree, "axis").entries()) {
      for (const [h, tip] of tips(axis).entries()) expect(readingAt(axis, tip, 73, factor)).toBeCloseTo(BORE.readings[h]![a]!, 3);
    }
  });

  test("whatever the readings are", () => {
    const size = fc.integer({ min: -60, max: 100 }).map((steps) => 73 + steps / 1000);
    fc.assert(
      fc.property(fc.array(fc.tuple(size, size), { minLength: 1, maxLength: 5 }), (readings) => {
        const given = bore(readings, { heights: readings.map((_, h) => `height ${h + 1}`) });
        const { tree } = drawingOf(drawBoreProfile(given));
        for (const [a, axis] of classed(tree, "axis").entries()) {
          for (const [h, tip] of tips(axis).entries()) {
            // A hundredth of a pixel on a bore drawn 76 wide, taken twice, through the factor.
            expect(Math.abs(readingAt(axis, tip, 73, statedFactor(tree)) - readings[h]![a]!)).toBeLessThan((0.03 / 76 / statedFactor(tree)) * 73);
          }
        }
      }),
    );
  });

  test("the walls go through the tips of the dimension lines, and nowhere beyond the metal", () => {
    const { tree, width } = drawingOf(drawBoreProfile(BORE));
    for (const axis of classed(tree, "axis")) {
      const [left, right] = classed(axis, "wall").map(pointsOf);
      for (const tip of tips(axis)) {
        expect(left!.some(([x, y]) => Math.abs(x - tip.left) < 0.02 && Math.abs(y - tip.y) < 0.02)).toBe(true);
        expect(right!.some(([x, y]) => Math.abs(x - tip.right) < 0.02 && Math.abs(y - tip.y) < 0.02)).toBe(true);
      }
      for (const [x] of [...left!, ...right!]) expect(x).toBeGreaterThan(0);
      for (const [x] of [...left!, ...right!]) expect(x).toBeLessThan(width);
    }
  });

  test("the scale below agrees with the walls: a deviation as large as a mark of it stands above that mark", () => {
    const { tree } = drawingOf(drawBoreProfile(bore([[73.1], [73]], { axes: ["Thrust"], heights: ["top", "bottom"] })));
    const [axis] = classed(tree, "axis");
    const mark = classed(axis!, "tick-name").find(({ text }) => text === "+0.1")!;
    expect(at(mark, "x")).toBeCloseTo(tips(axis!)[0]!.right, 1);
    const zeros = classed(axis!, "tick-name").filter(({ text }) => text === "0");
    expect(zeros.map((zero) => at(zero, "x"))).toEqual(nominalOf(axis!));
  });

  test("an undersize wall stands inside the dashed line and its scale goes inward", () => {
    const { tree } = drawingOf(drawBoreProfile(bore([[72.98, 73]], { heights: ["top"] })));
    const [axis] = classed(tree, "axis");
    expect(tips(axis!)[0]!.left).toBeGreaterThan(nominalOf(axis!)[0]);
    expect(classed(axis!, "tick-name").some(({ text }) => text.startsWith("−"))).toBe(true);
  });

  test("the limit is a line of its own at its place on the scale", () => {
    const { tree } = drawingOf(drawBoreProfile({ ...BORE, limit: 73.08 }));
    const [axis] = classed(tree, "axis");
    const [left, right] = classed(axis!, "limit").map((line) => at(line, "x1"));
    expect(readingAt(axis!, { left: left!, right: right! }, 73, statedFactor(tree))).toBeCloseTo(73.08, 3);
    expect(
      classed(tree, "note")
        .map(({ text }) => text)
        .join(" "),
    ).toContain("chain line: largest allowed, 73.08 mm");
  });

  test("heights stand from the top down in their order, evenly", () => {
    const { tree } = drawingOf(drawBoreProfile(BORE));
    const [first, second, third] = tips(classed(tree, "axis")[0]!).map(({ y }) => y);
    expect(second! - first!).toBeGreaterThan(0);
    expect(third! - second!).toBeCloseTo(second! - first!, 6);
    expect(classed(tree, "height").map(({ text }) => text)).toEqual(["top", "middle", "bottom"]);
  });

  test("taper and out-of-round stand beside the name", () => {
    const { tree } = drawingOf(drawBoreProfile(BORE));
    expect(classed(tree, "summary").map(({ text }) => text)).toEqual(["taper 0.025 mm, out-of-round 0.025 mm"]);
  });

  test("readings keep the decimals that they were typed with, and the largest is bold", () => {
    const { tree } = drawingOf(drawBoreProfile(BORE));
    const readings = classed(tree, "reading");
    expect(readings.map(({ text }) => text)).toEqual(["73.060", "73.050", "73.035", "73.035", "73.030", "73.025"]);
    expect(readings.filter(({ attributes }) => attributes["font-weight"] === "700").map(({ text }) => text)).toEqual(["73.060"]);
  });
});

describe("the factor", () => {
  test("is a round one, as large as there is room for", () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 3000 }), (microns) => {
        const factor = exaggerationOf(bore([[73 + microns / 1000, 73]], { heights: ["top"] }))!;
        expect(String(factor)).toMatch(/^(?:[125]0*|0\.0*[125])$/);
        // The wall may go 30 pixels out on a bore of radius 38.
        const wall = (38 * factor * microns) / 1000 / 73;
        expect(wall).toBeLessThanOrEqual(30 * 1.000001);
        expect(wall).toBeGreaterThan(30 / 2.6);
      }),
    );
  });

  test("bores that are compared share the least of their factors; one with a slip keeps its own", () => {
    const worn = bore([[73.06, 73.05]]);
    const fresh = bore([[73.01, 73.01]]);
    const slip = bore([[76, 73.01]]);
    const factor = commonExaggeration([worn, fresh, worn, slip]);
    expect(factor(fresh)).toBe(exaggerationOf(worn));
    expect(factor(worn)).toBe(exaggerationOf(worn));
    expect(factor(slip)).toBe(exaggerationOf(slip));
    expect(exaggerationOf(slip)!).toBeLessThan(exaggerationOf(worn)! / 5);
  });
});

describe("what is missing or strange", () => {
  test("a blank reading is said and its wall is not made up", () => {
    const { tree, description } = drawingOf(drawBoreProfile(bore([[73.06], [null], [73.03]], { axes: ["Thrust"] })));
    expect(classed(tree, "blank").map(({ text }) => text)).toEqual(["blank"]);
    expect(classed(tree, "wall").map(({ attributes }) => attributes.d!.match(/M/g)!.length)).toEqual([2, 2]);
    expect(classed(tree, "summary")[0]!.text).toBe("not all readings are taken");
    expect(description).toContain("middle blank");
  });

  test("a reading far off is told and does not flatten the others", () => {
    const { tree } = drawingOf(drawBoreProfile(bore([[73.06], [7.305], [73.03]], { axes: ["Thrust"] })));
    expect(classed(tree, "off").map(({ text }) => text)).toEqual(["off the scale"]);
    expect(statedFactor(tree)).toBe(exaggerationOf(bore([[73.06]], { axes: ["Thrust"] })));
  });

  test("without a standard deviations count from the smallest reading that is no slip", () => {
    const { tree } = drawingOf(drawBoreProfile(bore([[73.06], [7.305], [73.03]], { axes: ["Thrust"], standard: undefined })));
    expect(
      classed(tree, "note")
        .map(({ text }) => text)
        .join(" "),
    ).toContain("Dashed line: smallest reading, 73.03 mm");
    expect(
      classed(tree, "summary")
        .map(({ text }) => text)
        .join(" "),
    ).toBe("a reading is far off the others, perhaps mistyped");
  });

  test("one reading alone is a short piece of wall", () => {
    const { tree } = drawingOf(drawBoreProfile(bore([[73.02]], { axes: ["axis 1"], heights: ["height 1"], standard: undefined })));
    expect(tips(classed(tree, "axis")[0]!)).toHaveLength(1);
    expect(classed(tree, "summary")).toEqual([]);
  });

  test("equal readings on the standard stand on the dashed line", () => {
    const { tree } = drawingOf(drawBoreProfile(bore([[73], [73]], { axes: ["Thrust"], heights: ["top", "bottom"] })));
    const [axis] = classed(tree, "axis");
    for (const { left, right } of tips(axis!)) expect([left, right]).toEqual(nominalOf(axis!));
  });

  test.each([
    ["no readings", bore([[null, null]]), "Engine A, Cylinder 2: no readings yet, so there is no profile to draw"],
    ["no cells", bore([]), "Engine A, Cylinder 2: no readings yet, so there is no profile to draw"],
    [
      "a standard of another bore",
      bore([[73.01, 73]], { standard: 7.3 }),
      "Engine A, Cylinder 2: no reading lies near the standard 7.3, so there is no profile to draw",
    ],
    ["readings below 0", bore([[-1, -2]], { standard: undefined }), "Engine A, Cylinder 2: no reading is above 0, so there is no profile to draw"],
  ])("%s give a sentence instead", (_, given, sentence) => {
    expect(sentenceOf(drawBoreProfile(given))).toBe(sentence);
  });

  test("hostile names stay text", () => {
    const { tree, title, description } = drawingOf(
      drawBoreProfile({ ...BORE, name: HOSTILE, heights: [HOSTILE, "b", "c"], axes: [HOSTILE, "Pin"], unit: HOSTILE }, { id: HOSTILE }),
    );
    expect([...everyNode(tree)].some(({ name }) => name === "script")).toBe(false);
    for (const { attributes } of everyNode(tree)) for (const name of Object.keys(attributes)) expect(name).not.toMatch(/^on/);
    expect(title).toContain(TAMED);
    expect(description).toContain(TAMED);
  });
});

describe("the page that it stands on", () => {
  test("in a narrow pane the axes stand below one another", () => {
    const wide = drawingOf(drawBoreProfile(BORE));
    const narrow = drawingOf(drawBoreProfile(BORE, { width: 260 }));
    expect(narrow.width).toBeLessThanOrEqual(260);
    expect(narrow.height).toBeGreaterThan(wide.height);
    const [thrust, pin] = classed(narrow.tree, "axis").map((axis) => nominalOf(axis));
    expect(pin).toEqual(thrust);
    for (const [a, axis] of classed(narrow.tree, "axis").entries())
      for (const [h, tip] of tips(axis).entries()) expect(readingAt(axis, tip, 73, statedFactor(narrow.tree))).toBeCloseTo(BORE.readings[h]![a]!, 3);
  });

  test("every reading is in the text alternative", () => {
    const { description, tree } = drawingOf(drawBoreProfile(BORE));
    for (const reading of ["73.060 (+0.060)", "73.035 (+0.035)", "73.050 (+0.050)", "73.030 (+0.030)", "73.025 (+0.025)"])
      expect(description).toContain(reading);
    expect(tree.children.slice(0, 2).map(({ name, text }) => [name, text])).toEqual([
      ["title", "Bore profile: Engine A, Cylinder 2"],
      ["desc", description],
    ]);
  });
});
