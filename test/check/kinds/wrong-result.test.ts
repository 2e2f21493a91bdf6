import { checkWorkbook } from "../../../src/check/check-workbook.ts";
import type { Cell } from "../../../src/core/cell.ts";
import { type MemoryCell, memoryHost } from "../../../src/hosts/memory.ts";
import type { WorkbookSnapshot } from "../../../src/workbook/port.ts";
import { type Typed, workbook } from "../workbook.ts";
import { foundInSnapshot, shown } from "./declared.ts";

/** A workbook as a host shows it: calculated right, but for these cells. */
function shownAs(rows: Typed, cells: Record<string, Cell>): WorkbookSnapshot {
  const snapshot = workbook({ Tests: rows });
  for (const [name, value] of Object.entries(cells)) {
    const [column, row] = [name.charCodeAt(0) - 65, Number(name.slice(1)) - 1];
    snapshot.sheets[0]!.values[row]![column] = value;
  }
  return snapshot;
}

// Excel on the desktop hands an empty cell over as 0, on the web as nothing (OfficeDev/office-js, threads 1951 and 4702).
const LEAKS: Typed = [
  ["Cylinder", "Supply", "Held", "Leak", "Verdict", "Upper"],
  [1, 80, 72, "=HATCH.LEAKDOWN(B2,C2)", "=HATCH.VERDICT(D2,,F2)", 20],
  [2, 80, null, "=HATCH.LEAKDOWN(B3,C3)", "=HATCH.VERDICT(D3,,F3)", 20],
];

test("a blank that was handed over as 0 is told with the right value and the remedy, and what rests on it with its cause", () => {
  const snapshot = shownAs(LEAKS, { D3: 100, E3: "over" });
  const found = foundInSnapshot("wrong result", snapshot);
  expect(found).toMatchObject([
    {
      ...{ cell: { row: 2, column: 3 }, value: 100, margin: null, verdict: null },
      details: { gives: null, why: "a blank taken for 0", because: "Tests!C3" },
      sentence:
        'shows 100 where the formula gives nothing from its cells: the program has handed the blank cell Tests!C3 over as 0. Write IF(Tests!C3="","",Tests!C3) in its place, or fill it in',
    },
    {
      ...{ cell: { row: 2, column: 4 }, value: "over" },
      details: { gives: null, why: "another wrong result", because: "Tests!D3" },
      sentence: "shows over where the formula gives nothing from its cells: it rests on Tests!D3, which shows something other than its own formula gives",
    },
  ]);
  expect(shown(found[0]!)).toEqual(["wrong result", "fault"]);
  // What was never measured is missing, and not outside its limit.
  expect(checkWorkbook(snapshot).findings.map(({ kind }) => kind)).toEqual(["wrong result", "wrong result", "missing reading"]);
});

test("in a batch each cell is told with the blank of its own row", () => {
  const rows: Typed = [
    ["Held", "Verdict"],
    [1, "=HATCH.VERDICT(A2:A4,,20)"],
    [null, null],
    [null, null],
  ];
  const found = foundInSnapshot("wrong result", shownAs(rows, { B3: "within", B4: "within" }));
  expect(found.map(({ cell, details }) => [cell.row, details.why, details.because])).toEqual([
    [2, "a blank taken for 0", "Tests!A3"],
    [3, "a blank taken for 0", "Tests!A4"],
  ]);
});

test("a value from before a change is told, and judged by what the formula gives", () => {
  const rows: Typed = [
    ["Bore", "Piston", "Clearance", "Verdict", "Lower", "Upper"],
    [73.06, 73.0, "=HATCH.CLEARANCE(A2,B2)", "=HATCH.VERDICT(C2,E2,F2)", 0.02, 0.04],
  ];
  const snapshot = shownAs(rows, { C2: 0.03, D2: "within" });
  const { findings, rowsIn, checked, refused } = checkWorkbook(snapshot);
  expect(findings).toMatchObject([
    { kind: "wrong result", cell: { column: 2 }, details: { gives: 0.06, why: "not calculated since", because: null } },
    { kind: "wrong result", cell: { column: 3 }, details: { gives: "over", why: "another wrong result", because: "Tests!C2" } },
    { kind: "outside limit", value: 0.06, verdict: "over" },
  ]);
  expect([rowsIn, checked, refused]).toEqual([1, 1, 0]);
  expect(findings[0]!.sentence).toBe(
    "shows 0.03 where the formula gives 0.06 from its cells: it has not been calculated since they changed, or it was calculated by another version of these functions. Recalculate the workbook (Ctrl+Alt+F9 in Excel, Ctrl+Shift+F9 in LibreOffice)",
  );
});

test("where a host makes a call an error because one of its cells holds one, that cell is named", () => {
  const rows: Typed = [
    ["Bore", "Piston", "Clearance"],
    [73.06, 73.0, "=HATCH.CLEARANCE(A2:A3,B2:B3)"],
    ["=1/0", 73.0, null],
  ];
  const found = foundInSnapshot("wrong result", shownAs(rows, { C2: { error: "#VALUE!" }, C3: null }));
  expect(found.map(({ cell, details }) => [cell.row, details.why, details.because])).toEqual([
    [1, "an error among its cells", "Tests!A3"],
    [2, "not calculated since", null],
  ]);
});

test("what goes round in a circle never settles, and nothing right is told of it nor of what rests on it", () => {
  const rows: Typed = [
    ["=HATCH.MARGIN(B1,,5)", "=A1", "=HATCH.VERDICT(A1,1)", "=HATCH.VERDICT(D2,,5)"],
    [null, null, null, 7],
  ];
  const found = foundInSnapshot("wrong result", shownAs(rows, { A1: 3, B1: 0, C1: "over", D1: "within" }));
  expect(found.map(({ cell }) => cell.column)).toEqual([3]);
});

test("text that is joined to itself in a circle does not grow without end", async () => {
  const cells: MemoryCell[][] = [
    [{ formula: "=A1&A1:B2", value: 0 }, 0],
    [0, { formula: "=HATCH.VERDICT()", value: 0 }],
  ];
  expect(foundInSnapshot("wrong result", await memoryHost([{ name: "Tests", cells }]).read()).map(({ cell }) => cell)).toMatchObject([{ row: 1, column: 1 }]);
});
