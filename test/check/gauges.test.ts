import { checkWorkbook } from "../../src/check/check-workbook.ts";
import { Made } from "../setup/made.ts";
import { at, findingsOf } from "./stand.ts";

// Gauges and days are invented. That a gauge serves until the end of the day on which its calibration is due is common practice.

/** Days of the sheet: 46102 is 2026-03-21, as `=DATE(2026,3,21)` says in any spreadsheet. */
const DUE = 46102;
const REGISTER = [
  ["Gauge", "Resolution", "U", "Unit", "Calibration due"],
  ["BG-1", 0.001, 0.002, "mm", DUE],
  ["M-2", 0.01, 0.004, "mm", DUE + 200],
];
const overdue = (sheets: Parameters<typeof findingsOf>[1]) => findingsOf("calibration overdue", sheets);

describe("a gauge past its calibration date", () => {
  const use = (day: number | string | null) => ({
    Gauges: REGISTER,
    Bores: [
      ["Cylinder", "Bore", "Gauge", "Measured on"],
      [1, 73.01, "bg-1 ", day],
    ],
  });

  test("on the day of its use is found at that day, with the days in between", () => {
    const [finding, ...others] = overdue(use(DUE + 12));
    expect(others).toEqual([]);
    expect(finding).toEqual({
      kind: "calibration overdue",
      cell: { sheet: "Bores", row: 1, column: 3 },
      label: "Cylinder 1, Measured on",
      value: null,
      lower: null,
      upper: null,
      margin: null,
      verdict: null,
      details: { gauge: "bg-1", usedOn: "2026-04-02", due: "2026-03-21", daysPast: 12, uses: 1 },
      sentence: "bg-1 was used on 2026-04-02, 12 days past its calibration date 2026-03-21: have it calibrated, and measure again with a gauge that is in date",
    });
  });

  test("is none on its last day, before it, or where no day of use is known: what day it is now does not count", () => {
    expect([DUE, DUE - 1, null, "last week", 12].flatMap((day) => overdue(use(day)))).toEqual([]);
  });

  test("is told once for all that was measured with it on one day", () => {
    const rows = [1, 2, 3].map((cylinder) => [cylinder, 73.01, "BG-1", DUE + 1]);
    const found = overdue({ Gauges: REGISTER, Bores: [["Cylinder", "Bore", "Gauge", "Date"], ...rows] });
    expect(found.map(({ cell }) => at(cell))).toEqual(["Bores!D2"]);
    expect(found[0]!.sentence).toContain("1 day past its calibration date 2026-03-21, here and in 2 more places on the sheet:");
  });

  test("is known by a date of the row's own, by an entry of the sheet, and by the latest calibration of several", () => {
    const own = {
      Log: [
        ["Instrument", "Used on", "Valid until"],
        ["DTI 3", "2026-05-02", "2026-05-01"],
      ],
    };
    expect(overdue(own).map(({ cell }) => at(cell))).toEqual(["Log!B2"]);
    const entries = {
      Register: REGISTER,
      Sheet1: [
        ["Measured with", "BG-1"],
        ["Measured on", DUE + 3],
        ["Bore", 73.01],
      ],
    };
    expect(overdue(entries).map(({ cell, label }) => [at(cell), label])).toEqual([["Sheet1!B2", "Measured on, BG-1"]]);
    expect(
      overdue({
        ...entries,
        More: [
          ["Gauge", "Due"],
          ["BG-1", DUE + 365],
        ],
      }),
    ).toEqual([]);
  });

  test("is known by entries in one row, with the date beside them", () => {
    const found = overdue({
      Register: REGISTER,
      Sheet1: [
        ["Gauge", "BG-1", "Measured on", "2026-03-24"],
        ["Bore", 73.01],
      ],
    });
    expect(found.map(({ cell, details }) => [at(cell), details.daysPast])).toEqual([["Sheet1!D1", 3]]);
  });

  test("is not made of two days on one sheet, of other tables below, or of a gauge that nobody knows", () => {
    expect(
      overdue({
        R: REGISTER,
        S: [
          ["Gauge", "BG-1"],
          ["Date", DUE + 3],
          ["Measured on", DUE - 3],
        ],
      }),
    ).toEqual([]);
    expect(overdue({ S: [["Gauge", "Due", "Date"], ["A", DUE, DUE], [null], [null], ["Oil", DUE, DUE + 90]] })).toEqual([]);
    expect(
      overdue({
        R: REGISTER,
        S: [
          ["Gauge", "Date"],
          ["X-9", DUE + 900],
        ],
      }),
    ).toEqual([]);
  });

  test("is found in a workbook that was set up here, and a gauge in date is not", async () => {
    const made = await Made.of({ cylinders: 1 });
    for (const [i, [id, due]] of [["BG-1", DUE] as const, ["M-2", DUE + 200] as const].entries()) {
      await made.type("Gauges", "Gauge id", i, id);
      await made.type("Gauges", "Calibration due", i, due);
    }
    const row = made.rowOf("Measurements", "Piston skirts");
    await made.type("Measurements", "Gauge", 0, "BG-1");
    await made.type("Measurements", "Measured on", 0, DUE + 5);
    await made.type("Measurements", "Gauge", row, "M-2");
    await made.type("Measurements", "Measured on", row, DUE + 5);
    const found = checkWorkbook(await made.host.read()).findings.filter(({ kind }) => kind === "calibration overdue");
    expect(found.map(({ cell, details }) => [cell, details.usedOn, details.daysPast])).toEqual([[made.at("Measurements", "Measured on"), "2026-03-26", 5]]);
    expect((await made.column("Measurements", "Calibration"))[0]).toBe("past its date");
    expect(found[0]!.label).toContain("Bores");
  });
});

// 0.0002 in is 0.005 mm (25.4 mm to the inch): taken for 0.0002 mm a gauge would seem 25 times as good as it is.
describe("a gauge whose U is in another unit of length than the workbook's", () => {
  const book = (unit: string, heading = "U", what = "Bores") => ({
    Engine: [
      ["Unit of length", "mm"],
      [null],
      ["Gauge id", heading, "Unit"],
      ["BG-1", 0.0002, unit],
      [null],
      [null],
      ["Measured", "Gauge", "Measured on"],
      [what, "BG-1", DUE],
    ],
  });
  const found = (...given: Parameters<typeof book>) =>
    findingsOf("mixed units", book(...given)).map(({ cell, label, sentence }) => [at(cell), label, sentence]);

  test("is found where its unit stands, in a column or in the heading", () => {
    const sentence = "the unit says inches where similar readings are in mm";
    expect(found("in")).toEqual([["Engine!C4", "U of gauge BG-1", sentence]]);
    expect(found("", "U (in)")).toEqual([["Engine!B4", "U of gauge BG-1", sentence]]);
  });

  test("is none in the workbook's unit, of no length, without a unit, or where it measures surfaces alone", () => {
    expect([...found("mm"), ...found("bar"), ...found(""), ...found("µm", "U", "Bore surface, roughness")]).toEqual([]);
  });
});
