import { Workbook, type Worksheet } from "@cj-tech-master/excelts";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import type { Cell } from "../src/core/cell.ts";
import { storeFormulas } from "../src/xlsx/formula-text.ts";

/** How a sample cell looks: what people type stands out from what is calculated; `wrapped`, `number` and `verdict` make a table of long words. */
export type SampleStyle =
  | "title"
  | "note"
  | "head"
  | "label"
  | "typed"
  | "typed3"
  | "words"
  | "result"
  | "result3"
  | "wrapped"
  | "number"
  | "verdict"
  | "master";

export interface SampleCell {
  address: string;
  content: number | string;
  look: SampleStyle;
  /** The block into which the formula spills, `F4:F9`. */
  spill?: string;
  /** The content is text, even where it starts with `=`. */
  isText?: boolean;
  /** How a number is shown, in place of what the look says: `0.000`. */
  format?: string;
}

export interface SampleSheet {
  name: string;
  widths: readonly number[];
  /** Rows that stay in view. */
  frozen: number;
  cells: SampleCell[];
  /** Cells of one column that are shaded unless they hold this, also while they hold an error. */
  flagged?: { cells: string; unless: string | number };
}

/** Calculated values by sheet and address, so that a viewer without the functions shows numbers too. */
export type CalculatedCell = (sheet: string, address: string) => Cell;

const FONT = { name: "Calibri", family: 2, size: 11 } as const;
const TYPED = { type: "pattern", pattern: "solid", fgColor: { argb: "FFFFF8E1" } } as const;
const HEAD = { type: "pattern", pattern: "solid", fgColor: { argb: "FFE3E8EC" } } as const;
// What conditional formatting calls the background is what shows.
const FLAGGED = { type: "pattern", pattern: "solid", bgColor: { argb: "FFF4B6B0" } } as const;
const THIN = { style: "thin", color: { argb: "FFB8C0C6" } } as const;

// Files made twice are the same byte for byte: no clock goes into them.
const DATE = new Date(Date.UTC(2026, 0, 5));

export async function writeWorkbook(sheets: readonly SampleSheet[], title: string, calculated: CalculatedCell): Promise<Uint8Array> {
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
    makeRoom(page, sheet);
    if (sheet.flagged) flag(page, sheet.flagged);
  }
  const written = unzipSync(new Uint8Array(await book.xlsx.writeBuffer()));
  const parts = new Map(Object.entries(written).map(([path, bytes]) => [path, strFromU8(bytes)]));
  const files = Object.fromEntries([...storeFormulas(parts)].map(([path, text]) => [path, strToU8(text)]));
  return zipSync(files, { mtime: DATE, level: 9 });
}

const LINE_HEIGHT = 15;

/** Rows as high as their wrapped words need; a width counts digits, which letters do not exceed on average. */
function makeRoom(page: Worksheet, { cells, widths }: SampleSheet): void {
  for (const { address, content, look } of cells) {
    if (look !== "wrapped" && look !== "head") continue;
    const lines = Math.ceil(String(content).length / (widths[address.charCodeAt(0) - 65]! - 1));
    const row = page.getRow(Number(address.slice(1)));
    row.height = Math.max(row.height ?? LINE_HEIGHT, lines * LINE_HEIGHT);
  }
}

function flag(page: Worksheet, { cells, unless }: NonNullable<SampleSheet["flagged"]>): void {
  const [first] = cells.split(":");
  const formula = `NOT(IFERROR(${first}=${JSON.stringify(unless)},FALSE))`;
  page.addConditionalFormatting({ ref: cells, rules: [{ type: "expression", priority: 1, formulae: [formula], style: { fill: FLAGGED } }] });
}

function put(page: Worksheet, sheet: string, { address, content, look, spill, isText, format }: SampleCell, calculated: CalculatedCell): void {
  const cell = page.getCell(address);
  if (typeof content === "string" && content.startsWith("=") && !isText) {
    const result = calculated(sheet, address) ?? "";
    cell.value = { formula: content.slice(1), result: result as number | string, ...(spill ? { shareType: "array", ref: spill } : {}) };
    if (spill) for (const inside of cellsOf(spill).slice(1)) page.getCell(inside).value = (calculated(sheet, inside) ?? "") as number | string;
  } else {
    cell.value = content;
  }
  for (const styled of spill ? cellsOf(spill) : [address]) style(page, styled, look);
  if (isText) cell.numFmt = "@";
  if (format) cell.numFmt = format;
}

/** Words that run on over the empty cells beside them, which a border would stop. */
const RUNS_ON: ReadonlySet<SampleStyle> = new Set<SampleStyle>(["title", "note", "words", "master"]);

function style(page: Worksheet, address: string, look: SampleStyle): void {
  const cell = page.getCell(address);
  cell.font = FONT;
  if (look === "title") cell.font = { ...FONT, bold: true, size: 14 };
  if (look === "note") cell.font = { ...FONT, italic: true, color: { argb: "FF5A646B" } };
  if (look === "head") {
    cell.font = { ...FONT, bold: true };
    cell.fill = HEAD;
    cell.alignment = { wrapText: true, vertical: "middle" };
  }
  if (look === "label") cell.alignment = { horizontal: "left" };
  if (look === "wrapped") cell.alignment = { wrapText: true, vertical: "top", horizontal: "left" };
  if (look === "number" || look === "verdict") cell.alignment = { vertical: "top" };
  if (look === "verdict") cell.font = { ...FONT, bold: true };
  if (look === "master") cell.font = { ...FONT, bold: true, size: 16 };
  if (look.startsWith("typed")) cell.fill = TYPED;
  if (look.endsWith("3")) cell.numFmt = "0.000";
  if (!RUNS_ON.has(look)) cell.border = { top: THIN, left: THIN, bottom: THIN, right: THIN };
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
