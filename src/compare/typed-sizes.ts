import { CHARACTERISTICS } from "../vocabulary/characteristics.ts";
import { measuredBy, ownCharacteristic } from "../vocabulary/subjects.ts";
import { isLengthUnit } from "../vocabulary/units.ts";
import type { Reading, ReadingSubject } from "./readings.ts";

/** Sizes that were typed for a whole comparison: one for every length, or one for each characteristic that is named. */
export interface TypedSizes {
  general?: number | undefined;
  /** By `ownCharacteristic`: a top ring's goes before one for rings. */
  of: ReadonlyMap<string, number>;
}

/** One size for every length. */
export const forLengths = (general: number | undefined): TypedSizes | undefined => (general === undefined ? undefined : { general, of: new Map() });

/** What was typed cannot be read: why, and what is wanted. */
export class TypedFault extends Error {}

const EXAMPLE = "it must be a number above 0, or a characteristic and its number as in ring end gap=0.02";

/** `0.005` for every length, `ring end gap=0.02` for one characteristic; of several, each adds its own. */
export function typedSizes(typed: readonly string[]): TypedSizes | undefined {
  let general: number | undefined;
  const of = new Map<string, number>();
  for (const text of typed) {
    const [, name, size] = /^(?:(.*)=)?([^=]*)$/.exec(text)!;
    const value = Number(size);
    if (size!.trim() === "" || !Number.isFinite(value) || value <= 0 || name?.trim() === "") throw new TypedFault(`${text} is not understood: ${EXAMPLE}`);
    if (name === undefined && general !== undefined) throw new TypedFault(`${general} and ${text} are both for every length: ${EXAMPLE}`);
    if (name === undefined) general = value;
    else of.set(ownCharacteristic(measuredBy(name.trim(), "")), value);
  }
  return general === undefined && of.size === 0 ? undefined : { general, of };
}

/** What was typed for a characteristic by its name. */
export function typedFor(subject: ReadingSubject, sizes: TypedSizes | undefined): number | undefined {
  if (!sizes) return undefined;
  const measured = measuredBy(subject.characteristic, subject.position);
  return sizes.of.get(ownCharacteristic(measured)) ?? sizes.of.get(measured.characteristic);
}

/** True for readings of a length, by their unit or by what is measured. */
export function isLength({ characteristic, position, unit }: ReadingSubject & Pick<Reading, "unit">): boolean {
  if (unit !== undefined) return isLengthUnit(unit);
  const { characteristic: name } = measuredBy(characteristic, position);
  return Object.hasOwn(CHARACTERISTICS, name) && CHARACTERISTICS[name]!.kind === "length";
}

/** Gives readings the uncertainty that was typed for them, where they have none of their own. */
export function fillFromTyped(readings: readonly Reading[], sizes: TypedSizes | undefined): void {
  if (!sizes) return;
  for (const reading of readings)
    if (!reading.uncertainty) reading.uncertainty = typedFor(reading, sizes) ?? (isLength(reading) ? sizes.general : undefined) ?? reading.uncertainty;
}
