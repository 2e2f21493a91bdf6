import { groupedBy } from "../core/grouped.ts";
import { counted } from "../core/number-text.ts";
import { normalBelow } from "../math/normal.ts";
import type { PlaceChange } from "./place-change.ts";

const RARE = 0.01;

/**
 * Hints, never verdicts: a part that wear can only make larger or smaller has gone the other way, in one
 * place beyond its gauge, or in so many places of one gauge that chance seldom does it (two-sided sign test,
 * J. Arbuthnot 1710; W. J. Conover, Practical Nonparametric Statistics; unchanged places left out).
 */
export function hintsOn(places: readonly PlaceChange[]): string[] {
  const moved = places.filter(({ difference }) => difference !== 0);
  const groups = groupedBy(moved, ({ own, unit, after, direction }) => `${own}|${unit ?? ""}|${after.readings[0]!.gauge ?? ""}|${direction === null}`);
  return [...groups.values()].flatMap((own) => (own[0]!.direction === null ? drift(own) : againstWear(own)));
}

function againstWear(own: readonly PlaceChange[]): string[] {
  const against = own.filter(({ direction }) => direction === "better");
  const isRare = against.length > own.length / 2 && signTest(own.length - against.length, own.length) <= RARE;
  if (!isRare && !against.some(({ verdict }) => verdict === "differs")) return [];
  return [`${moveText(against, own)}, which wear does not do: another part, the master, or a temperature?`];
}

/** Where wear may go either way, nearly all places that go one way are a hint all the same. */
function drift(own: readonly PlaceChange[]): string[] {
  const larger = own.filter(({ difference }) => difference > 0);
  const most = larger.length * 2 >= own.length ? larger : own.filter(({ difference }) => difference < 0);
  return signTest(own.length - most.length, own.length) <= RARE ? [`${moveText(most, own)}: all alike, or the master, or a temperature?`] : [];
}

const moveText = (some: readonly PlaceChange[], own: readonly PlaceChange[]): string =>
  `${some.length} of ${counted(own.length, "place")} of ${own[0]!.own} ${some.length === 1 ? "is" : "are"} ${some[0]!.difference > 0 ? "larger" : "smaller"}`;

/** So many that the normal law serves as well, and that powers of a half would be nothing. */
const MANY = 500;

/** Chance of at most so few of one kind among so many, or as many of the other, where both are as likely. */
export function signTest(few: number, all: number): number {
  // With half a step for the whole numbers (de Moivre 1733).
  if (all > MANY) return Math.min(1, 2 * normalBelow((few + 0.5 - all / 2) / (Math.sqrt(all) / 2)));
  let term = 0.5 ** all;
  let sum = term;
  for (let k = 1; k <= few; k++) {
    term *= (all - k + 1) / k;
    sum += term;
  }
  return Math.min(1, 2 * sum);
}
