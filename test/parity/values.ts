import type { Cell } from "../../src/core/cell.ts";
import type { Param } from "../../src/core/param.ts";
import { date, EMPTY, EMPTY_TEXT, ERRORS, type Held, held } from "./held.ts";
import type { ParityRandom } from "./random.ts";

const WORDS = [
  "worn",
  "n/a",
  "-",
  "mm",
  "smallest",
  "Bohrung 1",
  "ø73",
  "диаметр",
  "🔧",
  "a\tb",
  'say "so"',
  "it's",

  "https://example.invalid/",
  "x".repeat(300),
];
const SLIPS = [
  "73.04",
  " 73.04",
  "73,04",
  "1e3",
  "-5",
  "TRUE",
  "false",
  "=1+1",
  "'73",
  "#N/A",
  "#DIV/0!",
  "check: hole 1 is too small",
  "  ",
  "1/2",
  "50%",
  "2024-03-01",
];
const EXTREMES = [0, -1, 1, 2, 0.5, 1e-10, -1e-10, 1e-300, 1e300, 2 ** 53, 1 / 3, 0.1 + 0.2, 1234567.891, 1e21];

/** A number near `base`, as a person or a sum of a sheet would have it. */
function near(random: ParityRandom, base: number, tame: boolean): number {
  if (random.chance(tame ? 0.7 : 0.3)) return base;
  const changed = base * (1 + (random.next() - 0.5) * random.pick(tame ? [0.0001, 0.001] : [0.001, 0.01, 0.1, 1]));
  // No cell holds −0.
  return (random.chance(0.8) ? Number(changed.toFixed(random.pick([0, 2, 2, 3, 4]))) : changed) + 0;
}

/** On, just inside or just outside the bounds of the input. */
function atBounds(random: ParityRandom, { low, high }: Param<unknown>["bounds"]): number {
  const bounds = [low, high].filter((bound) => bound !== undefined);
  return bounds.length ? random.pick(bounds) + random.pick([0, 0, 1e-10, -1e-10, 1e-8, -1e-8, 0.01, -0.01]) : random.pick(EXTREMES);
}

const mixedCase = (random: ParityRandom, word: string): string => random.pick([word, word.toUpperCase(), ` ${word} `, word[0]!.toUpperCase() + word.slice(1)]);

/** A cell that fits the input, made from what an example has there. */
export function fitting(random: ParityRandom, param: Param<unknown>, base: Cell, tame: boolean): Held {
  if (tame && typeof base === "string") return held(base);
  if (param.bounds.choices) return held(mixedCase(random, random.pick(param.bounds.choices)));
  if (param.quantity === "truth") return held(random.pick<Cell>([true, false, 0, 1]));
  if (typeof base === "number") return held(near(random, base, tame));
  return held(typeof base === "string" && base ? base : near(random, param.quantity === "count" ? 2 : 10, tame));
}

/** A cell of any kind, most of them such as the input does not take. */
export function anything(random: ParityRandom, param: Param<unknown>): Held {
  switch (random.whole(0, 9)) {
    case 0:
    case 1:
      return EMPTY;
    case 2:
      return EMPTY_TEXT;
    case 3:
      return held(random.pick(WORDS));
    case 4:
      return held(random.pick(SLIPS));
    case 5:
      return held(random.chance(0.5));
    case 6:
      return random.pick(ERRORS);
    case 7:
      return date(random.whole(43_831, 47_483));
    case 8:
      return held(atBounds(random, param.bounds));
    default:
      return held(random.pick(EXTREMES));
  }
}
