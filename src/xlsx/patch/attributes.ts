import { xmlText } from "../xml-text.ts";

const ATTRIBUTE = /\s+([^\s=/>]+)\s*=\s*(?:"[^"]*"|'[^']*')/g;

/** A start tag, well-formed as read, with attributes replaced, added or, with `null`, taken away; all else stays as it is written. */
export function withAttributes(tag: string, wanted: Readonly<Record<string, string | number | null>>): string {
  const left = new Map(Object.entries(wanted));
  const changed = tag.replace(ATTRIBUTE, (whole, name: string) => {
    const value = left.get(name);
    if (value === undefined) return whole;
    left.delete(name);
    return value === null ? "" : ` ${name}="${xmlText(String(value))}"`;
  });
  const added = [...left].flatMap(([name, value]) => (value === null ? [] : ` ${name}="${xmlText(String(value))}"`)).join("");
  return added === "" ? changed : changed.replace(/\s*\/?>$/, (end) => added + end.trimStart());
}

/** A tag that closes itself, as one that is open for content. */
export const opened = (tag: string): string => tag.replace(/\s*\/>$/, ">");

/** Half of a character that takes two: no encoding has it. */
const HALF = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;
/** What XML cannot hold, the line end that readers turn into another, and text that would be read as standing for one of these. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones that XML forbids
const UNFIT = /[\u0000-\u0008\u000b-\u001f\ufffe\uffff]|_(?=x[0-9A-Fa-f]{4}_)/g;

/** Text as a cell holds it: `_x0007_` for what XML cannot hold (ECMA-376 part 1, 22.9.2.19). */
export const cellXmlText = (text: string): string =>
  xmlText(text.replace(HALF, "\ufffd").replace(UNFIT, (sign) => `_x${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}_`));
