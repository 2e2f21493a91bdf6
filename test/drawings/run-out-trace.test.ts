import { drawRunOut, type TurnReadings } from "../../src/drawings/run-out-trace.ts";
import { at, classed, drawingOf, everyNode, HOSTILE, type Node, numberIn, pointsOf, sentenceOf, TAMED } from "./tree.ts";

/** A shaft bent by 0.02 with its high side at the fourth of twelve readings, and a burr of 0.01 at the eighth. */
const BURR = 7;
const wave = (i: number) => 0.02 * Math.cos((2 * Math.PI * (i - 3)) / 12);
const TURN: TurnReadings = {
  name: "Main 2",
  unit: "mm",
  readings: Array.from({ length: 12 }, (_, i) => Math.round(1e4 * (wave(i) + (i === BURR ? 0.01 : 0))) / 1e4),
};

/** Upward and along, in the units of the axes, by their own ticks. */
function scales(tree: Node) {
  const ticks = classed(tree, "tick-name").map((tick) => ({
    value: numberIn(tick.text),
    x: at(tick, "x"),
    y: at(tick, "y") - 3.5,
    isUp: tick.attributes["text-anchor"] === "end",
  }));
  const of = (isUp: boolean, key: "x" | "y") => {
    const own = ticks.filter((tick) => tick.isUp === isUp);
    const [first, last] = [own[0]!, own.at(-1)!];
    return (place: number) => first.value + ((place - first[key]) * (last.value - first.value)) / (last[key] - first[key]);
  };
  return { degrees: of(false, "x"), height: of(true, "y") };
}

/** Mean, and the first harmonic by its two sums (geometry). */
function harmonic(readings: readonly number[]): (i: number) => number {
  const n = readings.length;
  const sum = (weight: (i: number) => number) => readings.reduce((all, reading, i) => all + reading * weight(i), 0);
  const angle = (i: number) => (2 * Math.PI * i) / n;
  const [middle, a, b] = [sum(() => 1) / n, (2 * sum((i) => Math.cos(angle(i)))) / n, (2 * sum((i) => Math.sin(angle(i)))) / n];
  return (i) => middle + a * Math.cos(angle(i)) + b * Math.sin(angle(i));
}

describe("the drawing says what was measured", () => {
  test("each reading has its mark at its angle and height", () => {
    const { tree } = drawingOf(drawRunOut(TURN));
    const { degrees, height } = scales(tree);
    const marks = classed(tree, "mark");
    expect(marks).toHaveLength(12);
    for (const [i, mark] of marks.entries()) {
      expect(degrees(at(mark, "cx"))).toBeCloseTo(30 * i, 0);
      expect(height(at(mark, "cy"))).toBeCloseTo(TURN.readings[i]!, 3);
    }
  });

  test("a bar goes from the wave of being off centre to each reading, and the wave is the first harmonic", () => {
    const { tree } = drawingOf(drawRunOut(TURN));
    const { height, degrees } = scales(tree);
    const expected = harmonic(TURN.readings as number[]);
    for (const [i, bar] of classed(tree, "form").entries()) {
      expect(height(at(bar, "y1"))).toBeCloseTo(expected(i), 3);
      expect(height(at(bar, "y2"))).toBeCloseTo(TURN.readings[i]!, 3);
    }
    for (const [x, y] of pointsOf(classed(tree, "wave")[0]!)) expect(height(y)).toBeCloseTo(expected(degrees(x) / 30), 3);
  });

  test("the trace closes with its first reading, and the high side stands where the wave is highest", () => {
    const { tree } = drawingOf(drawRunOut(TURN));
    const trace = pointsOf(classed(tree, "trace")[0]!);
    expect(trace).toHaveLength(13);
    expect(trace[12]![1]).toBe(trace[0]![1]);
    const top = pointsOf(classed(tree, "wave")[0]!).reduce((a, b) => (b[1] < a[1] ? b : a));
    expect(Math.abs(at(classed(tree, "high-side")[0]!, "x1") - top[0])).toBeLessThan(5);
  });

  // By hand: of one cosine of 0.02 alone total 0.04, eccentricity 0.02 at 90°, nothing left.
  test("total, eccentricity and what is left stand above, the extremes beside their marks", () => {
    const { tree, description } = drawingOf(drawRunOut({ ...TURN, readings: [0, 0.02, 0, -0.02] }));
    expect(
      classed(tree, "summary")
        .map(({ text }) => text)
        .join(" "),
    ).toBe("total 0.04 mm, eccentricity 0.020 mm with its high side at 90°, form left 0.000 mm");
    expect(classed(tree, "extreme").map(({ text }) => text)).toEqual(["0.02", "−0.02"]);
    expect(description).toContain("0°: 0.00 (0.000), 90°: 0.02 (0.000), 180°: 0.00 (0.000), 270°: −0.02 (0.000).");
  });
});

describe("what is missing or strange", () => {
  test("a part that runs true has no high side and says so", () => {
    const { tree, description } = drawingOf(drawRunOut({ ...TURN, readings: [0.3, 0.3, 0.3, 0.3, 0.3] }));
    expect(classed(tree, "high-side")).toHaveLength(0);
    expect(description).toContain("No run-out: all readings are alike.");
  });

  test.each([
    [[1, 2, 3], "Main 2: RUNOUT: readings 3: readings are too few, at least 4 are needed"],
    [[1, null, 3, null], "Main 2: 2 of 4 readings are blank, so there is no trace to draw"],
  ])("%j gives a sentence instead", (readings, sentence) => {
    expect(sentenceOf(drawRunOut({ ...TURN, readings }))).toBe(sentence);
  });

  test("hostile names stay text, and a sheet without a unit says so", () => {
    const { tree, title } = drawingOf(drawRunOut({ ...TURN, name: HOSTILE, unit: undefined }));
    expect([...everyNode(tree)].some(({ name }) => name === "script")).toBe(false);
    expect(title).toContain(TAMED);
    expect(tree.text).toContain("The sheet names no unit.");
  });
});
