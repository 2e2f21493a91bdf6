import { checkWorkbook } from "../../src/check/check-workbook.ts";
import { checkCsv } from "../../src/check/csv/check-csv.ts";
import { readingsOfCsv } from "../../src/compare/from-csv.ts";
import { readingsOfWorkbook } from "../../src/compare/from-workbook.ts";
import type { Reading } from "../../src/compare/readings.ts";
import type { Cell } from "../../src/core/cell.ts";
import { proposeLayout } from "../../src/layout/propose.ts";
import { gaugesIn, identityIn, limitsIn } from "../../src/report/gather/identity.ts";
import {
  FIELD_WORDS,
  GAUGE_WORDS,
  type GaugeField,
  ONE_SIDED_LIMIT,
  READING_FIELDS,
  type ReadingField,
  SOURCE_WORDS,
} from "../../src/vocabulary/heading-words.ts";
import { type ComparisonField, wordsOfComparison } from "../../src/vocabulary/headings.ts";
import { parseHeading } from "../../src/vocabulary/parse-heading.ts";
import { HEADING_FIELDS } from "../../src/vocabulary/phrases.ts";
import type { SheetSnapshot } from "../../src/workbook/port.ts";

import { book, bytes, capital, csvOf, NOBODYS, plainly, ROWS, sheet, table } from "./stand.ts";

/*
 * Every word that is known goes through every reader. What a reader makes of it must be what it makes of
 * the word's own name, and something else than it makes of a word that nobody knows: a reader that does
 * not know a word, or one that does not look at the heading at all, fails here.
 */

/** What each reader of long tables makes of one with this heading. */
const LONG_READERS: Readonly<Record<string, { of: readonly ReadingField[]; read(rows: Cell[][]): unknown }>> = {
  Check: { of: READING_FIELDS.filter((field) => field !== "hours"), read: (rows) => plainly(checkWorkbook(book(sheet(rows)))) },
  CSV: { of: READING_FIELDS.filter((field) => field !== "hours"), read: async (rows) => plainly(await checkCsv(bytes(csvOf(rows)))) },
  "Compare, sheets": { of: READING_FIELDS.filter((field) => field !== "near"), read: (rows) => plainly(readingsOfWorkbook(book(sheet(rows))).readings) },
  "Compare, files": { of: READING_FIELDS.filter((field) => field !== "near"), read: async (rows) => plainly(await readingsOfCsv(bytes(csvOf(rows)))) },
};

const fieldWords = READING_FIELDS.flatMap((field) => [field, ...FIELD_WORDS[field]].map((word) => ({ field, word })));

describe.each(Object.entries(LONG_READERS))("headings of readings: %s", (_, { of, read }) => {
  test.each(fieldWords.filter(({ field }) => of.includes(field)))("$word is the column of $field", async ({ field, word }) => {
    const wanted = await read(table(field, field));
    expect(await read(table(field, word.toUpperCase()))).toEqual(wanted);
    expect(await read(table(field, NOBODYS))).not.toEqual(wanted);
  });
});

test.each(fieldWords)("headings of readings: $word is to Layout what $field is", ({ field, word }) => {
  const own = parseHeading(field, HEADING_FIELDS);
  const { rest, ...said } = parseHeading(capital(word), HEADING_FIELDS);
  expect(said).toEqual({ ...own, rest: undefined });
  expect(own).not.toEqual({ places: [], rest: [field] });
  expect(field === "hours" ? [] : rest).toEqual([]);
});

