import { buildSheetSpec } from "../../src/setup/build-sheet.ts";
import { readChoices } from "../../src/setup/choices.ts";
import { modelsIn, withLimits } from "../../src/setup/limits-book.ts";
import { limitsFor } from "../../src/setup/limits-for-workbook.ts";
import type { BuildSheet } from "../../src/setup/model.ts";
import { typed } from "../layout/typed.ts";

const HEAD = ["Characteristic", "Lower", "Upper", "Unit", "Source"];

function built(given: Record<string, unknown> = {}): BuildSheet {
  const read = readChoices({ cylinders: 3, ...given });
  if ("sentences" in read) throw new Error(read.sentences.join());
  return buildSheetSpec(read.choices);
}

/** The rows of the Limits sheet that hold something typed, as text. */
function rowsOf(book: BuildSheet): string[] {
  const { cells, tables } = book.sheets.find(({ name }) => name === "Limits")!;
  const { row, column, rows, headings } = tables.find(({ name }) => name === "LimitList")!;
  const lines = Array.from({ length: rows }, (_, r) =>
    headings.map((_, c) => String(cells.find((cell) => cell.row === row + 1 + r && cell.column === column + c)?.content ?? "")),
  );
  return lines.filter(([, lower, upper]) => lower !== "" || upper !== "").map((line) => line.join(" | "));
}

const book = {
  "HB-3": [
    ["Limits of the HB-3, from its manual"],
    [""],
    HEAD,
    ["Taper", "", 0.02, "mm", "manual, page 41"],
    ["Top ring end gap", 0.25, 0.55, "mm", "manual, page 44"],
    ["Piston clearance", "0.03-0.06", "", "mm", ""],
    ["Compression pressure", "10 min", "", "bar", "manual, page 12"],
    ["Water pump shaft", 11.98, 12, "mm", "drawing 7"],
  ],
  "HB-4": [HEAD, ["Taper", "", 0.03, "mm", ""]],
  Prices: [
    ["Item", "Price"],
    ["Gasket set", 41],
  ],
};

test("a limits book has a sheet for each model; other sheets are none", async () => {
  const models = modelsIn((await typed(book)).sheets);
  expect(models.map(({ name, limits, refused }) => [name, limits.length, refused])).toEqual([
    ["HB-3", 5, []],
    ["HB-4", 1, []],
  ]);
});

test("limits come to their rows by whatever name, each with its source; what the sheets do not judge takes a row of its own", async () => {
  const [model] = modelsIn((await typed(book)).sheets);
  const { book: filled, copied, notes } = withLimits(built(), model!, "yard.xlsx");
  expect([copied, notes]).toEqual([5, []]);
  expect(rowsOf(filled)).toEqual([
    "Taper |  | 0.02 | mm |  |  | Limits book yard.xlsx, HB-3: manual, page 41",
    "Piston clearance | 0.03 | 0.06 | mm |  |  | Limits book yard.xlsx, HB-3",
    "Ring end gap, top | 0.25 | 0.55 | mm |  |  | Limits book yard.xlsx, HB-3: manual, page 44",
    "Compression pressure | 10 |  | bar |  |  | Limits book yard.xlsx, HB-3: manual, page 12",
    "Water pump shaft | 11.98 | 12 | mm |  |  | Limits book yard.xlsx, HB-3: drawing 7",
  ]);
  expect(rowsOf(built())).toEqual([]);
});

test("what matters goes along with its limit, into a new build sheet and into one that is set up", async () => {
  const sheet = (upper: number | string, matters: number | string) => ({
    Limits: [
      ["Characteristic", "Lower", "Upper", "Unit", "Matters", "Source"],
      ["Taper", "", upper, "mm", matters, ""],
    ],
  });
  const [model] = modelsIn((await typed(sheet(0.02, 0.004))).sheets);
  expect(rowsOf(withLimits(built(), model!, "yard.xlsx").book)).toEqual(["Taper |  | 0.02 | mm |  | 0.004 | Limits book yard.xlsx, Limits"]);
  const { edits } = limitsFor((await typed(sheet("", ""))).sheets, model!, "yard.xlsx");
  expect(edits.map(({ column, cells }) => [column, cells[0]![0]])).toEqual([
    [2, 0.02],
    [4, 0.004],
    [5, "Limits book yard.xlsx, Limits"],
  ]);
});

test("what cannot be copied is said by name, and the rest is", async () => {
  const odd = {
    Model: [
      ["Characteristic", "Lower", "Upper", "Unit"],
      ["Taper", "", 0.0008, "in"],
      ["Out-of-round", "", 0.02, ""],
      ["Bore wear", "", "see manual", "mm"],
      ["@SUM(1)", 1, 2, "mm"],
      ["", "", "", ""],
      ["Squish", 0.8, 1.1, "mm"],
      ["squish", 0.9, 1.2, "mm"],
      ...Array.from({ length: 8 }, (_, i) => [`Own ${i + 1}`, 1, 2, "mm"]),
    ],
  };
  const [model] = modelsIn((await typed(odd)).sheets);
  const { copied, notes } = withLimits(built(), model!, "odd.xlsx");
  expect(copied).toBe(7);
  expect(notes).toEqual([
    "Model, row 4, Bore wear: its limits are no numbers, so they were not copied",
    "Model, row 5, @SUM(1): this is no name of a characteristic, so it was not copied",
    "Taper: the limits book has it in inches, and the sheet has it in mm",
    "Out-of-round: the limits book names no unit for it, and the sheet has it in mm",
    "squish: the limits book has it twice, and the first counts",
    "Own 7: this build sheet does not judge it, and its rows for limits of your own are full",
    "Own 8: this build sheet does not judge it, and its rows for limits of your own are full",
  ]);
});

