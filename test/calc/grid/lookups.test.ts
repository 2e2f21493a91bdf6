import * as engine from "@odoo/o-spreadsheet";
import fc from "fast-check";
import { applyCompatibility } from "../../../src/calc/grid/compatibility.ts";
import { sortedPlace } from "../../../src/calc/grid/line-search.ts";
import { countedSteps } from "../../../src/calc/grid/own-function.ts";
import { registerFunctions } from "../../../src/calc/grid/register-functions.ts";
import { Wildcards } from "../../../src/calc/grid/wildcards.ts";

console.debug = () => {};

// A names, B their numbers, C going up with some twice, D going down.
const ENGINES = ["Port", "Starboard", "Spare", "Port", "p*"];
const UP = [1, 3, 5, 5, 8];
const cells = Object.fromEntries(
  ENGINES.flatMap((name, i) => [
    [`A${i + 1}`, name],
    [`B${i + 1}`, String(10 * (i + 1))],
    [`C${i + 1}`, String(UP[i])],
    [`D${i + 1}`, String(-UP[i]!)],
  ]),
);

let model: engine.Model;
beforeAll(() => {
  registerFunctions([], engine);
  applyCompatibility(engine);
  model = new engine.Model({ version: "19.3.2", sheets: [{ id: "s", name: "S", colNumber: 6, rowNumber: 20, cells }] });
});

type Shown = { value: unknown; message?: unknown };
const result = (formula: string) => model.getters.evaluateFormulaResult("s", `=${formula}`) as Shown | Shown[][];
const shown = (formula: string): unknown => {
  const given = result(formula);
  return Array.isArray(given) ? given.map((column) => column.map(({ value }) => value)) : given.value;
};

// By the description of XLOOKUP (support.microsoft.com, read from memory); LibreOffice 7.4 has no XLOOKUP.
test.each<[string, unknown]>([
  ['XLOOKUP("port",A1:A5,B1:B5)', 10],
  ['XLOOKUP("port",A1:A5,B1:B5,,0,-1)', 40],
  ['XLOOKUP("nobody",A1:A5,B1:B5)', "#N/A"],
  ['XLOOKUP("nobody",A1:A5,B1:B5,"none")', "none"],
  ['XLOOKUP("s*",A1:A5,B1:B5,,2)', 20],
  ['XLOOKUP("s*",A1:A5,B1:B5,,2,-1)', 30],
  ['XLOOKUP("p*",A1:A5,B1:B5)', 50],
  ['XLOOKUP("p~*",A1:A5,B1:B5,,2)', 50],
  ["XLOOKUP(5,C1:C5,B1:B5,,0,2)", 30],
  ["XLOOKUP(6,C1:C5,B1:B5,,0,2)", "#N/A"],
  ["XLOOKUP(6,C1:C5,B1:B5,,-1,-1)", 40],
  ["XLOOKUP(6,C1:C5,B1:B5,,1,2)", 50],
  ["XLOOKUP(0,C1:C5,B1:B5,,-1)", "#N/A"],
  ["XLOOKUP(-6,D1:D5,B1:B5,,-1,-2)", 50],
  ["XLOOKUP(3,C1:C5,A1:B5)", [["Starboard"], [20]]],
  ["XLOOKUP(TRUE,C1:C5,B1:B5)", "#N/A"],
  ["XMATCH(6,C1:C5,1)", 5],
  ['XMATCH("spare",A1:A5)', 3],
  ["XLOOKUP(5,C1:C5,B1:B4)", "#VALUE!"],
  ["XLOOKUP(5,A1:C5,B1:B5)", "#N/A"],
])("%s", (formula, wanted) => {
  expect(shown(formula)).toEqual(wanted);
});

// As Excel's values stand in a public test workbook (apache/poi, FormulaEvalTestData_Copy.xlsx, sheet EverythingTests): a search that takes
// sorted values for granted, in values that are not.
test.each([
  ['VLOOKUP(534,{"INTEGRAL",10;0,11;1,12;2,13;534,14;9999999999,15;-9999999999,16},2)', 14],
  ['LOOKUP("DOUBLE",{"DOUBLE","BLANK","STRING","REF","AREA (rows)"},{1.1,2,3,4,5})', 1.1],
  ['HLOOKUP("STRING",{"INTEGRAL","DOUBLE","BLANK","STRING","REF","AREA (rows)",0;1,2,3,4,5,6,7},2,TRUE)', 4],
  // And of the same in test-data/spreadsheet: what is not there counts before the number of the column (tafia/calamine, tests/errors.xlsx).
  ["VLOOKUP(9,{1,2;3,4},0,FALSE)", "#N/A"],
  ["VLOOKUP(3,{1,2;3,4},0,FALSE)", "#VALUE!"],
  ["VLOOKUP(3,{1,2;3,4},3,FALSE)", "#REF!"],
  ["MATCH(5,{1,3,5,5,8})", 4],
  ["MATCH(6,{1,3,5,5,8})", 4],
  ["MATCH(0,{1,3,5,5,8})", "#N/A"],
  ['MATCH(9,{1,3,"a",5,8})', 5],
  ['MATCH(4,{1,3,"a",5,8})', 2],
  ['MATCH(4,{8,5,"a",3,1},-1)', 2],
])("%s", (formula, wanted) => {
  expect(shown(formula)).toBe(wanted);
});

