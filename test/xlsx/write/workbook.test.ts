import { posix } from "node:path";
import { strFromU8, unzipSync } from "fflate";
import type { BuildSheet } from "../../../src/setup/model.ts";
import { type Element, parseXml, walk } from "../../../src/tools/xml-tree.ts";
import { isIn } from "../../../src/workbook/address.ts";
import { readXlsx } from "../../../src/xlsx/read/read.ts";
import { writeXlsx } from "../../../src/xlsx/write/workbook.ts";
import { pdfBytes } from "../../helpers/office-program.ts";
import {
  CHILDREN,
  DEFINED_NAME,
  LIKE_A_CELL,
  LONGEST_ERROR,
  LONGEST_ERROR_TITLE,
  LONGEST_SHEET_NAME,
  NOT_IN_SHEET_NAME,
} from "../../reference/spreadsheetml.ts";
import { described } from "../../setup/made.ts";

const CHOICES: readonly object[] = [
  { cylinders: 1, heights: 2, axes: 2, valves: 2 },
  { cylinders: 3, secondReadings: true },
  { cylinders: 16, heights: 5, axes: 4, valves: 5, unit: "in", secondReadings: true },
];

const BOOKS = CHOICES.map((choices) => {
  const book = described(choices);
  const bytes = writeXlsx(book, new Map([["note", 'kept: <&"']]));
  const parts = new Map(Object.entries(unzipSync(bytes)).map(([path, content]) => [path, strFromU8(content)]));
  return { book, bytes, parts, trees: new Map([...parts].map(([path, text]) => [path, parseXml(text)])) };
});

const named = (root: Element, name: string): Element[] => [...walk(root)].filter((one) => one.name === name);
const sheetsOf = (trees: ReadonlyMap<string, Element>): [string, Element][] => [...trees].filter(([path]) => path.startsWith("xl/worksheets/sheet"));
const tablesOf = (trees: ReadonlyMap<string, Element>): Element[] => [...trees].filter(([path]) => path.startsWith("xl/tables/")).map(([, tree]) => tree);

test("every element stands where the schema's sequence has it", () => {
  for (const { trees } of BOOKS) {
    for (const [path, tree] of trees) {
      const misplaced = [...walk(tree)].flatMap(({ name, children }) => {
        const order = CHILDREN[name];
        const places = order ? children.map((child) => order.indexOf(child.name)) : [];
        const isInOrder = places.every((place, i) => place >= 0 && (i === 0 || place >= places[i - 1]!));
        return isInOrder ? [] : [[name, children.map((child) => child.name)]];
      });
      expect([path, misplaced]).toEqual([path, []]);
    }
  }
});

test("every part has a content type, and every part that is named is there", () => {
  for (const { parts, trees } of BOOKS) {
    const types = trees.get("[Content_Types].xml")!;
    const overrides = named(types, "Override").map(({ attributes }) => attributes.PartName!);
    expect(overrides.filter((name) => !parts.has(name.slice(1)))).toEqual([]);
    expect(new Set(overrides).size).toBe(overrides.length);
    const defaults = new Set(named(types, "Default").map(({ attributes }) => attributes.Extension));
    expect([...parts.keys()].filter((path) => !defaults.has(path.split(".").at(-1)!))).toEqual([]);
    const special = [...parts.keys()].filter((path) => /^xl\/(?!.*_rels\/)/.test(path)).map((path) => `/${path}`);
    expect(special.filter((path) => !overrides.includes(path))).toEqual([]);
  }
});

