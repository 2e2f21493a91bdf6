import { checkWorkbook } from "../../src/check/check-workbook.ts";
import { CannotTell, evaluateFormula, type FormulaContext } from "../../src/formula/evaluate.ts";
import { WorkbookCells } from "../../src/formula/workbook-cells.ts";
import type { NameSnapshot, TableSnapshot, WorkbookSnapshot } from "../../src/workbook/port.ts";

// Names as ECMA-376 part 1, 18.2.5, has them, references to tables as its 18.17.2.3 (structure references).

const VERDICT = (formula: string, value: string) => ({ formula, value });

const LIMITS: TableSnapshot = {
  name: "LimitList",
  sheet: "Limits",
  area: { row: 0, column: 0, rows: 4, columns: 3 },
  headerRows: 1,
  totalsRows: 1,
  columns: ["Characteristic", "Lower", "Upper [mm]"],
};
const READINGS: TableSnapshot = {
  ...LIMITS,
  name: "Gaps",
  sheet: "Rings",
  area: { ...LIMITS.area, rows: 3 },
  columns: ["Gap", "Upper", "Verdict"],
  totalsRows: 0,
};
const NAMES: NameSnapshot[] = [
  { name: "TaperLimit", formula: "=Limits!$C$2" },
  { name: "Standard", formula: "=73" },
  { name: "Standard", sheet: "Rings", formula: "=73.25" },
  { name: "Room", formula: "=GapUpper-GapLower" },
  { name: "GapLower", formula: "=Limits!$B$3" },
  { name: "GapUpper", formula: "=LimitList[Upper '[mm']]" },
  { name: "Beside", formula: "=Limits!C2" },
  { name: "Round", formula: "=Round+1" },
  { name: "Loop", formula: "=Loop2" },
  { name: "Loop2", formula: "=Loop" },
];

const blanks = (cells: (object | number | string | null)[][]): (string | null)[][] =>
  cells.map((line) => line.map((cell) => (typeof cell === "object" && cell !== null && "formula" in cell ? String(cell.formula) : null)));
const values = (cells: (object | number | string | null)[][]) =>
  cells.map((line) => line.map((cell) => (typeof cell === "object" && cell !== null && "value" in cell ? cell.value : cell))) as never;

function snapshot(rings: (object | number | string | null)[][]): WorkbookSnapshot {
  const limits = [
    ["Characteristic", "Lower", "Upper [mm]"],
    ["Taper", null, 0.05],
    ["End gap", 0.25, 0.5],
    ["2 in all", null, null],
  ];
  return {
    name: "book.xlsx",
    sheets: [
      { name: "Limits", row: 0, column: 0, values: values(limits), formulas: blanks(limits) },
      { name: "Rings", row: 0, column: 0, values: values(rings), formulas: blanks(rings) },
    ],
    names: NAMES,
    tables: [LIMITS, READINGS],
  };
}

const RINGS = [
  ["Gap", "Upper", "Verdict"],
  [0.3, 0.4, null],
  [0.45, 0.5, null],
];
const at = (sheet: string, row = 1, column = 2): FormulaContext => ({ book: new WorkbookCells(snapshot(RINGS)), sheet, cell: { row, column } });
const why = (formula: string, context: FormulaContext) => (evaluateFormula(formula, context) as CannotTell).why;

describe("names", () => {
  test("stand for cells, for numbers, for formulas of other names, in any letters", () => {
    expect(evaluateFormula("=taperlimit", at("Rings"))).toBe(0.05);
    expect(evaluateFormula("=Standard+TaperLimit", at("Limits"))).toBeCloseTo(73.05, 9);
    expect(evaluateFormula("=GapUpper", at("Rings"))).toEqual([[0.05], [0.5]]);
    expect(evaluateFormula("=Room", at("Rings"))).toEqual([[0.05 - 0.25], [0.25]]);
    expect(evaluateFormula("=HATCH.MARGIN(0.06,,TaperLimit)", at("Rings"))).toBeCloseTo(-0.01, 9);
  });

  test("mean on a sheet what they mean there, and elsewhere what the workbook says", () => {
    expect(evaluateFormula("=Standard", at("Rings"))).toBe(73.25);
    expect(evaluateFormula("=Standard", at("Limits"))).toBe(73);
    expect(evaluateFormula("=Rings!Standard", at("Limits"))).toBe(73.25);
  });

  test("that are not known, that move, that stand for themselves or in another workbook are said not to be told", () => {
    expect(why("=Nowhere", at("Rings"))).toBe("the name Nowhere is not known");
    expect(why("=Beside", at("Rings"))).toBe("what the name Beside stands for moves with the formula that uses it");
    expect(why("=Round", at("Rings"))).toBe("a name stands for itself");
    expect(why("=Loop", at("Rings"))).toBe("a name stands for itself");
    expect(why("=HATCH.TAPER(Loop#)", at("Rings"))).toBe("the names lead to names without end");
    expect(evaluateFormula("=[other.xlsx]Limits!Standard", at("Rings"))).toBeInstanceOf(CannotTell);
  });
});