// Descriptions of RANK and AVEDEV (support.microsoft.com, from memory).
test.each([
  ["RANK(3.5,{7,3.5,3.5,1,2},1)", 3],
  ["RANK(7,{7,3.5,3.5,1,2})", 1],
  ["RANK.EQ(3.5,{7,3.5,3.5,1,2})", 2],
  ["RANK(9,{7,3.5})", "#N/A"],
  ["AVEDEV(4,5,6,7,5,4,3)", 1.0204081632653061],
  ['AVEDEV({"a","b"})', "#NUM!"],
])("%s", (formula, wanted) => {
  const given = shown(formula);
  expect(typeof wanted === "number" ? Number((given as number).toPrecision(14)) : given).toBe(
    typeof wanted === "number" ? Number(wanted.toPrecision(14)) : wanted,
  );
});

// Excel's values in FormulaEvalTestData_Copy.xlsx of apache/poi: letters and places are whole numbers.
test.each([
  ['REPLACE("ABCDEFG",2.3,3.9,"xx")', "AxxEFG"],
  ['SUBSTITUTE("teststr","t","T",1.9)', "Teststr"],
  ['SUBSTITUTE("teststr","t","T",0)', "#VALUE!"],
  ['RIGHT("sp ace",2.99999)', "ce"],
  ['LEFT("sp ace",2.99999)', "sp"],
  ['LEFT("sp ace","2.9")', "sp"],
  ['MID("sp ace",2.9,2.9)', "p "],
])("%s", (formula, wanted) => {
  expect(shown(formula)).toBe(wanted);
});

// As Excel's values stand in a public test workbook (GNOME/gnumeric, samples/excel12/countif.xlsx, sheet CmpBool): FALSE is less than TRUE, text is neither.
test.each([
  ['COUNTIF({TRUE,FALSE,"String"},">TRUE")', 0],
  ['COUNTIF({TRUE,FALSE,"String"},">=TRUE")', 1],
  ['COUNTIF({TRUE,FALSE,"String"},"<=TRUE")', 2],
  ['COUNTIF({TRUE,FALSE,"String"},"<TRUE")', 1],
  ['COUNTIF({TRUE,FALSE,"String"},"<>TRUE")', 2],
  // Sheet CmpNum: text that reads as the number is counted by both.
  ['COUNTIF({"1"},"=1")', 1],
  ['COUNTIF({"1"},"<>1")', 1],
  ['COUNTIF({1},"<>1")', 0],
])("%s", (formula, wanted) => {
  expect(shown(formula)).toBe(wanted);
});

test("a search that takes sorted values for granted is refused where they are not", () => {
  expect(result("XLOOKUP(5,D1:D5,B1:B5,,0,2)")).toMatchObject({
    value: "#VALUE!",
    message:
      "The values that are searched do not go up throughout, as this way of searching takes for granted: what it finds in others is not worked out here.",
  });
  expect(shown("XLOOKUP(5,D1:D5,B1:B5,,0,2)")).toBe("#VALUE!");
});

test("in a sorted line all ways of searching come to the same value", () => {
  const numbers = fc.array(fc.integer({ min: -6, max: 6 }), { minLength: 1, maxLength: 9 }).map((list) => list.sort((a, b) => a - b));
  fc.assert(
    fc.property(numbers, fc.integer({ min: -7, max: 7 }), fc.constantFrom(-1, 0, 1), (line, target, match) => {
      const across = `{${line.join(",")}}`;
      const [first, last, up] = [1, -1, 2].map((search) => shown(`XLOOKUP(${target},${across},${across},"none",${match},${search})`));
      const fitting = line.filter((value) => (match === 0 ? value === target : match < 0 ? value <= target : value >= target));
      const wanted = fitting.length === 0 ? "none" : match < 0 ? Math.max(...fitting) : Math.min(...fitting);
      expect([first, last, up]).toEqual([wanted, wanted, wanted]);
      const below = line.filter((value) => value <= target).length;
      expect(shown(`MATCH(${target},${across})`)).toBe(below === 0 ? "#N/A" : below);
      expect(shown(`MATCH(${target},${across},0)`)).toBe(line.includes(target) ? line.indexOf(target) + 1 : "#N/A");
    }),
    { numRuns: 200 },
  );
});

