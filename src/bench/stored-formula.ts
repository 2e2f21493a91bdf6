import { storedFormula as storedCalls } from "../xlsx/formula-text.ts";

/**
 * Functions that workbook files store with `_xlfn.` before the name: the ones that came after the first edition
 * of the file format. LET, LAMBDA and those that take a LAMBDA are left as they are typed: their names would need
 * marks of their own. Source: [MS-XLSX] 2.2.2, future functions.
 */
export const FUTURE: ReadonlySet<string> = new Set(
  `ACOT ACOTH AGGREGATE ARABIC ARRAYTOTEXT BASE BETA.DIST BETA.INV BINOM.DIST BINOM.DIST.RANGE BINOM.INV BITAND BITLSHIFT BITOR BITRSHIFT BITXOR
  CEILING.MATH CEILING.PRECISE CHISQ.DIST CHISQ.DIST.RT CHISQ.INV CHISQ.INV.RT CHISQ.TEST CHOOSECOLS CHOOSEROWS COMBINA CONCAT CONFIDENCE.NORM
  CONFIDENCE.T COT COTH COVARIANCE.P COVARIANCE.S CSC CSCH DAYS DECIMAL DETECTLANGUAGE DROP ENCODEURL ERF.PRECISE ERFC.PRECISE EXPAND EXPON.DIST
  F.DIST F.DIST.RT F.INV F.INV.RT F.TEST FIELDVALUE FILTERXML FLOOR.MATH FLOOR.PRECISE FORECAST.ETS FORECAST.ETS.CONFINT FORECAST.ETS.SEASONALITY
  FORECAST.ETS.STAT FORECAST.LINEAR FORMULATEXT GAMMA GAMMA.DIST GAMMA.INV GAMMALN.PRECISE GAUSS GROUPBY HSTACK HYPGEOM.DIST IFNA IFS IMAGE
  IMCOSH IMCOT IMCSC IMCSCH IMSEC IMSECH IMSINH IMTAN ISFORMULA ISOWEEKNUM LOGNORM.DIST LOGNORM.INV MAXIFS MINIFS MODE.MULT
  MODE.SNGL MUNIT NEGBINOM.DIST NORM.DIST NORM.INV NORM.S.DIST NORM.S.INV NUMBERVALUE PDURATION PERCENTILE.EXC PERCENTILE.INC PERCENTOF
  PERCENTRANK.EXC PERCENTRANK.INC PERMUTATIONA PHI PIVOTBY POISSON.DIST QUARTILE.EXC QUARTILE.INC QUERYSTRING RANDARRAY RANK.AVG RANK.EQ
  REGEXEXTRACT REGEXREPLACE REGEXTEST RRI SEC SECH SEQUENCE SHEET SHEETS SKEW.P SORTBY STDEV.P STDEV.S STOCKHISTORY SWITCH T.DIST T.DIST.2T
  T.DIST.RT T.INV T.INV.2T T.TEST TAKE TEXTAFTER TEXTBEFORE TEXTJOIN TEXTSPLIT TOCOL TOROW TRANSLATE TRIMRANGE UNICHAR UNICODE UNIQUE VALUETOTEXT
  VAR.P VAR.S VSTACK WEBSERVICE WEIBULL.DIST WRAPCOLS WRAPROWS XLOOKUP XMATCH XOR Z.TEST`.split(/\s+/),
);

/** The same, of those that are stored with a second mark of the worksheet. */
export const FUTURE_SHEET = new Set(["FILTER", "SORT"]);

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
