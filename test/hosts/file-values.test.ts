import { Workbook } from "@cj-tech-master/excelts";
import type { Cell } from "../../src/core/cell.ts";
import { type FileHost, openWorkbook, UnreadableFile } from "../../src/hosts/file.ts";
import { type CellXml, oneSheet, workbookBytes } from "../xlsx/workbook-bytes.ts";

const opened = (cells: CellXml[][]): Promise<FileHost> => openWorkbook(oneSheet(cells), "bores.xlsx");
const values = async (host: FileHost): Promise<Cell[][]> => (await host.read()).sheets[0]!.values;
const array = (f: string, ref: string, grows: boolean): CellXml => ({ f, v: 999, attributes: ` t="array" ref="${ref}"`, cell: grows ? ' cm="1"' : "" });

const BORES: CellXml[][] = [
  [73.01, 73, 73.02, 73],
  [73.04, 73, 73.05, 73],
  [73, 73, 73, 73],
];

describe("values that the file holds for formulas do not count", () => {
  test.each<[string, CellXml]>([
    ["old", { f: "HATCH.PISTONCLEARANCE(A1,B1)", v: 5 }],
    ["missing", { f: "HATCH.PISTONCLEARANCE(A1,B1)" }],
    ["an error of a program that does not know the function", { raw: '<c r="C1" t="e"><f>HATCH.PISTONCLEARANCE(A1,B1)</f><v>#NAME?</v></c>' }],
    ["stored as an add-in's function", { f: "_xldudf_HATCH_PISTONCLEARANCE(A1,B1)", v: 5 }],
    ["in small letters", { f: "hatch.pistonclearance(A1,B1)", v: 5 }],
  ])("%s", async (_, cell) => {
    const host = await opened([[73.04, 73, cell]]);
    expect(await values(host)).toEqual([[73.04, 73, 0.04]]);
    expect((await host.read()).sheets[0]!.formulas[0]![2]).toBe("=HATCH.PISTONCLEARANCE(A1,B1)");
  });

  test("a chain of formulas over sheets settles, in whatever order it stands", async () => {
    const bytes = workbookBytes({
      sheets: [
        { name: "Summary", cells: [[{ f: "HATCH.VERDICT(Bores!C1,,Limits!A1)", v: "over" }]] },
        { name: "Bores", cells: [[73.04, 73, { f: "HATCH.CLEARANCE(A1,B1)", v: 1 }]] },
        { name: "Limits", cells: [[{ f: "0.02*2", v: 0 }]] },
      ],
    });
    expect(await values(await openWorkbook(bytes, "x.xlsx"))).toEqual([["within"]]);
  });
});

describe("spills", () => {
  test("the values of the last spill do not stand in the way of this one, which may be longer", async () => {
    const cells = BORES.map((row, r) => [...row, r === 0 ? array("HATCH.TAPER(A1:D3,2)", "E1:E2", true) : r === 1 ? 0.5 : null]);
    expect((await values(await opened(cells))).map((row) => row[4])).toEqual([0.01, 0.01, 0]);
  });

  test("a spill that finds a typed value in its way says so, as in other sheets", async () => {
    const cells = BORES.map((row, r) => [...row, r === 0 ? array("HATCH.TAPER(A1:D3,2)", "E1", true) : r === 2 ? "note" : null]);
    const column = (await values(await opened(cells))).map((row) => row[4]);
    expect(column).toEqual([{ error: "#SPILL!", message: expect.stringContaining("overwrite") }, null, "note"]);
  });

  test("a formula that the file does not mark as spilling spills where there is room, and shows its first value where there is none", async () => {
    const cells = BORES.map((row, r): CellXml[] => [
      ...row,
      r === 0 ? { f: "HATCH.TAPER(A1:D3,2)", v: 1 } : null,
      null,
      r === 0 ? { f: "HATCH.TAPER(A1:D3,2)", v: 1 } : "in the way",
    ]);
    const found = await values(await opened(cells));
    expect(found.map((row) => row[4])).toEqual([0.01, 0.01, 0]);
    expect(found.map((row) => row[6])).toEqual([0.01, "in the way", "in the way"]);
  });

  test("a result far larger than the sheet finds room", async () => {
    const found = await values(await opened([[array("SEQUENCE(300,60)", "A1", true)]]));
    expect([found.length, found[0]!.length, found[299]![59]]).toEqual([300, 60, 18_000]);
  });

  test("an array formula of the old kind fills just its cells: cut, repeated, or #N/A", async () => {
    const none: CellXml[] = [];
    const cells = [[1, array("A1:A3*2", "B1:B2", false), array("A1*2", "C1:C2", false), array("A1:A3*2", "D1:D5", false)], [2], [3], none, none] as CellXml[][];
    const found = await values(await opened(cells));
    expect(found.map((row) => row[1])).toEqual([2, 4, null, null, null]);
    expect(found.map((row) => row[2])).toEqual([2, 2, null, null, null]);
    const missing = { error: "#N/A", message: "The array formula fills more cells than it has results." };
    expect(found.map((row) => row[3])).toEqual([2, 4, 6, missing, missing]);
  });

  test("a spilled block can be referred to by its head", async () => {
    const cells = BORES.map((row, r): CellXml[] => [
      ...row,
      r === 0 ? array("HATCH.TAPER(A1:D3,2)", "E1:E3", true) : null,
      r === 0 ? { f: "SUM(_xlfn.ANCHORARRAY(E1))" } : null,
    ]);
    expect((await values(await opened(cells)))[0]![5]).toBe(0.02);
  });
});

