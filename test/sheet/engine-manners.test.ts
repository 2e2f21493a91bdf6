import * as engine from "@odoo/o-spreadsheet";
import { likeOtherSheets } from "../../src/sheet/engine-manners.ts";

console.debug = () => {};

let model: engine.Model;
beforeAll(() => {
  likeOtherSheets(engine);
  likeOtherSheets(engine);
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