// By the rules that Excel's values in a public test workbook follow (ironcalc/IronCalc, calc_tests/LOOKUP_AND_REFERENCE/XLOOKUP.xlsx, sheets
// ReturnSmaller, ReturnLarger, MultipleElements): numbers are below text, and halving finds the first of equal values going up, the last going down.
test.each<[string, unknown]>([
  ["XLOOKUP(6,C1:C5,B1:B5,,-1,2)", 40],
  ["XLOOKUP(-5,D1:D5,B1:B5,,0,-2)", 40],
  ["XLOOKUP(-6,D1:D5,B1:B5,,1,-2)", 40],
  ['XLOOKUP("x",{1,3,5},{"a","b","c"},,-1)', "c"],
  ['XLOOKUP(0,{"p","q"},{"a","b"},,1)', "a"],
  ['XLOOKUP("x",{1,3,5},{"a","b","c"},"-",1,2)', "-"],
  ['XLOOKUP("x",{1,3,5},{"a","b","c"},,-1,2)', "c"],
  ['XLOOKUP(5,{1,5,5,8},{"a","b","c","d"},,-1,2)', "b"],
  ['XLOOKUP(5,{8,5,5,1},{"a","b","c","d"},,-1,-2)', "c"],
  ['XLOOKUP(6,{1,5,5,8},{"a","b","c","d"},,-1,2)', "c"],
  ['XLOOKUP(3,{8,5,5,1},{"a","b","c","d"},,1,-2)', "c"],
])("%s", (formula, wanted) => {
  expect(shown(formula)).toBe(wanted);
});

// As Excel's values stand in public test workbooks (ironcalc/IronCalc, calc_tests/LOOKUP_AND_REFERENCE, SORT.xlsx and FILTER_ERRORS.xlsx).
// Text of an error's code is that error to the grid.
const MIXED = '{1;5;2;-2;5;7;"Hola";"De";"HOLA";"#NAME?";"Qwer";"AAAA";123;"2";"#DIV/0!";"#N/A"}';
test.each<[string, unknown]>([
  [`SORT(${MIXED})`, [[-2, 1, 2, 5, 5, 7, 123, "2", "AAAA", "De", "Hola", "HOLA", "Qwer", "#DIV/0!", "#NAME?", "#N/A"]]],
  [`SORT(${MIXED},1,-1)`, [["#N/A", "#NAME?", "#DIV/0!", "Qwer", "Hola", "HOLA", "De", "AAAA", "2", 123, 7, 5, 5, 2, 1, -2]]],
  [
    'SORT({"cherry",3;"apple",1;"banana",2},2)',
    [
      ["apple", "banana", "cherry"],
      [1, 2, 3],
    ],
  ],
  [
    "SORT({30,10,20;3,1,2},1,1,TRUE)",
    [
      [10, 1],
      [20, 2],
      [30, 3],
    ],
  ],
  [
    "SORT({1,2;1,3;0,4},{1,2},{1,-1})",
    [
      [0, 1, 1],
      [4, 3, 2],
    ],
  ],
  ["SORT({1;2},2)", "#VALUE!"],
  ["FILTER({10;20;30;40},{10;20;30;40}>25)", [[30, 40]]],
  ["FILTER({10;20},{10;20}>25)", "#CALC!"],
  ['FILTER({10;20},{10;20}>25,"none")', [["none"]]],
  ["FILTER({1,2,3},{TRUE,FALSE,TRUE})", [[1], [3]]],
  ["FILTER({1;2;3},{TRUE;FALSE})", "#VALUE!"],
  ['FILTER({1;2},{1;"#N/A"})', "#N/A"],
  ["SUM(FILTER(B1:B5,C1:C5=5))", 70],
])("%s", (formula, wanted) => {
  expect(shown(formula)).toEqual(wanted);
});

test("among many equal values the last is found without going through them for each search", () => {
  const line = [1, ...new Array(100_000).fill(5), 9].map((value) => ({ value }));
  countedSteps();
  expect(Array.from({ length: 500 }, (_, i) => sortedPlace(line, 5 + (i % 2)))).toEqual(new Array(500).fill(100_000));
  expect(countedSteps()).toBeLessThan(1_000_000);
});

test("a value that has changed is found anew", () => {
  expect(shown("VLOOKUP(8,C1:D5,2,FALSE)")).toBe(-8);
  model.dispatch("UPDATE_CELL", { sheetId: "s", row: 4, col: 2, content: "9" });
  expect([shown("VLOOKUP(8,C1:D5,2,FALSE)"), shown("VLOOKUP(9,C1:D5,2,FALSE)"), shown("COUNTIF(C1:C5,9)")]).toEqual(["#N/A", -8, 1]);
  model.dispatch("REQUEST_UNDO");
  expect(shown("VLOOKUP(8,C1:D5,2,FALSE)")).toBe(-8);
});

test("patterns fit as a search for * and ? by hand would", () => {
  const sign = fc.constantFrom("a", "b", "*", "?");
  fc.assert(
    fc.property(fc.string({ unit: sign, maxLength: 6 }), fc.string({ unit: fc.constantFrom("a", "b"), maxLength: 8 }), (pattern, text) => {
      const expression = pattern.replaceAll("*", ".*").replaceAll("?", ".");
      expect(new Wildcards(pattern).fits(text)).toBe(new RegExp(`^${expression}$`).test(text));
      expect(new Wildcards(pattern).find(text, 0)).toBe(text.search(new RegExp(expression)));
    }),
    { numRuns: 500 },
  );
  expect(new Wildcards(`${"*a".repeat(60)}b`).fits("a".repeat(5000))).toBe(false);
});
