import fc from "fast-check";
import { HyperFormula } from "hyperformula";
import { type Cell, isCellError } from "../../src/core/cell.ts";
import { CannotTell, evaluateFormula, type FormulaContext } from "../../src/formula/evaluate.ts";
import { parseFormula } from "../../src/formula/parse.ts";
import { argumentArea } from "../../src/formula/precedents.ts";
import { WorkbookCells } from "../../src/formula/workbook-cells.ts";
import { memoryHost } from "../../src/hosts/memory.ts";
import { asWritten, EXAMPLES } from "../calc/examples.ts";
import { workbook } from "../check/workbook.ts";

const CELLS: (Cell | { formula: string; value: Cell })[][] = [
  ["Cylinder", "Thrust", "Pin", "Taper"],
  [1, 73.03, 73.02, { formula: "=HATCH.TAPER(B2:C3)", value: 0.01 }],
  [1, 73.02, 73.02, null],
  [2, null, "73,02", { error: "#DIV/0!" }],
];

async function context(): Promise<FormulaContext> {
  const snapshot = await memoryHost([
    { name: "Bores", cells: CELLS },
    { name: "Bore book", cells: [[73.1]] },
  ]).read();
  return { book: new WorkbookCells(snapshot), sheet: "Bores" };
}

describe("every example of every function, without an engine", () => {
  test.each(EXAMPLES)("%s", (formula, gives) => {
    const came = evaluateFormula(formula);
    expect(asWritten(Array.isArray(came) ? came : [[came as Cell]], gives)).toEqual(gives);
  });
});

describe("references", () => {
  test("a cell, a block, an absolute and a sheet-qualified reference are read from the snapshot", async () => {
    const at = await context();
    expect(evaluateFormula("=B2", at)).toBe(73.03);
    expect(evaluateFormula("=$B$2:C3", at)).toEqual([
      [73.03, 73.02],
      [73.02, 73.02],
    ]);
    expect(evaluateFormula("='Bore book'!A1-bores!B2", at)).toBeCloseTo(0.07, 9);
  });

  test("a blank cell stays blank for our functions and counts as 0 in arithmetic", async () => {
    const at = await context();
    expect(evaluateFormula("=HATCH.TAPER(B2:B4)", at)).toBe("");
    expect(evaluateFormula("=B4+1", at)).toBe(1);
    expect(evaluateFormula("=Z99", at)).toBeNull();
  });

  test("a whole column ends where the sheet's content does", async () => {
    expect(evaluateFormula("=A:A", await context())).toEqual([["Cylinder"], [1], [1], [2]]);
  });

  test("a spilled block is found again from the formula of its first cell", async () => {
    const at = await context();
    expect(evaluateFormula("=D2#", at)).toBe(0.01);
    expect(evaluateFormula("=B2#", at)).toEqual({ error: "#REF!" });
  });

  test("a sheet that does not exist is an error, another workbook and a name are not looked up", async () => {
    const at = await context();
    expect(evaluateFormula("=Gone!A1", at)).toEqual({ error: "#REF!" });
    expect(evaluateFormula("=[other.xlsx]Bores!A1", at)).toBeInstanceOf(CannotTell);
    expect(evaluateFormula("=BoreLimit", at)).toBeInstanceOf(CannotTell);
  });
});

describe("what cannot be told", () => {
  test.each([
    ["=SUM(B2:C3)"],
    ["=HATCH.TAPER(MAX(B2:C3))"],
    ["=HATCH.NOSUCH(1)"],
    ["=LET(x,1,x)"],
    ["=(A1,B1)"],
    ["=@A1:A3"],
    ["=LAMBDA(1)(2)"],
    ["=HATCH.VERDICT((A1)(2),1,2)"],
    ["=((1"],
    ['="open'],
    ["="],
    ["=A1:XFD1048576"],
    [`=${"(".repeat(200_000)}1`],
    [`=${"-(".repeat(300)}1${")".repeat(300)}`],
    [`=${"1+".repeat(9000)}1`],
  ])("%#: not told", async (formula) => {
    expect(evaluateFormula(formula, await context())).toBeInstanceOf(CannotTell);
  });
});

