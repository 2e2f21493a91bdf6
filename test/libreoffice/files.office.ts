import { readFileSync } from "node:fs";
import { join } from "node:path";
import { strFromU8, unzipSync } from "fflate";
import type { Cell } from "../../src/core/cell.ts";
import { openWorkbook } from "../../src/hosts/file.ts";
import { writeOds } from "../../src/ods/write.ts";
import { root } from "../../src/tools/paths.ts";
import { readXlsx } from "../../src/xlsx/read/read.ts";
import { filledSheet } from "../compare/filled-sheets.ts";
import { Made } from "../setup/made.ts";
import { workbookBytes } from "../xlsx/workbook-bytes.ts";
import { compared, typeInto } from "./compared.ts";
import type { Office } from "./office.ts";
import { officeWithExtension } from "./stand.ts";

let office: Office;
beforeAll(async () => {
  office = await officeWithExtension();
}, 120_000);
afterAll(() => office.close());

const sample = (name: string): Buffer => readFileSync(join(root, "samples", name));

async function open(key: string, bytes: Uint8Array, ending = "xlsx"): Promise<void> {
  await office.ask("open", { key, file: office.put(`${key}.${ending}`, bytes), calculate: false });
}

/** Formulas of a workbook as .xlsx, ours among them. */
async function counted({ host }: Made): Promise<{ own: number; formulas: number }> {
  const formulas = host.contents().book.sheets.flatMap(({ cells }) => cells.flatMap(({ formula }) => formula ?? []));
  return { own: formulas.filter((one) => one.includes("HATCH.")).length, formulas: formulas.length };
}

/** What the parts of a small workbook are, without which LibreOffice does not know it. */
const TYPES = `<?xml version="1.0" encoding="UTF-8"?><Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="xml" ContentType="application/xml"/><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>${[
  ["workbook", "sheet.main"],
  ["worksheets/sheet1", "worksheet"],
]
  .map(([part, kind]) => `<Override PartName="/xl/${part}.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.${kind}+xml"/>`)
  .join("")}</Types>`;

const MOST = { cylinders: 16, heights: 5, axes: 4, valves: 5, unit: "in", secondReadings: true };

test("names and conditional formats call our functions too, and go back to Excel as they came", async () => {
  const format = (priority: number, formula: string) =>
    `<conditionalFormatting sqref="A${priority}"><cfRule type="expression" priority="${priority}"><formula>${formula}</formula></cfRule></conditionalFormatting>`;
  const formulas = ["_xldudf_HATCH_TAPER(Sheet1!$A$1:$D$2,2)", '_xldudf_HATCH_VERDICT(A1,1,2)="_xldudf_HATCH_TAPER(A1)"', "A2&gt;1"];
  const bytes = workbookBytes({
    sheets: [
      {
        name: "Sheet1",
        cells: [
          [73.01, 73.02, 73, 73.03, { f: "Taper_here", attributes: ' t="array" ref="E1:E2"' }],
          [73.02, 73.02, 73.02, 73.03],
        ],
        after: formulas.map((one, i) => format(i + 1, one)).join(""),
      },
    ],
    names: `<definedName name="Plain">Sheet1!$A$1</definedName><definedName name="Taper_here">${formulas[0]}</definedName>`,
    parts: { "[Content_Types].xml": TYPES },
  });
  await open("names", bytes);
  expect(await office.ask("named", { key: "names" })).toMatchObject({ Taper_here: "HATCH.TAPER($Sheet1.$A$1:$D$2;2)", Plain: "$Sheet1.$A$1" });
  expect(await office.ask("conditions", { key: "names", sheet: "Sheet1" })).toEqual([
    "HATCH.TAPER($Sheet1.$A$1:$D$2,2)",
    'HATCH.VERDICT(A1,1,2)="_xldudf_HATCH_TAPER(A1)"',
    "A2>1",
  ]);
  // A bore a row, two heights of two axes: the larger of 73.01 − 73.00 and 73.03 − 73.02, of 0 and 73.03 − 73.02.
  expect(await office.ask("cells", { key: "names", sheet: "Sheet1", box: [4, 0, 4, 1] })).toEqual([[0.01], [0.01]]);
  expect(await office.ask("state", { key: "names" })).toMatchObject({ modified: false, undo: false });
  const copy = join(office.folder, "names-for-excel.xlsx");
  await office.ask("command", { service: "crosshatch.Menu", text: `save-for-excel ${copy}` });
  await office.ask("close", { key: "names" });
  const written = readFileSync(copy);
  expect(readXlsx(written).names).toEqual(readXlsx(bytes).names);
  const sheet = strFromU8(unzipSync(written)["xl/worksheets/sheet1.xml"]!);
  expect([...sheet.matchAll(/<formula>([^<]*)</g)].map(([, formula]) => formula!.replaceAll("&quot;", '"').replaceAll("$Sheet1.", "Sheet1!"))).toEqual(
    formulas,
  );
});

