/** Text made of nothing but what numbers, dates and times are made of. */
const LIKE_A_NUMBER = /^(?=.*\d)[\s\d.,:/+$€%()eapm-]*$/i;
const LIKE_SOMETHING_ELSE = /^\s*(?:['=#]|(?:true|false)\s*$)/i;

/**
 * What to type into a cell of the engine so that it holds this value. Text that the engine would
 * take for a number, a date, a truth value, an error or a formula gets the `'` in front that says
 * "text".
 */
export function typedText(value: number | string | boolean): string {
  if (typeof value === "number") return String(value);
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return LIKE_A_NUMBER.test(value) || LIKE_SOMETHING_ELSE.test(value) ? `'${value}` : value;
}

const QUOTED = /"(?:[^"]|"")*"/g;
const SPLICE = '"&CHAR(34)&"';
const SPLICED = /\("[^"]*"(?:&CHAR\(34\)&"[^"]*")+\)/g;

/**
 * A formula as people and files write it, for the engine, which has no quote inside text, writes a
 * lost reference as `#REF` and knows functions by their names alone.
 */
export function engineFormula(formula: string): string {
  return formula
    .replace(QUOTED, (text) => (text.slice(1, -1).includes('""') ? `("${text.slice(1, -1).replaceAll('""', SPLICE)}")` : text))
    .replaceAll("#REF!", "#REF");
}

/** The other way: a formula of the engine as people and files write it. */
export function peoplesFormula(formula: string): string {
  return formula.replace(SPLICED, (spliced) => spliced.slice(1, -1).replaceAll(SPLICE, '""')).replaceAll(/#REF(?!!)/g, "#REF!");
}
