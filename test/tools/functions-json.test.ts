import { parseTree } from "custom-functions-metadata";
import { define, type Spec, value } from "../../src/core/define.ts";
import { length } from "../../src/core/inputs.ts";
import { specs } from "../../src/functions/index.ts";
import { functionsJson } from "../../src/tools/functions-json.ts";
import { metadataFormat } from "../reference/custom-functions-metadata.ts";

const sample = (changes: Partial<Spec> = {}): Spec => ({
  ...define({
    name: "SAMPLE",
    group: "about",
    role: "assists",
    summary: "A function for this test",
    definition: "bore",
    source: "common practice",
    params: { bore: length("bore"), gap: length("gap").optional() },
    returns: value("the bore"),
    examples: [],
    compute: ({ bore }) => bore,
  }),
  ...changes,
});

test("every spec is described, and the description has the documented format", () => {
  const described = functionsJson();
  expect(metadataFormat.parse(described)).toEqual(described);
  expect(described.functions.map(({ id }) => id)).toEqual(specs.map(({ name }) => name));
});

test("a whole entry", () => {
  expect(functionsJson([sample()])).toEqual({
    allowErrorForDataTypeAny: true,
    functions: [
      {
        id: "SAMPLE",
        name: "SAMPLE",
        description: "A function for this test",
        parameters: [
          { name: "bore", description: "bore", type: "any", dimensionality: "matrix" },
          { name: "gap", description: "gap", type: "any", dimensionality: "matrix", optional: true },
        ],
        result: { dimensionality: "matrix" },
      },
    ],
  });
});

/** The same declarations in the form that Microsoft's own generator reads. */
function asComments(list: readonly Spec[]): string {
  return list
    .map(({ name, summary, inputs }) => {
      const params = inputs.map(({ name: param, param: { help, isOptional } }) => ` * @param {any[][]} ${isOptional ? `[${param}]` : param} ${help}`);
      const names = inputs.map(({ name: param }) => param).join(", ");
      return [
        "/**",
        ` * ${summary}`,
        ` * @customfunction ${name}`,
        ...params,
        " * @returns {any[][]}",
        " */",
        `function ${name.toLowerCase()}(${names}) {}`,
      ].join("\n");
    })
    .join("\n");
}

test("Microsoft's generator makes the same entries from the same declarations", () => {
  const { functions, extras } = parseTree(asComments(specs), "functions.js");
  expect(extras.flatMap(({ errors }) => errors)).toEqual([]);
  expect(functionsJson().functions).toEqual(functions);
});

test("two functions of one name are refused, also when only capitals tell them apart", () => {
  expect(() => functionsJson([sample(), sample()])).toThrow("Two functions are called SAMPLE.");
});

test("a name with something other than capitals is refused", () => {
  expect(() => functionsJson([sample({ name: "SAMPLE.A" })])).toThrow("SAMPLE.A cannot be an id: capital letters only.");
});

test("a description of more than 128 characters is refused, and so is an empty one", () => {
  expect(() => functionsJson([sample({ summary: "x".repeat(129) })])).toThrow("The description of SAMPLE has 129 characters; 1 to 128 are wanted.");
  const long = sample({ inputs: [{ name: "bore", param: length("x".repeat(129)) }] });
  expect(() => functionsJson([long])).toThrow("The description of SAMPLE, bore has 129 characters; 1 to 128 are wanted.");
  expect(() => functionsJson([sample({ summary: "" })])).toThrow("The description of SAMPLE has 0 characters");
});
