import { compareReadings } from "../../src/compare/compare.ts";
import { readingsOfWorkbook } from "../../src/compare/from-workbook.ts";
import { forLengths } from "../../src/compare/typed-sizes.ts";
import { placeName } from "../../src/workbook/address.ts";
import { type Typed, workbook } from "../check/workbook.ts";

const LIMITS: Typed = [
  ["Characteristic", "Lower", "Upper", "Standard"],
  ["Clearance", 0.02, 0.06, 73],
];

/** Two cylinders, each a block of readings, and below them what they come to and its verdict. */
const sheet = (grown = 0): Typed => [
  ["Engine A"],
  ["Cylinder", "Height", "Thrust", "Pin"],
  [1, "top", 73.03 + grown, 73.02],
  [1, "bottom", 73.01, 73.01],
  [2, "top", 73.02, 73.02],
  [2, "bottom", 73.01, null],
  ["Cylinder", "Skirt", "Taper", "Wear", "Clearance", "Verdict"],
  [1, 73, "=HATCH.TAPER(C3:D4)", "=HATCH.BOREWEAR(C3:D4, Limits!D2)", "=HATCH.PISTONCLEARANCE(C3:D4, B8)", "=HATCH.VERDICT(E8, Limits!B2, Limits!C2, 0.004)"],
  [
    2,
    "72,98",
    "=HATCH.TAPER(C5:D6)",
    "=HATCH.BOREWEAR(C5:D6, Limits!D2)",
    "=HATCH.PISTONCLEARANCE(C5:D6, B9)",
    "=HATCH.VERDICT(E9, Limits!B2, Limits!C2, 0.004)",
  ],
];
const book = (rows: Typed, more: Record<string, Typed> = {}) => workbook({ Bores: rows, Limits: LIMITS, ...more });
const briefly = (rows: Typed, options = {}) =>
  readingsOfWorkbook(book(rows), options).readings.map(({ cell, cylinder, characteristic, position, value, uncertainty }) => [
    placeName(cell),
    [cylinder, characteristic, position].filter(Boolean).join(", "),
    value,
    uncertainty,
  ]);