test("relations lead to parts that are there, every part but the first is led to, and every relation id that is used exists", () => {
  for (const { parts, trees } of BOOKS) {
    const reached = new Set<string>();
    for (const [path, tree] of trees) {
      if (!path.endsWith(".rels")) continue;
      const owner = posix.join(posix.dirname(posix.dirname(path)), posix.basename(path, ".rels"));
      const relations = named(tree, "Relationship").map(({ attributes }) => attributes);
      for (const { Target } of relations) {
        const target = posix.join(posix.dirname(owner), Target!);
        expect([path, target, parts.has(target)]).toEqual([path, target, true]);
        reached.add(target);
      }
      const ids = relations.map(({ Id }) => Id!);
      expect(new Set(ids).size).toBe(ids.length);
      const used = [...(parts.get(owner) ?? "").matchAll(/ r:id="([^"]+)"/g)].map(([, id]) => id!);
      expect(used.filter((id) => !ids.includes(id))).toEqual([]);
    }
    expect([...parts.keys()].filter((path) => path !== "[Content_Types].xml" && !path.endsWith(".rels") && !reached.has(path))).toEqual([]);
  }
});

test("tables have ids and names of their own, and their headings are the texts of their first row", () => {
  for (const { book, bytes, trees } of BOOKS) {
    const tables = tablesOf(trees);
    const unique = (list: (string | undefined)[]) => expect(new Set(list).size).toBe(list.length);
    unique(tables.map(({ attributes }) => attributes.id));
    unique([...tables.map(({ attributes }) => attributes.displayName!.toLowerCase()), ...book.names.map(({ name }) => name.toLowerCase())]);
    for (const table of tables) {
      expect(table.attributes.name).toBe(table.attributes.displayName);
      expect(table.attributes.displayName).toMatch(DEFINED_NAME);
      for (const { attributes } of named(table, "autoFilter")) expect(attributes.ref).toBe(table.attributes.ref);
      const columns = named(table, "tableColumn");
      expect(named(table, "tableColumns")[0]!.attributes.count).toBe(String(columns.length));
      unique(columns.map(({ attributes }) => attributes.id));
    }
    const read = readXlsx(bytes);
    expect(read.tables).toHaveLength(tables.length);
    for (const { sheet, area, columns } of read.tables) {
      const cells = read.sheets[sheet]!.cells.filter((cell) => isIn(cell, { ...area, rows: 1 }));
      expect(cells.map(({ value }) => value)).toEqual(columns);
      expect(area.rows).toBeGreaterThan(1);
    }
  }
});

test("rows and cells are in order, inside the stated dimension, with styles and texts that exist", () => {
  for (const { trees } of BOOKS) {
    const styles = named(trees.get("xl/styles.xml")!, "cellXfs")[0]!.children.length;
    const dxfs = named(trees.get("xl/styles.xml")!, "dxf").length;
    const texts = named(trees.get("xl/sharedStrings.xml")!, "si").length;
    for (const [, tree] of sheetsOf(trees)) {
      const rows = named(tree, "row").map(({ attributes }) => Number(attributes.r));
      expect(rows).toEqual([...new Set(rows)].sort((a, b) => a - b));
      const corner = place(named(tree, "dimension")[0]!.attributes.ref!.split(":").at(-1)!);
      for (const row of named(tree, "row")) {
        const at = row.children.map(({ attributes }) => place(attributes.r!));
        expect(
          at.every(
            (cell, i) =>
              cell.row === Number(row.attributes.r) && cell.row <= corner.row && cell.column <= corner.column && (i === 0 || cell.column > at[i - 1]!.column),
          ),
        ).toBe(true);
        const unknown = row.children.filter(
          ({ attributes, children }) => !(Number(attributes.s ?? 0) < styles && (attributes.t !== "s" || Number(children[0]!.text) < texts)),
        );
        expect(unknown.map(({ attributes }) => attributes.r)).toEqual([]);
      }
      for (const rule of named(tree, "cfRule")) expect(Number(rule.attributes.dxfId)).toBeLessThan(dxfs);
    }
  }
});

