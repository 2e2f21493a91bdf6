import fc from "fast-check";
import { fromStoredFormula, shiftFormula } from "../../src/xlsx/formula-text.ts";

describe("formulas are shown as people type them", () => {
  test.each([
    ["_xldudf_HATCH_TAPER(A1:B2)", "HATCH.TAPER(A1:B2)"],
    ["_XLDUDF_hatch_taper(A1:B2)+1", "HATCH.TAPER(A1:B2)+1"],
    ["hatch.Taper(A1:B2)", "HATCH.TAPER(A1:B2)"],
    ["IF(A1,_xldudf_HATCH_VERDICT(_xldudf_HATCH_CLEARANCE(A1,B1),,0.04))", "IF(A1,HATCH.VERDICT(HATCH.CLEARANCE(A1,B1),,0.04))"],
    ["_xlfn.SINGLE(_xldudf_HATCH_TAPER(A1:D5,2))*2", "HATCH.TAPER(A1:D5,2)*2"],
    ["@HATCH.TAPER(A1:D5,2)", "HATCH.TAPER(A1:D5,2)"],
    ["_xlfn.SINGLE(A1:A3)+1", "@A1:A3+1"],
    ["SUM(_xlfn.ANCHORARRAY('Bore book'!I4))", "SUM('Bore book'!I4#)"],
    ["_xlfn._xlws.SORT(_xlfn.UNIQUE(A1:A3))", "SORT(UNIQUE(A1:A3))"],
    ["_xlfn.LET(_xlpm.x,1,_xlpm.x+1)", "LET(x,1,x+1)"],
    // Text, sheets and names that only look alike are left as they are.
    ['"_xldudf_HATCH_TAPER("&A1', '"_xldudf_HATCH_TAPER("&A1'],
    ["'_xlfn.x'!A1+hatch", "'_xlfn.x'!A1+hatch"],
    ["Readings[@Bore]", "Readings[@Bore]"],
  ])("%s", (stored, shown) => {
    expect(fromStoredFormula(stored)).toBe(shown);
  });
});

test("formulas of nothing but words, numbers and operators are shown as those are that have to be taken apart", () => {
  const word = fc.constantFrom("_xldudf_HATCH_TAPER(", "_xldudf_HATCH_TAPER", "HATCH.TAPER(", "hatch.taper(", "_xlfn.SORT(", "_XLDUDF_HATCH_TAPER(");
  const other = fc.constantFrom(
    "A1",
    "$B$2",
    "Bores!",
    "A1:B2",
    "Limit",
    "5",
    "1E5",
    ".5",
    "TRUE",
    "SUM(",
    "(",
    ")",
    ",",
    "+",
    "-",
    "*",
    "/",
    ":",
    "<>",
    "!",
    "=",
    ".",
    "_",
    "$",
  );
  const formulas = fc.array(fc.oneof(word, other), { maxLength: 8 }).map((parts) => parts.join(""));
  // Text in it, here an empty one, has it taken apart.
  fc.assert(
    fc.property(formulas, (formula) => expect(fromStoredFormula(`${formula}&""`)).toBe(`${fromStoredFormula(formula)}&""`)),
    { numRuns: 5000 },
  );
});

describe("a shared formula in another cell", () => {
  test.each([
    ["A1+$B$1+C$1+$D1", "E1", "F3", "B3+$B$1+D$1+$D3"],
    ["SUM(A:A,1:1,A1:$B$5)", "E1", "F2", "SUM(B:B,2:2,B2:$B$5)"],
    ["'Bore book'!A1&\"A1\"&LOG10(A1)", "E1", "E2", "'Bore book'!A2&\"A1\"&LOG10(A2)"],
    ["HATCH.TAPER(A1:B3)+Limit+Readings[@Bore]", "E1", "E2", "HATCH.TAPER(A2:B4)+Limit+Readings[@Bore]"],
  ])("%s from %s to %s", (formula, from, to, shifted) => {
    expect(shiftFormula(formula, from, to)).toBe(shifted);
  });
});
