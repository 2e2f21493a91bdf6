import { parseStructRef, stringifyTokens, type Token, tokenize, tokenTypes } from "@borgar/fx/xlsx";
import { typedText } from "../calc/grid/grid-text.ts";
import { areaOfTable } from "../calc/references.ts";
import { isCellError } from "../core/cell.ts";
import { cellName } from "../workbook/address.ts";
import type { CellFile, DefinedName, SheetFile, WorkbookFile } from "../xlsx/model.ts";
import type { Zip } from "../xlsx/zip.ts";
import { hasUnknownRules, withSingleRules, withTextsAsTheyAre } from "./colour-rules.ts";
import type { Engine } from "./load-grid.ts";
import type { Addresses } from "./pictures.ts";

/** Workbook data of the grid, of which only this much is of interest here. */
export interface EngineData {
  version: string;
  sheets: EngineSheet[];
  namedRanges: Record<string, string>;
  [key: string]: unknown;
}

export interface EngineSheet {
  id: string;
  name: string;
  cells: Record<string, string>;
  colNumber: number;
  rowNumber: number;
  figures: unknown[];
  isVisible: boolean;
  [key: string]: unknown;
}

/** The grid looks a row up among all rows, which takes too long in a sheet of more than so many. */
const MOST_ROWS = 20_000;

const DOCTYPE = /<!DOCTYPE/i;

interface Look {
  look: EngineData | undefined;
  /** There are colour rules of a kind that the grid does not have. */
  hasOtherRules: boolean;
  /** There are lists for typing that stand on other sheets, as newer programs write them. */
  hasOtherLists: boolean;
}

const NO_LOOK: Look = { look: undefined, hasOtherRules: false, hasOtherLists: false };

/**
 * How a workbook looks, as the grid reads it: fonts, fills, borders, number formats, widths, merged
 * cells, conditional formats, validation. Nothing when the grid cannot read it or would take
 * too long; what the cells hold is read apart, so that nothing of it is lost with the looks.
 */
export function lookOf(engine: Engine, zip: Zip, addresses: Addresses, rows: number): Look {
  if (rows > MOST_ROWS) return NO_LOOK;
  const files: Record<string, unknown> = {};
  let [hasOtherRules, hasOtherLists] = [false, false];
  for (const name of zip.spelledNames()) {
    if (name.includes("media/image")) files[name] = { imageSrc: addresses.get(name) ?? "" };
    if (!/\.(?:xml|rels)$/.test(name)) continue;
    const xml = new TextDecoder().decode(zip.read(name));
    if (DOCTYPE.test(xml)) return NO_LOOK;
    hasOtherRules ||= hasUnknownRules(xml);
    hasOtherLists ||= xml.includes("<x14:dataValidation ");
    if (name.endsWith(".rels")) files[name] = withRelativeTargets(name, xml);
    else files[name] = xml.includes("conditionalFormatting") ? withSingleRules(xml) : xml;
  }
  try {
    const data = engine.load(files as never) as unknown as EngineData;
    withTextsAsTheyAre(data);
    return { look: data, hasOtherRules, hasOtherLists };
  } catch {
    return NO_LOOK;
  }
}

