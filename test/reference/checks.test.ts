import { evaluateFormula } from "../../src/buildsheet/formula/evaluate.ts";
import { BORE_CHECKS } from "./bore-checks.ts";
import type { Check } from "./check.ts";
import { LIMIT_CHECKS } from "./limit-checks.ts";
import { RING_CHECKS } from "./ring-checks.ts";
import { VOLUME_CHECKS } from "./volume-checks.ts";

const GROUPS: [string, readonly Check[]][] = [
  ["bores", BORE_CHECKS],
  ["rings", RING_CHECKS],
  ["volumes", VOLUME_CHECKS],
  ["limits", LIMIT_CHECKS],
];

describe.each(GROUPS)("values from outside the project: %s", (_, checks) => {
  test.each(checks)("$formula gives $gives ($source)", ({ formula, gives, within }) => {
    const answer = evaluateFormula(formula);
    if (typeof gives === "string" || within === 0) expect(answer).toBe(gives);
    else expect(Math.abs((answer as number) - gives)).toBeLessThanOrEqual(within);
  });
});
