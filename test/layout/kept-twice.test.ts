import { readFileSync } from "node:fs";
import { join } from "node:path";
import { Workbook } from "@cj-tech-master/excelts";
import * as sheetjs from "@e965/xlsx";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { checkWorkbook } from "../../src/check/check-workbook.ts";
import { openWorkbook } from "../../src/hosts/file.ts";
import { storedLayout } from "../../src/layout/mapping.ts";
import { root } from "../../src/tools/paths.ts";
import { LAYOUT_SHEET, layoutCells, layoutInCells } from "../../src/workbook/layout-sheet.ts";
import { LAYOUT_KEY, LAYOUT_ON_SHEET } from "../../src/workbook/storage.ts";
import { readXlsx } from "../../src/xlsx/read/read.ts";

const bytes = readFileSync(join(root, "samples", "layouts", "cylinders-across.xlsx"));
const layout = readXlsx(bytes).storedTexts.get(LAYOUT_KEY)!;

/** The workbook with parts changed, or taken out. */
function withParts(change: (name: string, text: string) => string | null): Uint8Array {
  const parts = unzipSync(bytes);
  for (const [name, part] of Object.entries(parts)) {
    const text = change(name, strFromU8(part));
    if (text === null) delete parts[name];
    else parts[name] = strToU8(text);
  }
  return zipSync(parts);
}

const findings = async (file: Uint8Array) => {
  const host = await openWorkbook(file, "book.xlsx");
  const { mapping, notes } = await storedLayout(host);
  const { findings: found, rowsIn } = checkWorkbook(await host.read(), mapping);
  return { notes, rowsIn, findings: found.map(({ kind, cell, sentence }) => ({ kind, cell, sentence })) };
};

test("the sheet is very hidden and the last, and no reader of ours counts it among the workbook's", () => {
  expect(strFromU8(unzipSync(bytes)["xl/workbook.xml"]!)).toMatch(
    /<sheet name="Crosshatch layout" sheetId="\d+" state="veryHidden" r:id="rId\d+"\/><\/sheets>/,
  );
  const book = readXlsx(bytes);
  expect(book.sheets.map(({ name }) => name)).not.toContain(LAYOUT_SHEET);
  expect(book.storedTexts.get(LAYOUT_ON_SHEET)).toBe(layout);
});

describe("saved by a library that drops what is kept beside the sheets, the layout comes back from its sheet", () => {
  test.each<[string, () => Promise<Uint8Array>]>([
    ["@e965/xlsx 0.20.3", async () => new Uint8Array(sheetjs.write(sheetjs.read(bytes, { cellFormula: true }), { type: "array", bookType: "xlsx" }))],
    [
      "excelts 5.1.17",
      async () => {
        const book = new Workbook();
        await book.xlsx.load(bytes);
        return new Uint8Array(await book.xlsx.writeBuffer());
      },
    ],
  ])("%s", async (_, save) => {
    const saved = await save();
    expect(Object.keys(unzipSync(saved)).filter((name) => name.startsWith("customXml"))).toEqual([]);
    const { storedTexts, sheets } = readXlsx(saved);
    expect([...storedTexts]).toEqual([[LAYOUT_ON_SHEET, layout]]);
    expect(sheets.map(({ name }) => name)).toEqual(readXlsx(bytes).sheets.map(({ name }) => name));
    const wanted = await findings(bytes);
    expect(wanted.findings.length).toBeGreaterThan(10);
    expect(await findings(saved)).toEqual(wanted);
  });
});

test("where the two differ, the one beside the sheets counts, and that is said", async () => {
  const other = layout.replace('"grows":true', '"grows":false');
  expect(other).not.toBe(layout);
  const saved = withParts((_, text) => text.replaceAll("&quot;", '"').replace(`|${layout}|`, `|${other}|`));
  expect(readXlsx(saved).storedTexts.get(LAYOUT_ON_SHEET)).toBe(other);
  const host = await openWorkbook(saved, "book.xlsx");
  const { mapping, notes } = await storedLayout(host);
  expect(mapping).toEqual((await storedLayout(await openWorkbook(bytes, "book.xlsx"))).mapping);
  expect(notes).toEqual([expect.stringMatching(/^this workbook keeps two layouts that differ: the one beside its sheets counts/)]);
});

test("sheets, names and tables behind it keep their places", () => {
  const moved = withParts((name, text) =>
    name === "xl/workbook.xml"
      ? text
          .replace(/(<sheets>)(.*)(<sheet name="Crosshatch layout"[^>]*>)/, "$1$3$2")
          .replace("</sheets>", '</sheets><definedNames><definedName name="Here" localSheetId="1">1</definedName></definedNames>')
      : text,
  );
  const [before, after] = [readXlsx(bytes), readXlsx(moved)];
  expect(after.sheets).toEqual(before.sheets);
  expect(after.tables).toEqual(before.tables);
  expect(after.names.at(-1)).toEqual({ name: "Here", sheet: 0, formula: "1" });
});

test.each(["", "=1", " spaces ", "7", `long ${"ä|€".repeat(9000)}`])("a layout's text comes back from cells as it was", (text) => {
  const cells = layoutCells(text);
  expect(layoutInCells(LAYOUT_SHEET, cells)).toBe(text);
  // A cell's most, by Excel's published limits.
  for (const cell of cells) expect(cell.length).toBeLessThanOrEqual(32_767);
});

test("a sheet of that name that is somebody's own stays a sheet", () => {
  expect(layoutInCells(LAYOUT_SHEET, ["mine", "|{}|"])).toBeUndefined();
});
