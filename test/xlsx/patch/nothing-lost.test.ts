import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { root } from "../../../src/tools/paths.ts";
import { MARK_FILL } from "../../../src/workbook/port.ts";
import { readXlsx } from "../../../src/xlsx/read/read.ts";
import { cellsOf, mark, partsOf, partText, records, without } from "./marking.ts";
import { BORES, richBook, richParts } from "./rich-book.ts";

const TOUCHED = ["[Content_Types].xml", "xl/workbook.xml", "xl/_rels/workbook.xml.rels", "xl/worksheets/sheet1.xml", "xl/styles.xml"];
const ADDED = ["xl/worksheets/sheet4.xml", "customXml/item2.xml", "customXml/itemProps2.xml", "customXml/_rels/item2.xml.rels"];

/** Of a reading outside its limits and of a missing one, both of which the book has. */
const COLOURS = [MARK_FILL.outside, MARK_FILL.fault].map((colour) => colour.slice(1));

const book = richBook();
const copy = await mark(book);

describe("a workbook with charts, pictures, comments, rules, tables, pivot tables, macros, an add-in and a signature", () => {
  test("keeps every part that marking does not concern, as it is packed, where it stands and as old as it is", () => {
    const before = records(book);
    const after = records(copy.bytes);
    const untouched = before.filter(({ name }) => !TOUCHED.includes(name));
    expect(untouched.length).toBe(richParts().size - TOUCHED.length);
    expect(after.filter(({ name }) => !TOUCHED.includes(name) && !ADDED.includes(name))).toEqual(untouched);
    expect(after.map(({ name }) => name)).toEqual([...before.map(({ name }) => name), ...ADDED]);
    expect(after.map(({ name, method, time }) => ({ name, method, time })).slice(0, before.length)).toEqual(
      before.map(({ name, method, time }) => ({ name, method, time })),
    );
  });

  test("changes in its sheets nothing but the cells that are marked or get a value", () => {
    const sheet = partText(copy.bytes, "xl/worksheets/sheet1.xml");
    const changed = ["B5", "C4", "D4", "D5"];
    expect(without(sheet, changed)).toBe(without(BORES, changed));
    const cells = cellsOf(sheet);
    const formula = (name: string): string | undefined => /<f[^>]*>[^<]*<\/f>|<f[^>]*\/>/.exec(cells.get(name)!)?.[0];
    for (const [name, cell] of cellsOf(BORES)) expect([name, formula(name)]).toEqual([name, /<f[^>]*>[^<]*<\/f>|<f[^>]*\/>/.exec(cell)?.[0]]);
    // The reading that is missing has no cell in the file: its new one has the looks of the column.
    expect(cells.get("B5")).toBe('<c r="B5" s="6"/>');
    expect(cells.get("C4")).toBe('<c r="C4" s="5"><f t="shared" si="0"/><v>4.9999999999997158E-2</v></c>');
    expect(cells.get("D4")).toMatch(/^<c r="D4" t="str"><f.*<\/f><v>over<\/v><\/c>$/);
    expect(cells.get("D5")).toMatch(/^<c r="D5" cm="1" t="str"><f .*<\/f><v><\/v><\/c>$/);
  });

  test("changes in its lists nothing but what is added to them", () => {
    for (const [name, added] of [
      ["xl/workbook.xml", /<sheet xmlns:r="[^"]*" name="Findings" sheetId="8" r:id="rId13"\/>/],
      ["xl/_rels/workbook.xml.rels", /<Relationship Id="rId13"[^>]*\/worksheet"[^>]*\/><Relationship Id="rId14"[^>]*\/customXml"[^>]*\/>/],
      ["[Content_Types].xml", /<Override PartName="\/xl\/worksheets\/sheet4.xml"[^>]*\/><Override PartName="\/customXml\/itemProps2.xml"[^>]*\/>/],
    ] as const)
      expect(partText(copy.bytes, name).replace(added, "")).toBe(partText(book, name));
    const styles = partText(copy.bytes, "xl/styles.xml");
    const back = styles
      .replace(
        new RegExp(`<fill><patternFill patternType="solid"><fgColor rgb="FF(?:${COLOURS.join("|")})"/><bgColor indexed="64"/></patternFill></fill>`, "g"),
        "",
      )
      .replace(/<fills count="\d+">/, '<fills count="4">')
      .replace(/(<cellXfs count=")\d+(">(?:<xf [^>]*\/>|<xf [^>]*[^/]>.*?<\/xf>){5}).*?<\/cellXfs>/, "$15$2</cellXfs>");
    expect(back).toBe(partText(book, "xl/styles.xml"));
  });

  test("is marked though the sheet is protected, and it is said that its signature counts for the original alone", () => {
    expect(copy).toMatchObject({ marked: 2, written: 2, signed: true });
    expect(copy.result.findings.map(({ kind, cell }) => [kind, cell.row, cell.column])).toEqual([
      ["outside limit", 3, 2],
      ["missing reading", 4, 1],
    ]);
  });

  test("is read from its copy with the same findings, and marked again it stays the same file", async () => {
    const again = await mark(copy.bytes);
    expect(again.result).toEqual(copy.result);
    expect(again.written).toBe(0);
    expect(Buffer.from(again.bytes).equals(Buffer.from(copy.bytes))).toBe(true);
  });

  test("lists what was found on a sheet behind the others, in words, each with a link to its cell", () => {
    const sheet = readXlsx(copy.bytes).sheets.at(-1)!;
    const texts = sheet.cells.map(({ value }) => value);
    expect(sheet.name).toBe("Findings");
    expect(texts).toEqual([
      "Findings of Crosshatch",
      "2 found",
      ...["Finding", "Cell", "What", "In words"],
      ...["over", "Bores!C4", copy.result.findings[0]!.label, "0.05 is over the upper limit 0.04 by 0.01"],
      ...["missing reading", "Bores!B5", copy.result.findings[1]!.label, copy.result.findings[1]!.sentence],
    ]);
    expect(partText(copy.bytes, "xl/worksheets/sheet4.xml")).toContain('<hyperlink ref="B5" location="Bores!C4" display="Bores!C4"/>');
  });
});

