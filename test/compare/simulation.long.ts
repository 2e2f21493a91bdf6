import { compareTrial } from "../../src/compare/compare.ts";
import { readingsOfWorkbook } from "../../src/compare/from-workbook.ts";
import { asCsv, filled, linesSaid } from "../setup/trial/filled-trial.ts";
import { byChance, deviationOf, livesOf, powerOfMeans, sameOf, sharesOf, TREATED, U, UNCHANGED } from "./simulation.ts";
import { csv } from "./stand.ts";

const RUNS = 400;

import.meta.jest.setTimeout(600_000);

test.each(UNCHANGED)("%s: in 5 of 100 studies at most anything of a kind differs", async (_, study) => {
  const { wear = 0 } = study;
  const { places, means, groups: _groups, ...differences } = await sharesOf(study, RUNS, 929);
  for (const share of Object.values({ ...(wear === 0 ? { places, means } : {}), ...differences })) expect(share).toBeLessThanOrEqual(byChance(0.05, RUNS));
});

test("what has changed by just what matters is called the same in 5.5 of 100 lines at most", async () => {
  const matters = 2 * U;
  const { places, means } = await sameOf({ common: 0, change: matters, matters }, 400, 937);
  expect(places).toBeLessThanOrEqual(0.055);
  expect(means).toBeLessThanOrEqual(0.055);
});

test("of trials whose ways of treatment do nothing, 5 in 100 at most say that they do", async () => {
  expect((await sharesOf(TREATED, RUNS, 941)).groups).toBeLessThanOrEqual(byChance(0.05, RUNS));
});

test.each([2, 3, 4, 8])("a mean of %p places is seen nearly as often as the paired t test sees it, or oftener", async (places) => {
  for (const kind of ["typed as none", "cancelled"] as const) {
    const { rule, pairedT } = await powerOfMeans(kind, places, 1.5 * deviationOf(kind), RUNS, 947 + places);
    expect(rule).toBeGreaterThanOrEqual(pairedT - 0.03);
  }
});

test.each([3, 4, 6])("a life from %p measurings with an honest gauge is covered, and seldom comes before the earliest", async (n) => {
  for (const wear of [6, 12]) {
    const { covered, early, width } = await livesOf(n, wear, RUNS, 953 + n + wear);
    expect(width).toBeLessThanOrEqual(1.3);
    expect(covered).toBeGreaterThanOrEqual(0.93);
    expect(early).toBeLessThanOrEqual(byChance(0.025, RUNS));
  }
});

/** What holds of studies from CSV holds of a trial's workbook, as every line is the same. */
test("studies through a filled workbook of a trial say in every line what they say from CSV", async () => {
  for (let seed = 1; seed <= 12; seed++) {
    const filling = { seed, ring: [73, 73, 73.002, 73.003], temperatures: [20, 24] as const, runIn: 25 };
    const snapshot = await (await filled(filling)).host.read();
    const [fromBook, fromCsv] = [compareTrial([readingsOfWorkbook(snapshot)]), compareTrial([await csv(asCsv(filling))], { runIn: 25 })];
    expect(linesSaid(fromBook)).toEqual(linesSaid(fromCsv));
  }
});
