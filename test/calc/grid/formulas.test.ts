import { readFileSync } from "node:fs";
import { calculate } from "../../../src/calc/calculate.ts";
import { evaluateWithoutModel } from "../../../src/calc/evaluate-without-model.ts";
import { isCellError } from "../../../src/core/cell.ts";
import { readXlsx } from "../../../src/xlsx/read/read.ts";
import { caseBook, FIRST_ROW, FORMULA_COLUMN } from "../../reference/formulas/book.ts";
import { allCases, CASES } from "../../reference/formulas/cases.ts";
import { workbookBytes } from "../../xlsx/workbook-bytes.ts";

// Made by test/reference/formulas/make.ts, which says the version.
const LIBREOFFICE = new Map<string, unknown>(
  (JSON.parse(readFileSync(new URL("../../reference/formulas/libreoffice.json", import.meta.url), "utf8")) as { values: [string, unknown][] }).values,
);

/** Where Excel gives something else than LibreOffice, by its own descriptions of the functions (support.microsoft.com, read from memory) unless said otherwise. */
const EXCEL: Readonly<Record<string, unknown>> = {
  // Each of these errors is written #VALUE! by LibreOffice in a workbook file, as it has no other word for its Err:502.
  ...Object.fromEntries(
    `SQRT(-1);LN(0);LOG(-1);LOG10(0);ACOSH(0.5);ATANH(1);LARGE(A2:A9,9);SMALL(A2:A9,0);PERCENTILE(A2:A9,2);QUARTILE(A2:A9,5);CEILING(2.5,-1);DATE(-1,1,1);
    DATEDIF(45000,44000,"d");FACT(-1);MEDIAN(C2:C4);LARGE(C2:C4,1);NORM.INV(0,40,1.5);T.INV.2T(0,9)`
      .split(/;\s*/)
      .map((formula) => [formula, "#NUM!"]),
  ),
  "EDATE(1,-5)": "#NUM!",
  "(-8)^(1/3)": "#NUM!",
  "MROUND(5,-2)": "#NUM!",
  "MODE(F2:F4)": "#N/A",
  "ATAN2(0,0)": "#DIV/0!",
  "QUOTIENT(7,0)": "#DIV/0!",
  "CHAR(0)": "#VALUE!",
  'CONVERT(1,"in","kg")': "#N/A",
  'CONVERT(1,"furlong","m")': "#N/A",
  "VLOOKUP(5,F2:G9,3,FALSE)": "#REF!",
  "INDEX(A2:A9,99)": "#REF!",
  // Units as they are defined (NIST SP 811, appendix B.8, from memory); LibreOffice has the six or seven digits of older tables.
  'CONVERT(1,"lbm","kg")': 0.45359237,
  'CONVERT(1,"ozm","g")': 28.349523125,
  'CONVERT(1,"stone","kg")': 6.35029318,
  'CONVERT(1,"grain","g")': 0.06479891,
  'CONVERT(1,"ton","kg")': 907.18474,
  'CONVERT(1,"psi","Pa")': 6894.75729316836,
  'CONVERT(150,"psi","kPa")': 1034.21359397525,
  'CONVERT(1,"atm","Pa")': 101325,
  // As Excel keeps it in public test workbooks (vinci1it2000/formulas, test.xlsx; ironcalc/IronCalc, CONVERT.xlsx).
  'CONVERT(1,"mmHg","Pa")': 133.322,
  'CONVERT(1,"Torr","Pa")': 133.322368421053,
  'CONVERT(1,"HP","W")': 745.69987158227,
  'CONVERT(1,"PS","W")': 735.49875,
  'CONVERT(1,"BTU","J")': 1055.05585262,
  'CONVERT(1,"cal","J")': 4.1868,
  'CONVERT(1,"c","J")': 4.184,
  'CONVERT(1,"lbf","N")': 4.4482216152605,
  'CONVERT(1,"pond","N")': 0.00980665,
  // Truth values are no numbers, and numbers no text.
  "COUNTIF(I2:I9,TRUE)": 1,
  'COUNTIF(I2:I9,"1")': 2,
  'COUNTIF(I2:I9,"<2")': 1,
  'COUNTIF(I2:I9,"*")': 3,
  "MATCH(TRUE,I2:I9,0)": 6,
  'MATCH("1",I2:I9,0)': 2,
  'CONCAT("a",1,C2:D3,TRUE)': "a1Port4Starboard2TRUE",
  // A blank cell that is looked up is 0 (common practice).
  "MATCH(D6,D2:D9,0)": 4,
  // The first error of the range; LibreOffice takes the last.
  'AVERAGEIFS(E2:E9,A2:A9,">0")': "#N/A",
  "AGGREGATE(9,4,E2:E9)": "#N/A",
  // By the decimals as they are written.
  "MROUND(6.05,0.1)": 6.1,
  "FIXED(1.005,2)": "1.01",
  'NUMBERVALUE("3.5%")': 0.035,
  'NUMBERVALUE("")': 0,
  'SEARCH("","abc")': 1,
  // Seconds are rounded (common practice).
  'TEXT(H8,"hh:mm:ss")': "23:58:34",
  'TEXT(0.99,"# ?/8")': "1    ",
  // Code page 1252 and eleven letters, as Excel's values stand in public test workbooks (ironcalc/IronCalc, calc_tests/TEXT: CHAR.xlsx, TEXT.xlsx).
  "CHAR(128)": "€",
  "CHAR(153)": "™",
  "CHAR(176)": "°",
  'CODE("°")': 176,
  'CODE("€")': 128,
  'CODE("ā")': 63,
  'TEXT(1/3,"General")': "0.333333333",
  'TEXT(123456789012,"General")': "1.23457E+11",
  'TEXT(0.00000000025,"General")': "2.5E-10",
  "INDEX(A2:I2,10)": "#REF!",
};

