import { define, GROUP_TITLES, GROUPS, NAMESPACE, row, signature, table, value } from "../../src/core/define.ts";
import { choice, length } from "../../src/core/inputs.ts";

const declared = {
  name: "GAP",
  group: "cylinder",
  role: "measures",
  summary: "Hole less shaft",
  definition: "hole − shaft",
  source: "common practice",
  params: { hole: length("hole"), shaft: length("shaft") },
  returns: value("clearance"),
  examples: [{ formula: "=HATCH.GAP(73.04, 73)", gives: 0.04 }],
  compute: ({ hole, shaft }: { hole: number; shaft: number }) => hole - shaft,
} as const;

test("a declared function keeps what was declared, with its inputs in the order of the arguments", () => {
  const { inputs, ...rest } = define(declared);
  expect(rest).toEqual(declared);
  expect(inputs).toEqual([
    { name: "hole", param: declared.params.hole },
    { name: "shaft", param: declared.params.shaft },
  ]);
});

test("what a function leaves is a value, rows under labels, or a table", () => {
  expect(value("clearance")).toEqual({ kind: "value", help: "clearance" });
  expect(row(["least", "most"], "sizes")).toEqual({ kind: "row", columns: ["least", "most"], help: "sizes" });
  expect(table("plan")).toEqual({ kind: "table", help: "plan" });
});

// Names in sheets are stable once released.
test("sheets see the functions as HATCH.", () => {
  expect(NAMESPACE).toBe("HATCH");
});

test("the groups stand in the order in which an engine is measured, built and tested, each under its title", () => {
  expect(GROUPS).toEqual([
    "cylinder",
    "rings",
    "shafts",
    "faces",
    "surface",
    "volumes",
    "valves",
    "balance",
    "tests",
    "verdict",
    "measurement",
    "wear",
    "about",
  ]);
  for (const title of Object.values(GROUP_TITLES)) expect(title).toMatch(/^[A-Z]/);
});

// Common practice of help texts: what may be left out stands in brackets.
test("a call is written with its inputs in order, those that may be left out in brackets", () => {
  const [hole, shaft, unit] = [length("hole"), length("shaft").optional(), choice("unit", ["mm", "in"]).default("mm")];
  expect(signature({ name: "VERSION", inputs: [] })).toBe("VERSION()");
  expect(signature({ name: "GAP", inputs: [{ name: "hole", param: hole }] })).toBe("GAP(hole)");
  const inputs = [
    { name: "hole", param: hole },
    { name: "shaft", param: shaft },
    { name: "unit", param: unit },
  ];
  expect(signature({ name: "GAP", inputs })).toBe("GAP(hole, [shaft], [unit])");
});
