import { likelySlip, likelySlipText } from "../check/likely-slip.ts";
import { decimal } from "../core/decimal.ts";
import { largestNumber } from "../core/grouped.ts";
import { decimalsOf, MOST_TYPED } from "../core/number-text.ts";
import { unitWords } from "../core/words.ts";
import { uncertaintyOfChange } from "../functions/wear/change-params.ts";
import { combined } from "../math/gauge-rule.ts";
import type { UseUnit, WearDirection } from "../vocabulary/heading-words.ts";
import { measuredBy, ownCharacteristic, wearOf } from "../vocabulary/subjects.ts";
import { isLengthUnit } from "../vocabulary/units.ts";
import type { Estimate, LineJudgement } from "./judgement.ts";
import type { MasterChange, Masters } from "./masters.ts";
import { AVERAGED } from "./mean-change.ts";
import type { ReadingPair, SideNames } from "./pair-readings.ts";
import { labelOf, type Reading, type ReadingSubject } from "./readings.ts";
import { ownUOf, RepeatScatter, type Session, type SessionDoubt, sessionsOf, uncertaintyOf } from "./sessions.ts";
import { type ThermalChange, thermalChange } from "./temperatures.ts";
import { isLength, type TypedSizes, typedFor } from "./typed-sizes.ts";

/** One place that was measured on both sides. */
export interface PlaceEstimate extends ReadingSubject, Estimate {
  label: string;
  /** Places of one own characteristic are taken together: a top ring's are not those of a second ring. */
  own: string;
  unit: string | undefined;
  /** As many decimals as the readings of the characteristic were typed with. */
  typedDecimals: number;
  /** Its sizes and its change are told with so many: one more than was typed where a mean, a master or a temperature leaves a part of the last one. */
  sizeDecimals: number;
  decimals: number;
  before: Session;
  after: Session;
  /** Earlier sessions too, in the order of their hours: sizes as they count, with the masters' moves taken out and at 20 °C. */
  history: readonly { hours: number | undefined; useUnit: UseUnit | undefined; value: number }[];
  /** What the gauge's master moved by is taken out of the difference. */
  master: MasterChange | undefined;
  /** Both sizes are brought to 20 °C. */
  thermal: ThermalChange | undefined;
  /** `null` without an uncertainty. */
  doubts: { before: SessionDoubt; after: SessionDoubt } | null;
  /** Which way the change goes where wear can only go one; `null` for no change, or where both are wear. */
  direction: "worse" | "better" | null;
}

export type PlaceChange = PlaceEstimate & LineJudgement & { says: string };

/** What keeps a pair from being compared. */
export interface Hindrance {
  why: string;
}

/** The changes of all pairs, or for each what keeps it from being told. The last session of each side stands for it. */
export function placeEstimates(
  pairs: readonly ReadingPair[],
  matters: TypedSizes | undefined,
  names: SideNames,
  masters: Masters,
): (PlaceEstimate | Hindrance)[] {
  const scatter = new RepeatScatter();
  const decimals = new Map<string, number[]>();
  const read = pairs.map((pair) => {
    const hindrance = hindranceOf(pair, names);
    if (hindrance !== undefined) return { why: hindrance };
    const [before, after] = [sessionsOf(pair.before), sessionsOf(pair.after)];
    for (const session of before) scatter.take("before", session);
    for (const session of after) scatter.take("after", session);
    const key = keyOf(pair.before[0]!);
    const own = [...pair.before, ...pair.after].flatMap(({ value }) => (value === null ? [] : [decimalsOf(decimal(value))]));
    const known = decimals.get(key);
    if (known) known.push(...own);
    else decimals.set(key, own);
    return { before, after };
  });
  // Once for each characteristic, not for each of its places.
  const told = new Map([...decimals].map(([key, all]) => [key, decimalsAmong(all)]));
  const contradictions = read.map((one) => ("why" in one ? [] : contradictionsIn(one, scatter)));
  // What contradicts itself says nothing of how far the readings of other places scatter.
  for (const { side, session } of contradictions.flat()) scatter.leaveOut(side, session);
  return read.map((one, i) => {
    if ("why" in one) return { why: one.why! };
    const why = contradictionText(contradictions[i]!, names);
    return why === undefined ? placeEstimate(one, scatter, matters, told.get(keyOf(one.before[0]!.readings[0]!))!, masters) : { why };
  });
}

/** The sessions of each side in the order of their hours; the last of each stands for it. */
type Sides = Record<"before" | "after", Session[]>;

interface Contradiction {
  side: "before" | "after";
  session: Session;
}

function contradictionsIn(sides: Sides, scatter: RepeatScatter): Contradiction[] {
  return (["before", "after"] as const).flatMap((side) =>
    sides[side].flatMap((session) => {
      const U = uncertaintyOf(session) ?? uncertaintyOf(sides[side === "before" ? "after" : "before"].at(-1)!);
      return U !== undefined && scatter.contradicts(side, session, U) ? [{ side, session }] : [];
    }),
  );
}

function contradictionText([first]: readonly Contradiction[], names: SideNames): string | undefined {
  if (first === undefined) return undefined;
  const sizes = first.session.readings.map(({ value }) => value);
  return `${names[first.side]}: its readings ${sizes.slice(0, -1).join(", ")} and ${sizes.at(-1)} contradict one another beyond what the gauge explains`;
}

/** What was worked out from typed sizes is told with a decimal more, where it has one. */
const toldDecimals = (typed: number, ...worked: readonly number[]): number => Math.min(typed + AVERAGED, Math.max(typed, ...worked.map(decimalsOf)));

