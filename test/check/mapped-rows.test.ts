import { Analysis } from "../../src/check/analysis.ts";
import { checkWorkbook } from "../../src/check/check-workbook.ts";
import type { CheckResult, Finding } from "../../src/check/finding.ts";
import { applyMapping } from "../../src/check/mapped-rows.ts";
import { mappedReadings } from "../../src/compare/from-workbook.ts";
import type { MemoryCell } from "../../src/hosts/memory.ts";
import type { Mapping } from "../../src/layout/mapping.ts";
import { proposeLayout } from "../../src/layout/propose.ts";
import { placeName } from "../../src/workbook/address.ts";
import type { WorkbookSnapshot } from "../../src/workbook/port.ts";
import { typed } from "../layout/typed.ts";
import { Made } from "../setup/made.ts";
import { workbook } from "./workbook.ts";

const mappingOf = (snapshot: WorkbookSnapshot): Mapping => ({ version: 1, ranges: proposeLayout(snapshot).map(({ range }) => range) });
const check = (snapshot: WorkbookSnapshot, mapping = mappingOf(snapshot)): CheckResult => checkWorkbook(snapshot, mapping);
const briefly = ({ kind, cell, label, sentence }: Finding): string => `${kind} | ${placeName(cell)} | ${label} | ${sentence}`;
const found = async (rows: readonly (readonly MemoryCell[])[]): Promise<string[]> =>
  check(await typed({ Sheet1: rows }))
    .findings.map(briefly)
    .sort();

const BORES = [
  ["Cyl", "Top thrust", "Top pin", "Bottom thrust", "Bottom pin", "Skirt"],
  [1, 73.05, 73.03, 73.02, 73.02, 72.98],
];
const LIMIT_HEAD = ["What", "Min", "Max"];

test("taper, out-of-round, wear and clearance are worked out and judged, each where its limit is typed", async () => {
  // Taper 73.05 − 73.02, out-of-round 73.05 − 73.03, wear 73.05 − 73, clearance 73.02 − 72.98.
  const { findings, rowsIn } = check(
    await typed({
      Sheet1: [
        ...BORES,
        [""],
        LIMIT_HEAD,
        ["Taper", "", 0.02],
        ["Ovality", "", 0.02],
        ["Bore wear", "", 0.04],
        ["Piston clearance", 0.02, 0.03],
        [""],
        ["Std bore", 73],
      ],
    }),
  );
  expect(rowsIn).toBe(4);
  expect(findings.map(briefly).sort()).toEqual([
    "outside limit | Sheet1!B2 | cylinder 1, bore wear | 0.05 is over the upper limit 0.04 by 0.01",
    "outside limit | Sheet1!B2 | cylinder 1, taper | 0.03 is over the upper limit 0.02 by 0.01",
    "outside limit | Sheet1!F2 | cylinder 1, piston clearance | 0.04 is over the upper limit 0.03 by 0.01",
  ]);
});

test("a limit for one place goes before one for all, and one of another engine counts for none", async () => {
  const rows = [
    ["Engine", "Cyl", "What", "Where", "Reading"],
    ["A", 1, "Ring gap", "top", 0.4],
    ["A", 1, "Ring gap", "second", 0.4],
    ["B", 1, "Ring gap", "top", 0.4],
  ];
  const limits = [
    ["Engine", "What", "Max"],
    ["", "Ring gap", 0.5],
    ["", "Ring gap, top", 0.35],
    ["B", "Ring gap, top", 0.45],
  ];
  expect(await found([...rows, [""], ...limits])).toEqual([
    "outside limit | Sheet1!E2 | engine A, cylinder 1, ring end gap, top | 0.4 is over the upper limit 0.35 by 0.05",
  ]);
});

test("an uncertainty or a near distance beside a limit counts for all that it judges", async () => {
  const limits = [
    ["What", "Max", "U", "Near limit"],
    ["Skirt", 73, 0.003, 0.01],
  ];
  expect(await found([["Cyl", "Skirt"], [1, 72.998], [2, 72.992], [3, 72.98], [""], ...limits])).toEqual([
    "near limit | Sheet1!B3 | cylinder 2, piston skirt | 72.992 is within the upper limit 73 by 0.008, proven with an uncertainty of 0.003, near limit as it is no further than 0.01",
    "not proven | Sheet1!B2 | cylinder 1, piston skirt | 72.998 is inside the upper limit 73 by 0.002, not proven either way with an uncertainty of 0.003",
  ]);
});

test("a reading and its limit in different units are not compared", async () => {
  expect(await found([["Cyl", "Skirt (mm)"], [1, 72.98], [""], ["What", "Max (in)"], ["Skirt", 2.875]])).toEqual([
    "refused | Sheet1!B2 | cylinder 1, piston skirt | the reading is in mm and its limit in inches: give both in one unit",
  ]);
});

