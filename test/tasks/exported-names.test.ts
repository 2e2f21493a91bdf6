import { namesOfTwoThings } from "./exported-names.ts";
import { sources } from "./imports.ts";

test("an exported name stands for one thing only, whether a type or a value", () => {
  const files = sources();
  expect(files.size).toBeGreaterThan(300);
  expect(namesOfTwoThings(files)).toEqual([]);
});

test.each(["function", "const", "class", "interface", "type"])("a name that two files hand out is found, in one of them as a %s", (kind) => {
  const body = { function: "() {}", const: " = 1", class: " {}", interface: " {}", type: " = 1" }[kind];
  expect(
    namesOfTwoThings(new Map(Object.entries({ "a.ts": `export ${kind} Place${body};`, "b.ts": "export const Place = 2;", "c.ts": "const Place = 3;" }))),
  ).toEqual(["Place: a.ts, b.ts"]);
});

test("names that are taken out of a whole are found, those that are only handed on or of one file are not", () => {
  const files = {
    "a.ts": "export const { a, b: [c] } = whole;",
    "b.ts": "export const c = 1; export { a } from './a.ts';",
    "c.ts": "export interface D {} export const D = 1;",
  };
  expect(namesOfTwoThings(new Map(Object.entries(files)))).toEqual(["c: a.ts, b.ts"]);
});
