import { checkWorkbook } from "../../src/check/check-workbook.ts";
import { checkCsv } from "../../src/check/csv/check-csv.ts";
import { compareReadings } from "../../src/compare/compare.ts";
import { readingsOfCsv } from "../../src/compare/from-csv.ts";
import { readingsOfWorkbook } from "../../src/compare/from-workbook.ts";
import type { Cell } from "../../src/core/cell.ts";
import { proposeLayout } from "../../src/layout/propose.ts";
import { gaugesIn, identityIn, limitsIn } from "../../src/report/gather/identity.ts";
import { subjectOf } from "../../src/report/gather/subjects.ts";
import { CHARACTERISTICS, DOCUMENT_WORDS, ENGINE_NAMES, POSITION_WORDS } from "../../src/vocabulary/characteristics.ts";
import {
  DERIVED_WORDS,
  FIELD_WORDS,
  GAUGE_WORDS,
  type GaugeField,
  JUDGING_WORDS,
  ONE_SIDED_LIMIT,
  READING_FIELDS,
  type ReadingField,
  SOURCE_WORDS,
  TARGET_WORDS,
} from "../../src/vocabulary/headings.ts";
import { DAY_IDENTITY, IDENTITY_WORDS, identityFieldOf } from "../../src/vocabulary/identity.ts";
import { measuredBy, ownCharacteristic, parseHeading, positionText } from "../../src/vocabulary/parse-heading.ts";
import { HEADING_FIELDS } from "../../src/vocabulary/phrases.ts";
import { UNITS } from "../../src/vocabulary/units.ts";
import type { SheetSnapshot, WorkbookSnapshot } from "../../src/workbook/port.ts";
import { described } from "../setup/made.ts";

/*
 * Every word that is known goes through every reader. What a reader makes of it must be what it makes of
 * the word's own name, and something else than it makes of a word that nobody knows: a reader that does
 * not know a word, or one that does not look at the heading at all, fails here.
 */

const NOBODYS = "Quibble";

const sheet = (values: Cell[][], name = "Readings"): SheetSnapshot => {
  const columns = Math.max(...values.map(({ length }) => length));
  const filled = values.map((line) => Array.from({ length: columns }, (_, c) => line[c] ?? null));
  return { name, row: 0, column: 0, values: filled, formulas: filled.map((line) => line.map(() => null)) };
};
const book = (...sheets: SheetSnapshot[]): WorkbookSnapshot => ({ name: "workbook", sheets, names: [], tables: [] }) as unknown as WorkbookSnapshot;
async function* bytes(text: string): AsyncGenerator<Uint8Array> {
  yield new TextEncoder().encode(text);
}
const csvOf = (rows: readonly (readonly Cell[])[]): string =>
  rows.map((row) => row.map((cell) => `"${String(cell).replaceAll('"', '""')}"`).join(",")).join("\n");
const capital = (word: string): string => `${word.charAt(0).toUpperCase()}${word.slice(1)}`;

/** Readings in which every column changes what comes out: invented, one near a limit, one too near it to be proven, one over it, one in another unit. */
const ROWS: readonly Readonly<Record<ReadingField, Cell>>[] = Array.from({ length: 6 }, (_, i) => ({
  ...{ engine: "A", cylinder: String(i + 1), characteristic: "bore", position: "face", height: "top", axis: "thrust" },
  ...{ value: [73.01, 73.0455, 73.049, 73.06, 72.9, 73.011][i]!, lower: 73, upper: 73.05, unit: i === 5 ? "in" : "mm" },
  ...{ uncertainty: 0.004, near: 0.005, hours: 412 },
}));

/** The table with one heading of another word, and without the columns that a reader is better asked without. */
function table(field: ReadingField, heading: string, without: readonly ReadingField[] = []): Cell[][] {
  const fields = READING_FIELDS.filter((one) => !without.includes(one));
  return [fields.map((one) => (one === field ? heading : capital(one))), ...ROWS.map((row) => fields.map((one) => row[one]))];
}

const cellsAside = (key: string, value: unknown): unknown => (key === "cell" ? undefined : value);
const plainly = (result: unknown): unknown => JSON.parse(JSON.stringify(result, cellsAside) ?? "null");

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

const characteristics = Object.entries(CHARACTERISTICS).flatMap(([name, { words }]) => [name, ...words].map((word) => ({ name, word })));
const positions = Object.entries(POSITION_WORDS).flatMap(([name, { words }]) => [name, ...words].map((word) => ({ name, word })));

