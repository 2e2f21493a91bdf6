import { WorkbookCells } from "../../src/formula/workbook-cells.ts";
import { SheetLabels } from "../../src/layout/labels.ts";
import { type Typed, workbook } from "../check/workbook.ts";

const labelOf = (rows: Typed, row: number, column: number): string => new SheetLabels(new WorkbookCells(workbook({ S: rows }))).of({ sheet: "S", row, column });

test("whole numbers that count name a row, with their heading where they are short", () => {
  const rows: Typed = [
    ["Cylinder", "Position", "Gap"],
    [1, "top", 0.3],
    [2, "top", 0.35],
  ];
  expect(labelOf(rows, 2, 2)).toBe("Cylinder 2, top, Gap");
});

test.each(["Dry", "Held (psi)", "Pressure, bar", "Value", "Upper limit", "Hours run"])("a whole number under %p is a reading and names nothing", (heading) => {
  const rows: Typed = [
    ["Cylinder", heading, "Leak-down"],
    [1, 150, 6],
    [2, 150, 9.5],
  ];
  expect(labelOf(rows, 2, 2)).toBe("Cylinder 2, Leak-down");
});

test("so is one among numbers that are not whole, whatever its heading", () => {
  const rows: Typed = [
    ["Cylinder", "Second look", "Taper"],
    [1, 72.985, 0.01],
    [2, 73, 0.02],
    [3, 72.99, 0.01],
  ];
  expect([1, 2, 3].map((row) => labelOf(rows, row, 2))).toEqual(["Cylinder 1, Taper", "Cylinder 2, Taper", "Cylinder 3, Taper"]);
});

test("an entry is named by what stands beside it, not by the entry above it, as far as names stand beside entries", () => {
  const rows: Typed = [
    ["Item", "Entry", "Unit"],
    ["Engine", "Engine A", ""],
    ["Mass tolerance", 2, "g"],
    ["Shim step", "", "mm"],
    ["", "", ""],
    ["Gauge id", "Resolution"],
    ["G1", 0.001],
  ];
  expect([labelOf(rows, 2, 1), labelOf(rows, 3, 1), labelOf(rows, 6, 1)]).toEqual(["Mass tolerance", "Shim step", "Gauge id G1, Resolution"]);
});

test("a row that is named by numbers alone below no heading stays unnamed", () => {
  expect(labelOf([[1, 73.02]], 0, 1)).toBe("");
});

test.each(["73,02", ".25", "73.02 mm"])("%p is a reading typed as text: it names neither the cells beside it nor those below", (typed) => {
  const rows: Typed = [
    ["Cylinder", "Top", "Bottom"],
    [1, typed, 73.01],
    [2, 73.02, 73.01],
  ];
  expect([labelOf(rows, 1, 2), labelOf(rows, 2, 1)]).toEqual(["Cylinder 1, Bottom", "Cylinder 2, Top"]);
});

test("so is one with words behind it among readings; a heading or a name that starts with a size is none", () => {
  const rows: Typed = [
    ["Cylinder", "Top", "Bottom"],
    [1, "73.02 worn", 73.01],
    [2, 73.02, 73.01],
    ["", "", ""],
    ["Pistons", "0.25 over", "0.5 over"],
    ["1.5 ring", 73.22, 73.47],
    ["2.0 ring", 73.21, 73.46],
  ];
  expect([labelOf(rows, 1, 2), labelOf(rows, 2, 1)]).toEqual(["Cylinder 1, Bottom", "Cylinder 2, Top"]);
  expect([labelOf(rows, 5, 1), labelOf(rows, 6, 2)]).toEqual(["1.5 ring, 0.25 over", "2.0 ring, 0.5 over"]);
});
