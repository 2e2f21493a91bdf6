import { decimal } from "../../core/decimal.ts";
import { show } from "../../core/sentences.ts";

export const RULES = ["share", "average", "difference"] as const;
export type CompressionRule = (typeof RULES)[number];

/** The least that a rule asks of every cylinder, and where the figure comes from. Wants at least one reading. */
export function boundBy(rule: CompressionRule, limit: number, read: readonly number[]): { lower: number; why: string } {
  const highest = read.reduce((a, b) => Math.max(a, b));
  if (rule === "share") return { lower: decimal(limit * highest), why: `${show(limit)} of the highest, ${show(highest)}` };
  if (rule === "difference") return { lower: decimal(highest - limit), why: `highest ${show(highest)} less ${show(limit)}` };
  const average = read.reduce((a, b) => a + b) / read.length;
  return { lower: decimal((1 - limit) * average), why: `${show(limit)} below the average, ${short(average)}` };
}

/** An average with no more digits than a gauge deserves. */
export const short = (x: number): string => String(Math.round(x * 1000) / 1000);
