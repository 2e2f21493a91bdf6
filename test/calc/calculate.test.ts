import fc from "fast-check";
import { HyperFormula } from "hyperformula";
import type { Cell } from "../../src/core/cell.ts";
import { openWorkbook } from "../../src/hosts/file.ts";
import type { SheetSnapshot } from "../../src/workbook/port.ts";
import { type CellXml, workbookBytes } from "../xlsx/workbook-bytes.ts";
import { asWritten, EXAMPLES } from "./examples.ts";

/** Left of the formulas under test: readings in A2:A4 and B2:B4, empty text in C2, text that looks like something else below. */
const LEFT: CellXml[][] = [
  ["Bore", "Skirt #1", null],
  [1, 4, { f: '""' }],
  [2, 5, null],
  [3, 6, null],
  ["73,02"],
  ["73.01"],
  ["TRUE"],
  ["=1+1"],
  ["2024-01-01"],
  [" 5 "],
];
const TABLE = `<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" id="1" name="Readings" displayName="Readings" ref="A1:B4"><tableColumns count="2"><tableColumn id="1" name="Bore"/><tableColumn id="2" name="Skirt #1"/></tableColumns></table>`;
const NAMES = [
  '<definedName name="Limit">Data!$B$2</definedName>',
  '<definedName name="Own" localSheetId="0">Data!$A$2</definedName>',
  '<definedName name="Own">Data!$B$3</definedName>',
  '<definedName name="Sum">1+Limit*2</definedName>',
  '<definedName name="Left">Data!XFD1</definedName>',
].join("");

/** The values of formulas that stand from E1 down on the sheet beside `LEFT`. */
async function results(formulas: readonly string[]): Promise<Cell[]> {
  const height = Math.max(LEFT.length, formulas.length);
  const cells = Array.from({ length: height }, (_, row): CellXml[] => {
    const formula = formulas[row];
    return [...(LEFT[row] ?? []), ...new Array(4 - (LEFT[row]?.length ?? 0)).fill(null), formula === undefined ? null : { f: formula }];
  });
  const bytes = workbookBytes({
    names: NAMES,
    sheets: [
      { name: "Data", cells, tables: [TABLE] },
      { name: "It's", cells: [[8]] },
      { name: "2024 & more", cells: [[9]] },
    ],
  });
  const sheet: SheetSnapshot = (await (await openWorkbook(bytes, "formulas.xlsx")).read()).sheets[0]!;
  return formulas.map((_, row) => sheet.values[row]?.[4] ?? null);
}

async function result(formula: string): Promise<Cell> {
  return (await results([formula]))[0]!;
}

