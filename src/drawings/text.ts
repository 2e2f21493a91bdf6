import { decimal } from "../core/decimal.ts";

/** What XML forbids, and signs that turn the direction of writing and so make text read as what it is not. */
const HARMFUL = /[^\t\n\r\u0020-\u007e\u00a0-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]|[\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/gu;

const inOneLine = (text: string): string => text.replace(/\s+/g, " ").replace(HARMFUL, "");

/** Text that somebody typed as one harmless line, not yet escaped. */
export const withoutControlCharacters = (text: string): string => inOneLine(text).trim();

const ENTITIES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;" };

/** Text as it may stand in SVG or HTML, between tags or in a quoted attribute. */
export const escaped = (text: string): string => inOneLine(text).replace(/[&<>"']/g, (sign) => ENTITIES[sign]!);

/** As many as decimals are compared by. */
const MOST_DECIMALS = 9;

/** Decimals that the most exact of the numbers was typed with. */
export function mostDecimals(values: readonly number[]): number {
  return values.reduce((most, value) => Math.max(most, (decimal(value).toFixed(MOST_DECIMALS).replace(/0+$/, "").split(".")[1] ?? "").length), 0);
}

/** A number with so many decimals, or as typed, with a true minus sign. */
export function numberText(value: number, decimals?: number): string {
  const typed = decimal(value);
  const text = decimals === undefined ? String(typed) : typed.toFixed(Math.min(decimals, MOST_DECIMALS));
  return (Number(text) === 0 ? text.replace("-", "") : text).replace("-", "−");
}

/** A difference with its sign: `+0.04`, `−0.04`, `0.00`. */
export function signedText(value: number, decimals?: number): string {
  const text = numberText(value, decimals);
  return decimal(value) > 0 && Number(text) !== 0 ? `+${text}` : text;
}

/** Widths of letters as a share of the size of the type; fonts differ, so a little more than most of them need. */
const NARROW = 0.6;
const WIDE = 1.05;

export function widthOf(text: string, size: number): number {
  let width = 0;
  for (const letter of text) width += (letter.codePointAt(0)! < 0x1100 ? NARROW : WIDE) * size;
  return width;
}

/** Lines no wider than `width`, broken between words where they have any; what does not fit ends in `…`. */
export function wrapped(text: string, width: number, size: number, most = Number.POSITIVE_INFINITY): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of withoutControlCharacters(text)
    .split(" ")
    .flatMap((whole) => cut(whole, width, size))) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && widthOf(longer, size) > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  if (line !== "") lines.push(line);
  if (lines.length <= most) return lines;
  const kept = lines.slice(0, most);
  let last = kept.pop()!;
  while (last !== "" && widthOf(`${last}…`, size) > width) last = [...last].slice(0, -1).join("").trimEnd();
  return [...kept, `${last}…`];
}

/** A word longer than a line in pieces that fit. */
function cut(word: string, width: number, size: number): string[] {
  const pieces: string[] = [""];
  for (const letter of word) {
    const longer = pieces.at(-1)! + letter;
    if (pieces.at(-1) !== "" && widthOf(longer, size) > width) pieces.push(letter);
    else pieces[pieces.length - 1] = longer;
  }
  return pieces;
}

/** Words that all names begin with, and what is left of each: `Cylinder 1`, `Cylinder 2` give `Cylinder` and `1`, `2`. */
export function sharedStart(names: readonly string[]): [shared: string, own: string[]] {
  const words = names.map((name) => name.split(" "));
  const first = words[0] ?? [];
  const shortest = Math.min(first.length, ...words.map((all) => all.length));
  let shared = 0;
  while (shared < shortest - 1 && words.every((all) => all[shared] === first[shared])) shared++;
  return [first.slice(0, shared).join(" "), words.map((all) => all.slice(shared).join(" "))];
}
