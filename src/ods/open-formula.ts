/**
 * Formulas as OpenDocument stores them (OASIS OpenDocument 1.3 part 4, OpenFormula): references in square
 * brackets with a dot before the cell, `;` between inputs, `|` between the rows of an array; and back.
 */

/** Why a formula has no other spelling. */
export class Inexpressible extends Error {}

const LANGUAGE = /^(?:of:)?=/;
/** What may stand before a function's name for the program that it comes from. */
const MAKERS = /^(?:COM\.MICROSOFT|ORG\.LIBREOFFICE|ORG\.OPENOFFICE|LEGACY)\./i;
const OURS = /^HATCH\./i;
const TEXT = /"(?:[^"]|"")*"/;
const QUOTED = /'(?:[^']|'')*'/;
const CELLS = /\$?[A-Z]{0,3}\$?\d*/;
const SHEET = new RegExp(`\\$?(?:${QUOTED.source}|[^.'#\\]]+)`);
const REFERENCE = new RegExp(`^(${SHEET.source})?\\.(${CELLS.source})(?::(${SHEET.source})?\\.(${CELLS.source}))?$`);
const STORED = new RegExp(`(${TEXT.source})|\\[((?:${QUOTED.source}|[^\\]'])*)\\]|(#[A-Z0-9/]+[!?]?)|([A-Za-z_][\\w.]*)|([\\s\\S])`, "g");

/** A stored formula as people type it, without `=`. */
export function fromOpenFormula(stored: string): string {
  if (!LANGUAGE.test(stored)) throw new Inexpressible(`is written in another way than OpenFormula (${stored.split("=", 1)[0]})`);
  let inArray = false;
  return stored.replace(LANGUAGE, "").replace(STORED, (whole, text?: string, reference?: string, error?: string, name?: string) => {
    if (text !== undefined || error !== undefined) return whole;
    if (reference !== undefined) return fromReference(reference);
    if (name !== undefined) return OURS.test(name) ? name.toUpperCase() : name.replace(MAKERS, "");
    if (whole === "{" || whole === "}") inArray = whole === "{";
    if (whole === "~") throw new Inexpressible("joins ranges, which is not calculated here");
    if (whole === "!") return " ";
    if (whole === ";") return ",";
    return whole === "|" && inArray ? ";" : whole;
  });
}

function fromReference(reference: string): string {
  if (reference.includes("#REF!")) return "#REF!";
  const [, sheet, first, lastSheet, last] = REFERENCE.exec(reference) ?? [];
  if (first === undefined) throw new Inexpressible("refers to another workbook, which is not read here");
  if (lastSheet !== undefined && lastSheet !== sheet) throw new Inexpressible("refers to several sheets at once, which is not calculated here");
  return `${sheet === undefined ? "" : `${sheet.replace(/^\$/, "")}!`}${first}${last === undefined ? "" : `:${last}`}`;
}

/** `$Bores.$B$4:.$G$6`, as names and tables have it, as `Bores!$B$4:$G$6`. */
export const fromRangeAddress = (address: string): string => fromReference(address);

const SHEET_NAME = /(?:'(?:[^']|'')*'|[A-Za-z_][\w.]*)!/;
const CELL = /\$?[A-Z]{1,3}\$?\d{1,7}/;
const TYPED = new RegExp(`(${TEXT.source})|(${SHEET_NAME.source})?(${CELL.source})(?::(${CELL.source}))?(?![\\w.(])|([A-Za-z_][\\w.]*)|([\\s\\S])`, "g");

/** A formula as people type it, without `=`, as a file stores it. Knows what the sheets that we write use. */
export function toOpenFormula(formula: string): string {
  let inArray = false;
  const stored = formula.replace(TYPED, (whole, text?: string, sheet?: string, first?: string, last?: string, name?: string) => {
    if (text !== undefined || name !== undefined) return whole;
    if (first !== undefined) return `[${sheet === undefined ? "" : `$${sheet.slice(0, -1)}`}.${first}${last === undefined ? "" : `:.${last}`}]`;
    if (whole === "{" || whole === "}") inArray = whole === "{";
    if (whole === ",") return ";";
    return whole === ";" && inArray ? "|" : whole;
  });
  return `of:=${stored}`;
}

/** `Bores!$B$4:$G$6` as names and tables have it. */
export const toRangeAddress = (range: string): string => toOpenFormula(range).slice("of:=[".length, -1);
