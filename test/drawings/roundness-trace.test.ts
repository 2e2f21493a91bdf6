import fc from "fast-check";
import { drawRoundnessTrace, type RoundTrace } from "../../src/drawings/roundness-trace.ts";
import { at, classed, drawingOf, everyNode, HOSTILE, type Node, numberIn, pointsOf, sentenceOf, TAMED } from "./tree.ts";

const TRACE: RoundTrace = { name: "Bore 2", unit: "µm", deviations: [3, 6, 2, -4, -1, 5, 7, 1, -6, -2, 4, 0] };

/** The least-squares circle of equally spaced readings, by its three sums. */
function leastSquares(deviations: readonly number[]): (i: number) => number {
  const n = deviations.length;
  const angle = (i: number) => (2 * Math.PI * i) / n;
  const sum = (weight: (i: number) => number) => deviations.reduce((all, d, i) => all + d * weight(i), 0);
  const r = sum(() => 1) / n;
  const a = (2 * sum((i) => Math.cos(angle(i)))) / n;
  const b = (2 * sum((i) => Math.sin(angle(i)))) / n;
  return (i) => r + a * Math.cos(angle(i)) + b * Math.sin(angle(i));
}

const distance = (x: number, y: number): number => Math.hypot(x, y);

/** What a pixel of radius stands for, by the drawing's own bar. */
function unitsPerPixel(tree: Node): number {
  const [bar] = classed(tree, "bar");
  return numberIn(classed(tree, "bar-name")[0]!.text.split(" ")[0]!) / (at(bar!, "x2") - at(bar!, "x1"));
}

/** From the middle of the plot to each reading's mark, less the least-squares circle, in the unit of the trace. */
function drawnDeviations(tree: Node): number[] {
  const [circle] = classed(tree, "least-squares");
  return classed(tree, "mark").map((mark) => (distance(at(mark, "cx"), at(mark, "cy")) - at(circle!, "r")) * unitsPerPixel(tree));
}

describe("the drawing says what was measured", () => {
  test("each reading stands from the dashed circle as it does from the least-squares circle", () => {
    const { tree } = drawingOf(drawRoundnessTrace(TRACE));
    const circle = leastSquares(TRACE.deviations as number[]);
    const drawn = drawnDeviations(tree);
    for (const [i, deviation] of TRACE.deviations.entries()) expect(drawn[i]).toBeCloseTo(deviation! - circle(i), 1);
  });

  // Check value, exact enumeration: roundness of this trace 12.4004 by least squares, 11.4227 by minimum zone.
  test("from the highest mark to the lowest it is 12.40 µm, and the zone's circles stand 11.42 µm apart", () => {
    const { tree } = drawingOf(drawRoundnessTrace(TRACE));
    const drawn = drawnDeviations(tree);
    expect(Math.max(...drawn) - Math.min(...drawn)).toBeCloseTo(12.4004, 1);
    const [outer, inner] = classed(tree, "zone").map((circle) => pointsOf(circle).map(([x, y]) => distance(x, y)));
    for (const [i, radius] of outer!.entries()) expect(Math.abs((radius - inner![i]!) * unitsPerPixel(tree) - 11.4227)).toBeLessThan(0.01);
    expect(
      classed(tree, "note")
        .map(({ text }) => text)
        .slice(1, 3),
    ).toEqual(["least-squares circle: roundness 12.4 µm", "minimum-zone circles: roundness 11.4 µm"]);
  });

  test("no reading lies outside the zone, and at least four touch it", () => {
    const { tree } = drawingOf(drawRoundnessTrace(TRACE));
    const [outer, inner] = classed(tree, "zone").map(pointsOf);
    let touching = 0;
    for (const mark of classed(tree, "mark")) {
      const [x, y] = [at(mark, "cx"), at(mark, "cy")];
      // The curves have a point at each multiple of 2°, and so one at each reading.
      const beside = (curve: [number, number][]) =>
        curve.reduce((best, point) => (Math.abs(Math.atan2(x * point[1] - y * point[0], x * point[0] + y * point[1])) < 1e-3 ? point : best));
      const [most, least] = [distance(...beside(outer!)), distance(...beside(inner!))];
      expect(distance(x, y)).toBeLessThan(most + 0.03);
      expect(distance(x, y)).toBeGreaterThan(least - 0.03);
      if (distance(x, y) > most - 0.03 || distance(x, y) < least + 0.03) touching++;
    }
    expect(touching).toBeGreaterThanOrEqual(4);
  });

  test("readings follow one another clockwise from the top in equal steps, with their numbers beside them", () => {
    const { tree } = drawingOf(drawRoundnessTrace(TRACE));
    const numbers = classed(tree, "number");
    for (const [i, mark] of classed(tree, "mark").entries()) {
      const turns = Math.atan2(at(mark, "cx"), -at(mark, "cy")) / (2 * Math.PI);
      expect((turns + 1) % 1).toBeCloseTo(i / 12, 3);
      expect(numbers[i]!.text).toBe(String(i + 1));
      const toNumber = Math.atan2(at(numbers[i]!, "x"), -(at(numbers[i]!, "y") - 3.5)) / (2 * Math.PI);
      expect((toNumber + 1.001) % 1).toBeCloseTo(i / 12 + 0.001, 3);
    }
  });

  test("the trace goes through every mark", () => {
    const { tree } = drawingOf(drawRoundnessTrace(TRACE));
    const points = pointsOf(classed(tree, "trace")[0]!);
    for (const mark of classed(tree, "mark")) expect(points.some(([x, y]) => distance(x - at(mark, "cx"), y - at(mark, "cy")) < 0.02)).toBe(true);
  });

  test("setting the part off centre moves no mark", () => {
    fc.assert(
      fc.property(fc.integer({ min: -50, max: 50 }), fc.integer({ min: -50, max: 50 }), (a, b) => {
        const moved = TRACE.deviations.map((d, i) => d! + a * Math.cos((2 * Math.PI * i) / 12) + b * Math.sin((2 * Math.PI * i) / 12));
        const before = classed(drawingOf(drawRoundnessTrace(TRACE)).tree, "mark");
        const after = classed(drawingOf(drawRoundnessTrace({ ...TRACE, deviations: moved })).tree, "mark");
        for (const [i, mark] of after.entries())
          expect(distance(at(mark, "cx") - at(before[i]!, "cx"), at(mark, "cy") - at(before[i]!, "cy"))).toBeLessThan(0.03);
      }),
      { numRuns: 30 },
    );
  });

  test("numbers round a trace of many readings keep room between them", () => {
    const deviations = Array.from({ length: 72 }, (_, i) => Math.sin(i));
    const { tree } = drawingOf(drawRoundnessTrace({ ...TRACE, deviations }));
    expect(classed(tree, "number").map(({ text }) => text)).toEqual(Array.from({ length: 24 }, (_, i) => String(3 * i + 1)));
    expect(classed(tree, "mark")).toHaveLength(72);
  });
});

