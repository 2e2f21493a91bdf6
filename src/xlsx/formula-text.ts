import { stringifyTokens, type Token, tokenize, tokenTypes, translateFormulaToA1, translateFormulaToR1C1 } from "@borgar/fx/xlsx";
import { NAMESPACE } from "../core/define.ts";

/** Longer than any formula that a sheet takes (8192 characters); not taken apart. */
const LONGEST = 8192;

/** What files write before a function that came after their format was fixed. */
const LATER = /^(?:_xlfn\.|_xlws\.|_xludf\.|_xleta\.|_xlpm\.)+/i;
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
export function peoplesFormula(stored: string): string {
  if (!MARKED.test(stored) || stored.length > LONGEST) return stored;
  if (PLAIN.test(stored)) {
    // Most formulas that call ours, many times quicker than taken apart.
    const shown = stored.replace(CALL, "\u0001$1(");
    if (!MARKED.test(shown)) return shown.replaceAll("\u0001", `${NAMESPACE}.`);
  }
  const tokens: Token[] = [];
  for (const token of tokenize(stored)) tokens.push(isName(token) ? { ...token, value: peoplesName(token.value) } : token);
  return stringifyTokens(plain(tokens));
}

const isName = ({ type }: Token): boolean => type === tokenTypes.FUNCTION || type === tokenTypes.REF_NAMED;
const isCallee = (token: Token): boolean => token.type === tokenTypes.FUNCTION;

function peoplesName(stored: string): string {
  if (OURS.test(stored)) return stored.replace(OURS, `${NAMESPACE}.`).toUpperCase();
  return stored.replace(LATER, "");
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
