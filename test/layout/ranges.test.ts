import { Analysis } from "../../src/check/analysis.ts";
import { layoutSummaryOf } from "../../src/check/layout-overview.ts";
import { proposeLayout, proposeRange } from "../../src/layout/propose.ts";
import { overlaps, rangeNow } from "../../src/layout/ranges.ts";
import { areaText } from "../../src/workbook/address.ts";
import { typed } from "./typed.ts";

const SHEET = [
  ["Engine", "Cyl", "Top thrust", "Top pin", "Bottom thrust", "Bottom pin", "Gap top"],
  ["A", 1, 73.03, 73.02, 73.02, 73.01, 0.3],
  ["B", 1, 73.02, 73.02, 73.01, 73.01, 0.32],
  [""],
  ["What", "Max"],
  ["Taper", 0.02],
];
const layout = async () => {
  const snapshot = await typed({ Sheet1: SHEET });
  return { snapshot, ranges: proposeLayout(snapshot).map(({ range }) => range) };
};

test("an overview counts readings, limits and engines, what is judged, and says what has no limit", async () => {
  const { snapshot, ranges } = await layout();
  // Two tapers have a limit; four bore readings and one gap of each engine are read, and the gaps have none.
  expect(layoutSummaryOf(new Analysis(snapshot), { version: 1, ranges })).toEqual({
    unplaced: [],
    readings: 10,
    limits: 1,
    engines: ["A", "B"],
    judged: 2,
    notes: ["0.3 has no limit to be judged by", "0.32 has no limit to be judged by"],
  });
  const { unplaced, ...none } = layoutSummaryOf(new Analysis(snapshot), { version: 1, ranges: [] });
  expect(none).toEqual({ readings: 0, limits: 0, engines: [], judged: 0, notes: [] });
  expect(unplaced.map(({ area, numbers }) => [areaText(area), numbers])).toEqual([
    ["Sheet1!B2:G3", 12],
    ["Sheet1!B6", 1],
  ]);
});

test("a range is told where it stands now; one whose headings are gone says why nothing is read", async () => {
  const { ranges } = await layout();
  const moved = await typed({ Sheet1: [["Hire boats"], [""], ...SHEET] });
  expect(rangeNow(moved, ranges[1]!)).toEqual({ area: { sheet: "Sheet1", row: 7, column: 1, rows: 1, columns: 1 }, what: "limits of taper" });
  const gone = await typed({ Sheet1: [["nothing"]] });
  expect(rangeNow(gone, ranges[1]!)).toMatchObject({ what: "", trouble: expect.stringMatching(/^the headings here are no longer those/) });
});

test("a range pointed at below another table is not taken for part of it", async () => {
  const { snapshot, ranges } = await layout();
  for (const range of ranges) {
    const { sheet, row, column, rows, columns } = range;
    expect(proposeRange(snapshot, { sheet, row, column, rows, columns })!.range).toEqual(range);
  }
});

test("ranges that share cells are found, the first of them first", async () => {
  const { ranges } = await layout();
  expect(overlaps(ranges)).toEqual([]);
  const part = { ...ranges[0]!, rows: 1 };
  expect(overlaps([part, ...ranges])).toEqual([[part, ranges[0]]]);
});
