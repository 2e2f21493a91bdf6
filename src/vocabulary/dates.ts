import type { Cell } from "../core/cell.ts";

/** Days of a sheet's calendar from 1954 to 2119: another number under a date's heading is not taken for a date. */
const FIRST = 20_000;
const LAST = 80_000;
const DAY = 86_400_000;
/** Day 0 of a sheet's calendar, as far as its days after February 1900 are concerned. */
const ZERO = Date.UTC(1899, 11, 30);

const ISO = /^\s*(\d{4})-(\d{2})-(\d{2})\s*$/;

/** The whole day of a date in a cell: a sheet's own date, or text as 2026-03-21, which can mean one day only. */
export function dayOf(cell: Cell): number | undefined {
  if (typeof cell === "number") return cell >= FIRST && cell < LAST ? Math.floor(cell) : undefined;
  const [, year, month, day] = (typeof cell === "string" && ISO.exec(cell)) || [];
  if (year === undefined) return undefined;
  const at = Date.UTC(Number(year), Number(month) - 1, Number(day));
  return new Date(at).toISOString().startsWith(`${year}-${month}-${day}`) ? (at - ZERO) / DAY : undefined;
}

export const dayText = (day: number): string => new Date(ZERO + day * DAY).toISOString().slice(0, 10);