/** Rules of Excel's own documentation: "Calculation operators and precedence", "Implicit intersection operator", the pages of the functions. */
describe("formulas come to what other sheets make of them", () => {
  test.each<[string, Cell]>([
    ["-2^2", 4],
    ["-A3^2", 4],
    ["2-2^2", -2],
    ["2^3^2", 64],
    ["2^-1", 0.5],
    ["10-5%", 9.95],
    ["-(-1)--A2", 2],
    ["1E-7*1E7", 1],
    ["1&2", "12"],
    ['"a""b"&"\\"', 'a"b\\'],
    ["(1<2)=TRUE", true],
    ['"a">5', true],
    ["IF(FALSE,1)", false],
    ["IF(TRUE,,2)", 0],
    ["SUM({-1,2;3,4})", 8],
    ['INDEX({"a""b","c"},1,1)', 'a"b'],
    ["ISNA(#N/A)", true],
    ["SUM(A:A)", 6],
    ["SUM(2:2)", 5],
    ["SUM(A2:XFD2)", 5],
    ["SUM(A2:A1048576)", 6],
    ["ROWS(A:A)+COLUMNS(A1:C9)", 1_048_579],
    ["ZZ5000", 0],
    ["A2:A4 A3:B3", 2],
    ["SUM(Data!A2:Data!A4)", 6],
    ["'It''s'!A1+'2024 & more'!$A$1", 17],
    ["sum(a2:a4)", 6],
    ["_xlfn.STDEV.S(A2:A4)", 1],
    ["_xlfn.RANK.EQ(2,A2:A4)", 2],
    ["SUMPRODUCT(A2:A4*B2:B4)", 32],
    ["INDEX(A2:A4*2,3)", 6],
    ["MIN(C2,A3)", 2],
    // Four rows hold something; a sheet has 1,048,576.
    ["COUNTBLANK(A:A)", 1_048_566],
    ['COUNTIF(A:A,"")', 1_048_566],
    ['COUNTIF(A:A,">1")', 2],
    // The range that is added up is as large as that of the criterion, wherever it ends.
    ['SUMIF(A2:A4,">1",B2)', 11],
    // The first is an example of LET's description; a name can use those before it, and one inside hides one outside.
    ["_xlfn.LET(_xlpm.x,5,SUM(_xlpm.x,1))", 6],
    ["LET(x,A2:A4,y,SUM(x),MAX(x)*y)", 18],
    ["LET(x,2,LET(x,x+1,x*10)+x)", 32],
    ["LET(limit,3,limit)+Limit", 7],
    ["LOG10(1000)", 3],
    ['SUM(INDIRECT("A:A"))', 6],
    ['SUM(ROW(INDIRECT("1:1000")))', 500_500],
    ['ROWS(INDIRECT("A:A"))+COLUMNS(INDIRECT("Data!B2:D9"))+COLUMN(INDIRECT("AB7"))', 1_048_607],
    ['ROWS(INDIRECT("Limit"))', 1],
    ['ROW(INDIRECT("nowhere"))', { error: "#REF!", message: '"nowhere" names no cells.' }],
  ])("=%s", async (formula, wanted) => {
    expect(await result(formula)).toEqual(wanted);
  });

  test("empty text is no number: what says nothing yet does not become a measured zero", async () => {
    const found = await results(["C2+1", "-C2", "C2*2", "ROUND(C2,2)", "C2%"]);
    expect(found).toEqual(found.map(() => ({ error: "#VALUE!", message: "A number is wanted where there is empty text." })));
  });

  test("text keeps being text, whatever it looks like", async () => {
    expect(await results(["A5", "A6", "A7", "A8", "A9", 'A10&"!"'])).toEqual(["73,02", "73.01", "TRUE", "=1+1", "2024-01-01", " 5 !"]);
    expect(await result("HATCH.CLEARANCE(A6,1)")).toEqual({ error: "#VALUE!", message: 'CLEARANCE: hole holds "73.01" as text: type it again as a number' });
  });

  test("a range where one value is wanted stands for the cell in its own row", async () => {
    expect(await results(["A2:A4*2", "A2:A4*2", "ABS(A2:A4)", "@A2:A4", "IF(A2:A4>2,1,2)"])).toEqual([
      { error: "#VALUE!", message: "A range stands where one value is wanted, and no cell of it is in this row or column." },
      2,
      2,
      3,
      { error: "#VALUE!", message: "A range stands where one value is wanted, and no cell of it is in this row or column." },
    ]);
  });

  test("names and tables stand for what they name", async () => {
    const formulas = [
      "Limit*2",
      "Own",
      "Sum",
      "SUM(Readings)",
      "SUM(Readings[[Bore]:[Skirt '#1]])",
      "Readings[[#Headers],[Skirt '#1]]",
      "COUNTA(Readings[[#All],[Bore]])",
    ];
    expect(await results(formulas)).toEqual([8, 1, 9, 21, 21, "Skirt #1", 4]);
    expect((await results(["1", "Readings[[#This Row],[Bore]]*10", "Readings[@Bore]*10"])).slice(1)).toEqual([10, 20]);
    // A name without dollar signs counts from the cell that uses it: here one to the left.
    expect((await results(["1", "Left"]))[1]).toBe(0);
  });
});

