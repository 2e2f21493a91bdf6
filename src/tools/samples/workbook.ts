import { Workbook, type Worksheet } from "@cj-tech-master/excelts";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import type { Cell } from "../../core/cell.ts";
import { storeFormulas } from "../../sheet/xlsx/stored-formulas.ts";

/** How a sample cell looks: what people type stands out from what is calculated. */
export type Look = "title" | "note" | "head" | "label" | "typed" | "typed3" | "words" | "result" | "result3";

export interface SampleCell {
  address: string;
  content: number | string;
  look: Look;
  /** The block into which the formula spills, `F4:F9`. */
  spill?: string;
}

export interface SampleSheet {
  name: string;
  widths: readonly number[];
  /** Rows that stay in view. */
  frozen: number;
  cells: SampleCell[];
}

/** Calculated values by sheet and address, so that a viewer without the functions shows numbers too. */
export type Calculated = (sheet: string, address: string) => Cell;

const TYPED = { type: "pattern", pattern: "solid", fgColor: { argb: "FFFFF8E1" } } as const;
const HEAD = { type: "pattern", pattern: "solid", fgColor: { argb: "FFE3E8EC" } } as const;
const THIN = { style: "thin", color: { argb: "FFB8C0C6" } } as const;

// Files made twice are the same byte for byte: no clock goes into them.
const DATE = new Date(Date.UTC(2026, 0, 5));

export async function writeWorkbook(sheets: readonly SampleSheet[], title: string, calculated: Calculated): Promise<Uint8Array> {
  const book = new Workbook();
  book.creator = "Crosshatch samples";
  book.lastModifiedBy = "Crosshatch samples";
  book.title = title;
  book.created = DATE;
  book.modified = DATE;
  for (const sheet of sheets) {
    const page = book.addWorksheet(sheet.name, {
      views: [{ state: "frozen", ySplit: sheet.frozen, xSplit: 0 }],
      pageSetup: { paperSize: 9, orientation: "landscape", fitToPage: true, fitToWidth: 1, fitToHeight: 0 },
    });
    for (const [i, width] of sheet.widths.entries()) page.getColumn(i + 1).width = width;
    for (const cell of sheet.cells) put(page, sheet.name, cell, calculated);
  }
  const written = unzipSync(new Uint8Array(await book.xlsx.writeBuffer()));
  const parts = new Map(Object.entries(written).map(([path, bytes]) => [path, strFromU8(bytes)]));
  const files = Object.fromEntries([...storeFormulas(parts)].map(([path, text]) => [path, strToU8(text)]));
  return zipSync(files, { mtime: DATE, level: 9 });
}

function put(page: Worksheet, sheet: string, { address, content, look, spill }: SampleCell, calculated: Calculated): void {
  const cell = page.getCell(address);
  if (typeof content === "string" && content.startsWith("=")) {
    const result = calculated(sheet, address) ?? "";
    cell.value = { formula: content.slice(1), result: result as number | string, ...(spill ? { shareType: "array", ref: spill } : {}) };
    if (spill) for (const inside of cellsOf(spill).slice(1)) page.getCell(inside).value = (calculated(sheet, inside) ?? "") as number | string;
  } else {
    cell.value = content;
  }
  for (const styled of spill ? cellsOf(spill) : [address]) style(page, styled, look);
}

function style(page: Worksheet, address: string, look: Look): void {
  const cell = page.getCell(address);
  if (look === "title") cell.font = { bold: true, size: 14 };
  if (look === "note") cell.font = { italic: true, color: { argb: "FF5A646B" } };
  if (look === "head") {
    cell.font = { bold: true };
    cell.fill = HEAD;
    cell.alignment = { wrapText: true, vertical: "middle" };
  }
  if (look === "label") cell.alignment = { horizontal: "left" };
  if (look.startsWith("typed")) cell.fill = TYPED;
  if (look.endsWith("3")) cell.numFmt = "0.000";
  // Words run on over the empty cells beside them, which a border would stop.
  if (look !== "title" && look !== "note" && look !== "words") cell.border = { top: THIN, left: THIN, bottom: THIN, right: THIN };
}

/** The addresses of a block row by row: `A1:B2` gives A1, B1, A2, B2. */
export function cellsOf(range: string): string[] {
  const found = /^([A-Z])(\d+):([A-Z])(\d+)$/.exec(range);
  if (!found) throw new Error(`${range} is not a block of single-letter columns`);
  const [, left, top, right, bottom] = found as unknown as [string, string, string, string, string];
  const all: string[] = [];
  for (let row = Number(top); row <= Number(bottom); row++) {
    for (let column = left.charCodeAt(0); column <= right.charCodeAt(0); column++) all.push(`${String.fromCharCode(column)}${row}`);
  }
  return all;
}