test.each(["build-sheet.xlsx", "self-check.xlsx", "layouts/one-row-a-cylinder.xlsx"])(
  "%s: other parts byte for byte, the same findings, the same file when marked again",
  async (name) => {
    const bytes = new Uint8Array(readFileSync(join(root, "samples", name)));
    const first = await mark(bytes);
    const before = partsOf(bytes);
    const after = partsOf(first.bytes);
    const concerned =
      /^(?:\[Content_Types\]\.xml|xl\/workbook\.xml|xl\/_rels\/workbook\.xml\.rels|xl\/styles\.xml|customXml\/item1\.xml|xl\/worksheets\/sheet\d+\.xml)$/;
    for (const part of Object.keys(before)) if (!concerned.test(part)) expect([part, Buffer.compare(before[part]!, after[part]!)]).toEqual([part, 0]);
    const second = await mark(first.bytes);
    expect(second.result).toEqual(first.result);
    expect(Buffer.compare(second.bytes, first.bytes)).toBe(0);
  },
);

test("opens in the office program of this machine, if it has one, with values, marks and the list of findings", () => {
  const office = ["/usr/bin/soffice", "/usr/bin/libreoffice", "/Applications/LibreOffice.app/Contents/MacOS/soffice"].find((path) => existsSync(path));
  if (!office) {
    console.info("no office program here: opening is not tried");
    return;
  }
  const folder = mkdtempSync(join(tmpdir(), "marked-"));
  const convert = (to: string): void => {
    execFileSync(
      office,
      [`-env:UserInstallation=file://${join(folder, "profile")}`, "--headless", "--convert-to", to, "--outdir", folder, join(folder, "copy.xlsx")],
      {
        stdio: "pipe",
      },
    );
  };
  try {
    writeFileSync(join(folder, "copy.xlsx"), copy.bytes);
    convert("pdf");
    expect(statSync(join(folder, "copy.pdf")).size).toBeGreaterThan(5000);
    convert("csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false,false,false,-1");
    expect(readFileSync(join(folder, "copy-Bores.csv"), "utf8")).toMatch(/^2,73.05,0.0499999999999972,over,seen by 2nd person/m);
    expect(readFileSync(join(folder, "copy-Findings.csv"), "utf8")).toContain("over,Bores!C4,");
    convert("fods");
    const styles = readFileSync(join(folder, "copy.fods"), "utf8");
    for (const colour of COLOURS) expect(styles.includes(`fo:background-color="#${colour.toLowerCase()}"`)).toBe(true);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}, 180_000);