describe("what is found in a workbook", () => {
  test("what our functions measure, work out and judge, in the words beside it; settings are not measured", () => {
    expect(briefly(sheet())).toEqual([
      ["Bores!E8", "1, Clearance", 0.01, 0.004],
      ["Bores!E9", "2, Clearance", null, 0.004],
      ["Bores!C3", "1, bore, top Thrust", 73.03, undefined],
      ["Bores!D3", "1, bore, top Pin", 73.02, undefined],
      ["Bores!C4", "1, bore, bottom Thrust", 73.01, undefined],
      ["Bores!D4", "1, bore, bottom Pin", 73.01, undefined],
      ["Bores!B8", "1, Skirt", 73, undefined],
      ["Bores!C5", "2, bore, top Thrust", 73.02, undefined],
      ["Bores!D5", "2, bore, top Pin", 73.02, undefined],
      ["Bores!C6", "2, bore, bottom Thrust", 73.01, undefined],
      ["Bores!B9", "2, Skirt", null, undefined],
      ["Bores!C8", "1, Taper", 0.02, undefined],
      ["Bores!D8", "1, Wear", 0.03, undefined],
    ]);
  });

  test("a reading that is no number keeps its fault, and so does what is worked out from it", () => {
    const faults = readingsOfWorkbook(book(sheet())).readings.flatMap(({ cell, fault }) => (fault ? [[placeName(cell), fault]] : []));
    expect(faults).toEqual([
      ["Bores!E9", expect.stringMatching(/^PISTONCLEARANCE: skirt holds the text "72,98"/)],
      ["Bores!B9", expect.stringMatching(/^value holds the text "72,98": a decimal comma is not read/)],
    ]);
  });

  test("a reading that passes on what a function said keeps that, and a result of an error says which", () => {
    const rows: Typed = [
      ["Cylinder", "Thrust", "Pin", "Taper"],
      [1, "=1/0", 73.02, "=HATCH.TAPER(B2:C3)"],
      [1, "check: hole 2 is too small: it must be a length above 3", 73.01],
    ];
    const faults = readingsOfWorkbook(workbook({ Bores: rows })).readings.flatMap(({ cell, fault }) => (fault ? [[placeName(cell), fault]] : []));
    expect(faults).toEqual([
      ["Bores!B3", "hole 2 is too small: it must be a length above 3"],
      ["Bores!D2", "TAPER: readings holds the error #DIV/0!: correct that cell first (row 1, column 1)"],
    ]);
  });

  test("one bore a row under its own headings, with results that spill", () => {
    const rows: Typed = [
      ["Engine", "Cylinder", "Top thrust", "Bottom thrust", "Taper"],
      ["A", 1, 73.03, 73.01, "=HATCH.TAPER(C2:D3, 1)"],
      ["B", 1, 73.05, 73.01, null],
    ];
    const found = readingsOfWorkbook(workbook({ Book: rows }), { uncertainty: forLengths(0.003) }).readings;
    expect(found.map(({ engine, characteristic, position, value, uncertainty }) => [engine, characteristic, position, value, uncertainty])).toEqual([
      ["A", "bore", "Top thrust", 73.03, 0.003],
      ["A", "bore", "Bottom thrust", 73.01, 0.003],
      ["B", "bore", "Top thrust", 73.05, 0.003],
      ["B", "bore", "Bottom thrust", 73.01, 0.003],
      ["A", "Taper", "", 0.02, 0.004242641],
      ["B", "Taper", "", 0.04, 0.004242641],
    ]);
  });

  test("a table in long form, whose hours and limits stand beside each reading", () => {
    const rows: Typed = [
      ["Strip-down"],
      ["Cyl.", "Characteristic", "Reading (mm)", "U", "Max", "Hours"],
      [1, "gap", 0.3, 0.02, 0.55, 850],
      [2, "gap", null, 0.02, 0.55, 850],
    ];
    expect(readingsOfWorkbook(workbook({ Rings: rows })).readings).toMatchObject([
      { cylinder: "1", characteristic: "gap", value: 0.3, unit: "mm", uncertainty: 0.02, upper: 0.55, hours: 850 },
      { cylinder: "2", value: null, fault: "the reading is still blank" },
    ]);
  });

  test("hours run, where one cell of the workbook says so", () => {
    const hours = (rows: Typed) => readingsOfWorkbook(book(sheet(), { Engine: rows })).readings[0]!.hours;
    expect(hours([["Hours run", 850]])).toBe(850);
    expect(hours([["Hours run", null]])).toBeUndefined();
    expect(
      hours([
        ["Hours run", 850],
        ["Engine hours", 900],
      ]),
    ).toBeUndefined();
  });
});

describe("the uncertainty of what is worked out", () => {
  const of = (formula: string, more: Typed = []) =>
    readingsOfWorkbook(workbook({ Sheet: [["Hole", "Shaft", "Clearance"], [73.04, 73, formula], ...more] }), { uncertainty: forLengths(0.003) }).readings.find(
      ({ cell }) => cell.column === 2 && cell.row === 1,
    )?.uncertainty;

  // JCGM 100 (GUM) 5.1.2: differences of two readings of U 0.003 have √2 × 0.003; π by geometry for the gap in another bore.
  test("is summed in squares over the readings that go into it", () => {
    expect(of("=HATCH.CLEARANCE(A2, B2)")).toBeCloseTo(0.003 * Math.SQRT2, 9);
    expect(of("=HATCH.RINGGAPATBORE(A4, A2, B2)", [[null], [0.3]])).toBeCloseTo(0.003 * Math.sqrt(1 + 2 * Math.PI ** 2), 9);
    expect(of("=HATCH.CLEARANCE(A2, 73)")).toBeCloseTo(0.003, 9);
  });

  test("follows a chain of formulas, and takes a setting for certain", () => {
    // Each function's result is a decimal of nine places, so a chain of two is good to eight.
    expect(of("=HATCH.SQUISH(A4, A5)", [[null], ["=HATCH.CLEARANCE(A2, B2)"], [1.2]])).toBeCloseTo(0.003 * Math.sqrt(3), 8);
    expect(of("=HATCH.BOREWEAR(A2:A2, B2)")).toBeCloseTo(0.003, 9);
  });

  // The largest of three readings with equal sizes scatters by 0.75 of one's own (simulated with the rule itself, test/math/propagation.test.ts).
  test("of equal largest readings one decides", () => {
    expect(of("=HATCH.BOREWEAR(A2:A4, B2)", [[73.04], [73.04]])).toBeCloseTo(0.003, 6);
  });

  test("is not known where the formula needs what is not looked into, and volumes have no lengths' uncertainty", () => {
    expect(of("=HATCH.CLEARANCE(MAX(A2:A3), B2)")).toBeUndefined();
    expect(of("=HATCH.COMPRESSIONRATIO(A2, B2)")).toBeUndefined();
  });
});