describe("headings that only a comparison reads", () => {
  const FIELDS: Readonly<Record<string, Cell>> = {
    common: 0.001,
    matters: 0.01,
    campaign: "after",
    gauge: "BG-1",
    day: "2026-03-21",
    group: "coated",
    temperature: 22,
    material: "grey iron",
  };
  const rows = (heading: string, cell: Cell): Cell[][] => [
    ["Cylinder", "Characteristic", "Value", "U", heading],
    [1, "bore", 73.01, 0.004, cell],
  ];
  const words = Object.entries(FIELDS).flatMap(([field, cell]) => wordsOfComparison(field as ComparisonField).map((word) => ({ field, word, cell })));

  test.each(words)("$word is the column of $field, on sheets and in files", async ({ field, word, cell }) => {
    for (const read of [
      async (rowsIn: Cell[][]) => readingsOfWorkbook(book(sheet(rowsIn))).readings,
      async (rowsIn: Cell[][]) => (await readingsOfCsv(bytes(csvOf(rowsIn)))).readings,
    ]) {
      expect(await read(rows(capital(word), cell))).toMatchObject([{ value: 73.01, [field]: cell }]);
      expect((await read(rows(NOBODYS, cell)))[0]).not.toHaveProperty(field);
    }
  });

  const USES = (["miles", "km"] as const).flatMap((unit) => wordsOfComparison(unit).map((word) => ({ unit, word })));
  test.each(USES)("$word is use in $unit, on sheets and in files, and as an entry", async ({ unit, word }) => {
    const wanted = [{ value: 73.01, hours: 900, useUnit: unit }];
    expect(readingsOfWorkbook(book(sheet(rows(capital(word), 900)))).readings).toMatchObject(wanted);
    expect((await readingsOfCsv(bytes(csvOf(rows(capital(word), 900))))).readings).toMatchObject(wanted);
    const entry: Cell[][] = [[capital(word), 900], [null, null], ...rows(NOBODYS, "")];
    expect(readingsOfWorkbook(book(sheet(entry))).readings.find(({ value }) => value === 73.01)).toMatchObject({ hours: 900, useUnit: unit });
  });

  test.each(wordsOfComparison("wearDirection"))("%s is the direction of wear", async (word) => {
    for (const [typed, wears] of [
      ["Grows", "larger"],
      ["smaller", "smaller"],
    ] as const) {
      expect(readingsOfWorkbook(book(sheet(rows(capital(word), typed)))).readings).toMatchObject([{ wears }]);
    }
    const [row] = (await readingsOfCsv(bytes(csvOf(rows(capital(word), "sideways"))))).readings;
    expect(row).toMatchObject({ value: null, fault: "the direction of wear is called sideways: it must be larger or smaller" });
  });

  const both = (["before", "after"] as const).flatMap((field) => wordsOfComparison(field).map((word) => ({ field, word })));

  test.each(both)("$word is the side $field", async ({ field, word }) => {
    const heads = { before: "Before", after: "After", [field]: capital(word) };
    const table: Cell[][] = [
      ["Cylinder", "Characteristic", heads.before, heads.after],
      [1, "bore", 73.01, 73.02],
    ];
    const sides = (found: readonly Reading[]) => found.map(({ campaign, value }) => [campaign, value]);
    const wanted = [
      ["before", 73.01],
      ["after", 73.02],
    ];
    expect(sides(readingsOfWorkbook(book(sheet(table))).readings)).toEqual(wanted);
    expect(sides((await readingsOfCsv(bytes(csvOf(table)))).readings)).toEqual(wanted);
  });
});

describe("headings of a table of limits: Report", () => {
  const read = (field: ReadingField, heading: string) =>
    limitsIn([sheet(table(field, heading, ["engine", "cylinder", "position", "height", "axis", "value", "hours", "uncertainty"]))]);
  test.each(fieldWords.filter(({ field }) => ["characteristic", "lower", "upper", "unit", "near"].includes(field)))("$word is the column of $field", (one) => {
    const wanted = read(one.field, one.field);
    expect(wanted).toHaveLength(ROWS.length);
    expect(read(one.field, capital(one.word))).toEqual(wanted);
    expect(read(one.field, NOBODYS)).not.toEqual(wanted);
  });

  test.each(FIELD_WORDS.value)("a table with a column %s is one of readings, not of limits", (word) => {
    expect(limitsIn([sheet(table("value", capital(word)))])).toEqual([]);
  });

  test.each(SOURCE_WORDS)("%s is where they come from; to Layout no reading", (word) => {
    const rows = table("near", capital(word), ["engine", "cylinder", "position", "height", "axis", "value", "hours", "uncertainty"]);
    expect(limitsIn([sheet(rows)])[0]).toMatchObject({ source: "0.005", near: "" });
    expect(parseHeading(capital(word), HEADING_FIELDS)).toMatchObject({ isNoReading: true });
  });
});

describe("a limit that does not say its side", () => {
  test.each(ONE_SIDED_LIMIT)("%s: Layout, which asks a person, takes it for an upper one", (word) => {
    expect(parseHeading(capital(word), HEADING_FIELDS)).toMatchObject({ role: "upper", isOneSided: true });
  });

  test.each(ONE_SIDED_LIMIT)("%s: nobody else does, and a file is told why", async (word) => {
    const rows = table("upper", capital(word), ["lower"]);
    const { unread } = await checkCsv(bytes(csvOf(rows)));
    expect(unread).toContain(`no heading for a lower or upper limit (${capital(word)} does not say which)`);
    expect(checkWorkbook(book(sheet(rows))).checked).toBe(0);
    expect(limitsIn([sheet(rows)])).toEqual([]);
  });
});

