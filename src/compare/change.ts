import { likelySlip, likelySlipText } from "../check/likely-slip.ts";
import { broadcast } from "../core/broadcast.ts";
import { decimal, isAbove } from "../core/decimal.ts";
import { Fault } from "../core/fault.ts";
import { faultBody } from "../core/sentences.ts";
import { changeWords, uncertaintyOfChange } from "../functions/wear/change-params.ts";
import { enNumber } from "../functions/wear/en-number.ts";
import { wearLife } from "../functions/wear/wear-life.ts";
import { wearRate } from "../functions/wear/wear-rate.ts";
import { isLengthUnit } from "../vocabulary/units.ts";
import { labelOf, type Reading, type ReadingPair, type ReadingSubject } from "./readings.ts";

/** Hours left until a limit is met, from the later measuring on. */
interface Life {
  /** By the line through the measurings. */
  left: number;
  /** By the 95 % bound. */
  earliest: number;
}

type Measuring = Pick<Reading, "value" | "uncertainty">;

/** U of both sides, 0 for none. Where one side says nothing of its gauge, the other side's gauge stands for both. */
const doubtsOf = (before: Measuring, after: Measuring): [number, number] => [
  before.uncertainty || after.uncertainty || 0,
  after.uncertainty || before.uncertainty || 0,
];

/**
 * Where the straight line through two measurings meets a limit, and the earliest at which it may.
 * With t counted from the first measuring in shares of the time between them, the line is
 * a·t + b·(1 − t) and its expanded uncertainty √(t²·Ua² + (1 − t)²·Ub²) (JCGM 100:2008, 5.1.2); the
 * earliest is the first t at which the line and its uncertainty together reach the limit, the smaller
 * root of (limit − line)² = uncertainty². Wants a change larger than its uncertainty, towards the limit.
 */
export function lifeFromTwo(before: Measuring, after: Measuring, limit: number, hours: number): Life {
  const [b, a] = [before.value!, after.value!];
  const [ub, ua] = doubtsOf(before, after);
  const step = a - b;
  const left = ((limit - a) / step) * hours;
  const lead = step ** 2 - ua ** 2 - ub ** 2;
  const middle = (limit - b) * step - ub ** 2;
  const rest = (limit - b) ** 2 - ub ** 2;
  const first = (middle - Math.sqrt(Math.max(middle ** 2 - lead * rest, 0))) / lead;
  // Inside the uncertainty of the later reading the limit may have been met already.
  const earliest = Math.abs(limit - a) <= ua ? 0 : (first - 1) * hours;
  return { left: Math.max(left, 0), earliest: Math.max(earliest, 0) };
}

/** How a characteristic wears. Rates are per 1000 hours, as makers' manuals print them. */
interface Wear {
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

type Beside = Pick<CharacteristicChange, "before" | "after" | "change" | "uncertainty" | "verdict">;

/** Wear of one thing; `null` where the hours are not known. */
function wearOf(pair: ReadingPair, change: Beside, hoursBetween: number | undefined): Wear | null {
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
  const known = Math.max(...doubtsOf(change.before, change.after)) || undefined;
  const made = broadcast(wearRate, [use, size, known]);
  // Sizes or hours that are all equal show no rate; two of the readings still say what they can.
  if (made instanceof Fault || !Array.isArray(made)) return null;
  const [rate, from, to, words] = made[1] as [number, number, number, string];
  const limit = limitFor(rate, change);
  const last = history.at(-1)!.hours;
  const found = limit === undefined ? undefined : broadcast(wearLife, [use, size, limit, known]);
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

type ChangeVerdict = "real increase" | "real decrease" | "no real change";

/** One characteristic on both sides. */
export interface CharacteristicChange extends ReadingSubject {
  label: string;
  verdict: ChangeVerdict;
  before: Reading;
  after: Reading;
  unit: string | undefined;
  change: number;
  /** Expanded uncertainty of the change. */
  uncertainty: number;
  en: number;
  /** What the change means, in one sentence. */
  says: string;
  /** Where hours are known. */
  wear: Wear | null;
}

/** What keeps two readings from being compared. `isSound`: only their uncertainty is missing, so they still tell something in a group. */
interface Hindrance {
  why: string;
  isSound: boolean;
}

/** The change, or what keeps it from being told. The last reading of each side stands for it. */
export function changeOf(pair: ReadingPair, hoursBetween: number | undefined): CharacteristicChange | Hindrance {
  const [before, after] = [pair.before.at(-1)!, pair.after.at(-1)!];
  const hindrance = hindranceOf(before, after);
  if (hindrance !== undefined) return hindrance;
  const [from, to] = [before.value!, after.value!];
  const [uBefore, uAfter] = doubtsOf(before, after);
  const en = broadcast(enNumber, [from, to, uBefore, uAfter]);
  if (en instanceof Fault) return unsound(faultBody(en));
  const { engine, cylinder, characteristic, position } = before;
  const made = {
    ...{ engine, cylinder, characteristic, position, label: labelOf(before), before, after },
    verdict: changeWords(from, to, uncertaintyOfChange(uBefore, uAfter)),
    unit: before.unit ?? after.unit,
    change: decimal(to - from),
    uncertainty: decimal(uncertaintyOfChange(uBefore, uAfter)),
    en: en as number,
  };
  return { ...made, says: says(made), wear: wearOf(pair, made, hoursBetween) };
}

const unsound = (why: string): Hindrance => ({ why, isSound: false });

function hindranceOf(before: Reading, after: Reading): Hindrance | undefined {
  const faults = [before.fault && `before: ${before.fault}`, after.fault && `after: ${after.fault}`].filter(Boolean);
  if (faults.length > 0) return unsound(faults.join("; "));
  if (before.unit !== undefined && after.unit !== undefined && before.unit !== after.unit)
    return unsound(`it is in ${before.unit} before and in ${after.unit} after`);
  const slip = slipIn(before, after);
  if (slip !== undefined) return unsound(slip);
  // An uncertainty of 0 says no more than a blank one.
  if (before.uncertainty || after.uncertainty) return undefined;
  return { why: "no uncertainty is given on either side, so the gauge may explain any change", isSound: true };
}

/**
 * A reading that the keys explain better than the engine is not taken for a change, nor for a wear
 * rate. Wear is never taken for a slip: the rules are those by which Check looks at like readings.
 */
function slipIn(before: Reading, after: Reading): string | undefined {
  const [from, to, unit] = [before.value!, after.value!, before.unit ?? after.unit];
  const step = Math.min(...[from, to].map((value) => 10 ** -(String(decimal(value)).split(".")[1]?.length ?? 0)));
  const spread = uncertaintyOfChange(...doubtsOf(before, after));
  const suspicion = likelySlip(to, { middle: from, spread, step, source: "the reading before" }, unit === undefined ? undefined : isLengthUnit(unit));
  return suspicion && likelySlipText(suspicion, to);
}

/** To three figures, which is more than an uncertainty is good for. */
const rounded = (value: number): number => Number(value.toPrecision(3));

function says({ verdict, change, uncertainty, en }: Pick<CharacteristicChange, "verdict" | "change" | "uncertainty" | "en">): string {
  const size = change === 0 ? "the same" : `${Math.abs(change)} ${change > 0 ? "larger" : "smaller"}`;
  const doubt = rounded(uncertainty);
  const beside = verdict === "no real change" ? `the gauge explains up to ${doubt}` : `more than the ${doubt} that the gauge explains`;
  return `${size}: ${beside} (En ${rounded(en)})`;
}