describe("characteristics", () => {
  const side = (characteristic: string, position = ""): ReturnType<typeof readingsOfWorkbook> =>
    readingsOfWorkbook(
      book(
        sheet([
          ["Engine", "Cylinder", "Characteristic", "Position", "Value", "Unit", "U"],
          ["A", "1", characteristic, position, 73.01, "mm", 0.003],
        ]),
      ),
    );

  test.each(characteristics)("$word is $name to Layout, Report and Compare", ({ name, word }) => {
    expect(parseHeading(capital(word), HEADING_FIELDS).characteristic).toBe(name);
    expect(subjectOf(`Engine A, Cylinder 2, ${capital(word)}`)).toEqual({ characteristic: name, engine: "A" });
    expect(compareReadings(side(name), side(word.toUpperCase()))).toMatchObject({ rowsCompared: 2, rowsRefused: 0 });
    expect(compareReadings(side(name), side(NOBODYS))).toMatchObject({ rowsCompared: 0, rowsRefused: 2 });
  });

  test.each(positions)("$word is $name to Layout and Compare", ({ name, word }) => {
    expect(positionText(parseHeading(capital(word), ["position"]).places)).toBe(name);
    expect(compareReadings(side("bore", name), side("bore", word.toUpperCase()))).toMatchObject({ rowsCompared: 2 });
    expect(compareReadings(side("bore", name), side("bore", NOBODYS))).toMatchObject({ rowsCompared: 0 });
  });

  test("what is measured and where may stand in one heading or in two", () => {
    expect(compareReadings(side("Bore top thrust"), side("bore", "Thrust, top"))).toMatchObject({ rowsCompared: 2 });
    expect(compareReadings(side("Ring end gap, 2nd"), side("ring gap", "second"))).toMatchObject({ rowsCompared: 2 });
    expect(compareReadings(side("Ring end gap, 2nd"), side("ring gap", "top"))).toMatchObject({ rowsCompared: 0 });
  });
});

describe("units", () => {
  const spellings = Object.entries(UNITS).flatMap(([unit, { words = [], bracketed = [], kind }]) =>
    [unit, ...words, ...bracketed].map((word) => ({ unit, word, kind, isWord: !bracketed.includes(word) })),
  );
  const rows = (unit: string, last: string): Cell[][] =>
    table("unit", "Unit").map((line, r) => line.map((cell) => (cell === "mm" || cell === "in" ? (r === ROWS.length ? last : unit) : cell)));
  const mixed = { kind: "mixed units" };

  test.each(spellings)("$word is $unit to Check, CSV and Compare", async ({ unit, word }) => {
    const other = unit === "bar" ? "psi" : "bar";
    expect(checkWorkbook(book(sheet(rows(unit, word.toUpperCase())))).findings).not.toContainEqual(expect.objectContaining(mixed));
    expect(checkWorkbook(book(sheet(rows(unit, other)))).findings).toContainEqual(expect.objectContaining(mixed));
    expect((await checkCsv(bytes(csvOf(rows(unit, word))))).findings).not.toContainEqual(expect.objectContaining(mixed));
    expect((await checkCsv(bytes(csvOf(rows(unit, other))))).findings).toContainEqual(expect.objectContaining(mixed));
    expect(readingsOfWorkbook(book(sheet(rows(word, word)))).readings.map((one) => one.unit)).toEqual(ROWS.map(() => unit));
  });

  test.each(spellings)("($word) in a heading is $unit to Layout, Check, Compare and Report", async ({ unit, word, kind, isWord }) => {
    for (const heading of [`Value (${word})`, ...(isWord ? [`Value, ${word}`] : [])]) {
      expect(parseHeading(heading, HEADING_FIELDS)).toMatchObject({ role: "value", unit, rest: [] });
      const { readings } = await readingsOfCsv(bytes(csvOf(table("value", heading, ["unit"]))));
      expect(readings.map((one) => one.unit)).toEqual(ROWS.map(() => unit));
      expect(readingsOfWorkbook(book(sheet(table("value", heading, ["unit"])))).readings.map((one) => one.unit)).toEqual(ROWS.map(() => unit));
      // Check: a row in the same unit does not differ from the heading's.
      const own = table("value", heading).map((line, r) => line.map((cell) => (cell === "mm" || cell === "in" ? (r === 1 ? unit : "") : cell)));
      expect(checkWorkbook(book(sheet(own))).findings).not.toContainEqual(expect.objectContaining(mixed));
    }
    const limits = limitsIn([
      sheet([
        ["Characteristic", `Lower (${word})`, "Unit"],
        ["Bore", 73, word],
      ]),
    ]);
    expect([kind, limits.map(({ lower }) => lower)]).toEqual([kind, ["73"]]);
  });
});

