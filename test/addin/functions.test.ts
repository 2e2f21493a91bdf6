import { readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import type { Result } from "../../src/core/cell.ts";
import type { Example, Spec } from "../../src/core/define.ts";
import { evaluateNode } from "../../src/formula/evaluate.ts";
import { ownCalls, parseFormula } from "../../src/formula/parse.ts";
import { NO_CELLS } from "../../src/formula/workbook-cells.ts";
import { specs } from "../../src/functions/index.ts";
import { associated, type Built, builtAddin, HostError, type HostFunction } from "./built.ts";

let built: Built;
let functions: Map<string, HostFunction>;
beforeAll(async () => {
  built = await builtAddin();
  functions = associated(built.folder);
});

/** Excel hands every argument over as a block, one left out as null, and an object about the call behind them. */
function hostArguments(spec: Spec, { formula }: Example): unknown[] {
  const [outer] = ownCalls(parseFormula(formula));
  const given = (outer!.arguments as unknown[]).map((node) => {
    if (!node) return null;
    const value = evaluateNode(node as never, { book: NO_CELLS, sheet: "" });
    return Array.isArray(value) ? value : [[value]];
  });
  const all = spec.inputs.map((_, i) => given[i] ?? null);
  return [...all, { functionName: spec.name, address: "Sheet1!A1" }];
}

const decimals = (value: number): number => String(value).split(".")[1]?.length ?? 0;

function agrees(found: unknown, wanted: Result): boolean {
  if (typeof wanted !== "number" || typeof found !== "number") return found === wanted;
  return Number(found.toFixed(decimals(wanted))) === wanted;
}

const block = (gives: Example["gives"]): readonly (readonly Result[])[] => (Array.isArray(gives) ? gives : [[gives as Result]]);

test("every function of the list is associated once, and no other", () => {
  expect([...functions.keys()]).toEqual(specs.map((spec) => spec.name));
});

test("functions.json names the functions that the script associates", () => {
  const { functions: described } = JSON.parse(readFileSync(join(built.folder, "functions.json"), "utf8")) as { functions: { id: string; name: string }[] };
  expect(described.map(({ id }) => id)).toEqual([...functions.keys()]);
  expect(described.every(({ id, name }) => id === name)).toBe(true);
});

const cases = specs.flatMap((spec) => spec.examples.map((example) => [example.formula, spec, example] as const));

test.each(cases)("%s gives in Excel's hands what its example says", (_, spec, example) => {
  const found = functions.get(spec.name)!(...hostArguments(spec, example)) as unknown[][];
  const wanted = block(example.gives);
  expect(found.map((row) => row.length)).toEqual(wanted.map((row) => row.length));
  const apart = wanted.flatMap((row, r) => row.filter((value, c) => !agrees(found[r]![c], value)));
  expect(apart).toEqual([]);
});

test("a fault of a lone call is #VALUE! with the sentence", () => {
  const clearance = functions.get("PISTONCLEARANCE")!;
  const asked = () => clearance([[73.02]], [[73.06]], null, null, {});
  expect(asked).toThrow(HostError);
  const thrown = (() => {
    try {
      return asked();
    } catch (error) {
      return error as HostError;
    }
  })() as HostError;
  expect(thrown.code).toBe("#VALUE!");
  expect(thrown.message).toBe("PISTONCLEARANCE: skirt 73.06 is larger than bore 73.02: are they swapped?");
});

test("in a block a bad element is text and the others are computed", () => {
  const verdict = functions.get("VERDICT")!;
  const found = verdict([[0.03], ["0,05"], [0.06]], null, [[0.04]], null, null, {}) as unknown[][];
  expect([found[0]![0], found[2]![0]]).toEqual(["within", "over"]);
  expect(found[1]![0]).toMatch(/^check: /);
});

test("a cell that holds an error is named by the argument that it stands in", () => {
  const clearance = functions.get("PISTONCLEARANCE")!;
  const error = { type: "Error", basicType: "Error", basicValue: "#DIV/0!" };
  let message = "";
  try {
    clearance([[error]], [[73]], null, null, {});
  } catch (thrown) {
    message = (thrown as HostError).message ?? "";
  }
  expect(message).toContain("readings holds the error #DIV/0!");
});

test("a blank reading, handed over as 0, leaves the result blank", () => {
  expect(functions.get("TAPER")!([[73.01, 0]], null, {})).toEqual([[""]]);
});

test("the script stays within its size: 120 KB gzipped", () => {
  expect(gzipSync(readFileSync(join(built.folder, "functions.js"))).length).toBeLessThanOrEqual(120 * 1024);
});

describe("whole columns", () => {
  const column = (filled: readonly number[]) => Array.from({ length: 1_048_576 }, (_, r) => [filled[r] ?? null]);
  const call = (name: string, ...given: unknown[]) => functions.get(name)!(...given, { functionName: name, address: "Sheet1!A1" });

  test("give as many results as they hold values", () => {
    expect(call("CLEARANCE", column([73.06, 73.04]), column([73, 73]))).toEqual([[0.06], [0.04], [""]]);
  });

  test("are no finished bore", () => {
    expect(call("TAPER", column([73.02, 73.01]), null)).toEqual([[""]]);
  });

  test("whose results no sheet has room for are refused in a sentence", () => {
    const many = Array.from({ length: 3000 }, () => [73.06]);
    const across = [Array.from({ length: 1700 }, () => 73)];
    expect(() => call("CLEARANCE", many, across)).toThrow(
      expect.objectContaining({
        code: "#VALUE!",
        message: expect.stringMatching(/^CLEARANCE: hole .*the ranges ask for 3000×1700 results, more than 5000000$/),
      }),
    );
  });
});