test("readings without any limit are said once for each characteristic, not once for each reading", async () => {
  expect(
    await found([
      ["Cyl", "Skirt", "Gap top"],
      [1, 72.98, 0.3],
      [2, 72.97, 0.31],
    ]),
  ).toEqual([
    "missing limit | Sheet1!B2 | cylinder 1, piston skirt | 2 readings of piston skirt have no limit to be judged by; piston clearance has none either",
    "missing limit | Sheet1!C2 | cylinder 1, ring end gap, top | 2 readings of ring end gap have no limit to be judged by",
  ]);
});

test("a bore not yet begun is named once, an unfinished one at each missing reading, and nothing is worked out from either", async () => {
  const bores = [BORES[0]!.slice(0, 5), [1, 73.02, "", 73.01, ""], ["2", "", "", "", ""], [3, 73.02, 73.02, 73.01, 73.01]];
  expect(await found([...bores, [""], LIMIT_HEAD, ["Taper", "", 0.02]])).toEqual([
    "missing reading | Sheet1!B3 | cylinder 2, bore, top thrust | no readings yet",
    "missing reading | Sheet1!C2 | cylinder 1, bore, top pin | the reading is still blank, so nothing is worked out from its range",
    "missing reading | Sheet1!E2 | cylinder 1, bore, bottom pin | the reading is still blank, so nothing is worked out from its range",
  ]);
});

test("readings that make no grid are refused as a bore, with a sentence", async () => {
  const bores = [
    ["Cyl", "Top thrust", "Top pin", "Bottom thrust"],
    [1, 73.02, 73.01, 73.01],
  ];
  expect(await found([...bores, [""], LIMIT_HEAD, ["Taper", "", 0.02]])).toEqual([
    "refused | Sheet1!B2 | cylinder 1, taper | the readings of this bore do not fill a grid of heights and axes, so nothing is worked out from them",
  ]);
});

test("what the sheet measures or works out itself is not worked out a second time", async () => {
  const rows = [
    ["Cyl", "Top thrust", "Bottom thrust", "Taper"],
    [1, 73.05, 73.02, "=HATCH.TAPER(B2:C2, 1)"],
    [null],
    ["What", "Min", "Max"],
    ["Taper", null, 0.02],
  ];
  const snapshot = workbook({ Sheet1: rows });
  const { findings, rowsIn } = check(snapshot);
  expect(rowsIn).toBe(1);
  expect(findings.map(briefly)).toEqual(["outside limit | Sheet1!D2 | cylinder 1, taper | 0.03 is over the upper limit 0.02 by 0.01"]);
  const judged = workbook({ Sheet1: [...rows.slice(0, 1), [...rows[1]!, "=HATCH.VERDICT(D2, B5, C5)"], ...rows.slice(2)] });
  expect(check(judged).findings).toMatchObject([{ kind: "outside limit", value: 0.03 }]);
  expect(check(judged).rowsIn).toBe(1);
});

describe("a layout that was saved", () => {
  const table = [
    ["Cyl", "Gap top"],
    [1, 0.3],
    [2, 0.6],
  ];
  const limits = [[""], LIMIT_HEAD, ["Ring gap", 0.25, 0.55]];
  const over = (place: string) => [`outside limit | ${place} | cylinder 2, ring end gap, top | 0.6 is over the upper limit 0.55 by 0.05`];

  test("is followed to where its headings have been moved", async () => {
    const mapping = mappingOf(await typed({ Sheet1: [...table, ...limits] }));
    const moved = await typed({ Sheet1: [["a new title"], [""], ...table, ...limits].map((row) => ["", ...row]) });
    expect(check(moved, mapping).findings.map(briefly)).toEqual(over("Sheet1!C5"));
  });

  test("takes in rows that have been added below", async () => {
    const mapping = mappingOf(await typed({ Sheet1: [...table.slice(0, 2), [""], ...limits] }));
    const longer = await typed({ Sheet1: [...table, ...limits] });
    expect(check(longer, mapping).findings.map(briefly)).toEqual(over("Sheet1!B3"));
  });

  test("refuses numbers under other headings rather than take them for what was meant", async () => {
    const mapping = mappingOf(await typed({ Sheet1: [...table, ...limits] }));
    const renamed = await typed({ Sheet1: [["Cyl", "Skirt"], ...table.slice(1), ...limits] });
    const { findings, rowsIn, refused } = check(renamed, mapping);
    expect([rowsIn, refused]).toEqual([1, 1]);
    expect(findings.map(({ sentence }) => sentence)).toEqual([
      "the headings here are no longer those for which the layout was saved: say again what stands here",
    ]);
  });

  test("says so when its sheet is gone", async () => {
    const mapping = mappingOf(await typed({ Sheet1: table }));
    const { findings } = check(await typed({ Other: table }), mapping);
    expect(findings).toMatchObject([{ kind: "refused", sentence: 'the saved layout speaks of a sheet "Sheet1" that is not there' }]);
  });
});

