/** The engine's helper that gives an error. */
export const ERROR = "SHEET.ERROR";

/** An error written in a formula, for the engine, which has no such literals; with the sentence that says why. */
export const errorText = (code: string, why = ""): string => `${ERROR}("${code}",${quoted(why)})`;

const HARD = /["\\]/;

/** Text in a formula of the engine, in which a quote cannot stand in quotes and a backslash before one hides it. */
export function quoted(text: string): string {
  if (!HARD.test(text)) return `"${text}"`;
  const parts = text.split(/(["\\])/).filter((part) => part !== "");
  return `(${parts.map((part) => (HARD.test(part) ? `CHAR(${part.charCodeAt(0)})` : `"${part}"`)).join("&")})`;
}

/** Text that no number, date, truth value, error, link or formula can be taken for. */
const PLAIN = /^\p{L}(?:[^\d\p{Nd}]*[^\d\p{Nd}\s])?$/u;
const LOGICAL = /^(?:true|false)$/i;

/** What to put into a cell of the engine so that it holds just this text; a `'` in front says "text". */
export const cellText = (text: string): string => (PLAIN.test(text) && !LOGICAL.test(text) ? text : `'${text}`);
