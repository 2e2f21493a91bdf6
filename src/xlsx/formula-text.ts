import { stringifyTokens, type Token, tokenize, tokenTypes, translateFormulaToA1, translateFormulaToR1C1 } from "@borgar/fx/xlsx";
import { NAMESPACE } from "../core/define.ts";

/** Longer than any formula that a sheet takes (8192 characters); not taken apart. */
const LONGEST = 8192;

/** What files write before a function that came after their format was fixed. */
const LATER = /^(?:_xlfn\.|_xlws\.|_xludf\.|_xleta\.|_xlpm\.)+/i;
/** An input of a LAMBDA that may be left out. */
const OPTIONAL = /^_xlop\.(\w+)$/i;
/** An add-in's function, in a file and to people. */
const OURS = new RegExp(`^(?:_xldudf_${NAMESPACE}[_.]|${NAMESPACE}\\.)`, "i");
const MARKED = /_xl|@|hatch/i;

/** Nothing but words, numbers and operators: no text, no quoted sheet, no part of a table, no `@`. */
const PLAIN = /^[\w.,()+\-*/:$<>=]*$/;
/** A call of ours just as our own files have it. */
const CALL = new RegExp(`(?<![\\w.$:])_xldudf_${NAMESPACE}_([A-Z]+)\\(`, "g");

/**
 * A formula as people type it: `HATCH.TAPER(…)` for the file's `_xldudf_HATCH_TAPER(…)`, `XLOOKUP`
 * for `_xlfn.XLOOKUP`, `D4#` for `_xlfn.ANCHORARRAY(D4)`, `@A1:A3` for `_xlfn.SINGLE(A1:A3)`. An `@`
 * before one of our functions is dropped: they say by themselves what they give.
 */
export function fromStoredFormula(stored: string): string {
  if (!MARKED.test(stored) || stored.length > LONGEST) return stored;
  if (PLAIN.test(stored)) {
    // Most formulas that call ours, many times quicker than taken apart.
    const shown = stored.replace(CALL, "\u0001$1(");
    if (!MARKED.test(shown)) return shown.replaceAll("\u0001", `${NAMESPACE}.`);
  }
  const tokens: Token[] = [];
  for (const token of tokenize(stored)) tokens.push(isName(token) ? { ...token, value: fromStoredName(token.value) } : token);
  return stringifyTokens(plain(tokens));
}

const isName = ({ type }: Token): boolean => type === tokenTypes.FUNCTION || type === tokenTypes.REF_NAMED;
const isCallee = (token: Token): boolean => token.type === tokenTypes.FUNCTION;

function fromStoredName(stored: string): string {
  if (OURS.test(stored)) return stored.replace(OURS, `${NAMESPACE}.`).toUpperCase();
  return stored.replace(OPTIONAL, "[$1]").replace(LATER, "");
}

/** Spill references and `@` as signs, and no `@` before our functions. */
function plain(tokens: readonly Token[]): Token[] {
  const out: Token[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const token = tokens[i]!;
    const call = isCallee(token) ? token.value.toUpperCase() : "";
    if (call === "ANCHORARRAY" || call === "SINGLE") {
      const end = closing(tokens, i + 1);
      const inner = plain(tokens.slice(i + 2, end));
      if (call === "ANCHORARRAY") out.push(...inner, { type: tokenTypes.OPERATOR, value: "#" });
      else if (isOurs(inner)) out.push(...inner);
      else out.push({ type: tokenTypes.OPERATOR, value: "@" }, ...inner);
      i = end;
    } else if (token.value !== "@" || !isOurs(tokens.slice(i + 1, i + 2))) out.push(token);
  }
  return out;
}

const isOurs = ([first]: readonly Token[]): boolean => first !== undefined && isCallee(first) && OURS.test(first.value);

/** The bracket that ends the call whose opening one stands at `from`. */
function closing(tokens: readonly Token[], from: number): number {
  let open = 0;
  for (let i = from; i < tokens.length; i++) {
    if (tokens[i]!.value === "(") open++;
    else if (tokens[i]!.value === ")" && --open === 0) return i;
  }
  return tokens.length;
}

