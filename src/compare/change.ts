import { suspect, suspicionText } from "../check/likely-slip.ts";
import { broadcast } from "../core/broadcast.ts";
import { decimal } from "../core/decimal.ts";
import { Fault } from "../core/fault.ts";
import { faultBody } from "../core/sentences.ts";
import { uncertaintyOfChange } from "../functions/wear/change-params.ts";
import { enNumber } from "../functions/wear/en-number.ts";
import { realChange } from "../functions/wear/real-change.ts";
import { isLengthUnit } from "../vocabulary/units.ts";
import type { Pair } from "./match.ts";
import { labelOf, type Reading, type Subject } from "./reading.ts";
import { doubtsOf } from "./two-measurings.ts";
import { type Wear, wearOf } from "./wear.ts";

export type ChangeVerdict = "real increase" | "real decrease" | "no real change";

/** One characteristic on both sides. */
export interface Change extends Subject {
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
export interface Hindrance {
  why: string;
  isSound: boolean;
}

/** The change, or what keeps it from being told. The last reading of each side stands for it. */
export function changeOf(pair: Pair, hoursBetween: number | undefined): Change | Hindrance {
  const [before, after] = [pair.before.at(-1)!, pair.after.at(-1)!];
  const hindrance = hindranceOf(before, after);
  if (hindrance !== undefined) return hindrance;
  const [from, to] = [before.value!, after.value!];
  const [uBefore, uAfter] = doubtsOf(before, after);
  const verdict = broadcast(realChange, [from, to, uBefore, uAfter]);
  const en = broadcast(enNumber, [from, to, uBefore, uAfter]);
  if (verdict instanceof Fault || en instanceof Fault) return unsound(faultBody((verdict instanceof Fault ? verdict : en) as Fault));
  const { engine, cylinder, characteristic, position } = before;
  const made = {
    ...{ engine, cylinder, characteristic, position, label: labelOf(before), before, after },
    verdict: verdict as ChangeVerdict,
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
  const suspicion = suspect(to, { middle: from, spread, step, source: "the reading before" }, unit === undefined ? undefined : isLengthUnit(unit));
  return suspicion && suspicionText(suspicion, to);
}

/** To three figures, which is more than an uncertainty is good for. */
const rounded = (value: number): number => Number(value.toPrecision(3));

function says({ verdict, change, uncertainty, en }: Pick<Change, "verdict" | "change" | "uncertainty" | "en">): string {
  const size = change === 0 ? "the same" : `${Math.abs(change)} ${change > 0 ? "larger" : "smaller"}`;
  const doubt = rounded(uncertainty);
  const beside = verdict === "no real change" ? `the gauge explains up to ${doubt}` : `more than the ${doubt} that the gauge explains`;
  return `${size}: ${beside} (En ${rounded(en)})`;
}
