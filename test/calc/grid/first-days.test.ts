import { evaluateOne } from "../../../src/calc/one-formula.ts";

// Excel counts 1 January 1900 as day 1 and a 29 February 1900 as day 60, for the sake of older programs ("Excel incorrectly assumes that the
// year 1900 is a leap year", learn.microsoft.com, from memory); day 0 it shows as 0 January.
test.each([
  ["YEAR(0)", 1900],
  ["MONTH(0)", 1],
  ["DAY(0)", 0],
  ["DAY(1.75)", 1],
  ["MONTH(31)", 1],
  ["DAY(32)", 1],
  ["DAY(59)", 28],
  ["DAY(60)", 29],
  ["MONTH(60)", 2],
  ["DAY(61)", 1],
  ["MONTH(61)", 3],
  ["YEAR(45000)", 2023],
  ["DATE(1900,1,1)", 1],
  ["DATE(1900,2,28)", 59],
  ["DATE(1900,2,29)", 60],
  ["DATE(1900,3,1)", 61],
  ["DATE(1900,1,400)", 400],
  ["DATE(1901,1,1)", 367],
  ["DATE(2024,2,29)", 45351],
  ["WEEKDAY(1)", 1],
  ['TEXT(0,"yyyy-mm-dd")', "1900-01-00"],
  ['TEXT(60,"d mmmm yy")', "29 February 00"],
  ['TEXT(61,"yyyy-mm-dd")', "1900-03-01"],
  ['TEXT(1.5,"[h]:mm")', "36:00"],
  ["EDATE(61,1)", 92],
  // As Excel's value stands in a public test workbook (apache/poi, test-data/spreadsheet/61652.xlsx): a month after a blank cell is day 31.
  ["EDATE(0,1)", 31],
  ["EDATE(0,0)", 0],
  // The same, FormulaEvalTestData_Copy.xlsx.
  ["DAYS360(534,1.00001)", -526],
  ["DAYS360(31,61)", 31],
  ["EDATE(31,1)", 60],
  ["EDATE(60,12)", 425],
  ["EDATE(70,-1)", 41],
  ["EDATE(61,-1)", 32],
  ["EDATE(92,-1)", 61],
  ["EDATE(45351,-1488)", 60],
  ["EOMONTH(0,0)", 31],
  ["EOMONTH(70,-1)", 60],
  ["EOMONTH(1,2)", 91],
])("%s is %s", (formula, value) => {
  expect(evaluateOne(formula)).toEqual({ value });
});

test.each(["YEAR(-10)", "MONTH(-1)", "DAY(-0.5)", "EDATE(0,-1)", "EDATE(5,-1)", "EOMONTH(31,-2)"])("%s is no day of a sheet", (formula) => {
  expect(evaluateOne(formula)).toEqual({ fault: "the formula gives #NUM!: This day lies before the first that a sheet knows" });
});

test.each(["WEEKNUM(1)", 'DATEDIF(0,45000,"y")'])("%s is refused: months are not counted from the first days", (formula) => {
  expect(evaluateOne(formula)).toEqual({ fault: "the formula gives #NUM!: Days before 1 March 1900, of which a blank is one, are not calculated with here" });
});

// Descriptions of FLOOR, LARGE, MODE, SUMX2PY2 and their like (support.microsoft.com, from memory).
test.each([
  ["FLOOR(0,0)", 0],
  ["CEILING(1,0)", 0],
  ["FLOOR(2.8,0.05)", 2.8],
  ["LARGE(5,1)", 5],
  ["SMALL({5},1)", 5],
  ['MODE({1,1,"a"})', 1],
  ["SUMX2MY2({2,3,9,1,8,7,5},{6,5,11,7,5,4,4})", -55],
  ["SUMX2PY2({2,3,9,1,8,7,5},{6,5,11,7,5,4,4})", 521],
  ["SUMXMY2({2,3,9,1,8,7,5},{6,5,11,7,5,4,4})", 79],
  ["SUMXMY2({1,2},{3;5})", 13],
  ['SUMX2PY2({1,"a",3},{1,2,3})', 20],
])("%s comes to %s", (formula, value) => {
  expect(evaluateOne(formula)).toEqual({ value });
});

test.each([
  ["FLOOR(1,0)", "#DIV/0!"],
  ["FLOOR(-1,0)", "#DIV/0!"],
  ["FLOOR(1,-1)", "#NUM!"],
  ["LARGE(5,2)", "#NUM!"],
  ['MODE(1,1,"a")', "#VALUE!"],
  // Excel's values in test workbooks of apache/poi (64473.xlsx) and EPPlus (FormulaTest.xlsx): the error that is given.
  ["RANK(#REF!,#REF!)", "#REF!"],
  ["RANK(1,#REF!)", "#REF!"],
  ["SUBTOTAL(2,#REF!)", "#REF!"],
  ["SUMX2PY2({1,2},{1,2,3})", "#N/A"],
  ["SUMX2MY2({1,2},{1,2,3})", "#N/A"],
])("%s is %s", (formula, code) => {
  expect((evaluateOne(formula) as { fault: string }).fault).toContain(code);
});