/** A shared formula, written for one cell, as it reads in another. Cells are named `C7`. */
export function shiftFormula(formula: string, from: string, to: string): string {
  return formulaAt(relativeFormula(formula, from), to);
}

/** A formula that is to be written for many cells, its references counted from its own. */
export const relativeFormula = (formula: string, from: string): string => translateFormulaToR1C1(formula, from);

export const formulaAt = (relative: string, to: string): string => translateFormulaToA1(relative, to);

/**
 * How a workbook file spells what people see as `HATCH.TAPER(…)`: an add-in's function is stored as
 * `_xldudf_HATCH_TAPER(…)`, and a formula that may spill is an array formula whose cell points to
 * the workbook's dynamic-array metadata. That holds for every call of an add-in's function: stored
 * plainly it would be shown with `@` before it and give one cell only. Works on the parts of a
 * workbook, whoever wrote them.
 *
 * Source: ECMA-376 part 1, 18.3.1.40 (f), 18.9 (metadata); [MS-XLSX] 2.2.4.12 (XLDAPR). The spelling
 * of stored functions has not been compared with a file saved by Excel here.
 */
const STORED_PREFIX = `_xldudf_${NAMESPACE}_`;
const SHOWN_CALL = new RegExp(`\\b${NAMESPACE}\\.([A-Z]{3,})(?=\\s*\\()`, "gi");
const FORMULA = /(<f(?:\s[^>]*)?>)([^<]*)(<\/f>)/g;
const PLAIN_CELL = /(<c r="([A-Z]+\d+)"[^>]*>)<f>([^<]*)(?=<\/f>)/g;
const ARRAY_CELL = /<c ((?:(?!cm=)[^>])*)>(?=<f[^>]* t="array")/g;

/** The workbook part that says that array formulas may spill, and what it is. */
export const METADATA_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml";
export const METADATA = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>
<metadata xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray"><metadataTypes count="1"><metadataType name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"/></metadataTypes><futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata><cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>`;

/** `HATCH.TAPER(B2:C4)` as a file holds it. Text in quotes is left alone. */
export function storedFormula(formula: string): string {
  // Even pieces stand outside double quotes, odd ones inside.
  return formula
    .split('"')
    .map((piece, i) => (i % 2 ? piece : piece.replace(SHOWN_CALL, (_, name: string) => `${STORED_PREFIX}${name.toUpperCase()}`)))
    .join('"');
}

/** Rewrites the parts of a workbook so that its calls and spills are stored as Excel stores them. */
export function storeFormulas(parts: ReadonlyMap<string, string>): Map<string, string> {
  const stored = new Map(parts);
  let spills = false;
  for (const [path, xml] of parts) {
    if (!/^xl\/worksheets\/[^/]+\.xml$/.test(path)) continue;
    let sheet = xml.replace(FORMULA, (_, open: string, formula: string, close: string) => `${open}${storedFormula(formula.replaceAll("&quot;", '"'))}${close}`);
    sheet = sheet.replace(PLAIN_CELL, (whole, cell: string, address: string, formula: string) =>
      formula.includes(STORED_PREFIX) ? `${cell}<f t="array" ref="${address}">${formula}` : whole,
    );
    sheet = sheet.replace(ARRAY_CELL, (_, attributes: string) => `<c ${attributes} cm="1">`);
    spills ||= sheet.includes(' cm="1"');
    stored.set(path, sheet);
  }
  if (spills && !stored.has("xl/metadata.xml")) addMetadata(stored);
  return stored;
}

function addMetadata(parts: Map<string, string>): void {
  parts.set("xl/metadata.xml", METADATA);
  const types = parts.get("[Content_Types].xml") ?? "";
  const override = `<Override PartName="/xl/metadata.xml" ContentType="${METADATA_TYPE}"/>`;
  parts.set("[Content_Types].xml", types.replace("</Types>", `${override}</Types>`));
  const relations = parts.get("xl/_rels/workbook.xml.rels") ?? "";
  const relation =
    '<Relationship Id="rIdSheetMetadata" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/sheetMetadata" Target="metadata.xml"/>';
  parts.set("xl/_rels/workbook.xml.rels", relations.replace("</Relationships>", `${relation}</Relationships>`));
}
