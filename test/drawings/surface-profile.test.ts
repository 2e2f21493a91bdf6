import { drawSurfaceProfile, type SurfaceProfile } from "../../src/drawings/surface-profile.ts";
import { at, classed, drawingOf, everyNode, HOSTILE, type Node, numberIn, pointsOf, sentenceOf, TAMED } from "./tree.ts";

/**
 * A profile that is filtered already and whose curve is known in closed form: a core that falls evenly from 1 to 0 over 80 % of the
 * surface, peaks on 10 % of it up to 3 and valleys on 10 % of it down to −4, each falling evenly. Geometry.
 */
const N = 1000;
const heightAt = (share: number) => (share < 0.1 ? 3 - 20 * share : share < 0.9 ? 1 - (share - 0.1) / 0.8 : -40 * (share - 0.9));
const shuffled = Array.from({ length: N }, (_, i) => heightAt((((i * 387) % N) + 0.5) / N));
const SURFACE: SurfaceProfile = { name: "Cylinder 2", unit: "µm", profile: shuffled, spacing: 0.004, cutoff: 0 };

function scales(tree: Node) {
  const curve = classed(tree, "curve")[0]!;
  const ticks = classed(curve, "tick-name").map((tick) => ({
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
  return { ratio: of(false, "x"), height: of(true, "y") };
}

describe("the drawing says what was measured", () => {
  // Closed form: the core line has slope 1.25 over the whole, so Rk 1.25; it meets the curve at its own ends, 10 and 90 %.
  test("the curve falls as the heights do, and the line through its flattest part spans Rk", () => {
    const { tree } = drawingOf(drawSurfaceProfile(SURFACE));
    const { ratio, height } = scales(tree);
    const middle = shuffled.reduce((a, b) => a + b, 0) / N;
    for (const [x, y] of pointsOf(classed(tree, "ratio-curve")[0]!)) expect(height(y)).toBeCloseTo(heightAt(ratio(x) / 100) - middle, 1);
    const [core] = classed(tree, "core");
    expect([ratio(at(core!, "x1")), ratio(at(core!, "x2"))].map((x) => Math.round(x))).toEqual([0, 100]);
    expect(height(at(core!, "y1")) - height(at(core!, "y2"))).toBeCloseTo(1.25, 1);
  });

  // Closed form: the line stands at 1.125 and −0.125 at the ends. The curve comes down to 1.125 at share 0.09375 and goes below −0.125
  // at 0.903125. Above: 0.09375 × (3 − 1.125) ÷ 2, so Rpk 1.875; below: 0.096875 × (4 − 0.125) ÷ 2, so Rvk 3.875.
  test("Rk, Rpk, Rvk, Mr1 and Mr2 stand on the curve", () => {
    const { tree } = drawingOf(drawSurfaceProfile(SURFACE));
    const { ratio, height } = scales(tree);
    const named = Object.fromEntries(classed(tree, "span-name").map(({ text }) => text.split(" ") as [string, string]));
    expect(Number(named.Rk)).toBeCloseTo(1.25, 2);
    expect(Number(named.Rpk)).toBeCloseTo(1.875, 1);
    expect(Number(named.Rvk)).toBeCloseTo(3.875, 1);
    const spans = classed(tree, "span").map((span) => Math.abs(height(at(span, "y2")) - height(at(span, "y1"))));
    expect(spans[0]).toBeCloseTo(1.875, 1);
    expect(spans[1]).toBeCloseTo(1.25, 1);
    expect(spans[2]).toBeCloseTo(3.875, 1);
    expect(classed(tree, "ratio").map((line) => ratio(at(line, "x1")))).toEqual([expect.closeTo(9.375, 0), expect.closeTo(90.3125, 0)]);
    expect(classed(tree, "ratio-name").map(({ text }) => text)).toEqual(["Mr1 9.4 %", "Mr2 90.3 %"]);
  });

  test("a triangle is as large as what it stands for", () => {
    const { tree } = drawingOf(drawSurfaceProfile(SURFACE));
    const { ratio, height } = scales(tree);
    const area = (className: string) => {
      const [a, b, c] = pointsOf(classed(tree, className)[0]!).map(([x, y]) => [ratio(x) / 100, height(y)] as const);
      return Math.abs((b![0] - a![0]) * (c![1] - a![1]) - (c![0] - a![0]) * (b![1] - a![1])) / 2;
    };
    expect(area("peaks")).toBeCloseTo((0.09375 * 1.875) / 2, 2);
    expect(area("valleys")).toBeCloseTo((0.096875 * 3.875) / 2, 2);
  });

  test("a long trace keeps its highest peak and its deepest valley with few points, and its sections are marked", () => {
    const profile = Array.from({ length: 8000 }, (_, i) => (i === 4321 ? 9 : i === 2345 ? -11 : Math.sin(i)));
    const { tree } = drawingOf(drawSurfaceProfile({ ...SURFACE, profile, spacing: 0.0005, cutoff: 0 }));
    const points = pointsOf(classed(tree, "heights")[0]!);
    expect(points.length).toBeLessThan(2000);
    const ticks = classed(classed(tree, "profile")[0]!, "tick-name").filter(({ attributes }) => attributes["text-anchor"] === "end");
    const [first, last] = [ticks[0]!, ticks.at(-1)!];
    const perPixel = (numberIn(last.text) - numberIn(first.text)) / (at(last, "y") - at(first, "y"));
    const heights = points.map(([, y]) => numberIn(first.text) + (y - (at(first, "y") - 3.5)) * perPixel);
    expect(Math.max(...heights)).toBeCloseTo(9, 0);
    expect(Math.min(...heights)).toBeCloseTo(-11, 0);
    expect(classed(tree, "section")).toHaveLength(4);
  });

  // Closed form: the mean of the heights is 0.4, so the highest stands at 2.99 − 0.4 and the lowest at −3.98 − 0.4.
  test("the figures of SURFACE stand above, and the curve in the text alternative", () => {
    const { tree, description } = drawingOf(drawSurfaceProfile(SURFACE));
    expect(
      classed(tree, "summary")
        .map(({ text }) => text)
        .join(" "),
    ).toMatch(/^Ra [\d.]+, Rq [\d.]+, Rz [\d.]+, Rk 1\.250, Rpk 1\.875, Rvk 3\.875 µm; Mr1 9\.4 %, Mr2 90\.3 %; sections: 5$/);
    expect(description).toMatch(/The curve: 0 % at 2\.590, .*, 50 % at 0\.099, .*, 100 % at −4\.380\./);
    expect(description).toContain("Taken as filtered already.");
  });

  test("filtered here, the cut-off is named, and too short a trace says that its sections are few", () => {
    const profile = Array.from({ length: 600 }, (_, i) => Math.sin(i / 5) + Math.sin(i));
    const { tree } = drawingOf(drawSurfaceProfile({ ...SURFACE, profile, spacing: 0.004, cutoff: 0.8 }));
    expect(tree.text).toContain("about the Gaussian mean line, cut-off 0.8.");
    expect(tree.text).toContain("sections: 1, fewer than the standard's");
  });
});

describe("what is missing or strange", () => {
  test.each([
    [{ profile: [1, 2, 3] }, "Cylinder 2: SURFACE: profile 3: heights are too few for 5 sections, at least 100 are needed"],
    [{ profile: [...shuffled.slice(0, 200), null, 1] }, "Cylinder 2: a height is missing in the profile, so there is nothing to draw"],
    [{ spacing: 0 }, "Cylinder 2: the spacing is missing, so there is nothing to draw"],
    [{ spacing: -0.004 }, "Cylinder 2: SURFACE: spacing -0.004 is too small: it must be a length above 0"],
    [{ cutoff: -0.8 }, "Cylinder 2: SURFACE: cutoff -0.8 is too small: it must be a length of at least 0"],
    [{ spacing: 0.1, cutoff: 0.8 }, "Cylinder 2: SURFACE: spacing 0.1: it must be at most a twentieth of the cut-off 0.8: are both in one unit?"],
    [{ profile: new Array<number>(200).fill(2) }, "Cylinder 2: all heights are alike, so there is no profile to draw"],
  ])("%# gives a sentence instead", (given, sentence) => {
    expect(sentenceOf(drawSurfaceProfile({ ...SURFACE, ...given }))).toBe(sentence);
  });

  test("empty cells behind the trace are no heights", () => {
    const { tree } = drawingOf(drawSurfaceProfile({ ...SURFACE, profile: [...shuffled, null, null] }));
    expect(classed(tree, "ratio-name").map(({ text }) => text)).toEqual(["Mr1 9.4 %", "Mr2 90.3 %"]);
  });

  test("hostile names stay text", () => {
    const { tree, title } = drawingOf(drawSurfaceProfile({ ...SURFACE, name: HOSTILE, unit: undefined }));
    expect([...everyNode(tree)].some(({ name }) => name === "script")).toBe(false);
    expect(title).toContain(TAMED);
    expect(tree.text).toContain("The sheet names no unit.");
  });
});
