import { checkWorkbook } from "../../src/check/check-workbook.ts";
import type { CheckResult } from "../../src/check/finding.ts";
import { placeName } from "../../src/workbook/address.ts";
import { type Typed, workbook } from "./workbook.ts";

const check = (rows: Typed): CheckResult => checkWorkbook(workbook({ Bores: rows }));
const briefly = ({ findings }: CheckResult) => findings.map(({ kind, cell, label }) => [kind, placeName(cell), label]);

describe("units and slips", () => {
  const bore = (readings: (number | null)[]): Typed => [
    ["Height", "Thrust", "Pin", "Taper"],
    ["top", readings[0]!, readings[1]!, "=HATCH.TAPER(B2:C4)"],
    ["middle", readings[2]!, readings[3]!, null],
    ["low", readings[4]!, readings[5]!, null],
  ];
  const suspicious = (readings: number[]) =>
    check(bore(readings))
      .findings.filter(({ kind }) => kind === "mixed units" || kind === "likely slip")
      .map(({ kind, cell, sentence }) => [kind, placeName(cell), sentence]);

  test("inches among millimetres in the readings of a function", () => {
    expect(suspicious([73.03, 73.02, 73.02, 2.8748, 73.01, 73.01])).toEqual([
      [
        "mixed units",
        "Bores!C3",
        "2.8748 is far from 73.015, the middle of similar readings: inches among millimetres? 2.8748 in is 73.02 mm. It causes 1 other finding: refused at Bores!D2",
      ],
    ]);
  });

  test("millimetres among inches", () => {
    expect(suspicious([2.875, 2.8748, 2.8751, 73.02, 2.8748, 2.8747])[0]![2]).toBe(
      "73.02 is far from 2.8749, the middle of similar readings: millimetres among inches? 73.02 mm is 2.8748 in. It causes 1 other finding: refused at Bores!D2",
    );
  });

  // A taper of readings further apart than a fifth is refused.
  const REFUSED = " It causes 1 other finding: refused at Bores!D2";
  test.each([
    [7.302, `is the decimal point in its place?${REFUSED}`],
    [730.2, `is the decimal point in its place?${REFUSED}`],
    [37.02, `were two digits swapped?${REFUSED}`],
    [73.92, "is one digit wrong?"],
    [78.02, "is one digit wrong?"],
  ])("%d among readings of 73.02 is a likely slip: %s", (typed, question) => {
    expect(suspicious([73.03, 73.02, typed, 73.02, 73.01, 73.01])[0]).toEqual([
      "likely slip",
      "Bores!B3",
      `${typed} is far from ${typed > 73.02 ? 73.02 : 73.015}, the middle of similar readings: ${question}`,
    ]);
  });

  // A bore worn 0.2 mm at the top of ring travel is scrap, but it is wear.
  test.each([
    [[73.2, 73.1, 73.02, 73.02, 73.01, 73.01]],
    [[73.1, 73.01, 73.01, 73.01, 73.01, 73.01]],
    [[73.03, 73.02, 73.12, 73.21, 73.01, 73.01]],
    [[73.02, 73.02, 73.02, 73.02, 73.02, 73.22]],
  ])("honest wear is not taken for a slip: %j", (readings) => {
    expect(suspicious(readings)).toEqual([]);
  });

  test("a reading by narrow limits in millimetres that was taken in inches is found without others beside it", () => {
    const result = check([
      ["Bore", "Verdict"],
      [2.8752, "=HATCH.VERDICT(A2,73,73.08)"],
    ]);
    expect(briefly(result)).toEqual([
      ["mixed units", "Bores!A2", "Bore"],
      ["outside limit", "Bores!A2", "Bore"],
      ["limit in formula", "Bores!B2", ""],
    ]);
  });

  test("a unit column that disagrees is told, and one cylinder's poor compression is no slip", () => {
    const head = ["Characteristic", "Value", "Lower", "Upper", "Unit"];
    const result = check([
      head,
      ...["mm", "mm", "in", "mm", "mm"].map((unit, i) => ["crankpin", 39.98 + i / 1000, 39.9, 40.1, unit]),
      ...[150, 148, 152, 118, 150].map((psi) => ["compression", psi, 110, 160, "psi"]),
    ]);
    expect(result.findings.map(({ kind, cell, sentence }) => [kind, placeName(cell), sentence])).toEqual([
      ["mixed units", "Bores!B4", "the unit says inches where similar readings are in mm"],
    ]);
  });
});

