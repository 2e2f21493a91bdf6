import { Analysis } from "../../src/check/analysis.ts";
import { mappedReadings } from "../../src/compare/from-workbook.ts";
import type { Fixed } from "../../src/layout/mapping.ts";
import { type Proposal, proposeLayout, proposeRange } from "../../src/layout/propose.ts";
import { cellName } from "../../src/workbook/address.ts";
import type { WorkbookSnapshot } from "../../src/workbook/port.ts";
import { typed } from "./typed.ts";

/** What a layout makes of each cell, `B4: engine A, cylinder 1, bore, top thrust`. */
function named(snapshot: WorkbookSnapshot, proposals: readonly (Proposal | undefined)[]): string[] {
  const ranges = proposals.flatMap((proposal) => proposal?.range ?? []);
  return mappedReadings(new Analysis(snapshot), { version: 1, ranges }).map(
    ({ cell, engine, cylinder, characteristic, position }) => `${cellName(cell)}: ${[engine, cylinder, characteristic, position].filter(Boolean).join(", ")}`,
  );
}

test("one row a cylinder under two rows of merged headings", async () => {
  const snapshot = await typed({
    Bores: [
      ["", "Top", "", "Bottom", "", "Skirt"],
      ["Cyl", "Thrust", "Pin", "Thrust", "Pin", ""],
      [1, 73.02, 73.01, 73.01, 73.01, 72.98],
      [2, 73.02, "", 73.01, 73.01, 72.98],
    ],
  });
  const [proposal, ...others] = proposeLayout(snapshot);
  expect(others).toEqual([]);
  expect(proposal).toMatchObject({ what: "8 readings of bore, 2 readings of piston skirt; cylinders 1, 2", readings: 10, limits: 0, doubts: [] });
  expect(named(snapshot, [proposal]).slice(0, 6)).toEqual([
    "B3: 1, bore, top thrust",
    "C3: 1, bore, top pin",
    "D3: 1, bore, bottom thrust",
    "E3: 1, bore, bottom pin",
    "F3: 1, piston skirt",
    "B4: 2, bore, top thrust",
  ]);
});

test.each([
  ["a list of parts", ["Part", "Qty", "Price"], ["Piston ring set", 3, 89.5], ["Main bearing shells", 4, 35], ["Valve guide", 8, 4.2]],
  ["prices by cylinder", ["Cylinder", "Part", "Cost, €"], [1, "Piston", 80], [2, "Piston", 80], [3, "Piston", 80]],
  ["an invoice", ["Job", "Hours", "Rate", "Amount"], ["Bore and hone, cylinder 1", 1.5, 60, 90], ["Bore and hone, cylinder 2", 1.5, 60, 90]],
])("%s holds no readings, whatever its rows are called", async (_, ...rows) => {
  expect(proposeLayout(await typed({ Sheet1: rows as (string | number)[][] }))).toEqual([]);
});

test("a price beside readings takes nothing from them", async () => {
  const snapshot = await typed({
    Sheet1: [
      ["Cylinder", "Bore", "Taper", "Sleeve, cost"],
      [1, 73.02, 0.01, 120],
      [2, 73.05, 0.03, 120],
    ],
  });
  expect(named(snapshot, proposeLayout(snapshot))).toEqual(["B2: 1, bore", "C2: 1, taper", "B3: 2, bore", "C3: 2, taper"]);
});

test("a transposed table: the cylinders across, the readings down", async () => {
  const snapshot = await typed({
    Sheet1: [
      ["Cylinder", 1, 2, 3],
      ["Bore, top thrust", 73.02, 73.01, 73.03],
      ["Bore, top pin", 73.02, 73.01, 73.03],
      ["Ring gap", 0.3, 0.32, ""],
    ],
  });
  expect(named(snapshot, proposeLayout(snapshot)).filter((name) => /^[BD]/.test(name))).toEqual([
    "B2: 1, bore, top thrust",
    "D2: 3, bore, top thrust",
    "B3: 1, bore, top pin",
    "D3: 3, bore, top pin",
    "B4: 1, ring end gap",
    "D4: 3, ring end gap",
  ]);
});

test("several engines on one sheet: below one another without a gap, and beside one another", async () => {
  const block = (engine: string) => [[engine], ["Cyl", "Gap top", "Gap second"], [1, 0.3, 0.31], [2, 0.29, 0.33]];
  const below = await typed({ Rings: [...block("Engine A"), ...block("Engine B")] });
  expect(proposeLayout(below).map(({ what }) => what)).toEqual([
    "4 readings of ring end gap; engine A, cylinders 1, 2",
    "4 readings of ring end gap; engine B, cylinders 1, 2",
  ]);
  const beside = await typed({
    Rings: block("Port engine").map((row, i) => [...row, ...Array.from({ length: 4 - row.length }, () => ""), ...block("Starboard engine")[i]!]),
  });
  expect(proposeLayout(beside).map(({ what }) => what)).toEqual([
    "4 readings of ring end gap; engine port, cylinders 1, 2",
    "4 readings of ring end gap; engine starboard, cylinders 1, 2",
  ]);
});

