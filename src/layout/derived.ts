import { broadcast } from "../core/broadcast.ts";
import type { Argument, Block } from "../core/cell.ts";
import { isBlank } from "../core/cell.ts";
import { decimal } from "../core/decimal.ts";
import type { Derivation, Spec } from "../core/define.ts";
import { Fault } from "../core/fault.ts";
import { groupedBy } from "../core/grouped.ts";
import { sentence } from "../core/sentences.ts";
import { specs } from "../functions/index.ts";
import { propagated } from "../math/propagation.ts";
import { CHARACTERISTICS } from "../vocabulary/characteristics.ts";
import { foldedHeading } from "../vocabulary/headings.ts";
import { positionText } from "../vocabulary/parse-heading.ts";
import type { CellAddress } from "../workbook/address.ts";
import type { MappedReading, MappedSubject } from "./mapped-readings.ts";

/** A characteristic that readings come to. */
export interface DerivedReading extends MappedSubject {
  spec: Spec;
  /** Blank while readings are missing; then `missing` are their cells. */
  value: number | null;
  missing: CellAddress[];
  fault?: string;
  /** U that it has from the U of its readings; nothing unless all of them have one. Asked for only where it is judged. */
  uncertainty: () => number | undefined;
  /** Where a person should look, and all readings that it comes from. */
  cell: CellAddress;
  from: readonly MappedReading[];
}

/** What a function declares that readings come to. */
interface Rule extends Derivation {
  spec: Spec;
}

const ORDER = new Map(Object.keys(CHARACTERISTICS).map((name, at) => [name, at]));

/** In the order in which the trade's characteristics are known. */
const RULES: readonly Rule[] = specs
  .flatMap((spec) => (spec.derives ?? []).map((derivation) => ({ ...derivation, spec })))
  .sort((one, other) => ORDER.get(one.characteristic)! - ORDER.get(other.characteristic)!);

/** Characteristics that results are worked out from. */
export const INGREDIENTS: ReadonlySet<string> = new Set(RULES.flatMap(({ from }) => from));

/** What the results that use this characteristic are called. */
export const resultsFrom = (characteristic: string): string[] =>
  RULES.filter(({ from }) => from.some((name) => name === characteristic)).map((rule) => rule.characteristic);

const keyOf = ({ engine, cylinder, places }: MappedSubject, per: Rule["per"]): string =>
  [foldedHeading(engine), per === "engine" ? "" : foldedHeading(cylinder), per === "place" ? positionText(places) : ""].join("|");

/** Everything that can be worked out from the readings and is not measured itself. */
export function deriveReadings(readings: readonly MappedReading[]): DerivedReading[] {
  const byCharacteristic = groupedBy(readings, ({ characteristic }) => characteristic);
  return RULES.flatMap((rule) => {
    const [main, partner] = rule.from.map((name) => byCharacteristic.get(name) ?? []);
    const given = new Set((byCharacteristic.get(rule.characteristic) ?? []).map((reading) => keyOf(reading, rule.per)));
    return [...groupedBy(main!, (reading) => keyOf(reading, rule.per))].flatMap(([key, own]) => {
      if (given.has(key)) return [];
      const beside = partner && partnersOf(rule, own[0]!, partner);
      if (beside?.length === 0) return [];
      return resultOf(rule, own, beside?.at(0)) ?? [];
    });
  });
}

/** A size of the engine, or of all engines, goes with each of its cylinders. */
function partnersOf({ per }: Rule, subject: MappedReading, partners: readonly MappedReading[]): MappedReading[] {
  const same = (a: string, b: string) => a === "" || foldedHeading(a) === foldedHeading(b);
  return partners.filter(
    (one) =>
      same(one.engine, subject.engine) &&
      same(one.cylinder, subject.cylinder) &&
      (per !== "place" || positionText(one.places) === positionText(subject.places)),
  );
}