describe("whose engine it is", () => {
  const entries = Object.entries(IDENTITY_WORDS).flatMap(([field, words]) => words.map((word) => ({ field, word })));

  test.each(entries)("an entry $word is the report's $field, and no reading to Layout unless it heads some", ({ word }) => {
    expect(identityIn([sheet([[`${capital(word)}:`, "0417"]])])).toEqual([{ name: capital(word), text: "0417" }]);
    const { engine, isNoReading, characteristic, role, names } = parseHeading(capital(word), HEADING_FIELDS);
    expect(engine).toBeUndefined();
    expect(isNoReading ?? characteristic ?? role ?? names).toBeDefined();
  });

  // 46102 is 2026-03-21 in a sheet's calendar.
  test.each([...DAY_IDENTITY, "calibration due" as const].flatMap((field) => IDENTITY_WORDS[field]))("a number beside %s is a day to Report", (word) => {
    expect(identityIn([sheet([[capital(word), 46102]])])).toEqual([{ name: capital(word), text: "2026-03-21" }]);
  });

  test.each(IDENTITY_WORDS.hours)("%s beside a number are the hours of Compare", (word) => {
    const side = readingsOfWorkbook(book(sheet([[capital(word), 412]], "Engine"), sheet(table("near", "Near", ["hours"]))));
    expect(side.readings.map(({ hours }) => hours)).toEqual(ROWS.map(() => 412));
  });

  const owners = (["engine", "cylinder"] as const).flatMap((field) => [field, ...FIELD_WORDS[field]].map((word) => ({ field, word })));

  test.each(owners)("$word 2 is the $field 2 of Layout, Compare and Report", ({ field, word }) => {
    const text = `${capital(word)} 2`;
    expect(parseHeading(text, HEADING_FIELDS)[field]).toBe("2");
    const named = (name: Cell) =>
      readingsOfWorkbook(
        book(
          sheet([["Engine", "Cylinder", "Characteristic", "Value", "U"], field === "engine" ? [name, "1", "bore", 73, 0.01] : ["A", name, "bore", 73, 0.01]]),
        ),
      );
    expect(compareReadings(named("2"), named(text))).toMatchObject({ rowsCompared: 2, sameEngine: true });
    expect(subjectOf(`${text}, Taper`)).toEqual({ characteristic: "taper", engine: field === "engine" ? "2" : undefined });
  });

  test.each(Object.entries(ENGINE_NAMES).flatMap(([name, words]) => [name, ...words].map((word) => ({ name, word }))))(
    "$word engine is the engine $name of Layout, Compare and Report",
    ({ name, word }) => {
      const text = `${capital(word)} engine`;
      expect(parseHeading(text, HEADING_FIELDS).engine).toBe(name);
      const named = (engine: string) =>
        readingsOfWorkbook(
          book(
            sheet([
              ["Engine", "Cylinder", "Characteristic", "Value", "U"],
              [engine, "1", "bore", 73, 0.01],
            ]),
          ),
        );
      expect(compareReadings(named(name), named(text))).toMatchObject({ rowsCompared: 2, sameEngine: true });
      expect(subjectOf(`${text}, Taper`).engine).toBe(name);
    },
  );

  test.each(DOCUMENT_WORDS)("ENGINE %s names no engine to Layout, Compare and Report", (word) => {
    const text = `ENGINE ${word.toUpperCase()}`;
    expect(parseHeading(text, HEADING_FIELDS).engine).toBeUndefined();
    expect(subjectOf(`${text}, Taper`).engine).toBeUndefined();
    const { readings } = readingsOfWorkbook(
      book(
        sheet([
          ["", "Bore"],
          [text, "=HATCH.TAPER(A1)"],
        ]),
      ),
    );
    expect(readings.filter(({ engine }) => engine !== "")).toEqual([]);
  });
});

describe("results beside readings", () => {
  test.each(DERIVED_WORDS)("%s is no reading to Layout", (word) => {
    const rows: Cell[][] = [
      ["Cylinder", "Bore", capital(word)],
      [1, 73.01, 73.02],
      [2, 73.02, 73.02],
    ];
    const [proposal] = proposeLayout(book(sheet(rows)));
    expect(proposal?.what).toBe("2 readings of bore; cylinders 1, 2");
  });

  test.each(JUDGING_WORDS)("%s is no name of what Check judges", (word) => {
    const rows: Cell[][] = [
      ["Cylinder", capital(word)],
      ["Cylinder 1", "over"],
    ];
    const judged = sheet(rows);
    judged.formulas[1]![1] = "=HATCH.VERDICT(73.06,73,73.05)";
    expect(checkWorkbook(book(judged)).findings.map(({ label }) => label)).toContain("Cylinder 1");
  });
});