describe("headings about gauges", () => {
  // 46102 is 2026-03-21 in a sheet's calendar, the day before the gauge is used.
  const NAMES: Readonly<Record<GaugeField, string>> = {
    ...{ gauge: "Gauge", due: "Due", used: "Used on", uncertainty: "U", unit: "Unit", resolution: "Resolution", calibration: "Calibration" },
  };
  const ENTRIES: Readonly<Record<GaugeField, Cell>> = {
    ...{ gauge: "BG-1", due: 46102, used: 46103, uncertainty: 0.004, unit: "mm", resolution: 0.001, calibration: "K-17" },
  };
  const FIELDS = Object.keys(NAMES) as GaugeField[];
  const register = (field: GaugeField, heading: string, fields = FIELDS) =>
    sheet([fields.map((one) => (one === field ? heading : NAMES[one])), fields.map((one) => ENTRIES[one])], "Gauges");
  const words = FIELDS.flatMap((field) => GAUGE_WORDS[field].map((word) => ({ field, word })));
  const told = (...sheets: SheetSnapshot[]) => plainly(checkWorkbook(book(...sheets)));

  test.each(words.filter(({ field }) => ["gauge", "due", "used"].includes(field)))("$word is the $field of a gauge to Check", ({ field, word }) => {
    const wanted = checkWorkbook(book(register(field, NAMES[field])));
    expect(wanted.findings.map(({ kind }) => kind)).toEqual(["calibration overdue"]);
    // The day of use is labelled by its own heading.
    const label = ({ findings }: typeof wanted) => findings.map(({ label: _, ...others }) => others);
    expect(label(checkWorkbook(book(register(field, capital(word)))))).toEqual(label(wanted));
    expect(label(checkWorkbook(book(register(field, NOBODYS))))).toEqual([]);
  });

  test.each(words.filter(({ field }) => ["uncertainty", "unit"].includes(field)))("$word is the $field of a gauge to Check", ({ field, word }) => {
    const without = table("near", "Gauge", ["uncertainty"]).map((line, r) => (r === 0 ? line : line.map((cell) => (cell === 0.005 ? "BG-1" : cell))));
    const tight = without.map((line) => line.map((cell) => (cell === 73.05 ? 73.01 : cell)));
    const inInches = { ...ENTRIES, unit: "in" };
    const gauges = (heading: string) =>
      sheet([FIELDS.map((one) => (one === field ? heading : NAMES[one])), FIELDS.map((one) => (field === "unit" ? inInches : ENTRIES)[one])], "Gauges");
    const wanted = told(gauges(NAMES[field]), sheet(tight));
    expect(told(gauges(capital(word)), sheet(tight))).toEqual(wanted);
    expect(told(gauges(NOBODYS), sheet(tight))).not.toEqual(wanted);
  });

  test.each(words.filter(({ field }) => field !== "unit"))("$word makes a table of gauges to Report", ({ field, word }) => {
    const beside = (["due", "used", "uncertainty", "resolution", "calibration"] as const).find((one) => one !== field)!;
    const fields: GaugeField[] = field === "gauge" ? ["gauge", beside] : ["gauge", field];
    const [copied] = gaugesIn([register(field, capital(word), fields)]);
    expect(copied?.rows).toEqual([fields.map((one) => ({ due: "2026-03-21", used: "2026-03-22" })[one as "due"] ?? String(ENTRIES[one]))]);
    expect(gaugesIn([register(field, NOBODYS, fields)])).toEqual([]);
  });

  test.each(words.filter(({ field }) => ["gauge", "due", "used"].includes(field)))("an entry $word is one of the report's head", ({ field, word }) => {
    expect(identityIn([sheet([[capital(word), ENTRIES[field]!]])])).toEqual([
      { name: capital(word), text: { due: "2026-03-21", used: "2026-03-22" }[field as "due"] ?? String(ENTRIES[field]) },
    ]);
  });

  test.each(words.filter(({ field }) => field !== "unit" && field !== "uncertainty"))("$word heads no readings to Layout", ({ word }) => {
    expect(parseHeading(capital(word), HEADING_FIELDS)).toMatchObject({ isNoReading: true });
    const rows: Cell[][] = [
      ["Cylinder", "Bore", capital(word)],
      [1, 73.01, 46103],
      [2, 73.02, 46103],
    ];
    const [proposal, ...others] = proposeLayout(book(sheet(rows)));
    expect([others, proposal?.what]).toEqual([[], "2 readings of bore; cylinders 1, 2"]);
  });
});