describe("a workbook written by a library (excelts)", () => {
  async function written(): Promise<Uint8Array> {
    const book = new Workbook();
    const sheet = book.addWorksheet("Bore book");
    sheet.addRow(["Cylinder", "Bore", "Skirt", "Clearance", "Measured on"]);
    sheet.addRow([1, 73.04, 73, { formula: "HATCH.PISTONCLEARANCE(B2,C2)", result: 7 }, new Date(Date.UTC(2024, 0, 1))]);
    sheet.addRow([2, null, "73,01", { formula: "HATCH.PISTONCLEARANCE(B3,C3)" }, null]);
    sheet.getCell("A5").value = { richText: [{ text: "two " }, { font: { bold: true }, text: "runs" }] };
    book.addWorksheet("Limits", { state: "hidden" }).addRow([0.04, true]);
    book.definedNames.add("Limits!$A$1", "MostClearance");
    sheet.getCell("F2").value = { formula: "HATCH.VERDICT(D2,,MostClearance)" };
    return new Uint8Array(await book.xlsx.writeBuffer());
  }

  test("reads with its dates as numbers, its blanks as blanks and its formulas calculated", async () => {
    const { sheets, name } = await (await openWorkbook(await written(), "book.xlsx")).read();
    expect([name, sheets.map((sheet) => sheet.name)]).toEqual(["book.xlsx", ["Bore book", "Limits"]]);
    expect(sheets[0]!.values.slice(0, 3)).toEqual([
      ["Cylinder", "Bore", "Skirt", "Clearance", "Measured on", null],
      [1, 73.04, 73, 0.04, 45292, "within"],
      [
        2,
        null,
        "73,01",
        { error: "#VALUE!", message: expect.stringMatching(/^PISTONCLEARANCE: skirt holds the text "73,01": a decimal comma is not read/) },
        null,
        null,
      ],
    ]);
    expect(sheets[0]!.values[4]![0]).toBe("two runs");
    expect(sheets[1]!.values).toEqual([[0.04, true]]);
  });
});

describe("the host", () => {
  test("a file that cannot be read is named, with the reason", async () => {
    const refused = openWorkbook(new TextEncoder().encode("hello"), "notes.xlsx");
    await expect(refused).rejects.toBeInstanceOf(UnreadableFile);
    await expect(refused).rejects.toThrow(/^notes\.xlsx is a text file, not a workbook/);
  });

  test("a write is calculated through", async () => {
    const host = await opened([[73.04, 73, { f: "HATCH.CLEARANCE(A1,B1)" }, { f: "C1*2" }]]);
    await host.write([{ sheet: "Sheet1", row: 0, column: 0, cells: [[73.05, null, null, null, "=HATCH.TAPER({73.02,73;73,73},1)"]] }]);
    expect(await values(host)).toEqual([
      [73.05, 73, 0.05, 0.1, 0.02],
      [null, null, null, null, 0],
    ]);
  });

  test("dates that count from 1904 are pointed out", async () => {
    const bytes = workbookBytes({ properties: '<workbookPr date1904="1"/>', sheets: [{ name: "A", cells: [[1]] }] });
    expect((await openWorkbook(bytes, "x.xlsx")).notes()).toEqual([
      "Dates in this workbook count from 1904: functions of dates may be off by four years and a day.",
    ]);
  });

  test("the engine's own talk does not reach the terminal", async () => {
    const said: unknown[] = [];
    const { debug, log, warn } = console;
    Object.assign(console, {
      debug: (...words: unknown[]) => said.push(words),
      log: (...words: unknown[]) => said.push(words),
      warn: (...words: unknown[]) => said.push(words),
    });
    await (await opened([[1, { f: "A1+1" }]])).read();
    Object.assign(console, { debug, log, warn });
    expect(said).toEqual([]);
  });
});
