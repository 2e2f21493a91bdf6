import { broadcast } from "../core/broadcast.ts";
import { decimal, isAbove } from "../core/decimal.ts";
import { Fault } from "../core/fault.ts";
import { wearLife } from "../functions/wear/wear-life.ts";
import { wearRate } from "../functions/wear/wear-rate.ts";
import type { Change } from "./change.ts";
import type { Pair } from "./match.ts";
import type { Reading } from "./reading.ts";
import { type Life, lifeFromTwo } from "./two-measurings.ts";

/** How a characteristic wears. Rates are per 1000 hours, as makers' manuals print them. */
export interface Wear {
  /** From the first measuring to the last. */
  hours: number;
  /** With two the gauge's uncertainty is all that is known of the scatter; from three on the readings show it themselves. */
  measurings: number;
  rate: number;
  /** Interval of the rate at 95 %. */
  from: number;
  to: number;
  /** The interval leaves zero out. */
  isReal: boolean;
  limit: number | null;
  /** Hours left from the last measuring on; `null` without a limit on that side, or a rate. */
  life: Life | null;
  says: string;
}

const PER = 1000;
/** WEARRATE needs as many to tell wear from scatter. */
const ENOUGH = 3;

type Beside = Pick<Change, "before" | "after" | "change" | "uncertainty" | "verdict">;

/** Wear of one thing; `null` where the hours are not known. */
export function wearOf(pair: Pair, change: Beside, hoursBetween: number | undefined): Wear | null {
  const history = historyOf([...pair.before, ...pair.after]);
  const line = history.length >= ENOUGH ? byLine(history, change) : null;
  return line ?? byTwo(change, hoursBetween);
}

/** Readings with their hours, each once: a later file may repeat what an earlier one holds. */
function historyOf(readings: readonly Reading[]): { hours: number; value: number }[] {
  const once = new Map<string, { hours: number; value: number }>();
  for (const { hours, value } of readings) if (hours !== undefined && value !== null) once.set(`${hours}|${value}`, { hours, value });
  return [...once.values()].sort((a, b) => a.hours - b.hours);
}

function byLine(history: { hours: number; value: number }[], change: Beside): Wear | null {
  const use = history.map(({ hours }) => [hours]);
  const size = history.map(({ value }) => [value]);
  const made = broadcast(wearRate, [use, size]);
  // Sizes or hours that are all equal show no rate; two of the readings still say what they can.
  if (made instanceof Fault || !Array.isArray(made)) return null;
  const [rate, from, to, words] = made[1] as [number, number, number, string];
  const limit = limitFor(rate, change);
  const last = history.at(-1)!.hours;
  const found = limit === undefined ? undefined : broadcast(wearLife, [use, size, limit]);
  const [at, earliest] = Array.isArray(found) ? found[1]! : [];
  const life = typeof at === "number" && typeof earliest === "number" ? { left: Math.max(at - last, 0), earliest: Math.max(earliest - last, 0) } : null;
  const wear = { hours: last - history[0]!.hours, measurings: history.length, isReal: words !== "not distinguishable from zero", limit: limit ?? null, life };
  return told({ ...wear, rate: PER * rate, from: PER * from, to: PER * to }, change);
}

function byTwo(change: Beside, hoursBetween: number | undefined): Wear | null {
  const { before, after, verdict, uncertainty } = change;
  const hours = before.hours !== undefined && after.hours !== undefined ? after.hours - before.hours : hoursBetween;
  if (hours === undefined || !(hours > 0)) return null;
  const [rate, half] = [change.change, uncertainty].map((size) => (size / hours) * PER) as [number, number];
  const isReal = verdict !== "no real change";
  const limit = limitFor(rate, change);
  const life = isReal && limit !== undefined ? lifeFromTwo(before, after, limit, hours) : null;
  return told({ hours, measurings: 2, rate, from: rate - half, to: rate + half, isReal, limit: limit ?? null, life }, change);
}

/** The limit towards which the size goes: that of the later reading, or else of the earlier one. */
function limitFor(rate: number, { before, after }: Beside): number | undefined {
  if (rate === 0) return undefined;
  const side = rate > 0 ? "upper" : "lower";
  return after[side] ?? before[side];
}

/** Three figures are more than a rate is good for. */
const figures = (value: number): number => decimal(Number(value.toPrecision(3)));

function told(wear: Omit<Wear, "says">, { after }: Beside): Wear {
  const { rate, from, to, isReal, hours, limit, life } = wear;
  if (!isReal) {
    const most = figures(Math.max(Math.abs(from), Math.abs(to)));
    return { ...wear, says: `no wear rate yet after ${hours} h: not distinguishable from zero, at most ${most} in ${PER} h` };
  }
  const [least, most] = [from, to].map(Math.abs).sort((a, b) => a - b) as [number, number];
  const grows = `${rate > 0 ? "grows" : "shrinks"} ${figures(Math.abs(rate))} in ${PER} h (${figures(least)} to ${figures(most)})`;
  if (limit === null) return { ...wear, says: grows };
  const past = rate > 0 ? isAbove(after.value!, limit) : isAbove(limit, after.value!);
  if (past) return { ...wear, life: { left: 0, earliest: 0 }, says: `${grows}; it is past its limit ${limit}` };
  if (!life) return { ...wear, says: grows };
  const soonest = Math.round(life.earliest);
  const earliest = soonest > 0 ? `at the earliest after ${soonest} h` : "and it may be there already";
  return { ...wear, says: `${grows}; at that rate it comes to its limit ${limit} after another ${Math.round(life.left)} h, ${earliest}` };
}
