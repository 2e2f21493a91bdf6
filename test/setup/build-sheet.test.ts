import type { BuildSheet } from "../../src/setup/model.ts";
import { SHEET_WORDS, SHEETS } from "../../src/setup/sheets.ts";
import type { CellSpec } from "../../src/workbook/sheet-spec.ts";
import { rowHeights } from "../../src/workbook/styles.ts";
import { described } from "./made.ts";

const LEAST = { cylinders: 1, heights: 2, axes: 2, valves: 2 };
const MOST = { cylinders: 16, heights: 5, axes: 4, valves: 5, unit: "in", secondReadings: true };

const EVERY_CHOICE = [1, 2, 3, 16].flatMap((cylinders) =>
  [2, 3, 4, 5].flatMap((heights) =>
    [2, 3, 4].flatMap((axes) =>
      [2, 3, 4, 5].flatMap((valves) =>
        ["mm", "in"].flatMap((unit) => [false, true].map((secondReadings) => ({ cylinders, heights, axes, valves, unit, secondReadings }))),
      ),
    ),
  ),
);

const sheet = (book: BuildSheet, name: string) => book.sheets.find((one) => one.name === name)!;
const table = (book: BuildSheet, name: string) => book.sheets.flatMap(({ tables }) => tables).find((one) => one.name === name)!;
const formulas = (book: BuildSheet): string[] =>
  book.sheets.flatMap(({ cells }) => cells.flatMap(({ content }) => (typeof content === "string" && content.startsWith("=") ? [content] : [])));

test("the sheets are those of the job, second readings only where they are wanted", () => {
  const names = (choices: object) => described(choices).sheets.map(({ name }) => name);
  expect(names(LEAST)).toEqual([
    ...["Engine", "Limits", "Bores", "Pistons", "Rings", "Crankshaft", "Rods", "Camshaft", "Guides and seats", "Springs", "Faces", "Surface"],
    ...["Valves", "Volumes", "Tests", "Oil and blow-by", "Run-in log", "Torques", "Parts list", "Notes", "Shop", "Summary"],
  ]);
  expect(names({ ...LEAST, secondReadings: true })).toContain("Second readings");
});

/** What the tests of every choice ask for: whole books would be too much to hold. */
const books = EVERY_CHOICE.map((choices) => {
  const { sheets, names } = described(choices);
  return { choices, sheets: sheets.map(({ name }) => name), tables: sheets.flatMap(({ tables }) => tables), names: names.map(({ name }) => name) };
});

test("tables have as many rows and columns as the choices ask for", () => {
  const wrong = books.filter(({ choices: { cylinders, heights, axes, valves, secondReadings }, tables }) => {
    const of = (name: string) => tables.find((one) => one.name === name);
    const rows = ["BoreReadings", "ValveReadings", "RingReadings", "SecondBores"].map((name) => of(name)?.rows);
    const wanted = [cylinders, cylinders * valves, cylinders * 3, secondReadings ? cylinders * heights * axes : undefined];
    return rows.join() !== wanted.join() || of("BoreReadings")!.headings.length !== 1 + heights * axes + 6;
  });
  expect(wrong.map(({ choices }) => choices)).toEqual([]);
});

test("names are unique: of sheets, tables, headings within a table, and defined names beside tables", () => {
  const isUnique = (names: readonly string[]) => new Set(names.map((name) => name.toLowerCase())).size === names.length;
  const wrong = books.filter(
    ({ sheets, tables, names }) =>
      !isUnique(sheets) || !isUnique([...tables.map(({ name }) => name), ...names]) || !tables.every(({ headings }) => isUnique(headings)),
  );
  expect(wrong.map(({ choices }) => choices)).toEqual([]);
});

test("no cell is described twice, and tables do not meet", () => {
  for (const choices of [LEAST, MOST]) {
    for (const { name, cells, tables } of described(choices).sheets) {
      const places = cells.map(({ row, column }: CellSpec) => `${name}!${row},${column}`);
      expect(new Set(places).size).toBe(places.length);
      for (const [i, a] of tables.entries()) for (const b of tables.slice(i + 1)) expect(a.row + a.rows + 1 < b.row || b.row + b.rows + 1 < a.row).toBe(true);
    }
  }
});

