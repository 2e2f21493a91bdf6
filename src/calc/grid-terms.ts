import { NAMESPACE } from "../core/define.ts";
import { takesOneCell } from "./grid/single-values.ts";

/** The grid's helper that gives an error. */
export const ERROR = "SHEET.ERROR";

/** An error written in a formula, for the grid, which has no such literals; with the sentence that says why. */
export const errorText = (code: string, why = ""): string => `${ERROR}("${code}",${quoted(why)})`;

const HARD = /["\\]/;

/** Text in a formula of the grid, in which a quote cannot stand in quotes and a backslash before one hides it. */
export function quoted(text: string): string {
  if (!HARD.test(text)) return `"${text}"`;
  const parts = text.split(/(["\\])/).filter((part) => part !== "");
  return `(${parts.map((part) => (HARD.test(part) ? `CHAR(${part.charCodeAt(0)})` : `"${part}"`)).join("&")})`;
}

/** Text that no number, date, truth value, error, link or formula can be taken for. */
const PLAIN = /^\p{L}(?:[^\d\p{Nd}]*[^\d\p{Nd}\s])?$/u;
const LOGICAL = /^(?:true|false)$/i;

/** What to put into a cell of the grid so that it holds just this text; a `'` in front says "text". */
export const gridCellText = (text: string): string => (PLAIN.test(text) && !LOGICAL.test(text) ? text : `'${text}`);

/** What translating has to know of the grid's functions. */
export interface Signatures {
  has(name: string): boolean;
  /** Whether the argument at this place takes a whole range; otherwise the function is applied cell by cell. */
  takesRange(name: string, index: number): boolean;
}

interface GridFunctions {
  content: Record<string, { args: { acceptMatrix?: boolean; repeating?: boolean }[] }>;
}

/**
 * Functions of the grid that are refused by name: they come out otherwise in office programs, also in ordinary cases, some of their calls
 * never end, or no build sheet asks for what stands between the two.
 */
const LEFT_OUT = new Set(
  `ARRAYTOTEXT CHOOSECOLS CHOOSEROWS COT CSC DECIMAL FORMULATEXT ISFORMULA MDETERM MINVERSE REGEXEXTRACT REGEXREPLACE REGEXTEST SEC TEXTAFTER TEXTBEFORE
  ACCRINTM AMORLINC COUPDAYBS COUPDAYS COUPDAYSNC COUPNCD COUPNUM COUPPCD CUMIPMT CUMPRINC DB DDB DISC DOLLARDE DOLLARFR DURATION EFFECT FV FVSCHEDULE INTRATE
  IPMT IRR ISPMT MDURATION MIRR NOMINAL NPER NPV PDURATION PMT PPMT PRICE PRICEDISC PRICEMAT PV RATE RECEIVED RRI SLN SYD TBILLEQ TBILLPRICE TBILLYIELD VDB XIRR
  XNPV YIELD YIELDDISC YIELDMAT
  DAVERAGE DCOUNT DCOUNTA DGET DMAX DMIN DPRODUCT DSTDEV DSTDEVP DSUM DVAR DVARP
  GROWTH LINEST LOGEST TREND YEARFRAC`.split(/\s+/),
);

/** Signatures of all functions of the grid that are relied on. */
export function signaturesOf({ content }: GridFunctions): Signatures {
  return {
    has: (name) => Object.hasOwn(content, name) && !LEFT_OUT.has(name),
    takesRange(name, index) {
      const args = content[name]?.args ?? [];
      const repeating = args.filter((arg) => arg.repeating).length;
      const past = index - args.length;
      const arg = past < 0 || repeating === 0 ? args[index] : args[args.length - repeating + (past % repeating)];
      return arg?.acceptMatrix === true && !takesOneCell(name);
    },
  };
}

/**
 * Functions that work through their arguments cell by cell also in a formula that is no array
 * formula: sheets declare these arguments as arrays.
 */
const OVER_ARRAYS = new Set(
  `SUMPRODUCT SUMX2MY2 SUMX2PY2 SUMXMY2 MMULT TRANSPOSE LOOKUP INDEX FREQUENCY CORREL PEARSON RSQ SLOPE INTERCEPT STEYX
  FORECAST FORECAST.LINEAR COVAR COVARIANCE.P COVARIANCE.S FILTER SORT SORTBY UNIQUE XLOOKUP XMATCH AGGREGATE TAKE DROP HSTACK VSTACK TOCOL TOROW WRAPCOLS WRAPROWS EXPAND`.split(
    /\s+/,
  ),
);

export const worksOverArrays = (name: string): boolean => OVER_ARRAYS.has(name) || name.startsWith(`${NAMESPACE}.`);

/** Functions that the grid has under another name, with the same arguments and meaning; LOG10 is a cell to it. */
const SAME: Readonly<Record<string, string>> = { "RANK.EQ": "RANK", LOG10: "LOG" };

export const gridName = (name: string): string => SAME[name] ?? name;
