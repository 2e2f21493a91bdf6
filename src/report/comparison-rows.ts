import type { Comparison } from "../compare/compare.ts";
import type { DifferenceOfChanges } from "../compare/difference-of-changes.ts";
import { isSameEngine } from "../compare/engines.ts";
import { placeKey } from "../compare/pair-readings.ts";
import type { PlaceChange, PlaceEstimate } from "../compare/place-change.ts";
import { foldedHeading } from "../vocabulary/headings.ts";

/** One place in the table of two engines: what each has changed by, and the difference of that where both have it. */
export interface CoupleRow {
  first: PlaceChange | undefined;
  second: PlaceChange | undefined;
  line: DifferenceOfChanges | undefined;
}

/** True where two engines stand side by side, each before and after. */
export const isOfTwoEngines = ({ differences, engines }: Pick<Comparison, "differences" | "engines">): boolean =>
  engines !== undefined && differences.length > 0;

/** Every place of two engines, in the order of a sheet. */
export function coupleRows({ places, differences, engines }: Comparison): CoupleRow[] {
  const of = (name: string) => new Map(places.filter(({ engine }) => isSameEngine(engine, name)).map((place) => [placeKey(place, false), place]));
  const [first, second] = engines!.map(of) as [Map<string, PlaceChange>, Map<string, PlaceChange>];
  const lines = new Map(differences.map((line) => [placeKey({ engine: "", ...line }, false), line]));
  return [...new Set(inOrderOfPlaces(places).map((place) => placeKey(place, false)))].map((key) => ({
    first: first.get(key),
    second: second.get(key),
    line: lines.get(key),
  }));
}

/** Places as a sheet has them: by characteristic, cylinder and where they come in the file. */
export const inOrderOfPlaces = (places: readonly PlaceChange[]): PlaceChange[] => [...places].sort(byPlace);

function byPlace(a: PlaceChange, b: PlaceChange): number {
  const order = ({ engine, own, cylinder }: PlaceChange): string[] => [engine, own, cylinder].map(foldedHeading);
  const [x, y] = [order(a), order(b)];
  for (const [i, text] of x.entries()) if (text !== y[i]) return text.localeCompare(y[i]!, "en", { numeric: true });
  const at = ({ before: { readings } }: PlaceChange): number => readings[0]!.line ?? readings[0]!.cell.row * 1000 + readings[0]!.cell.column;
  return at(a) - at(b);
}

/** The limits of a place: those of the later measuring, or else of the earlier one; `null` for none. */
export function limitsOfPlace({ before, after }: Pick<PlaceEstimate, "before" | "after">): { lower: number | null; upper: number | null } {
  const of = (side: "lower" | "upper") => [...after.readings, ...before.readings].find((reading) => reading[side] !== undefined)?.[side] ?? null;
  return { lower: of("lower"), upper: of("upper") };
}