test("two ranges over the same cells count each of them once", async () => {
  const snapshot = await typed({ Sheet1: [["Cyl", "Gap top"], [1, 0.6], [""], LIMIT_HEAD, ["Ring gap", 0.25, 0.55]] });
  const mapping = mappingOf(snapshot);
  const twice = { version: 1 as const, ranges: [...mapping.ranges, ...mapping.ranges] };
  expect(check(snapshot, twice)).toEqual(check(snapshot, mapping));
  expect(mappedReadings(new Analysis(snapshot), twice)).toHaveLength(1);
});

test("a table in long form that check judges anyway is judged once, by what the layout says", async () => {
  const snapshot = await typed({
    Sheet1: [["Cyl", "What", "Value", "Upper"], [1, "Ring gap", 0.6, 0.55], [2, "Ring gap", 0.5, ""], [""], LIMIT_HEAD, ["Ring gap", "", 0.45]],
  });
  expect(checkWorkbook(snapshot).rowsIn).toBe(2);
  const { rowsIn, findings } = check(snapshot);
  expect(rowsIn).toBe(2);
  expect(findings.map(({ sentence }) => sentence).sort()).toEqual(["0.5 is over the upper limit 0.45 by 0.05", "0.6 is over the upper limit 0.55 by 0.05"]);
});

test("on a workbook that was set up here, accepting every proposal finds nothing more than its own formulas do", async () => {
  const made = await Made.of({ cylinders: 2 });
  await made.fill("PistonReadings", "Skirt", [72.98, 72.99]);
  for (const heading of made.headings("BoreReadings").slice(1, 7))
    await made.fill("BoreReadings", heading, heading === "Top thrust" ? [73.05, 73.02] : [73.01, 73.01]);
  await made.limit("Taper", null, 0.02);
  await made.limit("Piston clearance", 0.02, 0.04);
  const snapshot = await made.host.read();
  const key = ({ kind, cell, sentence }: Finding) => `${kind} | ${placeName(cell)} | ${sentence}`;
  const outside = ({ findings }: CheckResult) =>
    findings
      .filter(({ kind }) => kind === "outside limit")
      .map(key)
      .sort();
  expect(outside(checkWorkbook(snapshot))).toHaveLength(1);
  expect(outside(check(snapshot))).toEqual(outside(checkWorkbook(snapshot)));
});

test("applying a layout tells its candidates, what it compares and which cells it speaks for", async () => {
  const snapshot = await typed({ Sheet1: [["Cyl", "Gap top"], [1, 0.3], [""], LIMIT_HEAD, ["Ring gap", 0.25, 0.55]] });
  const { candidates, watched, findings, covers, inputs } = applyMapping(snapshot, mappingOf(snapshot));
  expect(candidates).toMatchObject([{ label: "cylinder 1, ring end gap, top", given: { value: 0.3, lower: 0.25, upper: 0.55 }, isTyped: true }]);
  expect(watched).toMatchObject([{ watched: { value: 0.3, measures: "length" } }]);
  expect([findings, [...covers], inputs]).toEqual([[], ["Sheet1!B2"], 0]);
});

test("ten thousand readings are all laid out and judged", async () => {
  const rows = Array.from({ length: 10_000 }, (_, i) => [i % 2 ? "A" : "B", (i % 16) + 1, "Ring gap", i % 3 ? "top" : "second", 0.3 + (i % 7) / 100]);
  const snapshot = await typed({ Sheet1: [["Engine", "Cyl", "What", "Where", "Reading"], ...rows, [""], LIMIT_HEAD, ["Ring gap", 0.25, 0.55]] });
  const mapping = mappingOf(snapshot);
  expect(check(snapshot, mapping)).toMatchObject({ rowsIn: 10_000, checked: 10_000, findings: [] });
});

// JCGM 100, 5.1.2: of a difference of two readings of U 0.002 each, √2 × 0.002 = 0.0028.
test("what readings come to has U from theirs, where all of them have one, and a limit's own goes before it", async () => {
  const rows = (stemU: number | "", limitU: number | "" = "") => [
    ["Cyl", "What", "Where", "Reading", "U"],
    [1, "Valve guide", "inlet", 7.05, 0.002],
    [1, "Valve stem", "inlet", 7, stemU],
    [""],
    ["What", "Max", "U"],
    ["Stem clearance", 0.052, limitU],
  ];
  const notProven = (U: number) =>
    `not proven | Sheet1!D3 | cylinder 1, stem clearance, inlet | 0.05 is inside the upper limit 0.052 by 0.002, not proven either way with an uncertainty of ${U}`;
  const judged = async (...args: Parameters<typeof rows>) => (await found(rows(...args))).filter((line) => line.includes("stem clearance"));
  expect(await judged(0.002)).toEqual([notProven(0.0028)]);
  expect(await judged("")).toEqual([]);
  expect(await judged(0.002, 0.004)).toEqual([notProven(0.004)]);
  expect(await judged(0.002, 0.001)).toEqual([]);
});
