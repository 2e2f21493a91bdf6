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
        "2.8748 is far from 73.015, the middle of the like readings: inches among millimetres? 2.8748 in is 73.02 mm. It causes 1 other finding: refused at Bores!D2",
      ],
    ]);
  });

  test("millimetres among inches", () => {
    expect(suspicious([2.875, 2.8748, 2.8751, 73.02, 2.8748, 2.8747])[0]![2]).toBe(
      "73.02 is far from 2.8749, the middle of the like readings: millimetres among inches? 73.02 mm is 2.8748 in. It causes 1 other finding: refused at Bores!D2",
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
      `${typed} is far from ${typed > 73.02 ? 73.02 : 73.015}, the middle of the like readings: ${question}`,
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
      ["mixed units", "Bores!B4", "the unit says in where the like readings are in mm"],
    ]);
  });
});
