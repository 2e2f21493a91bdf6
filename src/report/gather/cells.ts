import type { Cell } from "../../core/cell.ts";
import { isBlank, isCellError } from "../../core/cell.ts";
import { numberText, withoutControlCharacters } from "../../drawings/text.ts";
import { dayOf, dayText } from "../../vocabulary/dates.ts";
import { speaksOfDay } from "../../vocabulary/identity.ts";

/** A cell as a person reads it; a number under a heading that speaks of a day is that day. */
export function cellText(cell: Cell, heading = ""): string {
  if (isBlank(cell)) return "";
  if (isCellError(cell)) return cell.error;
  if (typeof cell === "boolean") return cell ? "yes" : "no";
  if (typeof cell !== "number") return withoutControlCharacters(String(cell));
  const day = speaksOfDay(heading) ? dayOf(cell) : undefined;
  return day === undefined ? numberText(cell) : dayText(day);
}

/** A number in a cell; anything else is none. */
export const numberIn = (cell: Cell): number | null => (typeof cell === "number" && Number.isFinite(cell) ? cell : null);
