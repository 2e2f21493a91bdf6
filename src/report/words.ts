import type { CheckResult, Finding } from "../buildsheet/finding.ts";
import { wordOf } from "../buildsheet/marks.ts";
import { compareDecimals } from "../core/decimal.ts";
import { decimalsOf, numberText } from "../drawings/text.ts";
import { placeName } from "../sheet/address.ts";
import { html, type Markup } from "./markup.ts";

/** `Bores!C7`, which may break behind its sheet, or `line 7`. */
export function placeOf({ line, cell }: Pick<Finding, "line" | "cell">): Markup {
  if (line !== undefined) return html`line ${String(line)}`;
  const place = placeName(cell);
  const end = place.lastIndexOf("!") + 1;
  return html`${place.slice(0, end)}<wbr>${place.slice(end)}`;
}

/** `0.02 to 0.04`, `at most 0.04`, `at least 0.02`. */
export function limitText(lower: number | null, upper: number | null): string {
  if (lower !== null && upper !== null) return `${numberText(lower)} to ${numberText(upper)}`;
  if (upper !== null) return `at most ${numberText(upper)}`;
  return lower !== null ? `at least ${numberText(lower)}` : "none";
}

/** More decimals than anybody types: the number was worked out. */
const MOST_TYPED = 6;
const MOST = 9;

/**
 * Decimals with which a value and its margin are printed: as typed, or for what was worked out two more
 * than its limits have. Never so few that a value would seem to stand on the other side of a limit, or on it.
 */
export function decimalsFor(value: number, limits: readonly (number | null)[]): number | undefined {
  if (decimalsOf([value]) <= MOST_TYPED) return undefined;
  const bounds = limits.filter((limit) => limit !== null);
  let decimals = Math.max(3, decimalsOf(bounds) + 2);
  while (decimals < MOST && bounds.some((limit) => compareDecimals(Number(value.toFixed(decimals)), limit) !== compareDecimals(value, limit))) decimals++;
  return decimals;
}

/** Thousands apart by a thin space that does not break. */
export const grouped = (count: number): string => String(count).replace(/\B(?=(\d{3})+$)/g, "\u202f");

export const counted = (count: number, one: string, many = `${one}s`): string => `${grouped(count)} ${count === 1 ? one : many}`;

/** `24 rows in = 22 checked + 2 refused` */
export const sumsOf = ({ rowsIn, checked, refused }: Pick<CheckResult, "rowsIn" | "checked" | "refused">): string =>
  `${counted(rowsIn, "row")} in = ${grouped(checked)} checked + ${grouped(refused)} refused`;

/** How many findings there are of each word. */
export function wordsOf(findings: Iterable<Pick<Finding, "kind" | "verdict">>): Map<string, number> {
  const counts = new Map<string, number>();
  for (const finding of findings) counts.set(wordOf(finding), (counts.get(wordOf(finding)) ?? 0) + 1);
  return counts;
}

/** `3 over, 2 missing readings`: in the order of the findings, which is worst first. */
export const tallyOf = (words: ReadonlyMap<string, number>): string =>
  [...words].map(([word, count]) => `${grouped(count)} ${word}${count > 1 && IS_NOUN.test(word) ? "s" : ""}`).join(", ");

const IS_NOUN = /(?:slip|missing reading|missing limit)$/;
