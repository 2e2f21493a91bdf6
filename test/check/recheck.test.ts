import { checkWorkbook } from "../../src/check/check-workbook.ts";
import { placeName } from "../../src/workbook/address.ts";
import { Made } from "../setup/made.ts";
import { type Typed, workbook } from "./workbook.ts";

// Hours and clearances are invented.

const RECHECK = "Run-in log";

/** A set-up engine of one cylinder whose valve clearances were measured with a gauge, and whose re-check falls due at 25 hours. */
async function built(): Promise<Made> {
  const made = await Made.of({ cylinders: 1, valves: 2 });
  await made.type("Gauges", "Gauge id", 0, "F1");
  await made.type("Gauges", "U of the gauge", 0, 0.01);
  for (const what of ["Valve clearances", "Valve clearances, re-check"]) await made.type("Measurements", "Gauge", made.rowOf("Measurements", what), "F1");
  await made.fill("ValveReadings", "Clearance", [0.2, 0.2]);
  await made.type("ServiceJobs", "Due at hours", 3, 25);
  return made;
}
const hoursRun = (made: Made, hours: number) => made.host.write([{ sheet: RECHECK, row: 2, column: 1, cells: [[hours]] }]);
const missing = async (made: Made) =>
  checkWorkbook(await made.host.read())
    .findings.filter(({ kind, cell }) => kind === "missing reading" && cell.sheet === RECHECK)
    .map(({ cell }) => placeName(cell));

test("a re-check that is not due yet is not missing", async () => {
  const made = await built();
  expect(await missing(made)).toEqual([]);
  await hoursRun(made, 24.9);
  expect(await missing(made)).toEqual([]);
});

test("one that is due is, valve by valve, until it is typed", async () => {
  const made = await built();
  await hoursRun(made, 25);
  const places = [0, 1].map((row) => placeName(made.at("ClearanceRecheck", "Re-checked", row)));
  expect(await missing(made)).toEqual(places);
  await made.type("ClearanceRecheck", "Re-checked", 0, 0.19);
  expect(await missing(made)).toEqual(places.slice(1));
});

describe("in a shop's own sheet", () => {
  const sheet = (hours: number | null, done: number | null = null): Record<string, Typed> => ({
    Valves: [
      ["Valve", "Clearance", "Re-check", "Least", "Most", "Verdict", "Change"],
      ...[1, 2].map((valve, i) => [
        valve,
        0.2,
        null,
        0.15,
        0.25,
        `=HATCH.VERDICT(C${i + 2},D${i + 2},E${i + 2})`,
        `=HATCH.REALCHANGE(B${i + 2},C${i + 2},0.01)`,
      ]),
    ],
    Log: [["Engine hours", hours], [null], ["Job", "Due at", "Done at"], ["Oil change", 10, 10], ["Re-check of valve clearance", 25, done]],
  });
  const places = (sheets: Record<string, Typed>) => {
    const { findings, rowsIn, checked, refused } = checkWorkbook(workbook(sheets));
    expect(rowsIn).toBe(checked + refused);
    return findings.map(({ kind, cell }) => `${kind} ${placeName(cell)}`);
  };

  test("limits and first readings that are there already do not make it missing before its hours", () => {
    expect([places(sheet(null)), places(sheet(24))]).toEqual([[], []]);
  });

  test("at its hours, or once the job is said to be done, it is", () => {
    const missing = ["missing reading Valves!C2", "missing reading Valves!C3"];
    expect([places(sheet(25)), places(sheet(24, 24))]).toEqual([missing, missing]);
  });

  test("another blank reading is missing whatever the hours", () => {
    const sheets = sheet(5);
    sheets.Valves![2]![1] = null;
    sheets.Valves![2]![2] = 0.2;
    expect(places(sheets)).toEqual(["missing reading Valves!B3"]);
  });
});