test("one row a reading with its limits in line", async () => {
  const snapshot = await typed({
    Readings: [
      ["Eng.", "Cyl", "What", "Where", "Actual", "Min", "Max", "Units", "Remarks"],
      ["A", 1, "Bore", "top thrust", 73.02, 73, 73.08, "mm", "new gauge"],
      ["A", 1, "Gudgeon pin", "", 18, 17.99, 18.01, "mm", ""],
    ],
  });
  const [proposal] = proposeLayout(snapshot);
  expect(proposal).toMatchObject({
    what: "1 reading of bore, 1 reading of piston pin, with their limits; engine A, cylinder 1",
    doubts: ["left out: column I"],
  });
  expect(mappedReadings(new Analysis(snapshot), { version: 1, ranges: [proposal!.range] })).toMatchObject([
    { engine: "A", cylinder: "1", characteristic: "bore", position: "top thrust", value: 73.02, lower: 73, upper: 73.08, unit: "mm" },
    { characteristic: "piston pin", lower: 17.99, upper: 18.01 },
  ]);
});

test("limits in a row below the readings, and a row of averages that is none of them", async () => {
  const snapshot = await typed({
    Valves: [
      ["Valve clearances"],
      ["Cyl", "Inlet", "Exhaust"],
      [1, 0.2, 0.25],
      [2, 0.21, 0.24],
      ["Average", 0.205, 0.245],
      ["Min", 0.15, 0.2],
      ["Max", 0.25, 0.3],
    ],
  });
  const [proposal] = proposeLayout(snapshot);
  expect(proposal).toMatchObject({ what: "4 readings of valve clearance, with their limits; cylinders 1, 2", doubts: ["left out: row 5"] });
  expect(
    mappedReadings(new Analysis(snapshot), { version: 1, ranges: [proposal!.range] }).map(({ cell, position, lower, upper }) => [
      cellName(cell),
      position,
      lower,
      upper,
    ]),
  ).toEqual([
    ["B3", "inlet", 0.15, 0.25],
    ["B4", "inlet", 0.15, 0.25],
    ["C3", "exhaust", 0.2, 0.3],
    ["C4", "exhaust", 0.2, 0.3],
  ]);
});

test("a largest that the sheet works out is no limit", async () => {
  const snapshot = await typed({
    Sheet1: [
      ["Cyl", "Skirt"],
      [1, 72.98],
      [2, 72.97],
      ["Max", { formula: "=MAX(B2:B3)", value: 72.98 }],
    ],
  });
  expect(proposeLayout(snapshot)).toMatchObject([{ what: "2 readings of piston skirt; cylinders 1, 2", limits: 0, doubts: ["left out: row 4"] }]);
});

test("what is doubtful is said: bores known by their places alone, a limit without a side", async () => {
  const snapshot = await typed({
    Sheet1: [["Cyl", "Top thrust", "Top pin"], [1, 73.02, 73.01], [""], ["What", "Limit"], ["Taper", 0.02]],
  });
  expect(proposeLayout(snapshot).map(({ what, doubts }) => [what, doubts])).toEqual([
    ["2 readings of bore; cylinder 1", ["taken for bore readings, as heights and axes head them"]],
    ["limits of taper", ["a limit that does not say its side is taken for an upper one"]],
  ]);
});

test("numbers that nothing names are not proposed", async () => {
  const snapshot = await typed({ Sheet1: [["Telephone", 5551234], [""], ["Invoice", "Amount"], [17, 230.5], [18, 99.9]], Empty: [] });
  expect(proposeLayout(snapshot)).toEqual([]);
});

describe("a range that somebody points at", () => {
  const sheet = {
    Sheet1: [
      ["No", "A", "B"],
      [1, 0.3, 0.31],
      [2, 0.29, 0.33],
    ],
  };
  const area = { sheet: "Sheet1", row: 1, column: 1, rows: 2, columns: 2 };
  const ask = async (what?: Fixed) => proposeRange(await typed(sheet), area, what);

  test("is incomplete until they say what it is", async () => {
    expect(await ask()).toMatchObject({ isComplete: false, doubts: expect.arrayContaining(["nothing says what these numbers are of"]) });
    const said = await ask({ characteristic: "ring end gap", engine: "A", unit: "mm" });
    expect(said).toMatchObject({ isComplete: true, readings: 4, what: "4 readings of ring end gap; engine A, cylinders 1, 2" });
    expect(said!.doubts).toEqual([]);
    expect(mappedReadings(new Analysis(await typed(sheet)), { version: 1, ranges: [said!.range] })[0]).toMatchObject({
      engine: "A",
      cylinder: "1",
      value: 0.3,
      unit: "mm",
    });
  });

  test("may be said to be a limit, or be one bare number", async () => {
    const snapshot = await typed({ Sheet1: [[0.02]] });
    const proposal = proposeRange(snapshot, { sheet: "Sheet1", row: 0, column: 0, rows: 1, columns: 1 }, { characteristic: "taper", role: "upper" });
    expect(proposal).toMatchObject({ what: "limits of taper", limits: 1, readings: 0, isComplete: true });
  });

  test("may be part of a table, whose headings are still found", async () => {
    const snapshot = await typed({
      Sheet1: [
        ["Cyl", "Top thrust", "Top pin", "Bottom thrust"],
        [1, 73.02, 73.01, 73],
        [2, 73.03, 73.01, 73.01],
      ],
    });
    const proposal = proposeRange(snapshot, { sheet: "Sheet1", row: 2, column: 2, rows: 1, columns: 2 }, { characteristic: "bore" });
    expect(named(snapshot, [proposal])).toEqual(["C3: 2, bore, top pin", "D3: 2, bore, bottom thrust"]);
  });

  test("that holds no numbers is nothing", async () => {
    expect(proposeRange(await typed({ Sheet1: [["Cyl", "Top"]] }), { sheet: "Sheet1", row: 0, column: 0, rows: 1, columns: 2 })).toBeUndefined();
  });
});