describe("a workbook as Excel stores it shows, once opened, what we calculate of it", () => {
  test.each([
    ["a build sheet for one cylinder", { cylinders: 1 }, 40],
    ["a build sheet for three", { cylinders: 3 }, 130],
    ["a build sheet for sixteen with all there is", MOST, 1300],
  ])("%s", async (_, choices, least) => {
    const made = await Made.of(choices);
    await open("new", made.bytes);
    const { own, differences } = await compared(office, "new", made.host);
    expect(differences).toEqual([]);
    expect(own).toBeGreaterThan(least);
    await office.ask("close", { key: "new" });
  });

  test.each([
    ["one for LibreOffice (.ods) for three cylinders", { cylinders: 3 }],
    ["one for LibreOffice (.ods) for sixteen with all there is", MOST],
  ])("%s, with its names, tables and no error", async (_, choices) => {
    const made = await Made.of(choices);
    const bytes = writeOds(made.book);
    await open("ods", bytes, "ods");
    const { own, formulas, differences } = await compared(office, "ods", await openWorkbook(bytes, "new.ods"));
    expect(differences).toEqual([]);
    expect({ own, formulas }).toEqual(await counted(made));
    const { names } = await office.ask<{ names: string[] }>("state", { key: "ods" });
    expect(names.sort()).toEqual(made.book.names.map(({ name }) => name).sort());
    for (const { name, frozen } of made.book.sheets)
      expect([name, await office.ask("frozen", { key: "ods", sheet: name })]).toEqual([name, [frozen.columns, frozen.rows]]);
    await office.ask("close", { key: "ods" });
  });

  test("a build sheet that is filled in there, and one with gaps", async () => {
    const made = await filledSheet({ second: [0.001, 0.02, 0] });
    await open("filled", made.bytes);
    await typeInto(office, "filled", made.host);
    expect((await compared(office, "filled", made.host)).differences).toEqual([]);
    for (const [table, heading, index] of [
      ["BoreReadings", "Top pin", 1],
      ["PistonReadings", "Skirt", 2],
      ["ValveReadings", "Clearance", 0],
      ["PressureTests", "Dry", 1],
    ] as const) {
      const at = made.at(table, heading, index);
      await made.host.write([{ ...at, cells: [[""]] }]);
      await office.ask("type", { key: "filled", ...at, formulas: [[""]] });
    }
    expect((await compared(office, "filled", made.host)).differences).toEqual([]);
    await office.ask("close", { key: "filled" });
  });

  test("the sample build sheet, which stays unmodified and has no undo step", async () => {
    const bytes = sample("build-sheet.xlsx");
    await open("sample", bytes);
    expect((await compared(office, "sample", await openWorkbook(bytes, "sample"))).differences).toEqual([]);
    expect(await office.ask("state", { key: "sample" })).toMatchObject({ modified: false, undo: false });
    await office.ask("close", { key: "sample" });
  });

  test("the self-check says there that all checks agree", async () => {
    const bytes = sample("self-check.xlsx");
    await open("self-check", bytes);
    const [[master]] = (await office.ask<Cell[][]>("cells", { key: "self-check", sheet: "Self-check", box: [0, 3, 0, 3] })) as [[Cell]];
    expect(master).toMatch(/^all \d{3,} checks agree$/);
    expect((await compared(office, "self-check", await openWorkbook(bytes, "self-check"))).differences).toEqual([]);
    await office.ask("close", { key: "self-check" });
  });
});
