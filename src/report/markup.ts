import type { Finding, JudgedRow } from "../check/finding.ts";
import { compareDecimals } from "../core/decimal.ts";
import { MOST_TYPED } from "../core/number-text.ts";
import { escaped, mostDecimals, numberText } from "../drawings/text.ts";
import { placeName } from "../workbook/address.ts";

/** HTML that is known to be harmless: made here, or by a drawing. */
export class Markup {
  constructor(readonly html: string) {}

  toString(): string {
    return this.html;
  }
}

type Part = string | Markup | readonly Markup[] | false | null | undefined;

/** HTML from a template. Whatever is put in is escaped, unless it is markup already; false and nothing leave no trace. */
export function html(texts: TemplateStringsArray, ...parts: readonly Part[]): Markup {
  return new Markup(texts.map((text, i) => text + (i < parts.length ? written(parts[i]) : "")).join(""));
}

function written(part: Part): string {
  if (part === false || part === null || part === undefined) return "";
  if (typeof part === "string") return escaped(part);
  return part instanceof Markup ? part.html : part.map((one) => one.html).join("");
}

export type Level = "h2" | "h3";

export const headed = (level: Level, text: string): Markup => (level === "h2" ? html`<h2>${text}</h2>` : html`<h3>${text}</h3>`);

/** A table that can be scrolled where it is wider than the window, by keys as well. */
export const scrolled = (name: string, table: Markup): Markup => html`<div class="scroll" tabindex="0" role="group" aria-label="${name}">${table}</div>`;

/** `Bores!C7`, which may break behind its sheet, or `line 7`. */
export function placeMarkup({ line, cell }: Pick<Finding, "line" | "cell">): Markup {
  if (line !== undefined) return html`line ${String(line)}`;
  const place = placeName(cell);
  const end = place.lastIndexOf("!") + 1;
  return html`${place.slice(0, end)}<wbr>${place.slice(end)}`;
}

/** `0.02 to 0.04`, `at most 0.040`, `at least 0.02`; with at least so many decimals. */
export function limitText(lower: number | null, upper: number | null, decimals = 0): string {
  const told = (limit: number): string => numberText(limit, Math.max(decimals, mostDecimals([limit])));
  if (lower !== null && upper !== null) return `${told(lower)} to ${told(upper)}`;
  if (upper !== null) return `at most ${told(upper)}`;
  return lower !== null ? `at least ${told(lower)}` : "none";
}

const MOST = 9;

/** The most decimals that some numbers are typed with; one with more than anybody types was worked out. */
export const typedWith = (numbers: readonly unknown[]): number =>
  numbers.reduce<number>((most, number) => {
    const decimals = typeof number === "number" ? mostDecimals([number]) : 0;
    return decimals <= MOST_TYPED ? Math.max(most, decimals) : most;
  }, 0);

/**
 * How many decimals numbers are typed with that are judged by the same limits in one column of a sheet or file: beside 0.025 what
 * a sheet keeps as 0.02 was read as 0.020.
 */
export function typedDecimals(rows: readonly JudgedRow[]): (row: JudgedRow) => number {
  const keyOf = ({ cell, lower, upper }: JudgedRow): string => `${cell.column},${cell.sheet}|${lower}|${upper}`;
  const most = new Map<string, number>();
  for (const row of rows) {
    most.set(keyOf(row), Math.max(most.get(keyOf(row)) ?? 0, typedWith([row.value, row.lower, row.upper])));
  }
  return (row) => most.get(keyOf(row)) ?? 0;
}

/**
 * Decimals with which a value and its margin are printed: as typed, or for what was worked out two more
 * than its limits have. Never so few that a value would seem to stand on the other side of a limit, or on it.
 */
export function decimalsFor(value: number, limits: readonly (number | null)[], typed: number): number {
  if (mostDecimals([value]) <= MOST_TYPED) return typed;
  const bounds = limits.filter((limit) => limit !== null);
  let decimals = Math.max(3, mostDecimals(bounds) + 2);
  while (decimals < MOST && bounds.some((limit) => compareDecimals(Number(value.toFixed(decimals)), limit) !== compareDecimals(value, limit))) decimals++;
  return decimals;
}
