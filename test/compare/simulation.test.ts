import { byChance, sameOf, sharesOf, U, UNCHANGED } from "./simulation.ts";

// Few studies of each, so that the suite stays quick; simulation.long.ts has the numbers.
const RUNS = 30;

test.each(UNCHANGED)("%s: in 5 of 100 studies at most anything of a kind differs, but for chance", (_, study) => {
  const { wear = 0 } = study;
  const { places, means, ...differences } = sharesOf(study, RUNS, 911);
  for (const share of Object.values({ ...(wear === 0 ? { places, means } : {}), ...differences })) expect(share).toBeLessThanOrEqual(byChance(0.05, RUNS));
});

test("what has changed by just what matters is called the same in 5.5 of 100 lines at most, but for chance", () => {
  const matters = 2 * U;
  const { places, means } = sameOf({ common: 0, change: matters, matters }, 20, 919);
  expect(places).toBeLessThanOrEqual(byChance(0.055, 20 * 64));
  expect(means).toBeLessThanOrEqual(byChance(0.055, 20 * 4));
});
