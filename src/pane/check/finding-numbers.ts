import { type Field, type Finding, specOf } from "../../check/finding.ts";
import { counted, differenceText, readingText } from "../../core/number-text.ts";
import { shownNumber } from "../parts/text.ts";

const minus = (text: string): string => text.replace("-", "−");

/** The numbers that a finding has, by name; one with neither limit nor margin says nothing of them. */
export function numbersOf({ kind, value, lower, upper, margin, details }: Finding): [name: string, text: string][] {
  const { isOfReading, fields } = specOf(kind);
  const beside = [lower, upper].filter((limit) => limit !== null);
  const numbers: [string, string][] = isOfReading ? [["value", valueText(value, beside)]] : [];
  const limit = limitText(lower, upper);
  if (limit) numbers.push(["limit", limit]);
  if (margin !== null) numbers.push(["margin", minus(typeof value === "number" ? differenceText(margin, [value, ...beside]) : readingText(margin))]);
  for (const [name, field] of Object.entries(fields)) if (field.shownAs) numbers.push([field.shownAs, fieldText(field, details[name])]);
  return numbers;
}

function fieldText({ type, unit }: Field, value: unknown): string {
  if (typeof value !== "number") return String(value ?? "none");
  return type === "count" ? counted(value, unit) : minus(readingText(value));
}

function valueText(value: Finding["value"], beside: readonly number[]): string {
  if (value === null || value === "") return "blank";
  return typeof value === "number" ? minus(readingText(value, beside)) : value;
}

/** In words, because screen readers skip or misread "≤". */
function limitText(lower: number | null, upper: number | null): string {
  if (lower !== null && upper !== null) return `${shownNumber(lower)} to ${shownNumber(upper)}`;
  if (upper !== null) return `at most ${shownNumber(upper)}`;
  return lower !== null ? `at least ${shownNumber(lower)}` : "";
}
