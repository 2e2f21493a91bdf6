import { specs } from "../../src/functions/index.ts";
import { findSpecs } from "../../src/pane/functions-view.tsx";

const names = (search: string) => [...findSpecs(specs, search).values()].flat().map((spec) => spec.name);

test("without a search every function is listed, in its group", () => {
  expect(names("").sort()).toEqual(specs.map((spec) => spec.name).sort());
  for (const [group, members] of findSpecs(specs, "")) expect(new Set(members.map((spec) => spec.group))).toEqual(new Set([group]));
});

test("a function is found by its name in any case, alone or as typed in a cell", () => {
  expect(names("pistonclear")).toContain("PISTONCLEARANCE");
  expect(names("=HATCH.TAPER(")).toContain("TAPER");
});

test("a function is found by what it says it does and takes", () => {
  expect(names("skirt")).toContain("PISTONCLEARANCE");
  expect(names("skirt")).not.toContain("VERDICT");
});

test("more words find fewer functions: all must be there", () => {
  expect(names("largest difference").length).toBeGreaterThan(0);
  expect(names("largest difference").length).toBeLessThan(names("largest").length);
  expect(names("skirt camshaft")).toEqual([]);
});
