import { drawJudgedBar, type JudgedBar, reachOfBars } from "../../src/drawings/judged-bar.ts";
import { isDrawing } from "../../src/drawings/svg.ts";
import { HOSTILE, TAMED, treeOf } from "./tree.ts";

const BAR: JudgedBar = {
  ...{ name: "engine A, cylinder 1, bore, top", unit: "mm", difference: 0.012, lower: 0.0071, upper: 0.0169, half: 0.0041, matters: 0.005 },
  ...{ decimals: 3, verdict: "differs" },
};
const drawn = (bar: Partial<JudgedBar> = {}, reach = 0.02) => {
  const made = drawJudgedBar({ ...BAR, ...bar }, reach, { id: "b" });
  if (!isDrawing(made)) throw new Error(made.sentence);
  return { ...made, tree: treeOf(made.svg) };
};
/** Both ends of a line of the drawing. */
const ends = (svg: string, name: string): [number, number] => {
  const [, x1, x2] = new RegExp(`<line x1="([\\d.]+)" y1="[\\d.]+" x2="([\\d.]+)" y2="[\\d.]+" class="${name}"`).exec(svg)!;
  return [Number(x1), Number(x2)];
};
const band = (svg: string): [number, number] => {
  const [, x, width] = /<rect class="band" x="([\d.]+)" y="[\d.]+" width="([\d.]+)"/.exec(svg)!;
  return [Number(x), Number(x) + Number(width)];
};

test("equal sizes are equal lengths: the intervals and what matters stand on one scale around 0", () => {
  const { svg } = drawn();
  const [inner, whole, matters] = [ends(svg, "inner"), ends(svg, "interval"), band(svg)];
  const [zero] = ends(svg, "zero");
  const perUnit = (matters[1] - matters[0]) / 0.01;
  expect((matters[0] + matters[1]) / 2).toBeCloseTo(zero, 1);
  expect((inner[0] + inner[1]) / 2 - zero).toBeCloseTo(0.012 * perUnit, 0);
  expect(inner[1] - inner[0]).toBeCloseTo(0.0082 * perUnit, 0);
  expect(whole[1] - whole[0]).toBeCloseTo(0.0098 * perUnit, 0);
});

// D. J. Schuirmann 1987: two tests on one side at 5 % say "within m" just when the 90 % interval lies within ±m.
test("the thick bar lies between the broken lines just when two are the same within what matters", () => {
  for (const [difference, isWithin] of [
    [0.0008, true],
    [0.0011, false],
  ] as const) {
    const { svg } = drawn({ difference, verdict: "cannot tell" });
    const [inner, matters] = [ends(svg, "inner"), band(svg)];
    expect(inner[0] >= matters[0] && inner[1] <= matters[1]).toBe(isWithin);
  }
});

test("what differs is a filled square, everything else an open ring, all in one ink", () => {
  expect(drawn().svg).toMatch(/<rect class="mark"/);
  const { svg } = drawn({ verdict: "cannot tell" });
  expect(svg).toMatch(/<circle class="mark" [^>]*fill="none"/);
  expect(svg).not.toMatch(/fill="(?!none|currentColor)|stroke="(?!currentColor)/);
});

test("title and description hold the numbers; without what matters there is no band", () => {
  const { tree, description, svg } = drawn({ matters: null });
  expect(tree.text).toContain("Change: engine A, cylinder 1, bore, top");
  expect(description).toBe(
    "+0.012 mm: differs. 90 % from +0.008 to +0.016, 95 % from +0.007 to +0.017; what matters is not typed. The axis goes from −0.02 to +0.02.",
  );
  expect(svg).toContain('role="img"');
  expect(svg).not.toContain("band");
});

test("one axis goes as far as the farthest bar of its like, and to a round number", () => {
  expect(reachOfBars([BAR, { lower: -0.031, upper: 0.001, matters: 0.005 }])).toBeGreaterThanOrEqual(0.031);
  expect(reachOfBars([{ lower: 0, upper: 0, matters: null }])).toBe(1);
});

test("text that somebody typed stays text", () => {
  const { svg, tree } = drawn({ name: HOSTILE });
  expect(tree.text).toContain(TAMED);
  expect(svg).not.toContain("<script");
});
