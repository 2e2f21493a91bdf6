import { byChance, deviationOf, livesOf, powerOfMeans, sameOf, sharesOf, TREATED, U, UNCHANGED } from "./simulation.ts";

// Few studies of each, so that the suite stays quick; simulation.long.ts has the numbers.
const RUNS = 12;

test.each(UNCHANGED)("%s: in 5 of 100 studies at most anything of a kind differs, but for chance", async (_, study) => {
  const { wear = 0 } = study;
  const { places, means, groups: _groups, ...differences } = await sharesOf(study, RUNS, 911);
  for (const share of Object.values({ ...(wear === 0 ? { places, means } : {}), ...differences })) expect(share).toBeLessThanOrEqual(byChance(0.05, RUNS));
});

test("what has changed by just what matters is called the same in 5.5 of 100 lines at most, but for chance", async () => {
  const matters = 2 * U;
  const { places, means } = await sameOf({ common: 0, change: matters, matters }, 20, 919);
  expect(places).toBeLessThanOrEqual(byChance(0.055, 20 * 64));
  expect(means).toBeLessThanOrEqual(byChance(0.055, 20 * 4));
});

test("trials, means and lives hold too, but for chance", async () => {
  expect((await sharesOf(TREATED, RUNS, 967)).groups).toBeLessThanOrEqual(byChance(0.05, RUNS));
  for (const kind of ["typed as none", "cancelled"] as const) {
    const { rule, pairedT } = await powerOfMeans(kind, 3, 1.5 * deviationOf(kind), 200, 971);
    expect(rule).toBeGreaterThan(pairedT);
  }
  const { covered, width } = await livesOf(4, 6, 100, 977);
  expect(width).toBeLessThanOrEqual(1.3);
  expect(covered).toBeGreaterThanOrEqual(0.95 - 2.576 * Math.sqrt((0.95 * 0.05) / 100));
});
