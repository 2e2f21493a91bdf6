import * as engine from "@odoo/o-spreadsheet";
import { applyCompatibility } from "../../../src/calc/grid/compatibility.ts";

console.debug = () => {};

let model: engine.Model;
beforeAll(() => {
  applyCompatibility(engine);
  applyCompatibility(engine);
  model = new engine.Model({ version: "19.3.2", sheets: [{ id: "s", name: "S", colNumber: 3, rowNumber: 9, cells: { A1: '=""', A2: "73" } }] });
});

const shown = (formula: string) => (model.getters.evaluateFormulaResult("s", formula) as { value: unknown }).value;

test.each(["=A1+1", "=A1*2", "=-A1", "=ROUND(A1,2)", "=A2-A1"])("%s with empty text in A1 is no number", (formula) => {
  expect(shown(formula)).toBe("#VALUE!");
});

test("a cell that is really blank counts as nothing, and functions over ranges pass empty text over", () => {
  expect([shown("=B1+1"), shown("=SUM(A1:A2)"), shown("=COUNT(A1:A2)")]).toEqual([1, 73, 1]);
});

test("IF without an else is FALSE, with an empty one 0, as other sheets have it", () => {
  expect([shown("=IF(A2>80,1)"), shown("=IF(A2>80,1,)"), shown("=IF(A2>70,1)"), shown("=IF(A2>80,1,2)")]).toEqual([false, 0, 1, 2]);
});

test("a truth value is above every text and every text above every number, as other sheets order them", () => {
  const asked = [
    '=FALSE>"z"',
    '="a">1E300',
    '=TRUE="TRUE"',
    '=TRUE<>"TRUE"',
    "=FALSE<7",
    '="7">=8',
    "=TRUE=1",
    '="b"<="a"',
    "=B1=FALSE",
    '=B1=""',
    "=NA()>TRUE",
  ];
  expect(asked.map(shown)).toEqual([true, true, false, true, false, true, false, false, true, true, "#N/A"]);
});

test("& and CONCATENATE work through ranges cell by cell, as other sheets have them", () => {
  expect(shown('=ROWS(A1:A2&"x")')).toBe(2);
  expect(shown('=INDEX(A1:A2&"x",2,1)')).toBe(`${shown("=A2")}x`);
  expect(shown('=INDEX(CONCATENATE(A1:A2,"x","y"),2,1)')).toBe(`${shown("=A2")}xy`);
  expect(shown('=IFNA(INDEX({1,2}&{1,2,3},1,3),"no")')).toBe("no");
});

test("text of a number nearer to nothing than a sheet holds is 0", () => {
  expect(['="5e-324"-0', '="1E-308"+1', '="-5e-324"*2', '="2e-5"*1'].map(shown)).toEqual([0, 1, 0, 2e-5]);
});

test("numbers are compared to 15 significant digits, as other sheets do", () => {
  const equal = ["=73.02+0.02=73.04", "=73.02+0.02>=73.04", "=73.02+0.02<73.04", "=0.1+0.2<>0.3", "=73.04-73=0.04"];
  expect(equal.map(shown)).toEqual([true, true, false, false, false]);
  expect(["=0=1E-300", "=0<1E-20", "=B1<1E-20", "=B1=0", "=-1E-17>=0"].map(shown)).toEqual([false, true, true, true, false]);
});

test("text is ordered without regard to case, signs before letters", () => {
  expect(['="_bore"<"Bore"', '="BORE"="bore"', '="a"<="B"', '="Maß"="MASS"', '="A1">"#"', '=B1<"a"'].map(shown)).toEqual([true, true, true, false, true, true]);
});

test("an error beside text is that error", () => {
  expect(['="a"=NA()', '=NA()<"a"', '="a"<=1/0'].map(shown)).toEqual(["#N/A", "#N/A", "#DIV/0!"]);
});