describe("what cannot be calculated says why", () => {
  test.each([
    ["Nowhere", "#NAME?", "This formula uses a name that the workbook does not have (Nowhere)."],
    ["FOO(1)", "#NAME?", "This formula uses the function FOO, which is not known here."],
    ["IRR(A2:A4)", "#NAME?", "This formula uses the function IRR, which is not known here."],
    ["HATCH.NOPE(1)", "#NAME?", "This formula uses the function HATCH.NOPE, which is not known here."],
    ["LAMBDA(x,x)", "#NAME?", "This formula uses LAMBDA, which is not calculated here."],
    ["Nowhere!A1", "#REF!", "This formula names a sheet that the workbook does not have (Nowhere)."],
    ["Data!#REF!+1", "#REF!", "This formula has lost a cell that it referred to."],
    ["[1]Other!A1", "#REF!", "This formula takes a value from another workbook, which is not read."],
    ["SUM((A2,A3))", "#REF!", "This formula joins ranges with a comma in brackets, which is not calculated here."],
    ["SUM(A2:INDEX(A:A,4))", "#REF!", "This formula builds a range in a way that is not calculated here."],
    [
      'SUMPRODUCT(SUMIF(INDIRECT({"A2:A3","A3:A4"}),">0"))',
      "#VALUE!",
      "This formula refers to several ranges at once (INDIRECT), which is not calculated here.",
    ],
    [
      "SUMPRODUCT(SUBTOTAL(3,OFFSET(A2,ROW(A2:A4)-ROW(A2),0)))",
      "#VALUE!",
      "This formula refers to several ranges at once (OFFSET), which is not calculated here.",
    ],
    ["INDEX(A2:A4,0)", "#VALUE!", "This comes to several cells where one value is wanted: which of them is meant is not worked out here."],
    ["Readings[Nothing]", "#REF!", "This formula names a column that the table Readings does not have (Nothing)."],
    ['SUM(ROW(INDIRECT("A:A")))', "#VALUE!", "This would fill 1,050,000 cells, and at most 500,000 are calculated at a time."],
    ["LET(x,RAND(),x-x)", "#NAME?", "This formula gives a random value a name in LET, which is not calculated here."],
    [
      "SUMIF(A:A,1,'It''s'!A:A)",
      "#VALUE!",
      "This formula compares whole columns or rows of sheets that end in different places (SUMIF), which is not calculated here.",
    ],
    ["1+", "#NAME?", "This formula cannot be read."],
    [`${"(".repeat(400)}1${")".repeat(400)}+${"-".repeat(400)}1`, "#NAME?", "This formula is nested too deeply to be read."],
    ["E1", "#REF!", "This formula depends on itself."],
  ])("=%s", async (formula, error, message) => {
    expect(await result(formula)).toEqual({ error, message });
  });

  test("names that grow without end, and names that name themselves", async () => {
    const doubling = Array.from({ length: 40 }, (_, i) => `<definedName name="Twice${i}">Twice${i + 1}+Twice${i + 1}</definedName>`).join("");
    const names = `${doubling}<definedName name="Twice40">1</definedName><definedName name="Round">Round+1</definedName>`;
    const bytes = workbookBytes({ names, sheets: [{ name: "A", cells: [[{ f: "Twice0" }, { f: "Round" }]] }] });
    expect((await (await openWorkbook(bytes, "x.xlsx")).read()).sheets[0]!.values[0]).toEqual([
      { error: "#NAME?", message: "This formula grows too long when its names are written out." },
      { error: "#NAME?", message: "This formula is nested too deeply to be read." },
    ]);
  });

  const nowhere = { error: "#REF!", message: "This formula names a sheet that the workbook does not have (Nowhere)." };
  const noFoo = { error: "#NAME?", message: "This formula uses the function FOO, which is not known here." };

  // HyperFormula 3.5 gives the same values, and an error where one is: a sheet looks at the branch that it takes.
  test("a branch of IF that is not taken may hold what cannot be calculated", async () => {
    const ifs = [
      'IF(A2=1,"",Nowhere!A1)',
      "IF(A2=2,FOO(1),A3)",
      "IF(A2=1,IF(A2=2,FOO(1),5),Nowhere!A1)",
      "IF(A2=1,Nowhere!A1,2)",
      "IF(A2=1,IF(A2=1,FOO(1),5),2)",
    ];
    const whole = ["IF(Nowhere!A1=1,1,2)", "IF(A2=1,5,FOO(1))+1", "-IF(A2=1,5,FOO(1))", "IFERROR(IF(A2=1,FOO(1),5),7)"];
    expect(await results([...ifs, ...whole])).toEqual(["", 2, 5, nowhere, noFoo, nowhere, noFoo, noFoo, noFoo]);
  });

  test("and is listed with its cell where it is taken", async () => {
    const array = (f: string): CellXml => ({ f, attributes: ' t="array" ref="A3:A4"', cell: ' cm="1"' });
    const cells = [[1, { f: "IF(A1=1,2,FOO(1))" }, { f: "IF(A1=2,2,FOO(1))" }], [], [array("IF(A1:A2=1,2,Nowhere!A1)")]];
    const host = await openWorkbook(workbookBytes({ sheets: [{ name: "Sheet1", cells }] }), "x.xlsx");
    expect((await host.read()).sheets[0]!.values.map((line) => line.slice(0, 3))).toEqual([
      [1, 2, noFoo],
      [null, null, null],
      [2, null, null],
      [nowhere, null, null],
    ]);
    expect(host.notes()).toEqual([`Sheet1!C1: t${noFoo.message.slice(1)}`, `Sheet1!A3: t${nowhere.message.slice(1)}`]);
  });

  test("and is listed with its cell", async () => {
    const bytes = workbookBytes({ sheets: [{ name: "Bore book", cells: [[1, { f: "FOO(A1)", v: 5 }], [{ f: "IFERROR(B1,7)" }]] }] });
    const host = await openWorkbook(bytes, "x.xlsx");
    expect(host.notes()).toEqual(["'Bore book'!B1: this formula uses the function FOO, which is not known here."]);
    expect((await host.read()).sheets[0]!.values[1]![0]).toBe(7);
  });
});