describe("IF, which keeps a blank cell from becoming 0", () => {
  test.each([
    ['=IF(B2="","",B2)', 73.03],
    ['=IF(B4="","",B4)', ""],
    ['=IF(B4=0,"",B4)', ""],
    ["=IF(B2>73,1,2)", 1],
    ["=if(B2>74,1,2)", 2],
    ["=IF(B2>74,1)", false],
    ["=IF(B2>73,,2)", 0],
    ["=IF(B4,1,2)", 2],
    ['=IF("x",1,2)', { error: "#VALUE!" }],
    ["=IF(D4,1,2)", { error: "#DIV/0!" }],
    ['=HATCH.VERDICT(73.03,IF(B4=0,"",B4),IF(B2="","",B2))', "within"],
  ])("%s", async (formula, gives) => {
    expect(evaluateFormula(formula, await context())).toEqual(gives);
  });

  test.each([["=IF(B2:B3>73,1,2)"], ["=IF(MAX(B2)>73,1,2)"], ["=IF(B2>73)"], ["=IF(1,2,3,4)"]])("%s is not told", async (formula) => {
    expect(evaluateFormula(formula, await context())).toBeInstanceOf(CannotTell);
  });

  test("only the branch that is taken is looked at", async () => {
    expect(evaluateFormula("=IF(B2>73,1,SUM(B2))", await context())).toBe(1);
  });

  test("a cell that is only kept from becoming 0 is that cell; what another cell decides is not", async () => {
    const at = await context();
    const areaIn = (formula: string) => argumentArea(parseFormula(formula), at);
    const cell = { sheet: "Bores", row: 1, column: 1, rows: 1, columns: 1 };
    for (const formula of ['=IF(B2="","",B2)', '=IF($B$2=0,"",B2)', '=IF(B2<>"",B2,"")', '=IF(ISBLANK(B2),"",B2)']) expect(areaIn(formula)).toEqual(cell);
    for (const formula of ['=IF(C2="","",B2)', '=IF(B2="",0,B2)', '=IF(B2="","",B2+1)', '=IF(1,"",B2)']) expect(areaIn(formula)).toBeUndefined();
  });
});

// These words stand in the finding of a formula that cannot be looked into.
test.each([
  ["={1,2;3}", "the rows of the array differ in length"],
  ["=A1:B3:C4", "references combined into another reference are not followed"],
  ['=INDIRECT("A1")', "INDIRECT is not looked into"],
  ["=[other.xlsx]Bores!A1", "the reference [other.xlsx]Bores!A1 leads out of the workbook"],
  ["=A1:XFD1048576", "the reference A1:XFD1048576 is too large"],
  ["=((1", "the formula cannot be read"],
])("%s is not told, since %s", async (formula, why) => {
  expect(evaluateFormula(formula, await context())).toStrictEqual(new CannotTell(why));
});

describe("errors and faults", () => {
  test("an error cell spreads through arithmetic and comparison", async () => {
    const at = await context();
    for (const formula of ["=D4+1", "=1-D4", "=-D4", "=D4=1", '="a"&D4']) expect(evaluateFormula(formula, at)).toEqual({ error: "#DIV/0!" });
  });

  test("a fault of our function is an error with its sentence", async () => {
    expect(evaluateFormula("=HATCH.TAPER(C3:C4)", await context())).toEqual({
      error: "#VALUE!",
      message: 'TAPER: readings holds the text "73,02": a decimal comma is not read, type it with this sheet\'s decimal sign (row 2)',
    });
  });

  test("names as people type them and as files store them are one function", async () => {
    const at = await context();
    expect(evaluateFormula("=_xldudf_HATCH_TAPER(B2:C3)", at)).toBe(0.01);
    expect(evaluateFormula("hatch.taper(B2:C3)", at)).toBe(0.01);
  });

  test("blocks of unequal shape give #N/A where one has no cell", () => {
    expect(evaluateFormula("={1;2;3}+{1;2}")).toEqual([[2], [4], [{ error: "#N/A" }]]);
  });
});

