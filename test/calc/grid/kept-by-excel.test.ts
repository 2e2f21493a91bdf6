import { calculate } from "../../../src/calc/calculate.ts";
import { commonCode } from "../../../src/calc/grid/grid-text.ts";
import { isNotHere } from "../../../src/calc/grid/own-function.ts";
import { evaluateOne } from "../../../src/calc/one-formula.ts";
import { isCellError } from "../../../src/core/cell.ts";
import { readXlsx } from "../../../src/xlsx/read/read.ts";
import { oneSheet } from "../../xlsx/workbook-bytes.ts";

/** What a formula comes to, an error by its code. */
function shown(formula: string): unknown {
  const answer = evaluateOne(formula);
  return "fault" in answer ? commonCode(/#[^:]+/.exec(answer.fault)?.[0] ?? answer.fault) : answer.value;
}

const wanted = (cases: readonly (readonly [string, unknown])[]): void => expect(cases.map(([formula]) => [formula, shown(formula)])).toEqual(cases);

// The values that Excel keeps in public test workbooks, each with the workbook's name behind the repository's.
test("a truth value is no number to functions that came as an add-in, and nothing may be left out between commas", () => {
  // ironcalc/IronCalc, calc_tests: GCD_LCM, MROUND_TRUNC_INT, MOD_QUOTIENT, GESTEP_DELTA, EOMONTH.
  wanted([
    ["GCD(TRUE,2)", "#VALUE!"],
    ["LCM({4,TRUE,12})", "#VALUE!"],
    ["LCM(1,3)", 3],
    ["GCD(,5)", "#N/A"],
    ["GCD(1E+100,1E+50)", "#NUM!"],
    ["LCM(-0.00037,0.0001)", "#NUM!"],
    ["MROUND(TRUE,2)", "#VALUE!"],
    ["MROUND(,5)", "#N/A"],
    ["QUOTIENT(TRUE,TRUE)", "#VALUE!"],
    ["DELTA(TRUE,1)", "#VALUE!"],
    ["EOMONTH(44987,TRUE)", "#VALUE!"],
  ]);
  // Of numbers they are what they were.
  wanted([
    ["MROUND(7,5)", 5],
    ["EDATE(45000,1)", 45031],
    ["ISEVEN(4)", true],
    ['CONVERT(1,"in","mm")', 25.4],
  ]);
});

test("the first input that is no number is what comes out", () => {
  // ironcalc/IronCalc, FLOOR_CEILING.xlsx; docs/DAY.xlsx.
  wanted([
    ['FLOOR("eight",1/0)', "#VALUE!"],
    ['FLOOR(1/0,"eight")', "#DIV/0!"],
    ['CEILING("",NA())', "#VALUE!"],
    ['DAY("str")', "#VALUE!"],
  ]);
});

test("a date in text with blanks around it is refused, and so is one whose first number is no month", () => {
  // Excel keeps #VALUE! for the first (ironcalc/IronCalc, FLOOR_CEILING.xlsx); LibreOffice 7.4.7.2 reads it.
  expect(evaluateOne('FLOOR(" 2024-01-10 ",2)')).toEqual({
    fault:
      'the formula gives #VALUE!: A number is wanted where there is the text " 2024-01-10 ": a date in text is read as month, day and year in numbers, with no blanks around it',
  });
  wanted([
    ['FLOOR("2024-01-10",2)', 45300],
    ['FLOOR(" 10 ",2)', 10],
    ['" 2024-01-10 "+0', "#VALUE!"],
    ['AVERAGE(1,"29/02/1900")', "#VALUE!"],
    // vinci1it2000/formulas, test.xlsx: 1 January 1900 is day 1, also in text.
    ['ISEVEN("1/1/1900")', false],
    ['STANDARDIZE(-0.1,0,"1/01/1900")', -0.1],
  ]);
});

test("a date in text that names its month is refused, and no fault of the workbook", () => {
  // Excel keeps days for them (ironcalc/IronCalc, T_VALUE_VALUETOTEXT.xlsx and DATE_TIME.xlsx; SheetJS/test_files, formula_stress_test.xlsx).
  for (const formula of ['VALUE("2-Feb-2026")', 'DATEVALUE("1-Mar-1900")', 'DATEVALUE("June 9, 1969")', 'YEAR("2 Feb 2026")']) {
    const { fault } = evaluateOne(formula) as { fault: string };
    expect(fault).toContain("a date in text is read as month, day and year in numbers");
    expect(isNotHere(`${fault.slice("the formula gives #VALUE!: ".length)}.`)).toBe(true);
  }
  for (const formula of ['VALUE("Marine 2")', 'DATEVALUE("Decked 1")', 'VALUE("x")']) expect(shown(formula)).toBe("#VALUE!");
});

test("days before the first are none, truth values are days", () => {
  // dgorissen/pycel, date-time.xlsx; ironcalc/IronCalc, DAYS_DAYS360.xlsx.
  wanted([
    ["DAY(FALSE)", 0],
    ["YEAR(TRUE)", 1900],
    ["HOUR(-1)", "#NUM!"],
    ["WEEKDAY(-1)", "#NUM!"],
    ["EOMONTH(-1,0)", "#NUM!"],
    ['EDATE(8,"2")', 68],
    ["DAYS360(FALSE,TRUE)", 1],
    ['DAYS360(45658,45688,"abc")', "#VALUE!"],
  ]);
});

test("errors among the values that a function works through come out", () => {
  // apache/poi, FormulaEvalTestData_Copy.xlsx; vinci1it2000/formulas, test.xlsx.
  wanted([
    ["SUMPRODUCT({2,3},{#REF!,5})", "#REF!"],
    ["SUMPRODUCT({2,3},{4,5})", 23],
    ["AND(FALSE,{1,#N/A})", "#N/A"],
    ["OR(TRUE,{1,#VALUE!})", "#VALUE!"],
    ["QUARTILE({#REF!,1},-5)", "#REF!"],
  ]);
});

test("an error in place of a range is what comes out, as where the cells that a formula referred to are gone", () => {
  // Excel's values in a public test workbook (mini-software/MiniExcel, TestIssue772.xlsx) for VLOOKUP and MATCH; the others by LibreOffice
  // 7.4.7.2, but that a file of its own keeps #VALUE! where a sheet shows #REF!.
  wanted([
    ["VLOOKUP(5,#REF!,MATCH(3,#REF!,0)-12,0)", "#REF!"],
    ["VLOOKUP(1/0,#REF!,1,0)", "#DIV/0!"],
    ["HLOOKUP(5,#REF!,1,0)", "#REF!"],
    ["LOOKUP(5,#REF!)", "#REF!"],
    ["COUNTIF(#REF!,1)", "#REF!"],
    ["COUNTIFS({1,2},2,#REF!,2)", "#REF!"],
    ["SUMIF(#REF!,1)", "#REF!"],
    ["SUMIF({1,2},2,#REF!)", "#REF!"],
    ["SUMIFS(#REF!,{1,2},2)", "#REF!"],
    ["AVERAGEIF(#REF!,2)", "#REF!"],
    ["MAXIFS({1,2},#REF!,2)", "#REF!"],
    ["ROWS(#REF!)", "#REF!"],
    ["COLUMNS(#REF!)", "#REF!"],
    ["COUNTBLANK(#REF!)", "#REF!"],
    ["ISNA(MATCH(5,#REF!,0))", false],
    ["COUNTA(#REF!)", 1],
    ["COUNT(#REF!)", 0],
  ]);
});

test("a cell that holds an error is a range like others", () => {
  const formulas = ["MATCH(5,A1,0)", 'COUNTIF(A1,"#DIV/0!")', "COUNTIF(A1,1)", "ROWS(A1)", "COUNTBLANK(A1)"];
  const book = readXlsx(oneSheet([[{ f: "1/0", v: 1 }], ...formulas.map((f) => [null, { f, v: 0 }])]));
  const values = calculate(book)
    .sheets[0]!.values.slice(1)
    .map((row) => row[1]);
  expect(values.map((value) => (isCellError(value) ? value.error : value))).toEqual(["#N/A", 1, 0, 1, 0]);
});

test("the last day of the calendar counts with its hours", () => {
  // ironcalc/IronCalc, docs/MONTH.xlsx and YEAR.xlsx.
  wanted([
    ["MONTH(2958465.999988426)", 12],
    ["YEAR(2958465.999988426)", 9999],
    ["YEAR(2958466)", "#NUM!"],
  ]);
});

test("SWITCH ends with an error that it comes by, and a case that is left out is 0", () => {
  // dgorissen/pycel, logical.xlsx; vinci1it2000/formulas, test.xlsx.
  wanted([
    ["SWITCH(3,1/0,1,3,2)", "#DIV/0!"],
    ["SWITCH(0,2,0,1,3,,5,7)", 5],
    ['SWITCH("B","a",1,"b",2)', 2],
    ["SWITCH(9,1,2)", "#N/A"],
    ["SWITCH(9,1,2,3)", 3],
  ]);
});

test("MATCH in a line that goes down ends at the first value below what is searched", () => {
  // dgorissen/pycel, lookup.xlsx; vinci1it2000/formulas, test.xlsx.
  wanted([
    ["MATCH(0.5,{0,1,2,3,4},-1)", "#N/A"],
    ["MATCH(0,{0,1,2,3,4},-1)", 1],
    ["MATCH(2.5,{4,3,2,1},-1)", 2],
    ["MATCH(1,{4,3,2,1},-1)", 4],
  ]);
});

test("smaller differences", () => {
  // ironcalc/IronCalc, calc_tests; vinci1it2000/formulas, test.xlsx; dgorissen/pycel, text.xlsx.
  wanted([
    ["LOG(10,1)", "#DIV/0!"],
    ["SUM(SEQUENCE(,12,,2.5))", 177],
    ["SUM(SEQUENCE(3,,5))", 18],
    ["0^0", "#NUM!"],
    ["POWER(0,-1)", "#DIV/0!"],
    ["2^-1", 0.5],
    ["VALUE(TRUE)", "#VALUE!"],
    ["MUNIT(-1)", "#VALUE!"],
    ['MODE(1,"1",2,3)', "#VALUE!"],
    ["ADDRESS(2,3,3)", "$C2"],
    ['ADDRESS(2,3,3,TRUE,"Sheet1")', "#VALUE!"],
    ['COUNTA(1,"")', 2],
    ['AVERAGEA(1,"")', "#VALUE!"],
    ['REPLACE("ciao",2,-1,"x")', "#VALUE!"],
    ['FIXED("123456789076754345682.21",3)', "123,456,789,076,754,000,000.000"],
    ['FIXED(1.5,1,"0")', "#VALUE!"],
    ['NUMBERVALUE("1","")', "#VALUE!"],
    ["TAN(PI()/2)", "#NUM!"],
    ["CONFIDENCE.T(0.05,1,0)", "#NUM!"],
    ['CONVERT(1,"Pang3","L")', 1e18],
    ['CONVERT(0.05,"Matm","Pa")', 5_066_250_000],
    ['CONVERT(0.004,"Mmph","m/s")', 1788.16],
    ['CONVERT(1,"pc","m")', 30_856_775_812_815_500],
  ]);
});

test("formats of TEXT that are not worked out are refused by name", () => {
  // ironcalc/IronCalc, TEXT.xlsx; dgorissen/pycel, text.xlsx; vinci1it2000/formulas, test.xlsx; SheetJS/test_files, formula_stress_test.xlsx;
  // GNOME/gnumeric, formats.xls.
  for (const format of ["mm###", "ee-mm-dd", "0,## ##, ##", "###,.00", '#,#\\""ZZ\\""#.0Y00']) {
    const answer = evaluateOne(`TEXT(41181,"${format}")`) as { fault: string };
    expect(answer.fault).toMatch(/^the formula gives #VALUE!: TEXT does not work out the format ".*" here$/);
    expect(isNotHere(`${answer.fault.slice("the formula gives #VALUE!: ".length)}.`)).toBe(true);
  }
  wanted([
    ['TEXT(2958466,"yyyy")', "#VALUE!"],
    ['TEXT(-0.0000000025,"General")', "-2.5E-09"],
    ['TEXT(130.33332,"hm hmm hmmm")', "759 759 7May"],
    ['TEXT("X","0.00;-0.0;0;->@<-@")', "->X<-X"],
    ['TEXT("60:99","0.0")', "#VALUE!"],
    ['TEXT(45000.5,"yyyy-mm-ddThh:mm")', "2023-03-15T12:00"],
    ['TEXT(0.5,"mm:ss.0")', "00:00.0"],
  ]);
});

test("a text that reads as an error: what rests on it is left to the file, and said", () => {
  // Excel counts them apart (ironcalc/IronCalc, COUNTIF.xlsx); to the grid they are the same.
  const book = readXlsx(
    oneSheet([
      ["#N/A", { f: "COUNTIF(A1:A2,A1)", v: 1 }],
      ["#N/A", { f: "1+1", v: 2 }],
    ]),
  );
  const { sheets, notes, unknown } = calculate(book);
  expect(notes).toEqual(["Sheet1!A1 and one more cell: text that reads as an error counts as that error in the formulas that refer to it."]);
  expect([...unknown()].map(({ row, column }) => [row, column])).toEqual([
    [0, 0],
    [1, 0],
    [0, 1],
  ]);
  expect(isCellError(sheets[0]!.values[0]![0])).toBe(false);
});

test("values of the normal law below which a small share lies", () => {
  // Python 3, statistics.NormalDist().inv_cdf.
  const cases: readonly (readonly [string, number])[] = [
    ["0.0199", -2.0558186466],
    ["0.001", -3.0902323062],
    ["5E-7", -4.8916384757],
    ["1E-9", -5.997807015],
    ["1E-15", -7.9413453262],
    ["1E-100", -21.273453561],
  ];
  wanted(cases.map(([share, value]) => [`ROUND(NORM.S.INV(${share}),10)`, value] as const));
  wanted([["ROUND(NORM.INV(1E-9,73,0.01),12)", 72.94002192985]]);
});
