import { counted } from "../core/number-text.ts";
import { normalBelow } from "../math/normal.ts";
import { groupedBy } from "./grouped.ts";
import type { PlaceChange } from "./place-change.ts";

const RARE = 0.01;

/**
 * Hints, never verdicts: a part that wear can only make larger or smaller has gone the other way, in one
 * place beyond its gauge, or in so many places of one gauge that chance seldom does it (two-sided sign test,
 * J. Arbuthnot 1710; W. J. Conover, Practical Nonparametric Statistics; unchanged places left out).
 */
export function hintsOn(places: readonly PlaceChange[]): string[] {
  const groups = groupedBy(
    places.filter(({ direction }) => direction !== null),
    ({ own, unit, after }) => `${own}|${unit ?? ""}|${after.readings[0]!.gauge ?? ""}`,
  );
  return [...groups.values()].flatMap((own) => {
    const against = own.filter(({ direction }) => direction === "better");
    const isRare = against.length > own.length / 2 && signTest(own.length - against.length, own.length) <= RARE;
    if (!isRare && !against.some(({ verdict }) => verdict === "differs")) return [];
    const way = against[0]!.difference > 0 ? "larger" : "smaller";
    return [
      `${against.length} of ${counted(own.length, "place")} of ${own[0]!.own} ${against.length === 1 ? "is" : "are"} ${way}, which wear does not do: another part, the master, or a temperature?`,
    ];
  });
}

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