describe("gaps, clearances and wear, which may honestly differ by much", () => {
  const wear = (unit: string, values: number[]): Typed => [
    ["Characteristic", "Value", "Upper", "Unit"],
    ...values.map((value) => ["bore wear", value, 500, unit]),
  ];
  const slips = (rows: Typed) =>
    check(rows)
      .findings.filter(({ kind }) => kind === "mixed units" || kind === "likely slip")
      .map(({ cell, sentence }) => [placeName(cell), sentence]);

  test("thou typed among inches are a decimal point in the wrong place, of three readings as of many", () => {
    const told = "15 is far from 0.015, the middle of similar readings: is the decimal point in its place?";
    expect(slips(wear("in", [0.012, 15, 0.015]))).toEqual([["Bores!B3", told]]);
    expect(slips(wear("in", [0.012, 0.015, 0.003, 15, 0.02, 0.016]))).toEqual([["Bores!B5", told.replace("0.015", "0.0155")]]);
  });

  // Wear, gaps and leaks of a bad cylinder beside those of good ones: the readings of a real engine may be 10 or 100 times their like (common practice).
  test.each([[[0.001, 0.001, 0.002, 0.012]], [[0.002, 0.003, 0.002, 0.25]], [[0.01, 0.02, 0.9]], [[0, 0.01, 0.01, 0.4]], [[0.3, 0.3, 0.001]]])(
    "honest changes are not taken for slips: %j",
    (values) => {
      expect(slips(wear("mm", values))).toEqual([]);
    },
  );

  test("sizes of several parts in one column, and uncertainties of several gauges, are not beside their like", () => {
    // No characteristic tells a bore from gaps, and a pressure gauge's U is no slip among those of gauges for lengths.
    expect(slips([["Reading", "Upper", "Unit"], ...[0.3, 0.32, 0.25, 73.02].map((value) => [value, 100, "mm"])])).toEqual([]);
    const changes = [0.002, 0.003, 0.002, 2].map((u, i) => [`No. ${i + 1}`, 73.02, 73.03, u, `=HATCH.REALCHANGE(B${i + 2},C${i + 2},D${i + 2})`]);
    expect(slips([["Place", "Before", "After", "U", "Change"], ...changes])).toEqual([]);
  });

  test("where two readings are as large, neither is a slip", () => {
    expect(slips(wear("in", [0.012, 0.015, 15, 16, 0.014]))).toEqual([]);
  });

  test("beside an upper limit alone: 15 under a limit of 0.02 is a slip, 0.3 is wear", () => {
    const rows = (value: number): Typed => [
      ["Cylinder", "Wear", "Verdict", "Upper"],
      [1, value, "=HATCH.VERDICT(B2,,D2)", 0.02],
    ];
    expect(slips(rows(15))).toEqual([["Bores!B2", "15 is far from 0.02, its upper limit: is the decimal point in its place? It causes 1 other finding: over"]]);
    for (const value of [0.021, 0.3, 0.9]) expect(slips(rows(value))).toEqual([]);
  });

  test("between two limits: 35 for 0.035", () => {
    const rows = (value: number): Typed => [
      ["Cylinder", "Piston clearance", "Verdict", "Lower", "Upper"],
      [1, value, "=HATCH.VERDICT(B2,D2,E2)", 0.02, 0.05],
    ];
    expect(slips(rows(35)).map(([, sentence]) => sentence)).toEqual([
      "35 is far from 0.035, the middle of its limits: is the decimal point in its place? It causes 1 other finding: over",
    ]);
    for (const value of [0.0001, 0.2, 0.5, 1]) expect(slips(rows(value))).toEqual([]);
  });
});

describe("chamber volumes", () => {
  // 45.2 ÷ 2.54³ = 2.758: NIST SP 811, appendix B.
  const chambers = (values: number[]): Typed => [
    ["Cylinder", "Chamber", "Swept", "Ratio"],
    ...values.map((value, i) => [i + 1, value, 25, `=HATCH.COMPRESSIONRATIO(C${i + 2},B${i + 2})`]),
  ];
  const slips = (values: number[]) =>
    check(chambers(values))
      .findings.filter(({ kind }) => kind === "mixed units" || kind === "likely slip")
      .map(({ kind, cell, sentence }) => [kind, placeName(cell), sentence]);

  test("cubic centimetres of the burette among cubic inches, also in an engine of three cylinders", () => {
    expect(slips([2.75, 45.2, 2.74])).toEqual([
      ["mixed units", "Bores!B3", "45.2 is far from 2.75, the middle of similar readings: cubic centimetres among cubic inches? 45.2 cm³ is 2.7583 in³"],
    ]);
  });

  test("cubic inches among cubic centimetres", () => {
    expect(slips([45.1, 45.4, 2.75, 45.2]).map(([kind, place]) => [kind, place])).toEqual([["mixed units", "Bores!B4"]]);
  });

  test.each([[[2.75, 2.74, 3.3]], [[2.75, 2.74, 5.5]], [[45.2, 44.1, 49.9, 38]], [[2.75, 2.74, 27.5]]])(
    "other differences say nothing of the unit: %j",
    (values) => {
      expect(slips(values)).toEqual([]);
    },
  );

  test("a unit that is written beside them says that they are volumes", () => {
    const rows: Typed = [["Characteristic", "Value", "Upper", "Unit"], ...[2.75, 2.74, 45.2].map((value) => ["chamber volume", value, 100, "in3"])];
    expect(check(rows).findings.map(({ kind, cell }) => [kind, placeName(cell)])).toEqual([["mixed units", "Bores!B4"]]);
  });
});