test("no limit is built in: the limits' cells and those of gauges and engine sizes are empty", () => {
  for (const choices of [LEAST, MOST]) {
    const book = described(choices);
    const typed = (name: string, columns: readonly string[]) => {
      const { row, rows, headings } = table(book, name);
      const own = book.sheets.find(({ tables }) => tables.some((one) => one.name === name))!;
      return own.cells.filter((cell) => cell.row > row && cell.row <= row + rows && columns.includes(headings[cell.column]!)).map(({ content }) => content);
    };
    expect(new Set(typed("LimitList", ["Lower", "Upper", "Near", "Matters", "Source"]))).toEqual(new Set([""]));
    expect(new Set(typed("Gauges", table(book, "Gauges").headings))).toEqual(new Set([""]));
    const numbers = formulas(book).filter((formula) => /HATCH\.VERDICT\([^)]*,\s*-?\d/.test(formula));
    expect(numbers).toEqual([]);
  }
});

test("formulas call our functions, plain sheet functions and nothing else: no macros, nothing volatile", () => {
  const PLAIN = new Set([
    "IF",
    "OR",
    "IFERROR",
    "INDEX",
    "MATCH",
    "COUNT",
    "COUNTBLANK",
    "COUNTIF",
    "COUNTIFS",
    "AVERAGE",
    "MIN",
    "MAX",
    "ROUND",
    "SUM",
    "ROWS",
    "ABS",
    "SQRT",
    "FIND",
    "LOWER",
    "TRIM",
  ]);
  const called = new Set(formulas(described(MOST)).flatMap((formula) => [...formula.matchAll(/([A-Z][A-Z.]*)\(/g)].map(([, name]) => name!)));
  expect([...called].filter((name) => !name.startsWith("HATCH.") && !PLAIN.has(name))).toEqual([]);
  expect([...called].filter((name) => name.startsWith("HATCH.")).length).toBeGreaterThan(10);
});

test("blank readings and limits are handed over as blanks also where a host makes a 0 of them", () => {
  for (const choices of [LEAST, MOST]) {
    const judging = formulas(described(choices)).filter((formula) => formula.includes("HATCH.VERDICT"));
    expect(judging.length).toBeGreaterThan(0);
    for (const formula of judging) {
      const reading = /HATCH\.VERDICT\((\w+),/.exec(formula)![1];
      expect(formula.startsWith(`=IF(${reading}="","",HATCH.VERDICT(${reading},`)).toBe(true);
      for (const [, limit] of formula.matchAll(/(Limits!\$[BC]\$\d+)/g))
        expect(formula).toMatch(new RegExp(`IF\\(${limit!.replaceAll("$", "\\$")}=(?:""|0),"",`));
    }
    const filing = formulas(described(choices)).filter((formula) => formula.includes("HATCH.RINGGAPFILE"));
    for (const formula of filing) expect(formula).toMatch(/^=IF\(C\d+="","",HATCH\.RINGGAPFILE\(C\d+,,IF\(Limits!\$B\$\d+=0,/);
  }
});

test("a lower limit of 0 is no limit of what cannot be below 0, and one of a difference of two sizes", () => {
  const of = (heading: string, name: string) => {
    const book = described(LEAST);
    const { row, headings } = table(book, name);
    const own = book.sheets.find(({ tables }) => tables.some((one) => one.name === name))!;
    return String(own.cells.find((cell) => cell.row === row + 1 && headings[cell.column] === heading)!.content);
  };
  for (const heading of ["Taper verdict", "Out-of-round verdict"]) expect(of(heading, "BoreReadings")).toMatch(/,IF\(Limits!\$B\$\d+=0,/);
  expect(of("End gap verdict", "RingReadings")).toMatch(/,IF\(Limits!\$B\$\d+=0,/);
  expect(of("Wear verdict", "BoreReadings")).toMatch(/,IF\(Limits!\$B\$\d+="",/);
  expect(of("Piston clearance verdict", "PistonReadings")).toMatch(/,IF\(Limits!\$B\$\d+="",/);
});

test("millimetres have three decimals, inches four, and the functions that need the unit are told", () => {
  for (const [unit, format] of [
    ["mm", "0.000"],
    ["in", "0.0000"],
  ] as const) {
    const book = described({ cylinders: 3, unit });
    const { row, headings } = table(book, "BoreReadings");
    const first = sheet(book, "Bores").cells.find((cell) => cell.row === row + 1 && headings[cell.column] === "Top thrust")!;
    expect(first).toMatchObject({ style: "typed", format, content: "" });
    const asked = formulas(book).filter((formula) => formula.includes("SWEPTVOLUME") || formula.includes("DISCVOLUME"));
    expect(asked.length).toBeGreaterThan(0);
    expect(asked.filter((formula) => !formula.includes(`"${unit}"`))).toEqual([]);
    expect(book.sheets.map(({ print }) => print.paper)).toEqual(book.sheets.map(() => (unit === "mm" ? "A4" : "letter")));
  }
});

test("headings of the measuring sheets stay in view", () => {
  for (const { name, frozen, tables } of described(LEAST).sheets) {
    if (["Engine", "Summary", "Run-in log", "Notes", "Shop"].includes(name)) continue;
    expect(frozen.rows).toBe(tables[0]!.row + 1);
    expect(frozen.columns).toBeGreaterThan(0);
  }
});

test("the warnings stand where the work is, and which function is for which comparison", () => {
  const notes = (name: string): string =>
    sheet(described(LEAST), name)
      .cells.filter(({ style }) => style === "note")
      .map(({ content }) => content)
      .join(" ");
  expect(notes("Tests")).toContain("the engine can turn over with great force");
  expect(notes("Tests")).toContain("ignition off and fuel shut off");
  expect(notes("Valves")).toContain("springs are under load");
  expect(notes("Springs")).toContain("can fly out");
  expect(notes("Rods")).toContain("a crank out of balance can wreck the engine");
  expect(notes("Faces")).toContain("Compressed air for cleaning: eye protection, and never at people");
  expect(notes("Run-in log")).toContain("HATCH.PAIREDCHANGE over As built and Re-checked");
  expect(notes("Run-in log")).toContain("HATCH.COMPAREGROUPS is for two engines");
  expect(notes("Summary")).toContain("the maker's service manual and a qualified technician decide");
});

const REFERENCE = /(?:'([^']+)'|\b([A-Z][A-Za-z]+))!\$?[A-Z]/g;

test("any sheet can be left out: what rests on it goes with it, and no formula speaks of a sheet that is not there", () => {
  for (const word of SHEET_WORDS) {
    for (const choices of [
      { ...LEAST, without: [word] },
      { ...MOST, cylinders: 2, without: SHEET_WORDS.filter((one) => one !== word && one !== "bores") },
    ]) {
      const book = described(choices);
      const names = book.sheets.map(({ name }) => name);
      for (const left of choices.without) expect(names).not.toContain(SHEETS[left]);
      const spokenOf = [...formulas(book), ...book.names.map(({ formula }) => formula)].flatMap((formula) => [...formula.matchAll(REFERENCE)]);
      expect(spokenOf.map(([, quoted, plain]) => quoted ?? plain!).filter((name) => !names.includes(name))).toEqual([]);
    }
  }
});

test("characteristics, gauges and entries of a sheet that is left out are not asked for", () => {
  const first = (book: BuildSheet, name: string) => {
    const { row, rows, column } = table(book, name);
    const own = book.sheets.find(({ tables }) => tables.some((one) => one.name === name))!;
    return own.cells.filter((cell) => cell.column === column && cell.row > row && cell.row <= row + rows).map(({ content }) => content);
  };
  const book = described({ cylinders: 3, without: ["crankshaft", "volumes", "faces"] });
  for (const gone of ["Main bearing clearance", "Crankpin wear", "Squish", "Compression ratio"]) expect(first(book, "LimitList")).not.toContain(gone);
  for (const gone of ["Standard crankpin", "Gasket bore", "Stroke"]) expect(first(book, "EngineData")).not.toContain(gone);
  for (const gone of ["Bearing bores", "Deck heights"]) expect(first(book, "Measurements")).not.toContain(gone);
  expect(first(book, "LimitList")).toContain("Taper");
});

test("what is typed stands before what is calculated, so that Tab walks in the order of measuring; remarks stand last", () => {
  const looks = (book: BuildSheet) =>
    book.sheets.flatMap(({ name, cells, tables }) =>
      tables.map((one) => ({
        name: `${name}, ${one.name}`,
        looks: one.headings.map((heading, i) => [heading, cells.find((cell) => cell.row === one.row + 1 && cell.column === one.column + i)!.style] as const),
      })),
    );
  for (const { name, looks: columns } of looks(described({ ...MOST, cylinders: 2 }))) {
    const typed = columns.flatMap(([heading, style], i) => (style === "typed" && heading !== "Remarks" ? [i] : []));
    const calculated = columns.flatMap(([, style], i) => (style === "result" ? [i] : []));
    expect([name, typed.every((i) => calculated.every((c) => i < c))]).toEqual([name, true]);
  }
});

test("a calculated cell of a table takes nothing typed, and says where readings go", () => {
  for (const choices of [{ cylinders: 3 }, { ...MOST, cylinders: 8 }])
    for (const { name, cells, tables, validations } of described(choices).sheets) {
      const inTables = cells.filter(({ row, column }) => tables.some((one) => row > one.row && row <= one.row + one.rows && column < one.headings.length));
      for (const { row, column } of inTables.filter(({ style }) => style === "result")) {
        const own = validations.filter(
          ({ area }) => row >= area.row && row < area.row + area.rows && column >= area.column && column < area.column + area.columns,
        );
        expect([name, row, column, own.map(({ rule }) => rule.kind)]).toEqual([name, row, column, ["calculated"]]);
        expect(own[0]!.sentence).toContain("Readings go into the shaded cells");
        // A sheet shows up to 255 signs of it (ECMA-376 part 1, 18.3.1.32).
        expect(own[0]!.sentence.length).toBeLessThanOrEqual(255);
      }
    }
});

test("only the list of parts has buttons that pick rows out, which would cover the ends of headings elsewhere", () => {
  const tables = described(MOST).sheets.flatMap((one) => one.tables);
  expect(tables.filter(({ hasFilter }) => hasFilter).map(({ name }) => name)).toEqual(["PartsList"]);
});

test("notes stand beside the columns that stay in view, in lines of a readable length, in rows high enough for them", () => {
  for (const one of described(MOST).sheets) {
    const heights = rowHeights(one);
    for (const { row, column, content } of one.cells.filter(({ style }) => style === "note")) {
      const merged = one.merges.find((area) => area.row === row && area.column === column)!;
      expect(merged.column).toBe(one.frozen.columns);
      const wide = Array.from({ length: merged.columns }, (_, i) => one.widths[column + i] ?? 8).reduce((sum, width) => sum + width, 0);
      expect(wide).toBeGreaterThanOrEqual(45);
      expect(wide).toBeLessThanOrEqual(100);
      // A line is 15 points high, and holds as many letters as its width counts (ECMA-376 part 1, 18.3.1.13).
      expect((heights.get(row) ?? 15) / 15).toBeGreaterThanOrEqual(String(content).length / wide);
    }
  }
});

test("limits in inches show four decimals and all that are typed", () => {
  const { row, headings } = table(described({ cylinders: 3, unit: "in" }), "LimitList");
  const cells = sheet(described({ cylinders: 3, unit: "in" }), "Limits").cells;
  const ofRow = (characteristic: string, heading: string) => {
    const at = cells.find(({ content }) => content === characteristic)!.row;
    return cells.find((cell) => cell.row === at && cell.column === headings.indexOf(heading) && at > row)!.format;
  };
  for (const heading of ["Lower", "Upper", "Near"]) expect(ofRow("Piston clearance", heading)).toBe("0.0000##");
  expect(ofRow("Compression ratio", "Upper")).toBe("General");
});
