import type { Model } from "@odoo/o-spreadsheet";
import { type Cell, isCellError } from "../core/cell.ts";
import { parseFormula } from "../formula/parse.ts";
import { gridFormulaAt, gridValue } from "../hosts/bench/host.ts";
import { escapedXml } from "../xlsx/xml.ts";
import { formulaForFile } from "./stored-formula.ts";

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters that XML 1.0 cannot hold, besides the surrogates and the two last
const UNSPEAKABLE = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]/g;

const LIKE_AN_ESCAPE = /_(?=x[\da-f]{4}_)/gi;

/**
 * Text of a cell: workbook files write a character that XML cannot hold as `_x0007_`, and so an
 * underscore before something that looks like that as `_x005F_` (ECMA-376 part 1, 22.4.2.4).
 */
const cellText = (text: string): string =>
  escapedXml(
    text.replace(LIKE_AN_ESCAPE, "_x005F_").replace(UNSPEAKABLE, (character) => `_x${character.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}_`),
  );

const CELL_RULE = /<cfRule\b[^>]*\btype="cellIs"[^>]*>[\s\S]*?<\/cfRule>/g;

/**
 * A sheet's part with its fills by rules as other programs take them: the grid writes text as if it were a formula,
 * formulas with their `=`, and gives all the same priority.
 */
export function withFills(model: Model, sheetId: string, xml: string): string {
  const texts = comparedTexts(model, sheetId);
  let priority = 0;
  return xml
    .replace(CELL_RULE, (rule) =>
      rule.replace(/<formula>([^<]*)<\/formula>/g, (formula, text: string) => (texts.has(text) ? quoted(text) : formula.replace(">=", ">"))),
    )
    .replace(/(<cfRule\b[^>]*? priority=)"\d+"/g, (_, start: string) => `${start}"${++priority}"`);
}

const quoted = (text: string): string => `<formula>"${text.replaceAll('"', '""')}"</formula>`;

/** Text between tags, where a quote stands for itself. */
const inElement = (text: string): string => escapedXml(text).replaceAll("&quot;", '"');

/** Texts, as XML has them, with which cells are compared for their fill. */
function comparedTexts({ getters }: Model, sheetId: string): Set<string> {
  const values = getters.getConditionalFormats(sheetId).flatMap(({ rule }) => (rule.type === "CellIsRule" ? rule.values : []));
  return new Set(values.filter((value) => value !== "" && !value.startsWith("=") && !Number.isFinite(Number(value))).map(inElement));
}

/** What a cell holds, as the file is to hold it. */
export interface SavedCell {
  /** In the file's spelling, without `=`. */
  formula?: string;
  /** The range that the formula fills. */
  spill?: string;
  value: Cell;
}

/** Texts of a workbook file, which its cells point to by number. */
export class SharedStrings {
  readonly #numbers = new Map<string, number>();

  numberOf(text: string): number {
    const known = this.#numbers.get(text);
    if (known !== undefined) return known;
    const number = this.#numbers.size;
    this.#numbers.set(text, number);
    return number;
  }

