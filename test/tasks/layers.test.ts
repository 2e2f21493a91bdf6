import type { Folder } from "./allowed-imports.ts";
import { drawnArrows, layersText } from "./layers.ts";

const listed = (imports: Record<string, string[]>): Record<string, Folder> =>
  Object.fromEntries(Object.entries(imports).map(([name, allowed]) => [name, { holds: `all of ${name}`, imports: allowed }]));

test("the picture leaves out an arrow that follows from others, however long the way", () => {
  expect(drawnArrows(listed({ a: [], b: ["a"], c: ["b"], d: ["a", "c"] }))).toEqual([
    ["b", "a"],
    ["c", "b"],
    ["d", "c"],
  ]);
  expect(drawnArrows(listed({ a: [], b: ["a"], c: ["a"], d: ["b", "c"] }))).toHaveLength(4);
});

test("picture and table stand highest first, the table with every arrow", () => {
  expect(layersText(listed({ a: [], "a/deep": ["a"], c: ["a", "a/deep"] }))).toBe(
    [
      "```mermaid",
      "flowchart TB",
      '  c["c"]',
      '  a_deep["a/deep"]',
      '  a["a"]',
      "  c --> a_deep",
      "  a_deep --> a",
      "```",
      "",
      "Of 3 arrows the picture has the 2 that do not follow from others; the table has all:",
      "",
      "| folder | holds | imports |",
      "|---|---|---|",
      "| c | all of c | a, a/deep |",
      "| a/deep | all of a/deep | a |",
      "| a | all of a | – |",
      "",
    ].join("\n"),
  );
});