test("every example of every function comes out of a file as it says", async () => {
  const sheets = EXAMPLES.map(([formula], i) => ({
    name: `Example ${i + 1}`,
    cells: [[{ f: formula.slice(1), attributes: ' t="array" ref="A1"', cell: ' cm="1"' }]],
  }));
  const read = (await (await openWorkbook(workbookBytes({ sheets }), "examples.xlsx")).read()).sheets;
  for (const [i, [formula, gives]] of EXAMPLES.entries()) {
    const shown = read[i]!.values.map((line) => line.map((cell) => cell ?? ""));
    expect([formula, asWritten(shown, gives)]).toEqual([formula, gives]);
  }
});

/** Formulas of numbers, cells and operators, as text. */
const arithmetic: fc.Arbitrary<string> = fc.letrec<{ term: string }>((tie) => ({
  term: fc.oneof(
    { depthSize: "small", withCrossShrink: true },
    fc.constantFrom("A2", "A3", "B2", "B4", "2", "0.5", "3%", "Limit", "SUM(A2:B3)"),
    fc.tuple(tie("term"), fc.constantFrom("+", "-", "*", "/", "^", "<", "="), tie("term")).map(([a, operator, b]) => `${a}${operator}${b}`),
    tie("term").map((a) => `(${a})`),
    tie("term").map((a) => `-${a}`),
    tie("term").map((a) => `MAX(${a},1)`),
  ),
})).term;

test("arithmetic agrees with another calculation engine (HyperFormula), precedence included", async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(arithmetic, { minLength: 20, maxLength: 40 }), async (formulas) => {
      const other = HyperFormula.buildFromArray(
        [["Bore", "Skirt #1"], [1, 4], [2, 5], [3, 6], formulas.map((formula) => `=${formula.replaceAll("Limit", "B2")}`)],
        { licenseKey: "gpl-v3", smartRounding: false },
      );
      const theirs = other.getSheetValues(0)[4]!;
      const ours = await results(formulas);
      for (const [i, formula] of formulas.entries()) expect([formula, comparable(ours[i])]).toEqual([formula, comparable(theirs[i])]);
    }),
    { numRuns: 15 },
  );
});

/** To ten digits; an error is an error, since engines differ in its code. */
function comparable(value: unknown): unknown {
  if (typeof value === "number") return Number(value.toPrecision(10));
  return typeof value === "object" && value !== null ? "error" : value;
}
