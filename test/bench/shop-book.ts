import { Workbook, type Worksheet } from "@cj-tech-master/excelts";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { storeFormulas } from "../../src/xlsx/formula-text.ts";

const YELLOW = "FFFFF8E1";

/** A shop's own workbook with what such a book has in it, as another program writes it. Invented. */
export async function shopBook(): Promise<Uint8Array> {
  const book = new Workbook();
  bores(book.addWorksheet("Bores", { views: [{ state: "frozen", ySplit: 1, xSplit: 0 }] }));
  oddments(book.addWorksheet("Odd & ends"));
  const owner = book.addWorksheet("Owner's");
  owner.getCell("A1").value = { formula: "Bores!C2*2", result: 146.04 };
  const hidden = book.addWorksheet("Old figures", { state: "hidden" });
  hidden.getCell("A1").value = 1;
  book.definedNames.add("Bores!$C$2:$D$4", "readings");
  book.definedNames.add("Bores!$G$1", "limit");
  return stored(new Uint8Array(await book.xlsx.writeBuffer()));
}

function bores(sheet: Worksheet): void {
  for (const [i, width] of [12, 20, 9.5].entries()) sheet.getColumn(i + 1).width = width;
  sheet.addRow(["Cylinder", "Height", "Thrust", "Pin", "Taper", "Verdict", 0.02]);
  for (const [height, thrust, pin] of [
    ["top", 73.02, 73.015],
    ["middle", 73.03, 73.02],
    ["bottom", 73.04, 73.03],
  ] as const) {
    sheet.addRow([1, height, thrust, pin]);
  }
  sheet.getCell("E2").value = { formula: "HATCH.TAPER(C2:D4)", result: 0.02 };
  sheet.getCell("F2").value = { formula: "HATCH.VERDICT(E2,,limit)", result: "within" };
  sheet.getCell("A6").value = { formula: "HATCH.BORESUMMARY(readings)", result: "smallest", shareType: "array", ref: "A6:G7" } as never;
  for (const address of ["C2", "D2", "C3", "D3", "C4", "D4"]) {
    const cell = sheet.getCell(address);
    cell.fill = { type: "pattern", pattern: "solid", fgColor: { argb: YELLOW } };
    cell.numFmt = "0.000";
  }
  sheet.getRow(1).font = { bold: true, italic: true, size: 13, color: { argb: "FF1F3864" } };
  sheet.getCell("E2").border = { top: { style: "thin", color: { argb: "FF808080" } } };
  sheet.mergeCells("A9:D9");
  sheet.getCell("A9").value = "measured at 20 °C";
  sheet.getCell("A9").alignment = { horizontal: "center" };
}

function oddments(sheet: Worksheet): void {
  sheet.getCell("A1").value = "73.04";
  sheet.getCell("A2").value = "=1+1";
  sheet.getCell("A3").value = "-not a number";
  sheet.getCell("A4").value = "+49 30 1234";
  sheet.getCell("A5").value = "@home";
  sheet.getCell("A6").value = "'quoted";
  sheet.getCell("A7").value = 'two\nlines & <signs> "quoted"';
  sheet.getCell("A8").value = " padded ";
  sheet.getCell("A9").value = "1/2";
  sheet.getCell("A10").value = "⌀ 73 µm";
  sheet.getCell("B1").value = true;
  sheet.getCell("B2").value = new Date(Date.UTC(2026, 0, 5));
  sheet.getCell("B2").numFmt = "yyyy-mm-dd";
  sheet.getCell("B3").value = { error: "#N/A" } as never;
  sheet.getCell("B4").value = 1.5e-7;
  sheet.getCell("B5").value = { formula: "1/0", result: { error: "#DIV/0!" } } as never;
  sheet.getCell("B6").value = { formula: 'IF(A9="1/2","a ""b""","")', result: 'a "b"' };
  sheet.getCell("B7").value = { formula: "SUM(FILTER(Bores!C2:C4,Bores!C2:C4>73.025))", result: 146.07 };
  sheet.getCell("B8").value = { formula: "MYSTERY(1)", result: 7 };
  sheet.getCell("B9").value = { text: "standards", hyperlink: "https://example.org/" };
  sheet.addTable({
    name: "Gaps",
    ref: "D1",
    headerRow: true,
    columns: [{ name: "Ring" }, { name: "Gap" }],
    rows: [
      ["top", 0.3],
      ["second", 0.35],
    ],
  });
  sheet.getCell("D5").value = { formula: "SUM(Gaps[Gap])", result: 0.65 };
}

/** Calls and spills as files hold them. */
function stored(bytes: Uint8Array): Uint8Array {
  const parts = new Map(Object.entries(unzipSync(bytes)).map(([path, part]) => [path, strFromU8(part)]));
  return zipSync(Object.fromEntries([...storeFormulas(parts)].map(([path, xml]) => [path, strToU8(xml)])));
}

/** A workbook as excelts reads it: a reader that has nothing to do with ours or the engine. */
export async function readElsewhere(bytes: Uint8Array): Promise<Workbook> {
  const book = new Workbook();
  await book.xlsx.load(bytes as never);
  return book;
}