/** Some programs write where a part stands from the top of the package, `/xl/worksheets/sheet1.xml`: the grid finds no sheet by that. */
function withRelativeTargets(name: string, xml: string): string {
  const folders = name.split("/").slice(0, -2);
  const toTop = folders[0] === "xl" ? "../".repeat(folders.length - 1) : "xl/";
  return xml.replace(/(\bTarget\s*=\s*["'])\/xl\//g, `$1${toTop}`);
}

/** What the cells of a workbook file hold, as the grid takes it, and what it cannot take. */
export interface Contents {
  /** Sheets by their places in the file. */
  sheets: { name: string; cells: Record<string, string>; rows: number; columns: number }[];
  /** Names that stand for cells, and the cells. */
  namedRanges: Record<string, string>;
  /** Names that stand for something else, or on one sheet only. */
  otherNames: DefinedName[];
}

export function contentsOf(book: WorkbookFile): Contents {
  const names = engineNames(book.sheets);
  const rename = renaming(names);
  const sheets = book.sheets.map((sheet, place) => {
    const cells: Record<string, string> = {};
    let rows = 0;
    let columns = 0;
    for (const cell of sheet.cells) {
      rows = Math.max(rows, cell.row + 1);
      columns = Math.max(columns, cell.column + 1);
      cells[cellName(cell)] = contentOf(cell, place, book, rename);
    }
    return { name: names[place]!.engine, cells, rows, columns };
  });
  return { sheets, ...namesOf(book, rename) };
}

interface SheetName {
  file: string;
  engine: string;
}

/** The grid cannot read a formula that names a sheet with an apostrophe in its name. */
function engineNames(sheets: readonly SheetFile[]): SheetName[] {
  const taken = new Set(sheets.map(({ name }) => name.toLowerCase()));
  return sheets.map(({ name }) => {
    if (!name.includes("'")) return { file: name, engine: name };
    let engine = name.replaceAll("'", "’");
    for (let n = 2; taken.has(engine.toLowerCase()); n++) engine = `${name.replaceAll("'", "’")} ${n}`;
    taken.add(engine.toLowerCase());
    return { file: name, engine };
  });
}

type Rename = (formula: string) => string;

function renaming(names: readonly SheetName[]): Rename {
  const changed = names.filter(({ file, engine }) => file !== engine);
  return (formula) => changed.reduce((text, { file, engine }) => text.replaceAll(`'${file.replaceAll("'", "''")}'!`, `'${engine}'!`), formula);
}

function contentOf({ formula, value, row, column }: CellFile, sheet: number, book: WorkbookFile, rename: Rename): string {
  if (formula !== undefined) return `=${rename(withoutTableNames(formula, { sheet, row, column }, book))}`;
  if (isCellError(value)) return value.error;
  return value === null || value === undefined ? "" : typedText(value);
}

/** References to a table's columns by name as references to their cells: the grid has tables, but not their names. */
function withoutTableNames(formula: string, site: { sheet: number; row: number; column: number }, book: WorkbookFile): string {
  if (!formula.includes("[")) return formula;
  const tokens: Token[] = tokenize(formula).map((token) => {
    if (token.type !== tokenTypes.REF_STRUCT || !parseStructRef(token.value)) return token;
    const cells = cellsOfTable(token.value, site, book);
    return cells === undefined ? token : { ...token, value: cells };
  });
  return stringifyTokens(tokens);
}

function cellsOfTable(reference: string, site: { sheet: number; row: number; column: number }, book: WorkbookFile): string | undefined {
  try {
    const { sheet, top, left, bottom, right } = areaOfTable(reference, site, book);
    const prefix = sheet === site.sheet ? "" : `'${book.sheets[sheet]!.name.replaceAll("'", "''")}'!`;
    return prefix + rangeName({ row: top, column: left }, { row: bottom, column: right });
  } catch {
    // A table or column that the workbook does not have: the formula stays as it is and says so in its cell.
    return undefined;
  }
}

interface Corner {
  row: number;
  column: number;
}

const fixed = (corner: Corner): string => cellName(corner).replace(/([A-Z]+)(\d+)/, "$$$1$$$2");

const rangeName = (first: Corner, last: Corner): string =>
  first.row === last.row && first.column === last.column ? fixed(first) : `${fixed(first)}:${fixed(last)}`;

const CELLS_OF_A_SHEET = /^(?:'(?:[^']|'')+'|[^\s'!:,()+*/&^=<>-]+)!\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?$/i;

function namesOf(book: WorkbookFile, rename: Rename): Pick<Contents, "namedRanges" | "otherNames"> {
  const namedRanges: Record<string, string> = {};
  const otherNames: DefinedName[] = [];
  for (const name of book.names) {
    if (name.sheet === undefined && CELLS_OF_A_SHEET.test(name.formula)) namedRanges[name.name] = rename(name.formula).replaceAll("$", "");
    else otherNames.push({ ...name, formula: rename(name.formula) });
  }
  return { namedRanges, otherNames };
}