test("names, sheet names and the words of validations keep to what the format allows", () => {
  for (const { book, trees } of BOOKS) {
    for (const { name } of book.sheets) {
      expect(name.length).toBeLessThanOrEqual(LONGEST_SHEET_NAME);
      expect(name).not.toMatch(NOT_IN_SHEET_NAME);
    }
    for (const { name } of book.names) {
      expect(name).toMatch(DEFINED_NAME);
      expect(name).not.toMatch(LIKE_A_CELL);
    }
    for (const { attributes, text } of named(trees.get("xl/workbook.xml")!, "definedName")) {
      const [, sheet] = /^'?([^'!]+)'?!\$/.exec(text)!;
      expect(book.sheets.map(({ name }) => name)).toContain(sheet);
      if (attributes.localSheetId) expect(book.sheets[Number(attributes.localSheetId)]!.name).toBe(sheet);
    }
    for (const [, tree] of sheetsOf(trees)) {
      for (const { attributes } of named(tree, "dataValidation")) {
        expect(attributes.error!.length).toBeLessThanOrEqual(LONGEST_ERROR);
        expect(attributes.errorTitle!.length).toBeLessThanOrEqual(LONGEST_ERROR_TITLE);
        expect(attributes.sqref).toMatch(/^[A-Z]+\d+(?::[A-Z]+\d+)?$/);
      }
    }
  }
});

test("our calls are stored as an add-in's, and the file reads back as it was described", () => {
  for (const { book, bytes, parts } of BOOKS) {
    expect([...parts.values()].join("")).not.toMatch(/<f[^>]*>[^<]*HATCH\./);
    const read = readXlsx(bytes);
    expect(read.sheets.map(({ name }) => name)).toEqual(book.sheets.map(({ name }) => name));
    expect(read.storedTexts.get("note")).toBe('kept: <&"');
    for (const [i, sheet] of book.sheets.entries()) {
      const found = new Map(read.sheets[i]!.cells.map((cell) => [`${cell.row},${cell.column}`, cell.formula === undefined ? cell.value : `=${cell.formula}`]));
      const otherwise = sheet.cells.filter(({ row, column, content }) => (found.get(`${row},${column}`) ?? "") !== content);
      expect([sheet.name, otherwise]).toEqual([sheet.name, []]);
    }
  }
});

test("the same choices make the same file, byte for byte", () => {
  const again = writeXlsx(described(CHOICES[0]!), new Map([["note", 'kept: <&"']]));
  expect(Buffer.from(again).equals(Buffer.from(BOOKS[0]!.bytes))).toBe(true);
});

test("merged cells and texts that XML must not see raw are written as they should be", () => {
  const plain = { widths: [], frozen: { rows: 0, columns: 0 }, tables: [], validations: [], verdicts: [], print: { paper: "A4", isLandscape: false } } as const;
  const odd = 'a <b> & "c"\u0001 =1';
  const book: BuildSheet = {
    title: "A & B",
    names: [],
    sheets: [
      {
        ...plain,
        name: "It's <one>",
        widths: [],
        tables: [],
        validations: [],
        verdicts: [],
        cells: [{ row: 0, column: 0, content: odd, style: "head" }],
        merges: [{ row: 0, column: 0, rows: 1, columns: 3 }],
      },
    ],
  };
  const bytes = writeXlsx(book);
  expect(strFromU8(unzipSync(bytes)["xl/worksheets/sheet1.xml"]!)).toContain('<mergeCells count="1"><mergeCell ref="A1:C1"/></mergeCells>');
  expect(readXlsx(bytes).sheets).toMatchObject([{ name: "It's <one>", cells: [{ value: 'a <b> & "c" =1' }] }]);
});

// A general office program, where there is one, has the last word on whether a file opens.
test("the file is no larger than it needs to be, and opens in the office program of this machine, if it has one", () => {
  for (const { bytes } of BOOKS) expect(bytes.length).toBeLessThan(220_000);
  const size = pdfBytes(BOOKS[1]!.bytes);
  if (size === undefined) console.info("no office program here: opening is not tried");
  else expect(size).toBeGreaterThan(10_000);
}, 120_000);

/** Row from 1 and column from 1 of `C7`. */
function place(name: string): { row: number; column: number } {
  const [, letters, digits] = /^([A-Z]+)(\d+)$/.exec(name)!;
  return { row: Number(digits), column: [...letters!].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) };
}