  xml(): string {
    const items = [...this.#numbers.keys()].map((text) => `<si><t xml:space="preserve">${cellText(text)}</t></si>`);
    return `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<sst xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" uniqueCount="${items.length}">${items.join("")}</sst>`;
  }
}

/** `C7` for column 2 and row 6. */
export type ToName = (column: number, row: number) => string;

/** Everything that the cells of a sheet hold, by address. */
export function savedCells(model: Model, sheetId: string, toName: ToName): Map<string, SavedCell> {
  const cells = new Map<string, SavedCell>();
  for (const position of model.getters.getEvaluatedCellsPositions(sheetId)) {
    const name = toName(position.col, position.row);
    const value = gridValue(model, position);
    const typed = gridFormulaAt(model, position);
    if (typed === null) {
      if (value !== null && value !== undefined) cells.set(name, { value });
      continue;
    }
    const formula = fileFormula(HALF_OPEN.test(typed) ? (gridFormulaAt(model, position, true) ?? typed) : typed);
    const zone = model.getters.getSpreadZone(position);
    const spill = zone && (zone.right > zone.left || zone.bottom > zone.top) ? `${name}:${toName(zone.right, zone.bottom)}` : undefined;
    cells.set(name, formula === undefined ? { value: typed } : { formula, value, ...(spill ? { spill } : {}) });
  }
  return cells;
}

/** `A2:A`, from a cell down to the end of its column, is the grid's own. */
const HALF_OPEN = /\$?[A-Z]{1,3}\$?\d+:\$?[A-Z]{1,3}(?![\w$(])|(?<![\w$])\$?[A-Z]{1,3}:\$?[A-Z]{1,3}\$?\d/i;

/** In the file's spelling; `undefined` for what no program would take for a formula, which is kept as the text that it is. */
function fileFormula(typed: string): string | undefined {
  const formula = formulaForFile(typed);
  return parseFormula(formula) ? formula : undefined;
}

const ROW = /<row\b([^>]*?)(?:\/>|>([\s\S]*?)<\/row>)/g;

const CELL = /<c\b([^>]*?)(?:\/>|>[\s\S]*?<\/c>)/g;

const SHEET_DATA = /<sheetData\s*\/>|<sheetData>[\s\S]*?<\/sheetData>/;

const attribute = (attributes: string, name: string) => new RegExp(`\\b${name}="([^"]*)"`).exec(attributes)?.[1];

/**
 * A sheet's part with these cells in place of those that the grid wrote into it. From the grid
 * come the rows' heights and the cells' looks; what it writes into the cells would lose a formula
 * that it cannot read or that it takes for its own, and would rewrite text in formulas that looks
 * like a date.
 */
export function withCells(xml: string, cells: ReadonlyMap<string, SavedCell>, strings: SharedStrings): string {
  const left = new Map(cells);
  const refill = (_: string, rowAttributes: string, inside = ""): string => {
    const filled = inside.replace(CELL, (_cell, attributes: string) => {
      const name = attribute(attributes, "r")!;
      const cell = left.get(name);
      left.delete(name);
      return cellXml(name, attribute(attributes, "s"), cell, strings);
    });
    return `<row${rowAttributes}>${filled.trim()}</row>`;
  };
  const saved = xml.replace(SHEET_DATA, (data) => data.replace(ROW, refill));
  if (left.size > 0) throw new Error(`The engine left cells out: ${[...left.keys()].join(", ")}`);
  return saved;
}

function cellXml(name: string, style: string | undefined, cell: SavedCell | undefined, strings: SharedStrings): string {
  const opening = `<c r="${name}"${style ? ` s="${style}"` : ""}`;
  if (!cell) return `${opening}/>`;
  const { formula, spill, value } = cell;
  if (formula === undefined && typeof value === "string") return `${opening} t="s"><v>${strings.numberOf(value)}</v></c>`;
  const { type, text } = storedValue(value);
  const marks = `${formula !== undefined && mayFill(formula, spill) ? ' cm="1"' : ""}${type ? ` t="${type}"` : ""}`;
  return `${opening}${marks}>${formula === undefined ? "" : formulaXml(formula, name, spill)}<v>${text}</v></c>`;
}

/** A formula that can fill more than one cell is stored as one that does, or programs put an `@` into it that keeps it to one. */
const mayFill = (formula: string, spill: string | undefined): boolean => spill !== undefined || /[:{#]|_xludf|_xldudf|ANCHORARRAY/.test(formula);

const formulaXml = (formula: string, name: string, spill: string | undefined): string =>
  mayFill(formula, spill) ? `<f t="array" ref="${spill ?? name}">${escapedXml(formula)}</f>` : `<f>${escapedXml(formula)}</f>`;

/** Error codes that workbook files know (ECMA-376 part 1, 18.18.11); the grid has more. */
const FILE_ERRORS = new Set(["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A"]);

const OTHER_ERRORS: Readonly<Record<string, string>> = { "#REF": "#REF!", "#BAD_EXPR": "#NAME?" };

function storedValue(value: Cell): { type: string; text: string } {
  if (typeof value === "boolean") return { type: "b", text: value ? "1" : "0" };
  if (typeof value === "number") return { type: "", text: String(value) };
  if (isCellError(value)) return { type: "e", text: FILE_ERRORS.has(value.error) ? value.error : (OTHER_ERRORS[value.error] ?? "#VALUE!") };
  return { type: "str", text: cellText(String(value ?? "")) };
}
