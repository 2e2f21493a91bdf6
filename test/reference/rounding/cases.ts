import { Seeded } from "../../fuzz/seeded.ts";

/** Steps that a shop rounds to: shims, feeler blades, oversizes, inch fractions, pressures. */
const STEPS = [0.001, 0.005, 0.01, 0.025, 0.05, 0.1, 0.2, 0.25, 0.3, 0.5, 1, 2, 5, 10, 0.0625, 0.0005, 0.002, 0.015];
const COUNT = 1000;

/** A decimal as it is typed, or one that is worked out from two of them. */
function decimal(random: Seeded): number {
  const places = random.below(6);
  const typed = (random.below(2_000_000) - 400_000) / 10 ** Math.max(1, places + random.below(2));
  return random.chance(0.3) ? typed + random.below(5000) / 1000 : typed;
}

const places = (random: Seeded): number => random.below(7) - 1;
const step = (random: Seeded): number => random.pick(STEPS);

/** Its arguments for each function; FLOOR and CEILING of their older kind want both of one sign. */
const ARGUMENTS: Readonly<Record<string, (random: Seeded) => number[]>> = {
  ROUND: (random) => [decimal(random), places(random)],
  ROUNDUP: (random) => [decimal(random), places(random)],
  ROUNDDOWN: (random) => [decimal(random), places(random)],
  TRUNC: (random) => [decimal(random), places(random)],
  INT: (random) => [decimal(random)],
  CEILING: (random) => [Math.abs(decimal(random)), step(random)],
  FLOOR: (random) => [Math.abs(decimal(random)), step(random)],
  "CEILING.MATH": (random) => [decimal(random), step(random), random.below(2)],
  "FLOOR.MATH": (random) => [decimal(random), step(random), random.below(2)],
  "CEILING.PRECISE": (random) => [decimal(random), step(random)],
  "FLOOR.PRECISE": (random) => [decimal(random), step(random)],
  "ISO.CEILING": (random) => [decimal(random), step(random)],
  MOD: (random) => [decimal(random), step(random)],
};

/** Formulas that round, and those that shops have been let down by; the same every time. */
export function roundingCases(): { name: string; formulas: string[] }[] {
  return Object.entries(ARGUMENTS).map(([name, draw], i) => {
    const random = new Seeded(20261129 + i);
    return { name, formulas: Array.from({ length: COUNT }, () => `${name}(${draw(random).join(",")})`) };
  });
}

export const KNOWN: readonly string[] = ["ROUND(1.005,2)", "ROUNDUP(0.07,2)", "ROUNDDOWN(1.15,2)", "FLOOR(2.8,0.05)", "FLOOR(1.15,0.05)", "TRUNC(73.04-73,2)"];
