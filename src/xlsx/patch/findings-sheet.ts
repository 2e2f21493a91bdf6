import { CHECK_PREFIX } from "../../core/sentences.ts";
import { cellName, placeName } from "../../workbook/address.ts";
import { type CellMark, MARK_FILL } from "../../workbook/port.ts";
import { escapedXml } from "../xml.ts";
import { cellXmlText } from "./edit.ts";
import type { StylesPatch } from "./styles.ts";

/** A line of the sheet: the cell that is marked, and what is said of it. */
export interface FindingLine extends CellMark {
  /** The finding's word, as the verdict says it. */
  word: string;
  /** What is judged, in the shop's own words. */
  label: string;
  sentence: string;
}

export interface FindingsPage {
  lines: readonly FindingLine[];
  /** What there is to say of the whole: counts, and what was not calculated. */
  remarks: readonly string[];
}

/** The first cell of the sheet, by which it is known again. */
export const TITLE = "Findings of Crosshatch";
export const SHEET_NAME = "Findings";
const HEADINGS = ["Finding", "Cell", "What", "In words"];
const WIDTHS = [17, 20, 34, 80];
/** More than anyone reads; the command line and its list have them all. */
const MOST = 10_000;
const LONGEST = 32_000;

/**
 * The sheet that says in words what the colours say: text alone, each line with a link to its cell. It
 * is a sheet of its own, because notes at the cells would take the place of the shop's, and touch the
 * drawings and people that hang on them; a sheet at the end touches nothing that is there.
 */
export function findingsSheet({ lines, remarks }: FindingsPage, namespace: string, styles: StylesPatch): string {
  const head = [TITLE, ...remarks, ""].map((text) => [text]);
  const listed = lines.slice(0, MOST);
  const left = lines.length - listed.length;
  const rows = [...head, lines.length > 0 ? HEADINGS : []];
  const first = rows.length;
  const xml = rows.map((texts, row) => rowXml(row, texts));
  const links: string[] = [];
  for (const [i, line] of listed.entries()) {
    const row = first + i;
    const place = placeName(line.cell);
    xml.push(rowXml(row, [line.word, place, line.label, line.sentence], styles.filled(0, MARK_FILL[line.tone])));
    links.push(`<hyperlink ref="${cellName({ row, column: 1 })}" location="${escapedXml(place)}" display="${escapedXml(place)}"/>`);
  }
  if (left > 0) xml.push(rowXml(first + listed.length, [`and ${left.toLocaleString("en")} more, all marked in their cells`]));
  const columns = WIDTHS.map((width, i) => `<col min="${i + 1}" max="${i + 1}" width="${width}" customWidth="1"/>`).join("");
  const hyperlinks = links.length > 0 ? `<hyperlinks>${links.join("")}</hyperlinks>` : "";
  return `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<worksheet xmlns="${namespace}"><cols>${columns}</cols><sheetData>${xml.join("")}</sheetData>${hyperlinks}</worksheet>`;
}

/** Rows of text; `style` is that of the first cell. */
function rowXml(row: number, texts: readonly string[], style = 0): string {
  const cells = texts.map((text, column) => {
    if (text === "") return "";
    const s = column === 0 && style > 0 ? ` s="${style}"` : "";
    return `<c r="${cellName({ row, column })}"${s} t="inlineStr"><is><t xml:space="preserve">${cellXmlText(harmless(text))}</t></is></c>`;
  });
  return `<row r="${row + 1}">${cells.join("")}</row>`;
}

/** Words of the shop's that would read as a fault of a function are quoted, and not reported once more. */
const harmless = (text: string): string => (text.startsWith(CHECK_PREFIX) ? `“${text}”` : text).slice(0, LONGEST);
