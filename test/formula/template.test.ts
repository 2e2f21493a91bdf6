import { formulaTemplate } from "../../src/formula/template.ts";

const area = (top: number, left: number, bottom = top, right = left) => ({ top, left, bottom, right });

describe("formulas that differ only in the cells that they name are of one shape", () => {
  test.each([
    ["A1+B2", "C7+AA9"],
    ["SUM($A$1:B2)", "SUM(C$3:$D4)"],
    ["HATCH.VERDICT(C4,Limits!$B$5,Limits!C5)", "HATCH.VERDICT(D9,Limits!$B$6,Limits!C6)"],
    ["'A1 to B2'!A1", "'A1 to B2'!A2"],
    ['IF(A1="C4","B2",1)', 'IF(A2="C4","B2",1)'],
  ])("%s and %s", (one, other) => {
    expect(formulaTemplate(one)!.key).toBe(formulaTemplate(other)!.key);
  });

  test.each([
    ["A1+1", "A1+2"],
    ["A1:B2", "A1+B2"],
    ['"A1"', '"A2"'],
    ["'A1'!B1", "'A2'!B1"],
    ["Bores!A1", "Rings!A1"],
    ["LOG10(A1)", "LOG2(A1)"],
  ])("%s and %s are not", (one, other) => {
    expect(formulaTemplate(one)!.key).not.toBe(formulaTemplate(other)!.key);
  });

  test("cells and ranges are told in reading order, ranges from their top left cell", () => {
    expect(formulaTemplate("$B$5*SUM(C9:A2)+'It''s A1'!xfd1048576")!.areas).toEqual([area(4, 1), area(1, 0, 8, 2), area(1_048_575, 16_383)]);
  });

  test.each(["LOG10(5)", "Sheet1!Limit", "TAX_A1", "Readings.A1", "A01", "A0", '"A1"', "'A1:B2'!Limit", "1E5"])("%s names no cell", (formula) => {
    expect(formulaTemplate(formula)!.areas).toEqual([]);
  });

  test.each(["SUM(A1:A1)", "SUM(A$1:$A1)", "XFE1", "A1048577"])("%s is a shape of its own", (formula) => {
    expect(formulaTemplate(formula)).toBeUndefined();
  });
});