describe("rows below readings", () => {
  const bounds = [...["lower", ...FIELD_WORDS.lower], ...["upper", ...FIELD_WORDS.upper], ...ONE_SIDED_LIMIT, ...TARGET_WORDS];
  // Three formulas one below the other, and a number typed where the fourth would be.
  const rows = (last: string): SheetSnapshot => {
    const filled = sheet([
      ["Cylinder", "Top", "Bottom", "Taper"],
      ...["A", "B", "C", last].map((name, i): Cell[] => [name, 73.02, 73.01, i === 3 ? 0.02 : 0.01]),
    ]);
    for (const r of [1, 2, 3]) filled.formulas[r]![3] = `=HATCH.TAPER(B${r + 1}:C${r + 1},1)`;
    return filled;
  };
  const overwritten = (last: string) => checkWorkbook(book(rows(last))).findings.filter(({ kind }) => kind === "overwritten formula");

  test("a number among formulas is typed over one", () => {
    expect(overwritten("D")).toHaveLength(1);
  });

  test.each([...bounds, "average", "avg", "mean", "total", "sum", "range", "largest", "smallest"])("in a row %s it is meant", (word) => {
    expect(overwritten(capital(word))).toEqual([]);
  });
});

describe("what our own build sheets call things", () => {
  const { sheets } = described({ cylinders: 3, heights: 5, axes: 4, valves: 5, unit: "in", secondReadings: true });
  const tables = sheets.flatMap(({ tables: own }) => own);
  const headings = (table: string) => tables.find(({ name }) => name === table)!.headings;
  const column = (table: string, heading: string): string[] => {
    const page = sheets.find(({ tables: own }) => own.some(({ name }) => name === table))!;
    const { row, rows, column: first } = page.tables.find(({ name }) => name === table)!;
    const at = first + headings(table).indexOf(heading);
    return page.cells
      .filter((cell) => cell.column === at && cell.row > row && cell.row <= row + rows && cell.content !== "")
      .map(({ content }) => String(content));
  };

  test("each limit is of one characteristic, and rings and valves of different kinds are different ones", () => {
    const limits = column("LimitList", "Characteristic").map((name) => ({ name, ...parseHeading(name, HEADING_FIELDS) }));
    expect(limits.length).toBeGreaterThan(15);
    expect(limits.filter(({ characteristic, rest }) => characteristic === undefined || rest.length > 0)).toEqual([]);
    const own = limits.map(({ name }) => ownCharacteristic(measuredBy(name, "")));
    expect(new Set(own).size).toBe(limits.length);
    expect(own).toEqual(expect.arrayContaining(["top ring end gap", "oil ring side clearance", "inlet valve clearance", "exhaust stem clearance"]));
  });

  test("the units of limits are known, and every place of a bore and a ring", () => {
    expect(column("LimitList", "Unit").filter((unit) => UNITS[unit] === undefined)).toEqual([]);
    for (const place of [...headings("BoreReadings").slice(1, 21), ...column("RingReadings", "Ring"), ...column("ValveReadings", "Valve")]) {
      const { rest, places } = parseHeading(place, HEADING_FIELDS);
      expect([place, rest, places.length > 0]).toEqual([place, [], true]);
    }
  });

  test("gauges and what was measured with them are known to Report, the limits as well", () => {
    expect(gaugesIn([sheet([headings("Gauges"), headings("Gauges").map(() => "x")])])).toHaveLength(1);
    expect(gaugesIn([sheet([headings("Measurements"), headings("Measurements").map(() => "x")])])).toHaveLength(1);
    expect(limitsIn([sheet([headings("LimitList"), headings("LimitList").map(() => "x")])])).toMatchObject([
      { lower: "x", upper: "x", near: "x", source: "x" },
    ]);
  });

  test("what stands on the summary says whose engine it is", () => {
    const names = ["Owner", "Job", "Engine", "Serial number", "Hours run", "Built on", "Built by", "Stripped on", "Unit of length", "Standard bore", "Stroke"];
    const items = column("EngineData", "Item");
    expect(names.filter((name) => !items.includes(name) || identityFieldOf(name) === undefined)).toEqual([]);
  });
});