function resultOf(rule: Rule, own: readonly MappedReading[], partner: MappedReading | undefined): DerivedReading | undefined {
  const { characteristic, spec, per } = rule;
  const { engine, cylinder, places } = own[0]!;
  const subject = { characteristic, engine, cylinder: per === "engine" ? "" : cylinder, places: per === "place" ? places : [] };
  const from = partner ? [...own, partner] : own;
  const first = firstInput(rule, own);
  if (Array.isArray(first) && (first.length < (rule.heights ?? 1) || first[0]!.length < (rule.axes ?? 1))) return undefined;
  if (first === undefined) return { ...subject, spec, value: null, missing: [], fault: unfit(own), uncertainty: () => undefined, cell: own[0]!.cell, from };
  const missing = from.filter(({ value }) => isBlank(value)).map(({ cell }) => cell);
  const outcome = missing.length ? null : outcomeOf(rule, own, partner);
  const value = typeof outcome === "number" ? outcome : null;
  const fault = outcome instanceof Fault ? sentence(outcome) : undefined;
  const uncertainty = () => uncertaintyOf(rule, own, partner);
  return { ...subject, spec, value, missing, ...(fault ? { fault } : {}), uncertainty, cell: telling(spec, own, partner), from };
}

const outcomeOf = (rule: Rule, own: readonly MappedReading[], partner: MappedReading | undefined): unknown =>
  broadcast(rule.spec, [firstInput(rule, own)!, ...(partner ? [partner.value] : [])]);

/** A size that is chosen, as a standard one, is exact. */
function uncertaintyOf(rule: Rule, own: readonly MappedReading[], partner: MappedReading | undefined): number | undefined {
  const readings = partner ? [...own, partner] : own;
  const isExact = (reading: MappedReading) => reading === partner && rule.spec.inputs[1]!.param.role !== "measured";
  const given = readings.map((reading) => (isExact(reading) ? 0 : reading.own?.given.uncertainty));
  if (!given.every((U): U is number => typeof U === "number" && U >= 0)) return undefined;
  const found = propagated(
    readings.map(({ value }) => value as number),
    given,
    (values) => {
      const moved = readings.map((reading, i) => ({ ...reading, value: values[i]! }));
      const outcome = outcomeOf(rule, moved.slice(0, own.length), partner && moved.at(-1));
      return typeof outcome === "number" ? [outcome] : undefined;
    },
  );
  return found && decimal(found[0]!);
}

/** Readings as the function takes them; `undefined` when there is one too many or too few. */
function firstInput({ spec, per }: Rule, own: readonly MappedReading[]): Argument | undefined {
  if (spec.inputs[0]!.param.broadcastKind === "bore") return boreOf(own);
  if (per === "engine") return [own.map(({ value }) => value)];
  return own.length === 1 ? own[0]!.value : undefined;
}

const unfit = (own: readonly MappedReading[]): string =>
  own[0]!.characteristic === "bore"
    ? "the readings of this bore do not fill a grid of heights and axes, so nothing is worked out from them"
    : `${own.length} readings stand for one ${own[0]!.characteristic}, so nothing is worked out from them`;

/** The readings of one bore as rows of heights and columns of axes; `undefined` when there is one too many or too few. */
function boreOf(readings: readonly MappedReading[]): Block | undefined {
  const words = ({ places }: MappedReading, kind: string) =>
    places
      .filter((place) => (place.kind === "axis") === (kind === "axis"))
      .map(({ word }) => word)
      .join(" ");
  const heights = [...new Set(readings.map((reading) => words(reading, "height")))];
  const axes = [...new Set(readings.map((reading) => words(reading, "axis")))];
  if (heights.length * axes.length !== readings.length) return undefined;
  const block: Block = heights.map(() => new Array(axes.length).fill(undefined));
  for (const reading of readings) block[heights.indexOf(words(reading, "height"))]![axes.indexOf(words(reading, "axis"))] = reading.value;
  return block.every((row) => row.every((cell) => cell !== undefined)) ? block : undefined;
}

/** The reading to look at: the part beside its hole; of one bore or engine the one that lies farthest off, for wear the largest. */
function telling({ draws }: Spec, own: readonly MappedReading[], partner: MappedReading | undefined): CellAddress {
  const isWear = draws?.kind === "bore" && draws.resultIs === "wear";
  if (partner && !isWear) return partner.cell;
  const numbers = own.map(({ value }) => value).filter((value): value is number => typeof value === "number");
  const middle = isWear ? 0 : median(numbers);
  const offset = ({ value }: MappedReading) => (typeof value === "number" ? Math.abs(value - middle) : Number.NEGATIVE_INFINITY);
  return own.reduce((best, one) => (offset(one) > offset(best) ? one : best)).cell;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length / 2;
  return (sorted[Math.ceil(half) - 1]! + sorted[Math.floor(half)]!) / 2;
}
