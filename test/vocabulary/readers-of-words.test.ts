import { checkWorkbook } from "../../src/check/check-workbook.ts";
import { checkCsv } from "../../src/check/csv/check-csv.ts";
import { compareReadings } from "../../src/compare/compare.ts";
import { readingsOfCsv } from "../../src/compare/from-csv.ts";
import { readingsOfWorkbook } from "../../src/compare/from-workbook.ts";
import type { Cell } from "../../src/core/cell.ts";
import { proposeLayout } from "../../src/layout/propose.ts";
import { gaugesIn, identityIn, limitsIn, namedSubject } from "../../src/report/gather/identity.ts";

import { CHARACTERISTICS, DOCUMENT_WORDS, ENGINE_NAMES } from "../../src/vocabulary/characteristics.ts";
import { DERIVED_WORDS, FIELD_WORDS, JUDGING_WORDS, ONE_SIDED_LIMIT, TARGET_WORDS } from "../../src/vocabulary/heading-words.ts";
import { DAY_IDENTITY, IDENTITY_WORDS, identityFieldOf } from "../../src/vocabulary/identity.ts";
import { parseHeading, positionText } from "../../src/vocabulary/parse-heading.ts";
import { HEADING_FIELDS } from "../../src/vocabulary/phrases.ts";
import { POSITION_WORDS } from "../../src/vocabulary/place-words.ts";
import { measuredBy, ownCharacteristic } from "../../src/vocabulary/subjects.ts";
import { UNITS } from "../../src/vocabulary/units.ts";
import type { SheetSnapshot } from "../../src/workbook/port.ts";
import { described } from "../setup/made.ts";
import { book, bytes, capital, csvOf, NOBODYS, ROWS, sheet, table } from "./stand.ts";

/* Every word through every reader, as with headings: what a reader makes of it, and what it makes of a word that nobody knows. */

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
    expect(namedSubject(`Engine A, Cylinder 2, ${capital(word)}`)).toEqual({ characteristic: name, engine: "A" });
    expect(compareReadings(side(name), side(word.toUpperCase()))).toMatchObject({ rows: 1, refused: [] });
    expect(compareReadings(side(name), side(NOBODYS))).toMatchObject({ rows: 2, places: [] });
  });

  test.each(positions)("$word is $name to Layout and Compare", ({ name, word }) => {
    expect(positionText(parseHeading(capital(word), ["position"]).places)).toBe(name);
    expect(compareReadings(side("bore", name), side("bore", word.toUpperCase()))).toMatchObject({ rows: 1, refused: [] });
    expect(compareReadings(side("bore", name), side("bore", NOBODYS))).toMatchObject({ places: [] });
  });

  test("what is measured and where may stand in one heading or in two", () => {
    expect(compareReadings(side("Bore top thrust"), side("bore", "Thrust, top"))).toMatchObject({ rows: 1, refused: [] });
    expect(compareReadings(side("Ring end gap, 2nd"), side("ring gap", "second"))).toMatchObject({ rows: 1, refused: [] });
    expect(compareReadings(side("Ring end gap, 2nd"), side("ring gap", "top"))).toMatchObject({ places: [] });
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
    expect(compareReadings(named("2"), named(text))).toMatchObject({ rows: 1, refused: [], kind: "changes" });
    expect(namedSubject(`${text}, Taper`)).toEqual({ characteristic: "taper", engine: field === "engine" ? "2" : undefined });
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
      expect(compareReadings(named(name), named(text))).toMatchObject({ rows: 1, refused: [], kind: "changes" });
      expect(namedSubject(`${text}, Taper`).engine).toBe(name);
    },
  );

  test.each(DOCUMENT_WORDS)("ENGINE %s names no engine to Layout, Compare and Report", (word) => {
    const text = `ENGINE ${word.toUpperCase()}`;
    expect(parseHeading(text, HEADING_FIELDS).engine).toBeUndefined();
    expect(namedSubject(`${text}, Taper`).engine).toBeUndefined();
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
