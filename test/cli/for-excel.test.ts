import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { root } from "../../src/tools/paths.ts";
import { readXlsx } from "../../src/xlsx/read/read.ts";
import { crosshatch } from "./run.ts";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "crosshatch-for-excel-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const SAMPLE = readFileSync(join(root, "samples", "build-sheet.xlsx"));

/** The sample as LibreOffice 7.4.7 leaves it: our names as people type them, no marks of arrays that may spill, empty names of macros. */
function fromLibreOffice(): Uint8Array {
  const parts = unzipSync(SAMPLE);
  delete parts["xl/metadata.xml"];
  const change = (name: string, make: (xml: string) => string) => {
    parts[name] = strToU8(make(strFromU8(parts[name]!)));
  };
  for (const name of Object.keys(parts)) {
    if (/worksheets\/sheet\d+\.xml$/.test(name))
      change(name, (xml) =>
        xml.replaceAll("_xldudf_HATCH_", "HATCH.").replaceAll(' cm="1"', "").replaceAll("<f ", '<f aca="false" ').replaceAll('"</f>', "&quot;</f>"),
      );
  }
  change("[Content_Types].xml", (xml) => xml.replace(/<Override PartName="\/xl\/metadata.xml"[^>]*>/, ""));
  change("xl/_rels/workbook.xml.rels", (xml) => xml.replace(/<Relationship [^>]*sheetMetadata[^>]*>/, ""));
  change("xl/workbook.xml", (xml) =>
    xml.replace("</definedNames>", '<definedName function="true" hidden="false" name="HATCH.TAPER" vbProcedure="true"></definedName></definedNames>'),
  );
  return zipSync(parts);
}

test("for-excel gives a workbook of LibreOffice the form in which Excel stores our functions", async () => {
  const [given, out] = [join(folder, "from.xlsx"), join(folder, "to.xlsx")];
  writeFileSync(given, fromLibreOffice());
  const { code, out: said, err } = await crosshatch(["for-excel", given, out]);
  expect({ code, err }).toEqual({ code: 0, err: "" });
  expect(said).toMatch(/to\.xlsx: 70 formulas of ours as Excel stores them\.\n$/);
  expect(readXlsx(readFileSync(out))).toEqual(readXlsx(SAMPLE));
  const parts = unzipSync(readFileSync(out));
  const text = (name: string): string => strFromU8(parts[name]!);
  expect(text("xl/workbook.xml")).not.toContain("HATCH.");
  expect(text("xl/workbook.xml")).toContain('fullCalcOnLoad="1"');
  expect(text("xl/worksheets/sheet1.xml")).toMatch(/<c r="[A-Z]+\d+"[^>]* cm="1"><f[^>]* t="array" ref="[A-Z]+\d+[^"]*">_xldudf_HATCH_TAPER\(/);
  expect(text("xl/metadata1.xml")).toContain("XLDAPR");
  expect(text("[Content_Types].xml")).toContain('PartName="/xl/metadata1.xml"');
  expect(text("xl/_rels/workbook.xml.rels")).toContain('/sheetMetadata" Target="metadata1.xml"');
  expect((await crosshatch(["check", out, "--json"])).out.replaceAll(out, "")).toBe((await crosshatch(["check", given, "--json"])).out.replaceAll(given, ""));
});

test.each([
  ["sheet.ods", "to.xlsx", "is an OpenDocument file: open it in LibreOffice and use Save a copy for Excel there"],
  ["from.xlsx", "to.ods", "does not end with .xlsx, which is what is written"],
  ["from.xlsx", "from.xlsx", "is one of the files to be checked: give another name for the copy"],
  ["text.xlsx", "to.xlsx", "is a text file, not a workbook"],
  ["none.xlsx", "to.xlsx", "is not there"],
])("%s to %s is refused", async (given, out, sentence) => {
  writeFileSync(join(folder, "from.xlsx"), SAMPLE);
  writeFileSync(join(folder, "text.xlsx"), "readings");
  const { code, err } = await crosshatch(["for-excel", join(folder, given), join(folder, out)]);
  expect(code).toBe(2);
  expect(err).toContain(sentence);
});
