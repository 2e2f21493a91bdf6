import { stringifyTokens, type Token, tokenize, tokenTypes } from "@borgar/fx/xlsx";
import { storedFormula as storedCalls } from "../xlsx/formula-text.ts";

/**
 * Functions that workbook files store with `_xlfn.` before the name: the ones that came after the first edition
 * of the file format. Source: [MS-XLSX] 2.2.2, future functions.
 */
export const FUTURE: ReadonlySet<string> = new Set(
  `ACOT ACOTH AGGREGATE ARABIC ARRAYTOTEXT BASE BETA.DIST BETA.INV BINOM.DIST BINOM.DIST.RANGE BINOM.INV BITAND BITLSHIFT BITOR BITRSHIFT BITXOR
  BYCOL BYROW ISOMITTED LAMBDA LET MAKEARRAY MAP REDUCE SCAN
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
  const pieces = withMarkedNames(formula.replace(/^=/, "")).split(TEXT_OR_SHEET);
  return storedCalls(pieces.map((piece, i) => (i % 2 ? piece : piece.replace(CALL, prefixed).replace(SPILL, "_xlfn.ANCHORARRAY($1)"))).join(""));
}

function prefixed(name: string): string {
  const capitals = name.toUpperCase();
  if (FUTURE_SHEET.has(capitals)) return `_xlfn._xlws.${capitals}`;
  return FUTURE.has(capitals) ? `_xlfn.${capitals}` : name;
}

const NAMING = /\b(?:LET|LAMBDA)\s*\(/i;

/** A call that is open while its formula is gone through, with the names that it gives. */
interface OpenCall {
  isNaming: boolean;
  isLet: boolean;
  at: number;
  names: Set<string>;
}

/**
 * Names that LET and LAMBDA give are stored with `_xlpm.` before them, and with `_xlop.` where a LAMBDA's may be
 * left out (`[name]`): a name counts from where it is given to the end of its call. Source: the same, and what
 * Excel's files are known to hold (from memory); no file saved by Excel was at hand.
 */
function withMarkedNames(formula: string): string {
  if (!NAMING.test(formula)) return formula;
  const tokens = tokenize(formula).map((token): Token => ({ ...token }));
  const calls: OpenCall[] = [];
  const next = (i: number, step: number): Token | undefined => {
    for (let at = i + step; at >= 0 && at < tokens.length; at += step) if (tokens[at]!.type !== tokenTypes.WHITESPACE) return tokens[at];
    return undefined;
  };
  for (const [i, token] of tokens.entries()) {
    const { type, value } = token;
    const call = calls.at(-1);
    if (value === "(" || value === "{") {
      const callee = value === "(" && tokens[i - 1]?.type === tokenTypes.FUNCTION ? tokens[i - 1]!.value.toUpperCase() : "";
      calls.push({ isNaming: callee === "LET" || callee === "LAMBDA", isLet: callee === "LET", at: 0, names: new Set() });
    } else if (value === ")" || value === "}") calls.pop();
    else if (value === "," && call) call.at++;
    else if (type === tokenTypes.REF_NAMED || type === tokenTypes.FUNCTION || type === tokenTypes.REF_STRUCT) {
      const isAlone = /^[(,]$/.test(next(i, -1)?.value ?? "") && next(i, 1)?.value === ",";
      const optional = type === tokenTypes.REF_STRUCT && !call?.isLet ? /^\[(\w+)\]$/.exec(value)?.[1] : undefined;
      const name = (optional ?? value).toLowerCase();
      if (call?.isNaming && isAlone && (optional || (type === tokenTypes.REF_NAMED && !(call.isLet && call.at % 2)))) {
        call.names.add(name);
        token.value = optional ? `_xlop.${optional}` : `_xlpm.${value}`;
      } else if (type !== tokenTypes.REF_STRUCT && calls.some(({ names }) => names.has(name))) token.value = `_xlpm.${value}`;
    }
  }
  return stringifyTokens(tokens);
}
