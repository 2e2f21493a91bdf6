import { storedFormula as storedCalls } from "../xlsx/formula-text.ts";

/**
 * Functions that workbook files store with `_xlfn.` before the name, of those that the grid knows:
 * the ones that came after the first edition of the file format. Source: [MS-XLSX] 2.2.2, future
 * functions.
 */
const FUTURE = new Set(
  `ACOT ACOTH ARRAYTOTEXT BASE CEILING.MATH CHOOSECOLS CHOOSEROWS CONCAT COT COTH COVARIANCE.P COVARIANCE.S CSC CSCH DAYS DECIMAL DROP EXPAND
  FLOOR.MATH FORMULATEXT HSTACK IFNA IFS ISFORMULA ISOWEEKNUM MAXIFS MINIFS MUNIT PDURATION PERCENTILE.EXC PERCENTILE.INC QUARTILE.EXC QUARTILE.INC
  RANDARRAY REGEXEXTRACT REGEXREPLACE REGEXTEST RRI SEC SECH SEQUENCE STDEV.P STDEV.S SWITCH TAKE TEXTAFTER TEXTBEFORE TEXTJOIN TEXTSPLIT TOCOL
  TOROW UNIQUE VAR.P VAR.S VSTACK WRAPCOLS WRAPROWS XLOOKUP XOR`.split(/\s+/),
);

/** The same, of those that are stored with a second mark of the worksheet. */
const FUTURE_SHEET = new Set(["FILTER", "SORT"]);

const TEXT_OR_SHEET = /("(?:[^"]|"")*"|'(?:[^']|'')*')/;
const CALL = /(?<![.\w])([A-Z][A-Z\d.]*)(?=\()/gi;
const SPILL = /(\$?[A-Z]{1,3}\$?\d+)#/gi;

/** A formula as people write it, without its `=`, as a workbook file stores it. */
export function formulaForFile(formula: string): string {
  // Odd pieces are text, or the names of sheets.
  const pieces = formula.replace(/^=/, "").split(TEXT_OR_SHEET);
  return storedCalls(pieces.map((piece, i) => (i % 2 ? piece : piece.replace(CALL, prefixed).replace(SPILL, "_xlfn.ANCHORARRAY($1)"))).join(""));
}

function prefixed(name: string): string {
  const capitals = name.toUpperCase();
  if (FUTURE_SHEET.has(capitals)) return `_xlfn._xlws.${capitals}`;
  return FUTURE.has(capitals) ? `_xlfn.${capitals}` : name;
}
