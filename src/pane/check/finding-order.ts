import type { Finding } from "../../buildsheet/finding.ts";

export const ORDERS = ["worst first", "by place", "by margin"] as const;
export type Order = (typeof ORDERS)[number];

export const orderFrom = (given: unknown): Order | undefined => ORDERS.find((order) => order === given);

/** Findings in another order; a check gives them worst first, and what is alike stays so. */
export function inOrder(findings: readonly Finding[], order: Order, sheets: readonly string[]): readonly Finding[] {
  if (order === "by margin") return findings.toSorted((a, b) => marginOf(a) - marginOf(b));
  if (order === "worst first") return findings;
  const places = new Map(sheets.map((sheet, i) => [sheet, i]));
  const sheet = ({ cell }: Finding) => places.get(cell.sheet) ?? sheets.length;
  return findings.toSorted((a, b) => sheet(a) - sheet(b) || a.cell.row - b.cell.row || a.cell.column - b.cell.column);
}

/** The least first; what has none, or one in days, behind all that have. */
const marginOf = ({ kind, margin }: Finding): number => (margin === null || kind === "calibration overdue" ? Number.MAX_VALUE : margin);

/** The same thing found again by a later check. */
export const sameFinding = (a: Finding, b: Finding): boolean =>
  a.kind === b.kind && a.cell.row === b.cell.row && a.cell.column === b.cell.column && a.cell.sheet === b.cell.sheet && a.label === b.label;