describe("build against strip-down", () => {
  test("of one workbook: readings, results and their verdicts' uncertainties", () => {
    const side = (rows: Typed) => readingsOfWorkbook(book(rows), { uncertainty: forLengths(0.003) });
    const { places, refused, rows } = compareReadings(side(sheet()), side(sheet(0.02)));
    expect(places.filter(({ verdict }) => verdict === "differs").map(({ label, difference }) => [label, difference])).toEqual([
      ["cylinder 1, bore, top Thrust", 0.02],
      ["cylinder 1, Wear", 0.02],
      ["cylinder 1, Taper", 0.02],
    ]);
    expect(refused.map(({ label }) => label)).toEqual(["cylinder 2, Clearance", "cylinder 2, Skirt"]);
    expect(rows).toBe(13);
  });

  test("a workbook against a file in long form meets by the same words", () => {
    const rows: Typed = [
      ["Cylinder", "Characteristic", "Position", "Value", "Unit", "Uncertainty"],
      [1, "bore", "Top, thrust", 73.05, "mm", 0.003],
    ];
    const { places } = compareReadings(readingsOfWorkbook(book(sheet()), {}), readingsOfWorkbook(workbook({ Readings: rows })));
    expect(places.map(({ label, difference }) => [label, difference])).toEqual([["cylinder 1, bore, top Thrust", 0.02]]);
  });
});

describe("tables with a column for each cylinder", () => {
  const wide = (rows: readonly (readonly (string | number | null)[])[]) =>
    readingsOfWorkbook({
      name: "trial.xlsx",
      sheets: [{ name: "Before", row: 0, column: 0, values: rows.map((line) => [...line]), formulas: rows.map((line) => line.map(() => null)) }],
    } as never).readings.map(({ engine, cylinder, characteristic, position, value, campaign, fault }) => [
      engine,
      cylinder,
      characteristic,
      position,
      value,
      campaign,
      fault,
    ]);
  const HEAD = ["Engine", "Campaign", "Characteristic", "Position", "Cylinder 1", "Cylinder 2", "Unit"];

  test("give a reading of each cylinder; one that is blank in a row that is begun is missing, a row not begun is passed over", () => {
    expect(
      wide([
        HEAD,
        ["A", "before", "bore", "top thrust", 73.01, 73.02, "mm"],
        ["A", "before", "bore", "top pin", 73.01, null, "mm"],
        ["A", "before", "crankpin", "", null, null, "mm"],
      ]),
    ).toEqual([
      ["A", "1", "bore", "top thrust", 73.01, "before", undefined],
      ["A", "2", "bore", "top thrust", 73.02, "before", undefined],
      ["A", "1", "bore", "top pin", 73.01, "before", undefined],
      ["A", "2", "bore", "top pin", null, "before", "the reading is still blank"],
    ]);
  });

  test("end at a blank row, and want a characteristic and cylinders told apart", () => {
    expect(wide([HEAD, [null], ["A", "before", "bore", "top", 73.01, 73.02, "mm"]])).toEqual([]);
    expect(
      wide([
        ["Engine", "Campaign", "Characteristic", "Cylinder 1", "Cyl. 1"],
        ["A", "before", "bore", 73, 73],
      ]),
    ).toEqual([]);
  });
});
