import { readdirSync } from "node:fs";
import { join } from "node:path";
import type { Block, Cell } from "../../src/core/cell.ts";
import { GROUPS } from "../../src/core/define.ts";
import { evaluateFormula } from "../../src/formula/evaluate.ts";
import { specByName, specs } from "../../src/functions/index.ts";
import { root } from "../../src/tools/paths.ts";
import { asWritten, EXAMPLES } from "../calc/examples.ts";

const rowsOf = (found: unknown): Block => (Array.isArray(found) ? (found as Block) : [[found as Cell]]);

describe("every example gives what it says, to the decimals that it writes", () => {
  test.each(EXAMPLES)("%s", (formula, gives) => {
    expect(asWritten(rowsOf(evaluateFormula(formula)), gives)).toEqual(gives);
  });
});

describe.each(specs.map((spec) => [spec.name, spec] as const))("%s", (name, spec) => {
  test("is found by its name, which no cell can have", () => {
    expect(specByName.get(name)).toBe(spec);
    expect(name).toMatch(/^[A-Z]{3,}$/);
  });

  test("stands in the folder of its group, in a file of its name", () => {
    const files = readdirSync(join(root, "src", "functions", spec.group)).map((file) => file.replaceAll("-", "").replace(/\.ts$/, "").toUpperCase());
    expect(GROUPS).toContain(spec.group);
    expect(files).toContain(name);
  });

  test("has an example of its own for a cell, and for a range where it takes one", () => {
    expect(spec.examples.length).toBeGreaterThanOrEqual(spec.inputs.length ? 2 : 1);
    expect(spec.examples.filter(({ formula }) => !formula.startsWith(`=HATCH.${name}(`))).toEqual([]);
    expect(spec.inputs.length === 0 || spec.examples.some(({ formula }) => formula.includes("{"))).toBe(true);
  });

  test("says in words what each input wants", () => {
    for (const { param } of spec.inputs) expect(param.want).toMatch(/^(?:an? [a-z ]+|text$|TRUE or FALSE$|one of [^,]+, )/);
  });

  test("takes its own defaults as they stand", () => {
    for (const { name: input, param } of spec.inputs) {
      if (param.fallback !== undefined) expect(param.take(param.fallback, input)).toBe(param.fallback);
    }
  });

  test("asks for what it needs before what it can do without", () => {
    const optional = spec.inputs.map(({ param }) => param.isOptional);
    expect(optional).toEqual([...optional].sort((a, b) => Number(a) - Number(b)));
  });

  test("tells in whole sentences what to know before trusting it", () => {
    expect((spec.notes ?? []).filter((note) => !/^.{20,}$/su.test(note))).toEqual([]);
  });

  test("says what a call costs as a number of steps that does not fall with its cells, where it says so", () => {
    if (!spec.steps) return;
    const cost = (cells: number) => spec.steps!(Object.fromEntries(spec.inputs.map((input) => [input.name, cells])));
    expect(cost(10)).toBeGreaterThan(0);
    expect(cost(1000)).toBeGreaterThanOrEqual(cost(10));
  });

  test("labels its columns, where it gives a row of values", () => {
    const { kind, columns } = spec.returns;
    expect(kind === "row").toBe(columns !== undefined);
    expect(new Set(columns).size).toBe(columns?.length ?? 0);
    expect((columns ?? []).filter((label) => !/^[\p{L}±]/u.test(label))).toEqual([]);
  });
});
