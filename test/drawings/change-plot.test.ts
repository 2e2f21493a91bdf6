import fc from "fast-check";
import { type ChangeBar, drawChangePlot } from "../../src/drawings/change-plot.ts";
import { at, classed, drawingOf, everyNode, HOSTILE, type Node, numberIn, sentenceOf, TAMED } from "./tree.ts";

const change = (name: string, before: number | null, after: number | null, uBefore?: number, uAfter?: number, unit = "mm"): ChangeBar => ({
  name,
  unit,
  before,
  after,
  uBefore,
  uAfter,
});

const CHANGES = [
  change("Cylinder 1", 73.01, 73.05, 0.006, 0.008),
  change("Cylinder 2", 73.01, 73.016, 0.006, 0.008),
  change("Cylinder 3", 73.01, 72.98, 0.006),
];
const plot = (changes: readonly ChangeBar[], options = {}) => drawingOf(drawChangePlot({ name: "Build against strip-down", changes }, options));

/** The change that a place across the panel stands for, by the numbers under its axis. */
function reader(panel: Node): (x: number) => number {
  const ticks = classed(panel, "tick-name").map((tick) => [at(tick, "x"), numberIn(tick.text)] as const);
  const [[x0, t0], [x1, t1]] = [ticks[0]!, ticks.at(-1)!];
  return (x) => t0 + ((x - x0) / (x1 - x0)) * (t1 - t0);
}

const middleOf = (mark: Node): number => (mark.name === "rect" ? at(mark, "x") + at(mark, "width") / 2 : at(mark, "cx"));
const endsOf = (row: Node): number[] => classed(row, "end").map((end) => at(end, "x1"));
const textOf = (node: Node, className: string): string[] => classed(node, className).map(({ text }) => text);

describe("the drawing says what was measured", () => {
  // U of a difference, JCGM 100 5.1.2: √(0.006² + 0.008²) = 0.010; √2 × 0.006 = 0.00849.
  test("marks stand at the change and bars reach as far as its uncertainty", () => {
    const [panel] = classed(plot(CHANGES).tree, "panel");
    const read = reader(panel!);
    const rows = classed(panel!, "row");
    const wanted = [
      [0.04, 0.01],
      [0.006, 0.01],
      [-0.03, 0.00849],
    ] as const;
    for (const [i, [moved, u]] of wanted.entries()) {
      expect(read(middleOf(classed(rows[i]!, "mark")[0]!))).toBeCloseTo(moved, 4);
      const [low, high] = endsOf(rows[i]!);
      expect(read(low!)).toBeCloseTo(moved - u, 4);
      expect(read(high!)).toBeCloseTo(moved + u, 4);
    }
    expect(read(at(classed(panel!, "zero")[0]!, "x1"))).toBeCloseTo(0, 4);
  });

  test("whatever the changes are, and a bar that does not reach zero is beyond its gauge", () => {
    const size = fc.integer({ min: 72_900, max: 73_100 }).map((microns) => microns / 1000);
    const uncertainty = fc.integer({ min: 1, max: 30 }).map((microns) => microns / 1000);
    fc.assert(
      fc.property(fc.array(fc.tuple(size, size, uncertainty, uncertainty), { minLength: 1, maxLength: 6 }), (given) => {
        const [panel] = classed(plot(given.map(([before, after, uB, uA], i) => change(`size ${i}`, before, after, uB, uA))).tree, "panel");
        const read = reader(panel!);
        const [span] = [Math.abs(read(1000) - read(0)) / 1000];
        for (const [i, row] of classed(panel!, "row").entries()) {
          const [before, after, uB, uA] = given[i]!;
          const u = Math.sqrt(uB ** 2 + uA ** 2);
          expect(Math.abs(read(middleOf(classed(row, "mark")[0]!)) - (after - before))).toBeLessThan(0.05 * span);
          const [low, high] = endsOf(row).map(read);
          expect(Math.abs(high! - low! - 2 * u)).toBeLessThan(0.05 * span);
          if (Math.abs(Math.abs(after - before) - u) < 1e-9) continue;
          expect(row.attributes.class).toBe(Math.abs(after - before) > u ? "row beyond" : "row");
        }
      }),
      { numRuns: 60 },
    );
  });

  test("what lies beyond its gauge is told by the word, the shape and the weight, and not by colour", () => {
    const rows = classed(plot(CHANGES).tree, "row");
    expect(rows.map((row) => [textOf(row, "words")[0], classed(row, "mark")[0]!.name, classed(row, "words")[0]!.attributes["font-weight"]])).toEqual([
      ["larger, beyond its gauge", "rect", "700"],
      ["cannot tell", "circle", undefined],
      ["smaller, beyond its gauge", "rect", "700"],
    ]);
    expect(classed(rows[1]!, "mark")[0]!.attributes.fill).toBe("none");
  });

  test("numbers have their sign, equal decimals and an uncertainty to two figures", () => {
    expect(textOf(plot(CHANGES).tree, "numbers")).toEqual(["+0.040 ± 0.010", "+0.006 ± 0.010", "−0.030 ± 0.0085"]);
  });

  test("an open ring is not run through by its bar", () => {
    const [, row] = classed(plot(CHANGES).tree, "row");
    const ring = classed(row!, "mark")[0]!;
    for (const arm of classed(row!, "uncertainty")) expect(Math.abs(at(arm, "x1") - at(ring, "cx"))).toBeCloseTo(at(ring, "r"), 1);
  });

  test("sizes in another unit get a scale of their own, named by it", () => {
    const { tree } = plot([...CHANGES, change("Compression", 12.1, 11.4, 0.3, 0.3, "bar")]);
    const panels = classed(tree, "panel");
    expect(panels.map((panel) => textOf(panel, "axis-name")[0])).toEqual(["change, mm", "change, bar"]);
    const read = reader(panels[1]!);
    expect(read(middleOf(classed(panels[1]!, "mark")[0]!))).toBeCloseTo(-0.7, 2);
  });

  test("in a narrow pane names and words stand above their bars, which mean the same", () => {
    const { tree, width } = plot(CHANGES, { width: 300 });
    expect(width).toBe(300);
    const [panel] = classed(tree, "panel");
    const read = reader(panel!);
    expect(classed(panel!, "mark").map((mark) => Math.round(read(middleOf(mark)) * 1000))).toEqual([40, 6, -30]);
    expect(textOf(tree, "words")[1]).toBe("cannot tell, +0.006 ± 0.010");
    for (const line of classed(tree, "zero"))
      for (const word of classed(tree, "words")) expect(at(word, "y") < at(line, "y1") || at(word, "y") > at(line, "y2") + 8).toBe(true);
  });
});

