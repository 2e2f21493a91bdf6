import { type Cell, isCellError, LONGEST_TEXT } from "../../core/cell.ts";
import { areaText, keyOf } from "../../workbook/address.ts";
import type { CalculatedWorkbook, CellFile, WorkbookFile } from "../model.ts";
import { unescapeText } from "../xml.ts";
import { cellXmlText } from "./edit.ts";

/** What is to be changed in the cells of a sheet, each by `keyOf` its place. */
export interface SheetChanges {
  /** What formulas come to, and what stands in the cells that their results fill; `null` empties one. */
  values: Map<number, Cell>;
  /** Which of them are cells with a formula. */
  formulas: Set<number>;
  /** How far the result of a formula reaches, as its `ref` says it, where that has changed. */
  reaches: Map<number, string>;
  /** Cells that get another look. */
  restyled: Set<number>;
}

/** What a sheet shares with others of its workbook. */
export interface Around {
  /** The number of the style that a cell is to have, for that of the one that it has. */
  restyle(key: number, style: number): number;
  /** The text of a number that stands for one. */
  shared(index: number): string | undefined;
}

/**
 * What the cells of a sheet are to hold that formulas fill: every formula's value, and for array
 * formulas the cells that their results reach. A formula without the mark of one fills its own cell
 * alone, whatever it comes to. Left alone are formulas of which the file says more than we know.
 */
export function valueChanges(book: WorkbookFile, sheet: number, calculated: CalculatedWorkbook): Pick<SheetChanges, "values" | "formulas" | "reaches"> {
  const changes = { values: new Map(), formulas: new Set(), reaches: new Map() } as Pick<SheetChanges, "values" | "formulas" | "reaches">;
  const { values: results } = calculated.sheets[sheet]!;
  const unknown = calculated.unknown();
  for (const cell of book.sheets[sheet]!.cells) {
    if (cell.formula === undefined || unknown.has(cell)) continue;
    const { row, column } = cell;
    changes.formulas.add(keyOf(cell));
    const stored = cell.array ?? { rows: 1, columns: 1 };
    const reach = reachOf(cell, calculated);
    for (let r = 0; r < Math.max(stored.rows, reach.rows); r++) {
      for (let c = 0; c < Math.max(stored.columns, reach.columns); c++) {
        const within = r < reach.rows && c < reach.columns;
        if (!within && (r >= stored.rows || c >= stored.columns)) continue;
        const value = within ? (results[row + r]?.[column + c] ?? null) : null;
        // A formula always comes to something: to blank text where there is nothing.
        changes.values.set(keyOf({ row: row + r, column: column + c }), r + c === 0 ? (value ?? "") : value);
      }
    }
    if (reach.rows === stored.rows && reach.columns === stored.columns) continue;
    changes.reaches.set(keyOf(cell), areaText({ sheet: "", row, column, ...reach }).slice(3));
  }
  return changes;
}

/** The cells that a formula fills now. */
function reachOf(cell: CellFile, { spillSizes }: CalculatedWorkbook): { rows: number; columns: number } {
  if (!cell.array) return { rows: 1, columns: 1 };
  return cell.array.grows ? (spillSizes.get(cell) ?? { rows: 1, columns: 1 }) : cell.array;
}

/** The errors that a cell can hold by themselves (ECMA-376 part 1, 18.18.11 and 18.17.3); newer ones are kept beside it, which is not done here. */
const ERRORS = new Set(["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A", "#GETTING_DATA"]);
const DIGITS = 15;

/** A cell's value as its element has it: the attribute `t`, and what stands in `<v>`. */
interface StoredContent {
  type: string | null;
  text: string;
}

/** How a value that is worked out is stored; `null` for a cell that holds none. */
export function storedContent(value: Cell): StoredContent | null {
  if (value === null) return null;
  if (isCellError(value)) return { type: "e", text: ERRORS.has(value.error) ? value.error : "#VALUE!" };
  if (typeof value === "boolean") return { type: "b", text: value ? "1" : "0" };
  if (typeof value === "string") return { type: "str", text: value.slice(0, LONGEST_TEXT) };
  return Number.isFinite(value) ? { type: null, text: String(value) } : { type: "e", text: "#NUM!" };
}

/** The same value as one that is stored, by all digits that a sheet keeps of a number. `shared` gives the workbook's shared texts. */
export function isStored(
  { type, text }: StoredContent,
  stored: { type: string | undefined; text: string | null },
  shared: (index: number) => string | undefined,
): boolean {
  if (stored.text === null) return false;
  if (stored.type === "s") return type === "str" && shared(Number(stored.text)) === text;
  if ((stored.type ?? "n") !== (type ?? "n")) return false;
  if (type === "str") return unescapeText(stored.text) === text;
  if (type !== null) return stored.text.trim() === text;
  const number = stored.text.trim() === "" ? Number.NaN : Number(stored.text);
  return number === Number(text) || number.toPrecision(DIGITS) === Number(text).toPrecision(DIGITS);
}

/** `<v>…</v>`. Blanks at its ends would else be dropped. */
export function valueXml({ text }: StoredContent, prefix: string): string {
  const space = /^\s|\s$|[\n\t]/.test(text) ? ' xml:space="preserve"' : "";
  return `<${prefix}v${space}>${cellXmlText(text)}</${prefix}v>`;
}