/** What looks at more than values is left to the grid's model, and the whole workbook with it. */
const ASKS = /\b[A-Z]:[A-Z]\b|INDIRECT|OFFSET|SUBTOTAL/;
const book = readXlsx(workbookBytes(caseBook(allCases())));
const plain = (value: unknown): unknown => (isCellError(value) ? value.error : (value ?? ""));
const { error } = console;
console.error = () => {};
const rows = calculate(book).sheets[0]!.values;
const direct = allCases().filter((formula) => !ASKS.test(formula));
const directly = evaluateWithoutModel(readXlsx(workbookBytes(caseBook(direct))));
console.error = error;
const results = new Map(allCases().map((formula, i) => [formula, plain(rows[FIRST_ROW + i]?.[FORMULA_COLUMN])]));

/** To 12 digits: LibreOffice keeps 15 in its files, and its own sums lose some of them. */
const digits = (value: unknown): unknown => (typeof value === "number" ? Number(value.toPrecision(12)) : value);

test.each(Object.entries(CASES))("%s: what office programs give", (_, formulas) => {
  const wanted = formulas.map((formula) => [formula, digits(formula in EXCEL ? EXCEL[formula] : LIBREOFFICE.get(formula))]);
  expect(formulas.map((formula) => [formula, digits(results.get(formula))])).toEqual(wanted);
});

test("no formula is let off that agrees", () => {
  expect(Object.entries(EXCEL).filter(([formula, value]) => digits(value) === digits(LIBREOFFICE.get(formula)))).toEqual([]);
  expect(Object.keys(EXCEL).filter((formula) => !LIBREOFFICE.has(formula))).toEqual([]);
});

test("without the grid's model each gives the same", () => {
  const values = new Map([...directly!.values(0)].map(({ row, column, value }) => [`${row},${column}`, value]));
  const shown = direct.map((formula, i) => [formula, values.get(`${FIRST_ROW + i},${FORMULA_COLUMN}`) ?? ""]);
  const isErrorText = (value: unknown): boolean => typeof value === "string" && value.startsWith("#");
  expect(
    shown.filter(([formula, value]) => value !== results.get(formula as string) && !(isErrorText(value) && isErrorText(results.get(formula as string)))),
  ).toEqual([]);
});
