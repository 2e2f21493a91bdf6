import { define, value } from "../../core/define.ts";
import { refuse } from "../../core/fault.ts";
import { length, ratio } from "../../core/inputs.ts";
import { powerOf } from "../../math/power.ts";

/** More engines than anybody has. */
const MOST = 1_000_000;
const FEWEST = 2;

/** Engines in each of two groups that a trial takes. Source: two-sample t test; J. Neyman, J. R. Statist. Soc. Suppl. 2 (1935) 107 (its power). */
export const enginesNeeded = define({
  name: "ENGINESNEEDED",
  group: "wear",
  role: "assists",
  summary: "How many engines each of two groups needs to find a difference between two ways of treatment",
  definition: "smallest n ≥ 2 for which the two-sided two-sample t test at 1 − confidence, 2n − 2 degrees of freedom, finds the difference with that power",
  source: "Student's two-sample t test; its power: J. Neyman, J. R. Statist. Soc. Suppl. 2 (1935) 107",
  params: {
    difference: length("smallest difference between the two ways that must not be missed"),
    spread: length("standard deviation between engines that are treated alike, their measuring included"),
    power: ratio("chance of finding it").atLeast(0.5).below(1).default(0.9),
    confidence: ratio("1 less the chance of finding one where there is none").above(0.5).below(1).default(0.95),
  },
  returns: value("engines in each group, a whole number"),
  // The chance is summed over the spreads that may be seen, once for every number of engines that is tried.
  steps: () => 20_000,
  examples: [
    { formula: "=HATCH.ENGINESNEEDED(0.004, 0.004)", gives: 23 },
    { formula: "=HATCH.ENGINESNEEDED({1,2,3}, 1)", gives: [[23, 7, 4]] },
    { formula: "=HATCH.ENGINESNEEDED(0.01, {0.005;0.01}, 0.8)", gives: [[6], [17]] },
  ],
  notes: [
    "The engine counts, not its places: however many are measured, they say how that engine wears, not how engines do.",
    "With one engine in a group nothing can be said of the way of treatment at all.",
    "This counts with Student's test. A trial is judged by Welch's, which finds less where engines are few: what Student's test finds 8 times in 10, Welch's finds about 5 times with two engines in each group, and 7 times with three. Plan a trial counts with Welch's.",
    "Shops seldom know the spread beforehand: try half and twice of what is guessed, and see what that asks for.",
  ],
  compute: ({ difference, spread, power, confidence }) => {
    const finds = (n: number): boolean =>
      powerOf({ weight: 2 / n, degreesOfFreedom: 2 * n - 2, u: 0, scatter: spread, common: 0, level: 1 - confidence }, difference) >= power;
    if (finds(FEWEST)) return FEWEST;
    let [few, enough] = [FEWEST, 2 * FEWEST];
    for (; !finds(enough); enough *= 2) {
      if (enough > MOST) return refuse("difference", difference, `beside a spread of ${spread} no number of engines would find it`);
      few = enough;
    }
    while (enough - few > 1) {
      const middle = Math.floor((few + enough) / 2);
      if (finds(middle)) enough = middle;
      else few = middle;
    }
    return enough;
  },
});
