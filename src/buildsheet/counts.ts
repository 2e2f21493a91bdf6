import type { CheckResult, Finding } from "./finding.ts";
import { wordOf } from "./marks.ts";

/** Thousands apart by a thin space that does not break. */
export const grouped = (count: number): string => String(count).replace(/\B(?=(\d{3})+$)/g, "\u202f");

/** `1 finding`, `10 000 findings`. */
export const counted = (count: number, one: string, many = `${one}s`): string => `${grouped(count)} ${count === 1 ? one : many}`;

/** Nothing that goes in gets lost: `24 rows in = 22 checked + 2 refused`. */
export const countsText = ({
  rowsIn,
  checked,
  refused,
}: Pick<CheckResult, "rowsIn" | "checked" | "refused"> & Partial<Record<keyof CheckResult, unknown>>): string =>
  `${counted(rowsIn, "row")} in = ${grouped(checked)} checked + ${grouped(refused)} refused`;

/** How many findings there are of each word, in the order in which the words first come up: worst first. */
export function tally(findings: Iterable<Pick<Finding, "kind" | "verdict">>): Map<string, number> {
  const counts = new Map<string, number>();
  for (const finding of findings) counts.set(wordOf(finding), (counts.get(wordOf(finding)) ?? 0) + 1);
  return counts;
}
