import { FUTURE, FUTURE_SHEET, formulaForFile } from "../../src/bench/stored-formula.ts";
import { fromStoredFormula } from "../../src/xlsx/formula-text.ts";
import { EXCEL_FUNCTIONS } from "../reference/formulas/excel-functions.ts";

/** Spellings: [MS-XLSX] 2.2.2 (future functions), ECMA-376 part 1, 18.17. */
test.each([
  ["=HATCH.TAPER(B2:C4)", "_xldudf_HATCH_TAPER(B2:C4)"],
  ["=hatch.taper(B2:C4)", "_xldudf_HATCH_TAPER(B2:C4)"],
  ["=SUM(A1:A2)", "SUM(A1:A2)"],
  ["=XLOOKUP(A1,B:B,C:C)", "_xlfn.XLOOKUP(A1,B:B,C:C)"],
  ["=NORM.DIST(A1,B1,C1,TRUE)", "_xlfn.NORM.DIST(A1,B1,C1,TRUE)"],
  ["=FILTER(A1:A5,A1:A5>1)", "_xlfn._xlws.FILTER(A1:A5,A1:A5>1)"],
  ["=STDEV.S(A1:A5)+VAR.P(A1:A5)", "_xlfn.STDEV.S(A1:A5)+_xlfn.VAR.P(A1:A5)"],
  ["=SUM(D4#)", "SUM(_xlfn.ANCHORARRAY(D4))"],
  ['=IF(A1="FILTER(x) HATCH.TAPER(y) D4#",1,2)', 'IF(A1="FILTER(x) HATCH.TAPER(y) D4#",1,2)'],
  ["='SORT(1)'!A1", "'SORT(1)'!A1"],
  ["=LET(x,A1,x+1)", "_xlfn.LET(_xlpm.x,A1,_xlpm.x+1)"],
  ["=LET(bore,B2, skirt, B6,HATCH.VERDICT(Bore-skirt,x,y))", "_xlfn.LET(_xlpm.bore,B2, _xlpm.skirt, B6,_xldudf_HATCH_VERDICT(_xlpm.Bore-_xlpm.skirt,x,y))"],
  ["=MAP(A1:A3,LAMBDA(v,v*v))+v", "_xlfn.MAP(A1:A3,_xlfn.LAMBDA(_xlpm.v,_xlpm.v*_xlpm.v))+v"],
  [
    '=LET(f,LAMBDA(a,[b],a+IF(ISOMITTED(b),0,b)),f(2)&"f(2), a")',
    '_xlfn.LET(_xlpm.f,_xlfn.LAMBDA(_xlpm.a,_xlop.b,_xlpm.a+IF(_xlfn.ISOMITTED(_xlpm.b),0,_xlpm.b)),_xlpm.f(2)&"f(2), a")',
  ],
  ["=SUM(LET(x,1,x),x)", "SUM(_xlfn.LET(_xlpm.x,1,_xlpm.x),x)"],
  ["=LET(x,1,y,x,{1,2}*y)", "_xlfn.LET(_xlpm.x,1,_xlpm.y,_xlpm.x,{1,2}*_xlpm.y)"],
  ['="a ""SORT(1)"" b"&CONCAT("c")', '"a ""SORT(1)"" b"&_xlfn.CONCAT("c")'],
])("%s is stored as %s", (typed, stored) => {
  expect(formulaForFile(typed)).toBe(stored);
});

test("every later function of Excel is marked", () => {
  expect([...FUTURE, ...FUTURE_SHEET].sort()).toEqual([...EXCEL_FUNCTIONS.later].sort());
});

test.each([
  "HATCH.VERDICT(C4,Limits!$B$4,Limits!$C$4)",
  "SORT(UNIQUE(A1:A9))",
  "SUM(D4#)",
  "LET(x,A1,f,LAMBDA(a,[b],a+b),f(x,2))",
  'IFNA(TEXTJOIN("-",TRUE,A1:A3),"")',
])("%s comes back as it was typed", (formula) => {
  expect(fromStoredFormula(formulaForFile(formula))).toBe(formula);
});
