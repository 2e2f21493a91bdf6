import fc from "fast-check";
import { type CompressionTest, drawCompressionBars } from "../../src/drawings/compression-bars.ts";
import { at, classed, drawingOf, everyNode, HOSTILE, type Node, numberIn, sentenceOf, TAMED } from "./tree.ts";

const engine = (pressures: readonly (number | null)[], more: Partial<CompressionTest> = {}): CompressionTest => ({
  name: "Engine A",
  unit: "psi",
  cylinders: pressures.map((pressure, i) => ({ name: `Cylinder ${i + 1}`, pressure })),
  ...more,
});
const bars = (test: CompressionTest, options = {}) => drawingOf(drawCompressionBars(test, options));

/** The pressure that a height on the paper stands for, by the numbers beside its axis. */
function reader(tree: Node): (y: number) => number {
  const ticks = classed(tree, "tick").map((tick) => at(tick, "y1"));
  const numbers = classed(tree, "tick-name").map(({ text }) => numberIn(text));
  const [y0, y1] = [ticks[0]!, ticks.at(-1)!];
  return (y) => numbers[0]! + ((y - y0) / (y1 - y0)) * (numbers.at(-1)! - numbers[0]!);
}

const READINGS = [150, 148, 152, 118];

describe("the drawing says what was measured", () => {
  test("bars stand on zero and end at their pressure", () => {
    const { tree } = bars(engine(READINGS));
    const read = reader(tree);
    for (const [i, bar] of classed(tree, "pressure").entries()) {
      expect(read(at(bar, "y"))).toBeCloseTo(READINGS[i]!, 1);
      expect(read(at(bar, "y") + at(bar, "height"))).toBeCloseTo(0, 1);
    }
  });

  // Figures: TM 10-3930-618-20 (spread of 10), service practice (75 % of the highest), TM 1-1500-204-23-1 (20 % below the average of 142).
  test.each([
    ["difference", 10, 142, ["Cylinder 4"]],
    ["share", 0.75, 114, []],
    ["average", 0.2, 113.6, []],
  ] as const)("the line of the %s rule stands at what it asks, and only bars below it are crossed and called under", (rule, limit, least, under) => {
    const { tree, description } = bars(engine(READINGS, { rule: { rule, limit } }));
    expect(reader(tree)(at(classed(tree, "least")[0]!, "y1"))).toBeCloseTo(least, 1);
    expect(classed(tree, "rule-number").map(({ text }) => text)).toEqual([String(least)]);
    const crossed = classed(tree, "bar").flatMap(({ attributes, text }, i) =>
      attributes.class === "bar under" && text.includes("under") ? [`Cylinder ${i + 1}`] : [],
    );
    expect(crossed).toEqual(under);
    expect(description).toContain(`the ${rule} rule asks at least ${least}`);
    for (const name of under) expect(description).toContain(`${name}: 118, under`);
  });

  test("bars that have failed have another pattern, a heavier edge and a word", () => {
    const { tree } = bars(engine(READINGS, { rule: { rule: "difference", limit: 10 } }), { id: "test" });
    expect(classed(tree, "pressure").map(({ attributes }) => attributes.fill)).toEqual([
      "url(#test-passed)",
      "url(#test-passed)",
      "url(#test-passed)",
      "url(#test-failed)",
    ]);
    expect(new Set(classed(tree, "pressure").map(({ attributes }) => attributes["stroke-width"])).size).toBe(2);
    expect([...everyNode(tree)].filter(({ name }) => name === "pattern").map(({ attributes }) => attributes.id)).toEqual(["test-passed", "test-failed"]);
  });

  test("a reading on the line is within", () => {
    // 12.4 less 0.6 is 11.8 as decimals; 12.1 − 0.3 is too, though in binary it is a little less.
    expect(12.1 - 0.3).toBeLessThan(11.8);
    const { tree } = bars(engine([12.4, 12.1 - 0.3], { rule: { rule: "difference", limit: 0.6 } }));
    expect(classed(tree, "under")).toEqual([]);
  });

  test("heights compare as the pressures do, whatever they are", () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.integer({ min: 1, max: 4000 }).map((tenths) => tenths / 10),
          { minLength: 2, maxLength: 16 },
        ),
        (pressures) => {
          const { tree } = bars(engine(pressures, { rule: { rule: "share", limit: 0.75 } }));
          const heights = classed(tree, "pressure").map((bar) => at(bar, "height"));
          const most = Math.max(...pressures);
          for (const [i, height] of heights.entries()) expect(Math.abs(height / Math.max(...heights) - pressures[i]! / most)).toBeLessThan(0.001);
          const lowered = at(classed(tree, "base")[0]!, "y1") - at(classed(tree, "least")[0]!, "y1");
          expect(lowered / Math.max(...heights)).toBeCloseTo(0.75, 2);
        },
      ),
      { numRuns: 40 },
    );
  });

  test("the axes are named, the pressure by its unit and the cylinders by their own numbers", () => {
    const { tree } = bars(engine(READINGS));
    expect(classed(tree, "axis-name").map(({ text }) => text)).toEqual(["pressure, psi", "Cylinder"]);
    expect(classed(tree, "cylinder").map(({ text }) => text)).toEqual(["1", "2", "3", "4"]);
  });

  test("words on bars keep clear of the rule's line", () => {
    const { tree } = bars(engine([150, 139], { rule: { rule: "difference", limit: 10 } }));
    const line = at(classed(tree, "least")[0]!, "y1");
    for (const { attributes } of classed(tree, "number")) expect(Number(attributes.y) < line || Number(attributes.y) - 9 > line).toBe(true);
  });
});

