import { counted } from "../../buildsheet/counts.ts";
import type { Finding } from "../../buildsheet/finding.ts";
import { decimal } from "../../core/decimal.ts";

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

/** The day at this place, as it stands on what is written. */
export function today(): string {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
}
