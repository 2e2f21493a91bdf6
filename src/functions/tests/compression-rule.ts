import type { Result } from "../../core/cell.ts";
import { decimal, isAbove, isBelow } from "../../core/decimal.ts";
import { type Fault, refuse } from "../../core/fault.ts";
import type { Cells } from "../../core/param.ts";
import { show } from "../../core/sentences.ts";

export const RULES = ["share", "average", "difference"] as const;
export type CompressionRule = (typeof RULES)[number];

/** For the help of functions that take pressures: a dead cylinder is a reading, and what a host's 0 for an empty cell does then. */
export const ZERO_PRESSURE_NOTE =
  "A cylinder that shows nothing reads 0, and 0 counts. Some sheets hand an empty cell over as 0 too: it would count as a dead cylinder.";

/** Half of the highest, or half below the average: no maker allows as much, so what lies beyond was typed for another rule. */
const HALF = 0.5;

/** The least that a rule asks of every cylinder, and where the figure comes from. Wants at least one reading. */
export function boundBy(rule: CompressionRule, limit: number, read: readonly number[]): { lower: number; why: string } {
  const highest = highestOf(read);
  if (rule === "share") return { lower: decimal(limit * highest), why: `${show(limit)} of the highest, ${show(highest)}` };
  if (rule === "difference") return { lower: decimal(highest - limit), why: `highest ${show(highest)} less ${show(limit)}` };
  const average = read.reduce((a, b) => a + b) / read.length;
  return { lower: decimal((1 - limit) * average), why: `${show(limit)} below the average, ${short(average)}` };
}

/**
 * A limit by which every cylinder would pass, whatever is wrong with it: typed for another rule or in
 * another unit. Also readings that are all 0, among which each would be as good as the best.
 */
export function ruleFault(rule: CompressionRule, limit: number, limitName: string, read: readonly number[], readName: string): Fault | undefined {
  const highest = highestOf(read);
  if (!isAbove(highest, 0)) return refuse(readName, highest, "no cylinder shows any pressure, so there is none to judge the others by");
  if (rule === "share" && (isBelow(limit, HALF) || isAbove(limit, 1)))
    return refuse(limitName, limit, "for the share rule type the least share of the highest reading, from 0.5 to 1, such as 0.75");
  if (rule === "average" && isAbove(limit, HALF))
    return refuse(limitName, limit, "for the average rule type how far below the average a cylinder may be, as a share up to 0.5, such as 0.2");
  if (rule === "difference" && isAbove(limit, HALF * highest))
    return refuse(
      limitName,
      limit,
      `the difference rule takes a pressure, and this is more than half of the highest reading ${show(highest)}: is it in their unit?`,
    );
  return undefined;
}

const highestOf = (read: readonly number[]): number => read.reduce((a, b) => Math.max(a, b));

/** An average with no more digits than a gauge deserves. */
export const short = (x: number): string => String(Math.round(x * 1000) / 1000);

/** One result per cell, laid out as the cells are. */
export function inShape({ rows, columns, values }: Cells, of: (cell: Cells["values"][number], index: number) => Result): Result[][] {
  return Array.from({ length: rows }, (_, row) => Array.from({ length: columns }, (_, column) => of(values[row * columns + column]!, row * columns + column)));
}