test("a filled build sheet is a limits book as well, and a unit in the heading counts", async () => {
  const { cells } = withLimits(built(), modelsIn((await typed(book)).sheets)[0]!, "yard.xlsx").book.sheets.find(({ name }) => name === "Limits")!;
  const rows: (string | number)[][] = [];
  for (const { row, column, content } of cells) {
    rows[row] ??= [];
    rows[row]![column] = content;
  }
  const again = modelsIn((await typed({ Limits: Array.from(rows, (line) => Array.from(line ?? [], (cell) => cell ?? "")) })).sheets);
  expect(again.map(({ name, limits }) => [name, limits.length])).toEqual([["Limits", 5]]);
  const headed = modelsIn(
    (
      await typed({
        M: [
          ["Characteristic", "Lower (mm)", "Upper (mm)"],
          ["Taper", "", 0.02],
        ],
      })
    ).sheets,
  );
  expect(headed[0]!.limits[0]).toMatchObject({ upper: 0.02, unit: "mm" });
});

test("in a workbook that is set up, rows without a limit get theirs; what is typed otherwise is told and stays out of the edits", async () => {
  const shop = await typed({
    Limits: [
      ["Characteristic", "Lower", "Upper", "Unit", "Near", "Source"],
      ["Taper", "", "", "mm", "", ""],
      ["Piston clearance", 0.03, 0.06, "mm", "", "an old card"],
      ["Ring end gap, top", 0.2, 0.5, "mm", "", ""],
      ["Compression pressure", "", "", "psi", "", ""],
    ],
  });
  const [model] = modelsIn((await typed(book)).sheets);
  const { edits, copied, same, others, notes } = limitsFor(shop.sheets, model!, "yard.xlsx");
  expect([copied, same]).toEqual([1, 1]);
  expect(edits).toEqual([
    { sheet: "Limits", row: 1, column: 2, cells: [[0.02]] },
    { sheet: "Limits", row: 1, column: 5, cells: [["Limits book yard.xlsx, HB-3: manual, page 41"]] },
  ]);
  expect(others.map(({ characteristic, cell, typed, inBook }) => [characteristic, cell, typed, inBook])).toEqual([
    ["Top ring end gap", { sheet: "Limits", row: 3, column: 1 }, "0.2 to 0.5", "0.25 to 0.55"],
  ]);
  expect(others[0]!.edits.map(({ column, cells }) => [column, cells[0]![0]])).toEqual([
    [1, 0.25],
    [2, 0.55],
    [5, "Limits book yard.xlsx, HB-3: manual, page 44"],
  ]);
  expect(notes).toEqual([
    "Compression pressure: the limits book has it in bar, and the sheet has it in psi",
    "Water pump shaft: no limit of this workbook has that name",
  ]);
});

test("a formula in place of a limit counts as typed, and a workbook without limits is told so", async () => {
  const [model] = modelsIn((await typed(book)).sheets.slice(1));
  const linked = await typed({
    L: [
      ["Characteristic", "Lower", "Upper", "Unit"],
      ["Taper", "", { formula: "=Other!A1", value: null }, "mm"],
    ],
  });
  expect(limitsFor(linked.sheets, model!, "yard.xlsx")).toMatchObject({ edits: [], copied: 0, others: [{ characteristic: "Taper" }] });
  expect(limitsFor((await typed({ Bores: [["Cylinder", "Bore"]] })).sheets, model!, "yard.xlsx").notes).toEqual([
    "this workbook has no table of limits: it needs the headings Characteristic, Lower, Upper and Unit",
  ]);
});

test("a distance that is near a limit is part of what the book says", async () => {
  const head = ["Characteristic", "Lower", "Upper", "Near", "Unit", "Source"];
  const [model] = modelsIn((await typed({ "HB-5": [head, ["Taper", "", 0.02, 0.005, "mm", ""], ["Squish", 1, 1.8, "", "mm", ""]] })).sheets);
  const here = (near: number | string) => typed({ Limits: [head, ["Taper", "", 0.02, near, "mm", ""], ["Squish", 1, 1.8, 0.1, "mm", ""]] });
  const without = limitsFor((await here("")).sheets, model!, "yard.xlsx");
  expect([without.same, without.others.map(({ typed: there, inBook }) => [there, inBook])]).toEqual([1, [["at most 0.02", "at most 0.02, near 0.005"]]]);
  expect(without.others[0]!.edits).toContainEqual({ sheet: "Limits", row: 1, column: 3, cells: [[0.005]] });
  expect(limitsFor((await here(0.005)).sheets, model!, "yard.xlsx")).toMatchObject({ same: 2, others: [] });
});

test("the smallest difference that matters is part of what the book says too", async () => {
  const head = ["Characteristic", "Lower", "Upper", "Near", "Matters", "Unit", "Source"];
  const [model] = modelsIn((await typed({ "HB-5": [head, ["Taper", "", 0.02, 0.005, 0.01, "mm", ""]] })).sheets);
  const here = (matters: number | string) => typed({ Limits: [head, ["Taper", "", 0.02, 0.005, matters, "mm", ""]] });
  const { same, others } = limitsFor((await here("")).sheets, model!, "yard.xlsx");
  expect([same, others.map(({ typed: there, inBook }) => [there, inBook])]).toEqual([
    0,
    [["at most 0.02, near 0.005", "at most 0.02, near 0.005, matters 0.01"]],
  ]);
  expect(others[0]!.edits).toContainEqual({ sheet: "Limits", row: 1, column: 4, cells: [[0.01]] });
  expect(limitsFor((await here(0.01)).sheets, model!, "yard.xlsx")).toMatchObject({ same: 1, others: [] });
});
