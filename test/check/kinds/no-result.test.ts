import { checkWorkbook } from "../../../src/check/check-workbook.ts";
import type { Cell } from "../../../src/core/cell.ts";
import type { WorkbookSnapshot } from "../../../src/workbook/port.ts";
import { type Typed, workbook } from "../workbook.ts";
import { foundInSnapshot, shown } from "./declared.ts";

const ROWS: Typed = [
  ["Bore", "Piston", "Clearance", "Verdict", "Lower", "Upper"],
  [73.06, 73.0, "=HATCH.CLEARANCE(A2,B2)", "=HATCH.VERDICT(C2,E2,F2)", 0.02, 0.04],
  [73.03, 73.0, "=HATCH.CLEARANCE(A3,B3)", "=HATCH.VERDICT(C3,E3,F3)", 0.02, 0.04],
];

/** What Excel shows of our cells before any of them has answered. */
function allShow(code: string, rows = ROWS): WorkbookSnapshot {
  const snapshot = workbook({ Bores: rows });
  const { values, formulas } = snapshot.sheets[0]!;
  for (const [r, line] of formulas.entries()) for (const [c, formula] of line.entries()) if (formula) values[r]![c] = { error: code } as Cell;
  return snapshot;
}

test("cells that are still calculating are told once, and nothing else is found or lost because of it", () => {
  const found = foundInSnapshot("no result", allShow("#BUSY!"));
  expect(found).toMatchObject([
    {
      ...{ cell: { row: 1, column: 2 }, value: null, details: { why: "still calculating", cells: 4 } },
      sentence:
        "4 cells with our functions of this sheet, this one first, were still being calculated. What they judge is judged here by what their formulas give",
    },
  ]);
  expect(shown(found[0]!)).toEqual(["no result", "doubt"]);
  const { findings } = checkWorkbook(allShow("#BUSY!"));
  expect(findings.filter(({ kind }) => kind !== "no result")).toEqual(checkWorkbook(workbook({ Bores: ROWS })).findings);
});

test("where Excel does not know our functions the remedy is told, and the readings are judged", () => {
  const { findings, checked, refused } = checkWorkbook(allShow("#NAME?"));
  expect(findings.map(({ kind, cell, value }) => [kind, cell.column, value])).toEqual([
    ["outside limit", 2, 0.06],
    ["no result", 2, null],
  ]);
  expect([checked, refused]).toEqual([2, 0]);
  expect(findings[1]!.sentence).toBe(
    '4 cells with our functions of this sheet, this one first, show #NAME?: Excel does not know our functions here. Open the pane with its button on the Home tab, then press Repair formulas; where there is no button, the add-in is not installed or is blocked (README, "In Excel"); in LibreOffice install the extension. What they judge is judged here by what their formulas give',
  );
});

test("a name that the workbook does not know is not blamed on our functions", () => {
  const rows: Typed = [[73.06, "=HATCH.CLEARANCE(A1,Skirt)"]];
  expect(foundInSnapshot("no result", allShow("#NAME?", rows))).toEqual([]);
});

test("results without room are told, with what to clear", () => {
  const rows: Typed = [
    [73.06, 73.0, "=HATCH.CLEARANCE(A1:A2,B1:B2)"],
    [73.03, 73.0, "typed"],
  ];
  const snapshot = allShow("#SPILL!", rows);
  expect(foundInSnapshot("no result", snapshot).map(({ sentence }) => sentence)).toEqual([
    "1 cell with our functions of this sheet, this one first, has no room for the results (#SPILL!): clear what stands right of it or below it",
  ]);
});

test("a formula of the sheet's own around ours that is still calculating is refused as that, and not as an error", () => {
  const rows: Typed = [
    ["Bore", "Piston", "Clearance", "Verdict", "Lower", "Upper"],
    [73.06, 73.0, "=ROUND(HATCH.CLEARANCE(A2,B2),2)", "=HATCH.VERDICT(C2,E2,F2)", 0.02, 0.04],
  ];
  const { findings } = checkWorkbook(allShow("#BUSY!", rows));
  expect(findings.map(({ kind, sentence }) => [kind, sentence.slice(0, 40)])).toEqual([
    ["refused", "value is still being calculated"],
    ["no result", "2 cells with our functions of this sheet"],
  ]);
});