describe("limits that are typed for each cylinder", () => {
  const noteOf = (tree: Node) =>
    classed(tree, "note")
      .map(({ text }) => text)
      .join(" ");

  test("have lines of their own, and bars outside them are crossed and say so", () => {
    const { tree, description } = bars(engine([150, 118, 170], { limits: { lower: 120, upper: 160 } }));
    const read = reader(tree);
    expect(classed(tree, "least").map((line) => Math.round(read(at(line, "y1"))))).toEqual([160, 120]);
    expect(classed(tree, "limit-number").map(({ text }) => text)).toEqual(["160", "120"]);
    expect(description).toContain("Cylinder 1: 150, within; Cylinder 2: 118, under; Cylinder 3: 170, over");
    expect(noteOf(tree)).toBe("Dotted line: the limit typed for each cylinder, at least 120, at most 160. Crossed bars are outside.");
  });

  test("stand beside the rule's, and whoever is under either is under", () => {
    const { tree, description } = bars(engine([150, 130, 118], { rule: { rule: "share", limit: 0.75 }, limits: { lower: 135 } }));
    expect(classed(tree, "rule-number").map(({ text }) => text)).toEqual(["112.5"]);
    expect(classed(tree, "limit-number").map(({ text }) => text)).toEqual(["135"]);
    expect(description).toContain("Cylinder 1: 150, within; Cylinder 2: 130, under; Cylinder 3: 118, under");
    expect(noteOf(tree)).toContain("Crossed bars are under one of them.");
  });

  test("words at the ends of two lines that are close do not meet", () => {
    const { tree } = bars(engine([150, 130], { rule: { rule: "share", limit: 0.8 }, limits: { lower: 118 } }));
    const [rule, limit] = [classed(tree, "rule-number")[0]!, classed(tree, "limit-number")[0]!];
    expect(at(limit, "y") - at(rule, "y")).toBeGreaterThanOrEqual(25);
  });

  test("the sheet's own word goes before theirs, as it may know an uncertainty", () => {
    const { tree, description } = bars({
      ...engine([150, 121], { limits: { lower: 120 } }),
      cylinders: [
        { name: "Cylinder 1", pressure: 150, verdict: "within" },
        { name: "Cylinder 2", pressure: 121, verdict: "not proven" },
      ],
    });
    expect(description).toContain("Cylinder 2: 121, not proven");
    expect(classed(tree, "under")).toEqual([]);
  });
});

describe("what is missing or strange", () => {
  test("a dead cylinder is a reading of 0, under whatever is asked", () => {
    const { tree, description } = bars(engine([150, 0], { rule: { rule: "share", limit: 0.75 } }));
    expect(classed(tree, "blank")).toEqual([]);
    expect(description).toContain("Cylinder 2: 0, under");
  });

  test("where nothing shows any pressure, or the limit is one of another rule, the rule is said to judge nothing", () => {
    const dead = bars(engine([0, 0], { rule: { rule: "share", limit: 0.75 } }));
    expect(dead.description).toContain("no cylinder shows any pressure");
    expect(bars(engine([150, 140], { rule: { rule: "share", limit: 10 } })).description).toContain("The rule judges nothing here: limit 10");
  });

  test("a cylinder not yet tested keeps its place and is called blank", () => {
    const { tree, description } = bars(engine([150, null, 148], { rule: { rule: "difference", limit: 10 } }));
    expect(classed(tree, "blank").map(({ text }) => text)).toEqual(["blank"]);
    expect(classed(tree, "pressure")).toHaveLength(2);
    expect(description).toContain("Cylinder 2: blank");
  });

  test("one cylinder has nothing to be compared with", () => {
    const { tree } = bars(engine([150], { rule: { rule: "share", limit: 0.75 } }));
    expect(classed(tree, "least")).toEqual([]);
    expect(
      classed(tree, "note")
        .map(({ text }) => text)
        .join(" "),
    ).toBe("The share rule compares cylinders, so it needs a second one.");
  });

  test("without a rule nothing is judged", () => {
    const { tree } = bars(engine([150, 150, 150]));
    expect([classed(tree, "least"), classed(tree, "under")]).toEqual([[], []]);
  });

  test.each([[[]], [[null, null]]])("no pressures give a sentence instead", (pressures) => {
    expect(sentenceOf(drawCompressionBars(engine(pressures)))).toBe("Engine A: no pressures yet, so there are no bars to draw");
  });

  test("sixteen cylinders stay apart in a narrow pane", () => {
    const { tree } = bars(engine(Array.from({ length: 16 }, (_, i) => 150 - i)), { width: 300 });
    const rects = classed(tree, "pressure").map((bar) => [at(bar, "x"), at(bar, "width")] as const);
    for (const [i, [x, width]] of rects.slice(0, -1).entries()) expect(x + width).toBeLessThan(rects[i + 1]![0]);
  });

  test("hostile names stay text", () => {
    const { tree, description } = bars({
      name: HOSTILE,
      unit: HOSTILE,
      cylinders: [
        { name: HOSTILE, pressure: 1 },
        { name: "b", pressure: 2 },
      ],
    });
    expect([...everyNode(tree)].some(({ name }) => name === "script")).toBe(false);
    expect(description).toContain(TAMED);
  });
});