// The operators of a general-purpose spreadsheet engine are the yardstick for ours.
describe("a sheet's operators", () => {
  const number = fc.oneof(fc.integer({ min: -50, max: 50 }), fc.constantFrom(0.1, 0.02, 73.04, 73, 25.4)).map((n) => (n < 0 ? `(${n})` : String(n)));
  // Empty text is left out: the yardstick counts it as 0 in arithmetic, the common sheets as #VALUE!.
  const text = fc.constantFrom('"mm"', '"MM"', '"3"', "TRUE", "FALSE");
  const leaf = fc.oneof({ weight: 4, arbitrary: number }, { weight: 1, arbitrary: text });
  const arithmetic = fc.constantFrom("+", "-", "*", "/", "^");
  const { calculation } = fc.letrec<{ calculation: string }>((tie) => ({
    calculation: fc.oneof(
      { depthSize: "small", withCrossShrink: true },
      leaf,
      fc.tuple(tie("calculation"), arithmetic, tie("calculation")).map(([a, o, b]) => `(${a}${o}${b})`),
      tie("calculation").map((a) => `(-${a})`),
      tie("calculation").map((a) => `(${a}%)`),
    ),
  }));
  const outer = fc.constantFrom("+", "=", "<>", "<", ">", "<=", ">=");
  const expression = fc.oneof(
    { weight: 7, arbitrary: fc.tuple(calculation, outer, calculation).map(([a, o, b]) => `${a}${o}${b}`) },
    // The yardstick joins numbers with up to 17 digits and sheets with 15, so here it joins what is written alone.
    { weight: 1, arbitrary: fc.tuple(leaf, leaf).map(([a, b]) => `${a}&${b}`) },
  );

  // LibreOffice 7.4.7.2, as in test/reference/formulas/libreoffice.json; the last: Excel keeps 15 digits of a number.
  test.each([
    ["0.1+0.2", "0.3"],
    ["1/3", "0.333333333333333"],
    ["-1/3", "-0.333333333333333"],
    ["1E-7", "0.0000001"],
    ["1.5E-10", "0.00000000015"],
    ["1E+100", "1E+100"],
    ["73.02*3", "219.06"],
    ["9007199254740992", "9007199254740990"],
  ])("%s joined to text has 15 digits", (number, text) => {
    expect(evaluateFormula(`=${number}&" mm"`)).toBe(`${text} mm`);
  });

  test("joined to more than a cell holds, text is an error", () => {
    const book = new WorkbookCells(workbook({ Texts: [["x".repeat(32_766), "y"]] }));
    const at = { book, sheet: "Texts" };
    expect(evaluateFormula("=A1&B1", at)).toHaveLength(32_767);
    expect(evaluateFormula("=A1&B1&B1", at)).toEqual({ error: "#VALUE!" });
  });

  test("agree with a general engine on generated formulas", () => {
    const [exact, rounding] = [false, true].map((smartRounding) => HyperFormula.buildFromArray([[null]], { licenseKey: "gpl-v3", smartRounding }));
    fc.assert(
      fc.property(expression, (formula) => {
        const theirFormula = `=${formula.replace(/TRUE|FALSE/g, "$&()")}`;
        const theirs = exact!.calculateFormula(theirFormula, 0) as unknown;
        // Where only the last binary digit parts two numbers, that engine itself says either: whole numbers of 15 digits settle it in a sheet.
        fc.pre(typeof theirs !== "boolean" || theirs === rounding!.calculateFormula(theirFormula, 0));
        const ours = evaluateFormula(`=${formula}`);
        if (typeof theirs === "object" && theirs !== null) expect(isCellError(ours)).toBe(true);
        else if (typeof theirs === "number") expect(ours).toBeCloseTo(theirs, 9);
        else expect(ours).toBe(theirs);
      }),
      { numRuns: 2000 },
    );
  });
});