describe("what is missing or strange", () => {
  test("without an uncertainty nothing is judged and no bar is made up", () => {
    const [row] = classed(plot([change("skirt", 72.98, 72.99)]).tree, "row");
    expect(textOf(row!, "words")).toEqual(["no uncertainty, not judged"]);
    expect([classed(row!, "end"), classed(row!, "uncertainty")]).toEqual([[], []]);
  });

  test("a size not measured again keeps its row", () => {
    const rows = classed(plot([...CHANGES, change("Cylinder 4", 73.01, null, 0.006)]).tree, "row");
    expect(textOf(rows[3]!, "words")).toEqual(["not measured twice"]);
    expect(classed(rows[3]!, "mark")).toEqual([]);
  });

  test("no change at all stands on zero", () => {
    const [panel] = classed(plot([change("skirt", 72.98, 72.98, 0.006)]).tree, "panel");
    expect(middleOf(classed(panel!, "mark")[0]!)).toBeCloseTo(at(classed(panel!, "zero")[0]!, "x1"), 1);
  });

  test.each([[[]], [[change("skirt", 72.98, null, 0.006)]]])("nothing measured twice gives a sentence", (changes) => {
    expect(sentenceOf(drawChangePlot({ name: "Engine A", changes }))).toBe("Engine A: nothing has been measured twice yet, so there is no change to draw");
  });

  test("hostile names stay text", () => {
    const { tree, description } = drawingOf(drawChangePlot({ name: HOSTILE, changes: [change(HOSTILE, 1, 2, 0.1, 0.1, HOSTILE)] }));
    expect([...everyNode(tree)].some(({ name }) => name === "script")).toBe(false);
    expect(description).toContain(TAMED);
  });

  test("every change is in the text alternative", () => {
    expect(plot(CHANGES).description).toMatch(
      /^In mm: Cylinder 1: \+0\.040 ± 0\.010, larger, beyond its gauge; Cylinder 2: \+0\.006 ± 0\.010, cannot tell; Cylinder 3: −0\.030 ± 0\.0085, smaller, beyond its gauge\./,
    );
  });
});
