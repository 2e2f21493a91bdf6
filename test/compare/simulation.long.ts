import { byChance, sameOf, sharesOf, U, UNCHANGED } from "./simulation.ts";

const RUNS = 2000;

import.meta.jest.setTimeout(600_000);

test.each(UNCHANGED)("%s: in 5 of 100 studies at most anything of a kind differs", (_, study) => {
  const { wear = 0 } = study;
  const { places, means, ...differences } = sharesOf(study, RUNS, 929);
  for (const share of Object.values({ ...(wear === 0 ? { places, means } : {}), ...differences })) expect(share).toBeLessThanOrEqual(byChance(0.05, RUNS));
});

test("what has changed by just what matters is called the same in 5.5 of 100 lines at most", () => {
  const matters = 2 * U;
  const { places, means } = sameOf({ common: 0, change: matters, matters }, 1000, 937);
  expect(places).toBeLessThanOrEqual(0.055);
  expect(means).toBeLessThanOrEqual(0.055);
});
