import type { CheckResult, Finding } from "../buildsheet/finding.ts";
import { wordOf } from "../buildsheet/marks.ts";
import { decimal } from "../core/decimal.ts";

/** A number as typed, with a true minus sign. */
export const numberText = (value: number): string => String(decimal(value)).replace("-", "−");

/** The numbers that a finding has, by name; one with neither limit nor margin says nothing of them. */
export function numbersOf({ kind, value, lower, upper, margin }: Finding): [name: string, text: string][] {
  if (kind === "calibration overdue")
    return [["used on", valueText(value)], ...(margin === null ? [] : [["overdue by", counted(-margin, "day")] as [string, string]])];
  // A limit inside a formula is found where many values are judged by it.
  const numbers: [string, string][] = kind === "limit in formula" ? [] : [["value", valueText(value)]];
  const limit = limitText(lower, upper);
  if (limit) numbers.push(["limit", limit]);
  if (margin !== null) numbers.push(["margin", numberText(margin)]);
  return numbers;
}

function valueText(value: Finding["value"]): string {
  if (value === null || value === "") return "blank";
  return typeof value === "number" ? numberText(value) : value;
}

/** In words, because screen readers skip or misread "≤". */
function limitText(lower: number | null, upper: number | null): string {
  if (lower !== null && upper !== null) return `${numberText(lower)} to ${numberText(upper)}`;
  if (upper !== null) return `at most ${numberText(upper)}`;
  return lower !== null ? `at least ${numberText(lower)}` : "";
}

/** `1 finding`, `10 000 findings`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${grouped(count)} ${count === 1 ? one : many}`;
}

/** Thousands apart by a thin space that does not break. */
const grouped = (count: number): string => String(count).replace(/\B(?=(\d{3})+$)/g, "\u202f");

/** Nothing that goes in gets lost: `24 rows in = 22 checked + 2 refused`. */
export function countsText({ rowsIn, checked, refused }: CheckResult): string {
  return `${counted(rowsIn, "row")} in = ${grouped(checked)} checked + ${grouped(refused)} refused`;
}

/** How many findings there are of each word, in the order in which the words first come up: worst first. */
export function tally(findings: readonly Finding[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const finding of findings) counts.set(wordOf(finding), (counts.get(wordOf(finding)) ?? 0) + 1);
  return counts;
}
