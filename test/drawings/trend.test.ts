import { isDrawing } from "../../src/drawings/svg.ts";
import { drawTrend, type Trend, type TrendPoint } from "../../src/drawings/trend.ts";
import { HOSTILE, TAMED, treeOf } from "./tree.ts";

const point = (engine: string, day: string, value: number, isOutside = false): TrendPoint => ({ engine, day, value, isOutside });
const drawn = (trend: Trend) => {
  const made = drawTrend(trend, { id: "t" });
  if (!isDrawing(made)) throw new Error(made.sentence);
  return { ...made, tree: treeOf(made.svg) };
};
const wear: Trend = {
  characteristic: "bore wear",
  unit: "mm",
  upper: 0.08,
  points: [point("E-1", "2024-05-01", 0.03), point("E-1", "2026-05-01", 0.09, true), point("E-2", "2025-05-01", 0.05)],
};

test("each reading stands at its day and height: equal steps of time and size are equal steps on paper", () => {
  const svg = drawn(wear).svg;
  const circles = [...svg.matchAll(/<circle class="mark" cx="([\d.]+)" cy="([\d.]+)"/g)].map(([, x, y]) => [Number(x), Number(y)]);
  const [, x, y] = /<rect class="mark outside" x="([\d.]+)" y="([\d.]+)"/.exec(svg)!;
  const square = [Number(x) + 3.2, Number(y) + 3.2];
  expect(circles).toHaveLength(2);
  // Of 730 days 365 lie between the first and the second, of 0.06 mm 0.02.
  expect((circles[1]![0]! - circles[0]![0]!) / (square[0]! - circles[0]![0]!)).toBeCloseTo(365 / 730, 2);
  expect((circles[1]![1]! - circles[0]![1]!) / (square[1]! - circles[0]![1]!)).toBeCloseTo(0.02 / 0.06, 2);
});

test("outside is told by its form, the limit by a dashed line with its number, and the axes are named with the unit", () => {
  const { svg, tree } = drawn(wear);
  expect(svg).toMatch(/<g class="limit"><line [^>]*stroke-dasharray/);
  for (const text of ["at most", "0.08", "mm", "day of measurement", "2025"]) expect(tree.text).toContain(text);
  expect(svg).not.toMatch(/fill="(?!none|currentColor)|stroke="(?!currentColor)/);
});

test("the readings of one engine are joined, those of others are not", () => {
  expect(drawn(wear).svg.match(/<path class="engine"/g)).toHaveLength(1);
});

test("its words hold every number, or those of each year where there are many", () => {
  expect(drawn(wear).description).toContain("In mm. 2024-05-01 E-1: 0.03; 2025-05-01 E-2: 0.05; 2026-05-01 E-1: 0.09, outside. Limits: at most 0.08.");
  const points = Array.from({ length: 400 }, (_, i) => point(`E-${i}`, `${2022 + (i % 2)}-03-01`, i % 2 ? 0.04 : 0.02, i === 399));
  const many = drawn({ ...wear, points });
  expect(many.description).toContain("2022: 200 readings from 0.02 to 0.02, mean 0.02, 0 outside; 2023: 200 readings from 0.04 to 0.04, mean 0.04, 1 outside.");
  expect(many.svg.match(/class="mark/g)!.length).toBeLessThanOrEqual(24);
});

test("limits that were not the same are not drawn, and that is said", () => {
  const { svg, description } = drawn({ ...wear, upper: undefined });
  expect(svg).not.toContain('class="limit"');
  expect(description).toContain("The limits were not the same for all, so none is drawn.");
});

test("one reading alone, and equal ones, are drawn in the middle; without a day there is nothing to draw", () => {
  expect(drawn({ characteristic: "taper", points: [point("E-1", "2024-05-01", 0)] }).svg).not.toContain("NaN");
  expect(drawTrend({ characteristic: "taper", points: [point("E-1", "unknown", 0.01)] })).toEqual({
    title: "Trend: taper",
    sentence: "taper: no reading has a day, so there is no trend to draw",
  });
});

test("hostile names stay text", () => {
  const { svg, description } = drawn({ characteristic: HOSTILE, unit: HOSTILE, points: [point(HOSTILE, "2024-05-01", 1)] });
  expect(svg).not.toContain("<script");
  expect(description).toContain(TAMED);
});