/** As many as were typed; sizes that were worked out are told with two more, at least three. */
function decimalsAmong(all: readonly number[]): number {
  const typed = largestNumber(
    all.filter((decimals) => decimals <= MOST_TYPED),
    0,
  );
  return all.every((decimals) => decimals <= MOST_TYPED) ? typed : Math.max(3, typed + 2);
}

const keyOf = ({ characteristic, position, unit = "" }: Reading): string => `${ownCharacteristic(measuredBy(characteristic, position))}|${unit}`;

function placeEstimate(sides: Sides, scatter: RepeatScatter, matters: TypedSizes | undefined, typedDecimals: number, masters: Masters): PlaceEstimate {
  const [before, after] = [sides.before.at(-1)!, sides.after.at(-1)!];
  const [first, last] = [before.readings[0]!, after.readings[0]!];
  const { engine, cylinder, characteristic, position } = first;
  const measured = measuredBy(characteristic, position);
  // Where one side says nothing of its gauge, the other side's gauge stands for both.
  const U = [uncertaintyOf(before) ?? uncertaintyOf(after), uncertaintyOf(after) ?? uncertaintyOf(before)];
  const ownU = [before, after].map((session, i) => ownUOf(session, U[i] ?? 0)) as [number, number];
  const master = masters.between(before, after, ownU);
  const thermal = thermalChange(before, after);
  const difference = decimal(after.value - before.value - (master?.moved ?? 0) + (thermal?.correction ?? 0));
  const doubtOf = (side: "before" | "after", session: Session, own: number) =>
    scatter.doubtOf(side, session, own, master?.[side], thermal?.ofDegree[side] ?? 0);
  const doubts = U[0] === undefined ? null : { before: doubtOf("before", before, U[0]), after: doubtOf("after", after, U[1]!) };
  const common = doubts === null ? 0 : Math.hypot(doubts.before.common, doubts.after.common, thermal?.ofCoefficient ?? 0);
  const areMeans = [before, after].some(({ readings }) => readings.length > 1);
  const sizeDecimals = areMeans ? toldDecimals(typedDecimals, decimal(before.value), decimal(after.value)) : typedDecimals;
  const isCorrected = areMeans || thermal !== undefined || (master?.moved ?? 0) !== 0;
  const decimals = isCorrected ? Math.max(sizeDecimals, toldDecimals(typedDecimals, difference)) : typedDecimals;
  const sizeOf = (session: Session, side: "before" | "after"): number =>
    session === before
      ? session.value
      : decimal(session.value - (masters.between(before, session, ownU, side)?.moved ?? 0) + (thermalChange(before, session)?.correction ?? 0));
  return {
    ...{ engine, cylinder, characteristic, position, label: labelOf(first), own: ownCharacteristic(measured), unit: first.unit ?? last.unit },
    ...{ typedDecimals, sizeDecimals, decimals },
    ...{ before, after, master, thermal, doubts, difference, n: 1, common },
    history: (["before", "after"] as const).flatMap((side) =>
      sides[side].map((session) => ({ hours: session.hours, useUnit: session.readings[0]!.useUnit, value: sizeOf(session, side) })),
    ),
    direction: directionOf(first.wears ?? last.wears ?? wearOf(measured.characteristic), difference),
    doubt: doubts && combined([doubts.before.own, doubts.after.own], common),
    matters:
      typedFor(first, matters) ?? last.matters ?? first.matters ?? (isLength({ ...first, unit: first.unit ?? last.unit }) ? matters?.general : undefined),
  };
}

function directionOf(wears: WearDirection | undefined, difference: number): PlaceEstimate["direction"] {
  if (wears === undefined || difference === 0) return null;
  return difference > 0 === (wears === "larger") ? "worse" : "better";
}

function hindranceOf(pair: ReadingPair, names: SideNames): string | undefined {
  const [before, after] = [pair.before.at(-1)!, pair.after.at(-1)!];
  const faults = [before.fault && `${names.before}: ${before.fault}`, after.fault && `${names.after}: ${after.fault}`].filter(Boolean);
  if (faults.length > 0) return faults.join("; ");
  const units = [pair.before, pair.after].map((side) => side.find(({ unit }) => unit !== undefined)?.unit);
  const [from, to] = units;
  if (from !== undefined && to !== undefined && from !== to) return `it is in ${unitWords(from)} ${names.before} and in ${unitWords(to)} ${names.after}`;
  const [first, ...others] = [...pair.before, ...pair.after].filter(({ value }) => value !== null);
  for (const other of others) {
    if (first!.unit !== undefined && other.unit !== undefined && other.unit !== first!.unit)
      return `one reading is in ${unitWords(first!.unit)}, another in ${unitWords(other.unit)}`;
    const slip = slipIn(first!.value!, other.value!, first!.unit ?? other.unit, [first!.uncertainty ?? 0, other.uncertainty ?? 0]);
    if (slip !== undefined) return slip;
  }
  return undefined;
}

/**
 * A reading that the keys explain better than the engine is not taken for a change, nor for a wear
 * rate. Wear is never taken for a slip: the rules are those by which Check looks at like readings.
 */
function slipIn(from: number, to: number, unit: string | undefined, [uBefore, uAfter]: [number, number]): string | undefined {
  const step = Math.min(...[from, to].map((value) => 10 ** -decimalsOf(decimal(value))));
  const spread = uncertaintyOfChange(uBefore || uAfter, uAfter || uBefore);
  const suspicion = likelySlip(to, { middle: from, spread, step, source: "the reading before" }, unit === undefined ? undefined : isLengthUnit(unit));
  return suspicion && likelySlipText(suspicion, to);
}
