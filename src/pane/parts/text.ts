import { decimal } from "../../core/decimal.ts";

/** A number as typed, with a true minus sign. */
export const shownNumber = (value: number): string => String(decimal(value)).replace("-", "−");

/** The day at this place, as it stands on what is written. */
export function today(): string {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
}
