import type { Cell } from "../../core/cell.ts";
import { isBlank, isCellError } from "../../core/cell.ts";
import { numberText, tame } from "../../drawings/text.ts";

/** Spreadsheet days of the years from 1954 on: a number this large beside the word date is a day. */
const FIRST_DAY = 20_000;
const LAST_DAY = 80_000;
/** Days from the sheet's day 0 to 1 January 1970. */
const TO_1970 = 25_569;

const SAYS_DATE = /\b(?:date|day|due|on|until|valid to|calibrated)\b/i;

/** A cell as a person reads it; a number under a heading that speaks of a day is that day. */
export function cellText(cell: Cell, heading = ""): string {
  if (isBlank(cell)) return "";
  if (isCellError(cell)) return cell.error;
  if (typeof cell === "boolean") return cell ? "yes" : "no";
  if (typeof cell !== "number") return tame(String(cell));
  if (SAYS_DATE.test(heading) && cell >= FIRST_DAY && cell <= LAST_DAY) return new Date(Math.floor(cell - TO_1970) * 86_400_000).toISOString().slice(0, 10);
  return numberText(cell);
}

/** A number in a cell; anything else is none. */
export const numberIn = (cell: Cell): number | null => (typeof cell === "number" && Number.isFinite(cell) ? cell : null);
