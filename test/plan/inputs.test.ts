import { evaluateFormula } from "../../src/formula/evaluate.ts";
import { pistonMatch } from "../../src/functions/cylinder/piston-match.ts";
import { reborePlan } from "../../src/functions/cylinder/rebore-plan.ts";
import { callOf, formulaOf } from "../../src/plan/inputs.ts";
import { area } from "./stand.ts";

describe("what is typed into a plan stands in its formula", () => {
  test("as cells where it stands in cells, with the sheet's name where that is another", () => {
    expect(callOf(pistonMatch, [area("Bore book", "A1:B3"), area("Plan", "C4"), 0.04], "Plan")).toBe("HATCH.PISTONMATCH('Bore book'!A1:B3, C4, 0.04)");
  });

  test("small numbers are written out, since not every host reads an exponent", () => {
    expect(callOf(pistonMatch, [[[1e-7, 2.5e-10]], 73, -1e-9], "Plan")).toBe("HATCH.PISTONMATCH({0.0000001,0.00000000025}, 73, -0.000000001)");
  });

  test("truth values as sheets write them, and words in quotes, with their own quotes doubled", () => {
    expect(callOf(reborePlan, [73.1, 73, [[0.25, 0.5]], 0, "true", 2, true], "Plan")).toBe('HATCH.REBOREPLAN(73.1, 73, {0.25,0.5}, 0, "true", 2, TRUE)');
    expect(callOf(reborePlan, [73.1, 73, 0.25, 0, 'the "old" line', 2, false], "Plan")).toBe(
      'HATCH.REBOREPLAN(73.1, 73, 0.25, 0, "the ""old"" line", 2, FALSE)',
    );
  });

  test("blanks keep their place between others and are left out at the end", () => {
    expect(callOf(reborePlan, [73.1, 73, 0.25, "", "  ", 2, null, undefined], "Plan")).toBe("HATCH.REBOREPLAN(73.1, 73, 0.25, , , 2)");
  });

  test("a blank in a block is an empty text, which is read as a blank again", () => {
    const formula = formulaOf(pistonMatch, [[[73.02], [null], [73.03]], [[72.98], [""], [72.99]], 0.04], "Plan");
    expect(formula).toBe('=HATCH.PISTONMATCH({73.02;"";73.03}, {72.98;"";72.99}, 0.04)');
    expect(evaluateFormula(formula)).toEqual([
      ["bore", "bore size", "piston", "piston size", "clearance", "off target"],
      [1, 73.02, 1, 72.98, 0.04, 0],
      [2, "", "", "", "", ""],
      [3, 73.03, 3, 72.99, 0.04, 0],
    ]);
  });
});
