import { createReadStream, readFileSync } from "node:fs";
import { join } from "node:path";
import { compareSamples } from "../../samples/compare/compare.ts";
import { compareReadings, enOf } from "../../src/compare/compare.ts";
import { readingsOfCsv } from "../../src/compare/from-csv.ts";
import { root } from "../../src/tools/paths.ts";

const folder = join(root, "samples", "compare");
const side = (name: string) => readingsOfCsv(createReadStream(join(folder, name)), { name });
const sample = Promise.all([side("build.csv"), side("strip-down.csv")]).then(([before, after]) => compareReadings(before, after));
const find = async (label: string) => (await sample).places.find((place) => place.label === `engine A, ${label}`)!;

describe("the sample comparison", () => {
  test("is what the generator writes", () => {
    for (const [name, text] of Object.entries(compareSamples())) expect(readFileSync(join(folder, name), "utf8")).toBe(text);
  });

  test("counts every place, and what differs stands first", async () => {
    const { rows, places, refused, headline, counts } = await sample;
    expect({ rows, places: places.length, refused: refused.length }).toEqual({ rows: 38, places: 32, refused: 6 });
    expect(headline).toBe("15 of 32 lie beyond their own gauge; about 1 would by chance; 11 remain.");
    expect(counts.places).toMatchObject({ judged: 32, beyondGauge: 15, differs: 11, sameWithin: 0, cannotTell: 21 });
    expect(places.map(({ verdict }) => verdict === "differs")).toEqual([...Array(11).fill(true), ...Array(21).fill(false)]);
    expect(places[0]!.label).toBe("engine A, cylinder 2, bore, top thrust");
  });

  test("finds the worst wear, its rate and its life", async () => {
    const { verdict, ...place } = await find("cylinder 2, bore, top thrust");
    expect([verdict, enOf(place)]).toEqual(["differs", expect.closeTo(6.8, 9)]);
    const wear = (await sample).wear.find(({ label }) => label === place.label)!;
    expect(wear.rate).toBeCloseTo(0.04, 9);
    expect([wear.limit, Math.round(wear.life! - 850), Math.floor(wear.earliest! - 850)]).toEqual([73.08, 650, 486]);
  });

  test.each([
    ["cylinder 2, skirt, 90 degrees to pin", "differs", -4.6],
    ["cylinder 1, inlet valve clearance", "cannot tell", -1.41],
    ["cylinder 3, bore, middle thrust", "cannot tell", 1],
    ["cylinder 3, bore, bottom pin", "cannot tell", 0],
  ])("%s: %s, En %p", async (label, verdict, en) => {
    const place = await find(label);
    expect([place.verdict, Number(enOf(place)!.toPrecision(3))]).toEqual([verdict, en]);
  });

  test("lists what is not compared, and why", async () => {
    expect((await sample).refused.map(({ label, why }) => [label.replace("engine A, cylinder ", ""), why])).toEqual([
      ["1, exhaust valve clearance", "it is measured before only"],
      ["1, small end, across", "it is measured after only"],
      ["2, ring end gap, second ring", "after: the reading is still blank"],
      ["1, crankpin, along", "it is in mm before and in inches after"],
      ["2, crankpin, across", 'after: value holds the text "scored": it must be a number'],
      ["3, crankpin, along", "93.984 is far from 39.985, the reading before: were two digits swapped?"],
    ]);
  });

  test("of the means none is told: cylinder 2 wears far more than the others, and five others were looked at", async () => {
    expect((await sample).means.map(({ characteristic, n, verdict }) => [characteristic, n, verdict])).toEqual([
      ["bore", 18, "cannot tell"],
      ["piston skirt", 3, "cannot tell"],
      ["top ring end gap", 3, "cannot tell"],
      ["inlet valve clearance", 3, "cannot tell"],
      ["second ring end gap", 2, "cannot tell"],
      ["crankpin", 3, "cannot tell"],
    ]);
  });
});
