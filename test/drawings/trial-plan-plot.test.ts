import { isDrawing } from "../../src/drawings/svg.ts";
import { drawTrialPlan, type SeenCurve } from "../../src/drawings/trial-plan-plot.ts";
import { treeOf } from "./tree.ts";

const CURVE: SeenCurve = {
  name: "readings of each place",
  now: 2,
  points: [
    { n: 1, eighty: 0.003, ninety: 0.004 },
    { n: 2, eighty: 0.002, ninety: 0.003 },
    { n: 3, eighty: 0.0015, ninety: 0.002 },
  ],
};
const drawn = (...curves: SeenCurve[]) => {
  const made = drawTrialPlan(curves, { id: "p" });
  if (!isDrawing(made)) throw new Error(made.sentence);
  return { ...made, tree: treeOf(made.svg) };
};

test("the line falls as the sizes fall, on a scale from 0, and a square stands at what is planned", () => {
  const { svg } = drawn(CURVE);
  const [, path] = /<path class="ninety" d="([^"]+)"/.exec(svg)!;
  const points = path!
    .split(/[ML]/)
    .filter(Boolean)
    .map((point) => point.split(" ").map(Number) as [number, number]);
  const [first, second, third] = points as [[number, number], [number, number], [number, number]];
  expect(second[0] - first[0]).toBeCloseTo(third[0] - second[0], 1);
  expect(second[1] - first[1]).toBeCloseTo(third[1] - second[1], 1);
  const [, x, y] = /<rect class="mark" x="([\d.]+)" y="([\d.]+)"/.exec(svg)!;
  expect(Number(x) + 3.5).toBeCloseTo(second[0], 1);
  expect(Number(y) + 3.5).toBeCloseTo(second[1], 1);
  // 0.004 is as high above 0 as 0.002 is twice.
  const zero = first[1] + 2 * (third[1] - first[1]);
  expect(svg).toMatch(new RegExp(`y1="${zero.toFixed(0)}`));
});

test("80 and 90 % are told by the line's form, what must not be missed by dots, in one ink", () => {
  const { svg, tree } = drawn({ ...CURVE, matters: 0.001 });
  expect(svg).toMatch(/<path class="eighty" [^>]*stroke-dasharray/);
  expect(svg).toMatch(/class="matters" [^>]*stroke-dasharray/);
  expect(tree.text).toContain("Dotted: what must not be missed.");
  expect(svg).not.toMatch(/fill="(?!none|currentColor)|stroke="(?!currentColor)/);
});

test("the description holds every number; a curve of one point is none", () => {
  expect(drawn(CURVE).description).toContain("By readings of each place: 1 0.003 and 0.004, 2 (planned) 0.002 and 0.003, 3 0.0015 and 0.002.");
  expect(drawTrialPlan([{ ...CURVE, points: CURVE.points.slice(0, 1) }])).toEqual({
    title: "Smallest difference seen",
    sentence: "there is nothing to draw yet",
  });
});
