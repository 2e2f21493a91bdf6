import { createReadStream, readFileSync } from "node:fs";
import { join } from "node:path";
import { trialSample } from "../../samples/trial/trial.ts";
import type { Comparison } from "../../src/compare/compare.ts";
import { compareTrial } from "../../src/compare/compare.ts";
import { readingsOfCsv } from "../../src/compare/from-csv.ts";
import { root } from "../../src/tools/paths.ts";

const folder = join(root, "samples", "trial");
const read = () => readingsOfCsv(createReadStream(join(folder, "trial.csv")), { name: "trial.csv" });
const sample: Promise<Comparison> = read().then((set) => compareTrial([set]));

const verdicts = (lines: readonly { characteristic: string; engine?: string; verdict: string }[]) =>
  Object.fromEntries(lines.map(({ characteristic, engine = "", verdict }) => [`${engine} ${characteristic}`.trim(), verdict]));

describe("the sample trial", () => {
  test("is what the generator writes", () => {
    for (const [name, text] of Object.entries(trialSample())) expect(readFileSync(join(folder, name), "utf8")).toBe(text);
  });

  test("begins with what chance would do", async () => {
    expect((await sample).headline).toBe("45 of 60 lie beyond their own gauge; about 3 would by chance; 34 remain.");
  });

  test("the bores of both have changed, and of B by more", async () => {
    const { means, meanDifferences } = await sample;
    expect(verdicts(means)).toMatchObject({ "A bore": "differs", "B bore": "differs" });
    const bores = meanDifferences.find(({ characteristic }) => characteristic === "bore")!;
    expect([bores.difference, bores.verdict]).toEqual([expect.closeTo(0.0122, 4), "differs"]);
  });

  test("the master's move is taken out of all bores", async () => {
    const { places, notes } = await sample;
    const bores = places.filter(({ own }) => own === "bore");
    expect(bores.map(({ master }) => master!.moved)).toEqual(Array(36).fill(0.006));
    expect(notes).toContain("the master of gauge BG-1 read 0.006 larger after than before: taken out of 36 places");
    const set = await read();
    const without = compareTrial([{ ...set, readings: set.readings.filter(({ characteristic }) => characteristic !== "master") }]);
    const mean = (comparison: Comparison) => comparison.means.find(({ engine, characteristic }) => engine === "A" && characteristic === "bore")!;
    expect(mean(without).difference - mean(await sample).difference).toBeCloseTo(0.006, 9);
  });

  test("what did not change is the same within what matters, what changed alike too, and of the ring gaps nobody can tell", async () => {
    const { means, meanDifferences } = await sample;
    expect(verdicts(means)).toMatchObject({ "A crankpin": "same within", "B crankpin": "same within" });
    expect(verdicts(meanDifferences)).toEqual({ bore: "differs", crankpin: "same within", "piston skirt": "same within", "top ring end gap": "cannot tell" });
    expect(meanDifferences.find(({ characteristic }) => characteristic === "top ring end gap")!.says).toContain("cannot tell, up to 0.059 may hide");
  });

  test("of the ways of running in nobody can tell, as there is one engine of each", async () => {
    const { groups } = await sample;
    expect(groups.map(({ verdict, lone }) => [verdict, lone])).toEqual(Array(4).fill(["cannot tell", "long run-in and of short run-in"]));
  });
});