describe("what is missing or strange", () => {
  test("equal readings are one circle, and it is said that there is no deviation", () => {
    const { tree, description } = drawingOf(drawRoundnessTrace({ ...TRACE, deviations: [5, 5, 5, 5, 5] }));
    const radius = at(classed(tree, "least-squares")[0]!, "r");
    for (const [x, y] of pointsOf(classed(tree, "trace")[0]!)) expect(distance(x, y)).toBeCloseTo(radius, 1);
    expect(classed(tree, "flat").map(({ text }) => text)).toEqual(["no deviation"]);
    expect(description).toContain("All readings lie on one circle.");
  });

  test("a round part off centre is round, whatever binary makes of it", () => {
    const deviations = Array.from({ length: 12 }, (_, i) => 0.1 + 0.3 * Math.cos((2 * Math.PI * i) / 12));
    expect(classed(drawingOf(drawRoundnessTrace({ ...TRACE, deviations })).tree, "flat")).toHaveLength(1);
  });

  test.each([
    [[1, 2, 3], "Bore 2: 3 of at least 4 readings are there, so there is no trace to draw"],
    [[], "Bore 2: 0 of at least 4 readings are there, so there is no trace to draw"],
    [[1, null, 3, null], "Bore 2: 2 of 4 readings are blank, so there is no trace to draw"],
  ])("%j gives a sentence instead", (deviations, sentence) => {
    expect(sentenceOf(drawRoundnessTrace({ ...TRACE, deviations }))).toBe(sentence);
  });

  test("hostile names stay text", () => {
    const { tree, title, description } = drawingOf(drawRoundnessTrace({ ...TRACE, name: HOSTILE, unit: HOSTILE }));
    expect([...everyNode(tree)].some(({ name }) => name === "script")).toBe(false);
    expect(title).toContain(TAMED);
    expect(description).toContain(TAMED);
  });

  test("every reading is in the text alternative, and where the trace is highest", () => {
    const { description } = drawingOf(drawRoundnessTrace(TRACE));
    expect(description).toContain("Readings: 1: +3, 2: +6, 3: +2, 4: −4, 5: −1, 6: +5, 7: +7, 8: +1, 9: −6, 10: −2, 11: +4, 12: 0.");
    expect(description).toContain("Roundness 12.4 µm by least squares, 11.4 µm by minimum zone. Highest at reading 7, lowest at reading 9.");
  });
});
