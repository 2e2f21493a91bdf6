import { Analysis } from "../../src/check/analysis.ts";
import { layoutSummaryOf, looseText } from "../../src/check/layout-overview.ts";
import { proposeLayout } from "../../src/layout/propose.ts";
import { areaText } from "../../src/workbook/address.ts";
import { Made } from "../setup/made.ts";
import { type Typed, workbook } from "./workbook.ts";

// Readings and limits are invented.

const JUDGED: Typed = [
  ["Cylinder", "Taper", "Limit", "Verdict"],
  [1, 0.01, 0.02, "=HATCH.VERDICT(B2,,C2)"],
  [2, 0.012, 0.02, "=HATCH.VERDICT(B3,,C3)"],
];
const SKIRTS: Typed = [
  ["Cylinder", "Piston skirt", "Pin bore"],
  [1, 72.98, 18.01],
  [2, 72.97, 18.01],
  [3, 72.98, 18.02],
];

const said = (sheets: Record<string, Typed>) => looseText(new Analysis(workbook(sheets)));

test("a sheet of readings that nothing judges, beside one that is judged, is named with what it looks like", () => {
  expect(said({ Bores: JUDGED, Pistons: SKIRTS })).toMatch(
    /^most numbers of the sheet Pistons are judged by nothing, and look like readings laid out in the shop's own way \(3 readings of piston skirt/,
  );
});

test("a sheet whose readings functions take is not, and neither are numbers that are no readings", () => {
  const taken = [...SKIRTS, ["", "=HATCH.CLEARANCE(C2:C4,B2:B4)"]];
  const prices: Typed = [["Part", "Price"], ...[1, 2, 3, 4, 5].map((price) => [`Part ${price}`, price * 12.5])];
  expect(said({ Bores: JUDGED, Pistons: taken, Prices: prices })).toBeUndefined();
});

test("a table in long form is read without functions", () => {
  const long: Typed = [["cylinder", "characteristic", "value", "lower", "upper"], ...[1, 2, 3, 4].map((cylinder) => [cylinder, "bore", 73.01, 73, 73.05])];
  expect(said({ Bores: JUDGED, Readings: long })).toBeUndefined();
});

test("what a layout covers is read", () => {
  const snapshot = workbook({ Bores: JUDGED, Pistons: SKIRTS });
  const ranges = proposeLayout({ sheets: snapshot.sheets.filter(({ name }) => name === "Pistons") }).map(({ range }) => range);
  expect(looseText(new Analysis(snapshot), { version: 1, ranges })).toBeUndefined();
});

test("a build sheet of Set up, filled in, is never told to be judged by nothing", async () => {
  const made = await Made.of({ cylinders: 4, valves: 4, secondReadings: true });
  await made.fill("PistonReadings", "Skirt", [72.98, 72.97, 72.98, 72.98]);
  await made.fill("ValveReadings", "Clearance", Array(16).fill(0.2));
  await made.fill("ValveReadings", "Shim", Array(16).fill(2.5));
  await made.fill("RodReadings", "Rod bend", [0.01, 0.01, 0.02, 0.01]);
  await made.limit("Valve clearance, inlet", 0.15, 0.25);
  await made.limit("Piston clearance", 0.02, 0.05);
  expect(looseText(new Analysis(await made.host.read()))).toBeUndefined();
});

test("numbers that a layout could not place are listed with how many there are, names of cylinders apart", () => {
  const sheets: Record<string, Typed> = {
    Pistons: [...SKIRTS, [null], ["Odd ones"], [5.5, 5.6], [5.7, null]],
    Used: [[3], ["=HATCH.SWEPTVOLUME(A1,A1)"]],
  };
  const snapshot = workbook(sheets);
  const ranges = proposeLayout(snapshot)
    .map(({ range }) => range)
    .filter(({ row }) => row === 1);
  const { unplaced } = layoutSummaryOf(new Analysis(snapshot), { version: 1, ranges });
  expect(unplaced.map(({ area, numbers }) => [areaText(area), numbers])).toEqual([["Pistons!A7:B8", 3]]);
});