describe("references to tables", () => {
  test("name a column, two of them, a row of them, the headings, all or the totals", () => {
    expect(evaluateFormula("=LimitList[upper '[mm']]", at("Rings"))).toEqual([[0.05], [0.5]]);
    expect(evaluateFormula("=LimitList[[Lower]:[Upper '[mm']]]", at("Rings"))).toEqual([
      [null, 0.05],
      [0.25, 0.5],
    ]);
    expect(evaluateFormula("=Gaps[[#This Row],[Upper]]", at("Rings", 2))).toBe(0.5);
    expect(evaluateFormula("=Gaps[@Upper]", at("Rings", 2))).toBe(0.5);
    expect(evaluateFormula("=[@Upper]", at("Rings", 1))).toBe(0.4);
    expect(evaluateFormula("=[Upper]", at("Rings", 1))).toEqual([[0.4], [0.5]]);
    expect(evaluateFormula("=LimitList[[#Headers],[Lower]]", at("Rings"))).toBe("Lower");
    expect(evaluateFormula("=LimitList[[#Totals],[Characteristic]]", at("Rings"))).toBe("2 in all");
    expect(evaluateFormula("=Gaps", at("Limits"))).toEqual([
      [0.3, 0.4, null],
      [0.45, 0.5, null],
    ]);
  });

  test("that lead nowhere are said not to be told", () => {
    expect(why("=Nowhere[Upper]", at("Rings"))).toBe("the table Nowhere is not known");
    expect(why("=Gaps[Least]", at("Rings"))).toBe("the formula names a column that the table Gaps does not have (Least)");
    expect(why("=Gaps[@Upper]", at("Rings", 9))).toBe("the formula refers to its own row of the table Gaps, but stands beside none");
    expect(why("=[@Upper]", at("Rings", 9))).toBe("[@Upper] stands in no table that is known");
    expect(why("=Gaps[[#Totals],[Gap]]", at("Rings"))).toBe("the formula refers to rows that the table Gaps does not have");
  });
});

test("@ takes of one column the cell in the formula's own row, of one row that in its column, and elsewhere is not told", () => {
  expect(evaluateFormula("=@$A$1:$A$3", at("Rings", 2))).toBe(0.45);
  expect(evaluateFormula("=@A1:C1", at("Rings", 5, 1))).toBe("Upper");
  expect(why("=@A1:A3", at("Rings", 9))).toBe("@ before a range depends on where the formula stands");
});

test("limits by name and by table are judged as limits in cells are, and shown", () => {
  const { findings, rowsIn, refused } = checkWorkbook(
    snapshot([
      ["Gap", "Upper", "Verdict"],
      [0.55, 0.4, VERDICT("=HATCH.VERDICT([@Gap],GapLower,Gaps[@Upper])", "over")],
      [0.06, 0.5, VERDICT("=HATCH.VERDICT(Gaps[@Gap],,TaperLimit)", "over")],
    ]),
  );
  expect([rowsIn, refused]).toEqual([2, 0]);
  expect(findings.map(({ kind, cell, value, lower, upper, margin }) => [kind, cell.row, cell.column, value, lower, upper, margin])).toEqual([
    ["outside limit", 1, 0, 0.55, 0.25, 0.4, -0.15],
    ["outside limit", 2, 0, 0.06, null, 0.05, -0.01],
  ]);
});
