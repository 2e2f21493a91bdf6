/** The grid's own codes of errors as other sheets write them. */
const CODES: Readonly<Record<string, string>> = { "#ERROR": "#VALUE!", "#BAD_EXPR": "#VALUE!", "#REF": "#REF!", "#CYCLE": "#REF!" };

export const commonCode = (code: string): string => CODES[code] ?? code;

/** Text made of nothing but what numbers, dates and times are made of. */
const LIKE_A_NUMBER = /^(?=.*\d)[\s\d.,:/+$€%()eapm-]*$/i;
const LIKE_SOMETHING_ELSE = /^\s*(?:['=#]|(?:true|false)\s*$)/i;

/**
 * What to type into a cell of the grid so that it holds this value. Text that the grid would
 * take for a number, a date, a truth value, an error or a formula gets the `'` in front that says
 * "text".
 */
export function typedText(value: number | string | boolean): string {
  if (typeof value === "number") return String(value);
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return LIKE_A_NUMBER.test(value) || LIKE_SOMETHING_ELSE.test(value) ? `'${value}` : value;
}

const TEXT = /("(?:[^"]|"")*")/;
const SPLICE = '"&CHAR(34)&"';
const SPLICED = /\("[^"]*"(?:&CHAR\(34\)&"[^"]*")+\)/g;

/**
 * A formula as people and files write it, as the grid can read it: it has no quote inside text, and
 * writes a lost reference as `#REF`.
 */
export function toGridFormula(formula: string): string {
  const splice = (text: string) => (text.slice(1, -1).includes('""') ? `("${text.slice(1, -1).replaceAll('""', SPLICE)}")` : text);
  return inPieces(formula, splice, (rest) => rest.replaceAll("#REF!", "#REF"));
}

/** The other way. */
export function fromGridFormula(formula: string): string {
  const whole = formula.replace(SPLICED, (spliced) => spliced.slice(1, -1).replaceAll(SPLICE, '""'));
  return inPieces(
    whole,
    (text) => text,
    (rest) => rest.replaceAll(/#REF(?!!)/g, "#REF!"),
  );
}

/** Text in quotes and what stands between, each put through its own change. */
function inPieces(formula: string, text: (piece: string) => string, rest: (piece: string) => string): string {
  if (!formula.includes('"') && !formula.includes("#REF")) return formula;
  return formula
    .split(TEXT)
    .map((piece, i) => (i % 2 ? text(piece) : rest(piece)))
    .join("");
}
