import { drawBoreProfile } from "../../src/drawings/bore-profile.ts";
import { drawChangePlot } from "../../src/drawings/change-plot.ts";
import { drawCompressionBars } from "../../src/drawings/compression-bars.ts";
import { drawRoundnessTrace } from "../../src/drawings/roundness-trace.ts";
import type { DrawingOptions, Drawn } from "../../src/drawings/svg.ts";
import { drawingOf, everyNode, type Node } from "./tree.ts";

const ALL: Record<string, (name: string, options?: DrawingOptions) => Drawn> = {
  "bore profile": (name, options) =>
    drawBoreProfile(
      {
        name,
        unit: "mm",
        heights: ["top", "bottom"],
        axes: ["thrust", "pin"],
        readings: [
          [73.02, 73.01],
          [73, 73],
        ],
        standard: 73,
        limit: 73.05,
      },
      options,
    ),
  "roundness trace": (name, options) => drawRoundnessTrace({ name, unit: "µm", deviations: [1, 0, 2, 0, 1, 3] }, options),
  "change plot": (name, options) => drawChangePlot({ name, changes: [{ name: "skirt", unit: "mm", before: 1, after: 1.2, uBefore: 0.1 }] }, options),
  "compression bars": (name, options) =>
    drawCompressionBars(
      {
        name,
        cylinders: [
          { name: "1", pressure: 150 },
          { name: "2", pressure: 120 },
        ],
        rule: { rule: "share", limit: 0.9 },
      },
      options,
    ),
};

const idsOf = (tree: Node): string[] => [...everyNode(tree)].flatMap(({ attributes }) => (attributes.id ? [attributes.id] : []));

describe.each(Object.entries(ALL))("every drawing: %s", (_, draw) => {
  test("has a title and a description that it points to", () => {
    const { tree, title, description } = drawingOf(draw("Engine A", { id: "plate-1" }));
    const byId = new Map([...everyNode(tree)].map((node) => [node.attributes.id, node]));
    expect(tree.attributes.role).toBe("img");
    expect(byId.get(tree.attributes["aria-labelledby"])?.text).toBe(title);
    expect(byId.get(tree.attributes["aria-describedby"])?.text).toBe(description);
    expect(title).toContain("Engine A");
  });

  test("has ids that begin as told, or are made from what is drawn, the same every time", () => {
    expect(idsOf(drawingOf(draw("Engine A", { id: "plate-1" })).tree).every((id) => id.startsWith("plate-1-"))).toBe(true);
    const [one, again, other] = ["Engine A", "Engine A", "Engine B"].map((name) => drawingOf(draw(name)));
    expect(one!.svg).toBe(again!.svg);
    expect(idsOf(one!.tree).filter((id) => idsOf(other!.tree).includes(id))).toEqual([]);
  });

  test("refers only to patterns that it holds", () => {
    const { svg, tree } = drawingOf(draw("Engine A"));
    for (const [, id] of svg.matchAll(/url\(#([^)]*)\)/g)) expect(idsOf(tree)).toContain(id);
  });

  test("is drawn in the ink of its surroundings alone, and asks for nothing from elsewhere", () => {
    const { svg, tree } = drawingOf(draw("Engine A"));
    for (const { attributes } of everyNode(tree)) {
      for (const paint of [attributes.fill, attributes.stroke]) if (paint) expect(paint).toMatch(/^(?:currentColor|none|url\(#[\w-]+\))$/);
      expect(attributes.style).toBeUndefined();
    }
    expect(svg).not.toMatch(/href|<style|<image|<foreignObject/);
  });

  test("keeps all of itself inside its frame", () => {
    const { tree, width, height } = drawingOf(draw("Engine A"));
    for (const { name, attributes } of everyNode(tree)) {
      if (name !== "text") continue;
      // Places inside the turned and moved groups are the plot's own.
      if (attributes.class?.match(/number|scale|bar-name|axis-name|flat/)) continue;
      expect(Number(attributes.x)).toBeGreaterThanOrEqual(0);
      expect(Number(attributes.x)).toBeLessThanOrEqual(width);
      expect(Number(attributes.y)).toBeLessThanOrEqual(height);
    }
    expect(tree.attributes.viewBox).toBe(`0 0 ${width} ${height}`);
  });
});

test("a sheet that names no unit is told so", () => {
  expect(drawingOf(ALL["compression bars"]!("Engine A")).description).toContain("The sheet names no unit.");
});
