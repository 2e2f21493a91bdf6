import { strToU8, zipSync } from "fflate";
import type { Engine } from "../../src/bench/load-grid.ts";
import { contentsOf, lookOf } from "../../src/bench/open-cells.ts";
import { FILE_LIMITS } from "../../src/xlsx/file-limits.ts";
import type { CellFile, DefinedName, Table, WorkbookFile } from "../../src/xlsx/model.ts";
import { Zip } from "../../src/xlsx/zip.ts";

const cell = (row: number, column: number, value: CellFile["value"], formula?: string): CellFile => ({ row, column, value, ...(formula ? { formula } : {}) });
const sheet = (name: string, ...cells: CellFile[]) => ({ name, hidden: false, cells, hiddenRows: [] });
const book = (sheets: WorkbookFile["sheets"], more: { names?: DefinedName[]; tables?: Table[] } = {}): WorkbookFile => ({
  sheets,
  names: [],
  tables: [],
  from1904: false,
  storedTexts: new Map(),
  ...more,
});

test("values are typed so that the engine takes them for what they are", () => {
  const { sheets } = contentsOf(
    book([sheet("S", cell(0, 0, 73.04), cell(0, 1, "73.04"), cell(1, 0, true), cell(1, 1, "=1+1"), cell(2, 0, { error: "#N/A" }))]),
  );
  expect(sheets[0]!.cells).toEqual({ A1: "73.04", B1: "'73.04", A2: "TRUE", B2: "'=1+1", A3: "#N/A" });
  expect([sheets[0]!.rows, sheets[0]!.columns]).toEqual([3, 2]);
});

test("a formula is taken as typed", () => {
  const { sheets } = contentsOf(book([sheet("S", cell(0, 0, 0.01, "HATCH.TAPER(B2:C4)"), cell(0, 1, 'a"b', '"a""b"'))]));
  expect(sheets[0]!.cells).toEqual({ A1: "=HATCH.TAPER(B2:C4)", B1: '="a""b"' });
});

const readings: Table = {
  name: "Readings",
  sheet: 0,
  area: { row: 0, column: 0, rows: 4, columns: 2 },
  headerRows: 1,
  totalsRows: 0,
  columns: ["Bore", "Top"],
};

test("references to a table by name become references to its cells", () => {
  const cells = [cell(1, 2, 0, "Readings[[#This Row],[Top]]*2"), cell(6, 0, 0, "SUM(Readings[Top])"), cell(7, 0, 0, "SUM(Readings[Gone])")];
  const other = sheet("Bench's", cell(0, 0, 0, "MAX(Readings[Top])"));
  const { sheets } = contentsOf(book([sheet("Bores", ...cells), other], { tables: [readings] }));
  expect(sheets[0]!.cells).toEqual({ C2: "=$B$2*2", A7: "=SUM($B$2:$B$4)", A8: "=SUM(Readings[Gone])" });
  expect(sheets[1]!.cells.A1).toBe("=MAX('Bores'!$B$2:$B$4)");
});

test("a sheet with an apostrophe gets a typographic one, and the formulas that name it with it", () => {
  const { sheets, namedRanges } = contentsOf(
    book([sheet("Owner's", cell(0, 0, 1)), sheet("Owner’s"), sheet("Sum", cell(0, 0, 1, "'Owner''s'!A1+'Owner’s'!A1"))], {
      names: [{ name: "first", formula: "'Owner''s'!$A$1" }],
    }),
  );
  expect(sheets.map(({ name }) => name)).toEqual(["Owner’s 2", "Owner’s", "Sum"]);
  expect(sheets[2]!.cells.A1).toBe("='Owner’s 2'!A1+'Owner’s'!A1");
  expect(namedRanges).toEqual({ first: "'Owner’s 2'!A1" });
});

test("names of cells are the engine's, all others are set aside for saving", () => {
  const others = [
    { name: "allowance", formula: "0.05" },
    { name: "here", sheet: 0, formula: "Limits!$A$1" },
    { name: "grown", formula: "OFFSET(Limits!$A$1,0,0,2,1)" },
    { name: "lost", formula: "#REF!" },
  ];
  const { namedRanges, otherNames } = contentsOf(book([sheet("Limits")], { names: [{ name: "bores", formula: "Limits!$B$2:$C$5" }, ...others] }));
  expect(namedRanges).toEqual({ bores: "Limits!B2:C5" });
  expect(otherNames).toEqual(others);
});

// Open Packaging Conventions (ECMA-376-2, 9.3: a target may be an absolute path, from memory), as openpyxl 3.1.5 writes it.
test("where a part stands from the top of the package is told to the grid from where it is named", () => {
  const rels = (...targets: string[]) => targets.map((target) => `<Relationship Id="r" Target="${target}"/>`).join("");
  const parts = {
    "_rels/.rels": rels("/xl/workbook.xml"),
    "xl/_rels/workbook.xml.rels": rels("/xl/worksheets/sheet1.xml", "styles.xml"),
    "xl/worksheets/_rels/sheet1.xml.rels": rels("/xl/tables/table1.xml", "../drawings/drawing1.xml"),
  };
  const zip = new Zip(zipSync(Object.fromEntries(Object.entries(parts).map(([name, xml]) => [name, strToU8(xml)]))), FILE_LIMITS);
  let told: unknown;
  const load = (files: unknown) => {
    told = files;
    return { sheets: [] };
  };
  const engine = { load } as unknown as Engine;
  lookOf(engine, zip, new Map(), 1);
  expect(told).toEqual({
    "_rels/.rels": rels("xl/workbook.xml"),
    "xl/_rels/workbook.xml.rels": rels("worksheets/sheet1.xml", "styles.xml"),
    "xl/worksheets/_rels/sheet1.xml.rels": rels("../tables/table1.xml", "../drawings/drawing1.xml"),
  });
});
