import { evaluateFormula } from "../../src/formula/evaluate.ts";
import { specs } from "../../src/functions/index.ts";
import { agrees, allowed, digitsReached, elementOf, short } from "./checks/check.ts";
import { CHECKS, checksFor } from "./checks/index.ts";

const every = Object.values(CHECKS).flat();
const named = every.map((check) => [short(check), check] as const);

test.each(specs.map(({ name, group }) => [name, group] as const))("%s has a value from outside the project", (name, group) => {
  expect(checksFor(name).length).toBeGreaterThan(0);
  for (const check of checksFor(name)) {
    expect(CHECKS[group]).toContain(check);
    expect(check.formula).toContain(`HATCH.${name}(`);
    expect(check.source.length).toBeGreaterThan(10);
  }
});

test("every check is of a function that there is", () => {
  const known = new Set(specs.map(({ name }) => name));
  expect(every.filter((check) => !known.has(check.function))).toEqual([]);
});

describe("bare", () => {
  test.each(named)("%s", (_, check) => {
    const result = elementOf(check, evaluateFormula(check.formula));
    if (check.within === undefined) expect(result).toBe(check.expect);
    expect(agrees(check, result) || result).toBe(true);
  });
});

describe("how a check is held", () => {
  const base = { function: "TAPER", formula: "=1", source: "this test", seen: "computed" } as const;

  test("without an allowance nothing may differ, with one no more than it", () => {
    expect(agrees({ ...base, expect: 0.04 }, 0.04)).toBe(true);
    expect(agrees({ ...base, expect: 0.04 }, 0.04000001)).toBe(false);
    expect(agrees({ ...base, expect: 12.4, within: 0.05 }, 12.45)).toBe(true);
    expect(agrees({ ...base, expect: 12.4, within: 0.05 }, 12.4501)).toBe(false);
    expect(allowed({ ...base, expect: 200, within: { digits: 3 } })).toBeCloseTo(0.2, 12);
  });

  test("text must be the same, and a number is no text", () => {
    expect(agrees({ ...base, expect: "within" }, "within")).toBe(true);
    expect(agrees({ ...base, expect: "within" }, "Within")).toBe(false);
    expect(agrees({ ...base, expect: 1 }, "1")).toBe(false);
    expect(agrees({ ...base, expect: 1, within: 1 }, null)).toBe(false);
  });

  test("digits count up to those that the source prints", () => {
    expect(digitsReached({ ...base, expect: 15.58 }, 15.5833)).toBe(4);
    expect(digitsReached({ ...base, expect: 1026.32 }, 1026.358)).toBe(5);
    expect(digitsReached({ ...base, expect: 611, prints: 5 }, 611.003)).toBe(5);
    expect(digitsReached({ ...base, expect: 0.0025 }, 0.0036)).toBe(0);
    expect(digitsReached({ ...base, expect: 1.00211681802045, within: { digits: 13 } }, 1.00211681802045)).toBe(13);
  });
});
