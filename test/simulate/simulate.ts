/** `npm run simulate`: what Compare claims, in thousands of invented studies from CSV on; the figures are kept for the contributors' page. */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "../../src/tools/paths.ts";
import { deviationOf, livesOf, powerOfMeans, sameOf, sharesOf, TREATED, U, UNCHANGED } from "../compare/simulation.ts";

/** Studies of each kind; whoever is in a hurry gives fewer. */
const runs = Number(process.argv[2] ?? 2000);
const SEED = 1013;

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
const rows: [what: string, figure: string][] = [];
const note = (what: string, figure: string): void => {
  rows.push([what, figure]);
  console.log(`${what}: ${figure}`);
};

const NAMES = { places: "places", means: "means", differences: "differences by place", meanDifferences: "mean differences" } as const;
for (const [i, [name, study]] of UNCHANGED.entries()) {
  const shares = await sharesOf(study, runs, SEED + i);
  const shown = (Object.keys(NAMES) as (keyof typeof NAMES)[])
    // Wear is a change of the places; alike in both engines it is no difference between them.
    .filter((kind) => (kind.toLowerCase().includes("differences") ? (study.engines?.length ?? 1) > 1 : !study.wear))
    .map((kind) => `${NAMES[kind]} ${percent(shares[kind])}`);
  note(`studies with anything that differs: ${name}`, shown.join(", "));
}
note("trials with anything that differs: six engines, ways of treatment that do nothing", `groups ${percent((await sharesOf(TREATED, runs, SEED)).groups)}`);
const same = await sameOf({ common: 0, change: 2 * U, matters: 2 * U }, Math.ceil(runs / 2), SEED);
note("lines that have changed by just what matters and are called the same", `places ${percent(same.places)}, means ${percent(same.means)}`);
for (const places of [2, 3, 4, 8]) {
  const { rule, pairedT } = await powerOfMeans("typed as none", places, 1.5 * deviationOf("typed as none"), runs, SEED + places);
  note(`a mean of ${places} places that has changed by 1.5 deviations is found`, `${percent(rule)}; by the paired t test ${percent(pairedT)}`);
}
for (const places of [2, 3, 4, 8]) {
  const { rule, pairedT } = await powerOfMeans("cancelled", places, 1.5 * deviationOf("cancelled"), runs, SEED + places);
  note(
    `a mean difference of ${places} places by 1.5 deviations is found, two engines in the same sessions, the common part typed`,
    `${percent(rule)}; by the paired t test ${percent(pairedT)}`,
  );
}
for (const n of [3, 4, 6]) {
  const [slow, fast] = [await livesOf(n, 6, runs, SEED + n), await livesOf(n, 12, runs, SEED + 7 * n)];
  note(
    `lives from ${n} measurings, wear of 6 and 12 U: covered; before the earliest`,
    `${percent(slow.covered)}, ${percent(fast.covered)}; ${percent(slow.early)}, ${percent(fast.early)}`,
  );
  note(
    `lives from ${n} measurings, wear of 6 and 12 U: median width of the interval by that with the variance known`,
    [slow, fast].map(({ width }) => width.toFixed(2)).join(", "),
  );
}
writeFileSync(join(root, "test", "simulate", "figures.json"), `${JSON.stringify({ runs, rows }, null, 2)}\n`);
