import { createReadStream, readFileSync } from "node:fs";
import { join } from "node:path";
import { compareSamples } from "../../samples/compare/compare.ts";
import { compareReadings } from "../../src/compare/compare.ts";
import { readingsOfCsv } from "../../src/compare/from-csv.ts";
import { root } from "../../src/tools/paths.ts";

const folder = join(root, "samples", "compare");
const side = (name: string) => readingsOfCsv(createReadStream(join(folder, name)), { name });
const sample = Promise.all([side("build.csv"), side("strip-down.csv")]).then(([before, after]) => compareReadings(before, after));
const find = async (label: string) => (await sample).changes.find((change) => change.label === `engine A, ${label}`)!;

describe("the sample comparison", () => {
  test("is what the generator writes", () => {
    for (const [name, text] of Object.entries(compareSamples())) expect(readFileSync(join(folder, name), "utf8")).toBe(text);
  });

  test("counts every row, and what is real stands first", async () => {
    const { rowsIn, rowsCompared, rowsRefused, changes, real } = await sample;
    expect({ rowsIn, rowsCompared, rowsRefused, changes: changes.length, real }).toEqual({
      rowsIn: 74,
      rowsCompared: 64,
      rowsRefused: 10,
      changes: 32,
      real: 15,
    });
    expect(changes.map(({ verdict }) => verdict !== "no real change")).toEqual([...Array(15).fill(true), ...Array(17).fill(false)]);
    expect(changes[0]!.label).toBe("engine A, cylinder 2, bore, top thrust");
  });

  test("finds the worst wear, its rate and its life", async () => {
    const { verdict, en, wear } = await find("cylinder 2, bore, top thrust");
    expect([verdict, en]).toEqual(["real increase", 6.8]);
    expect(wear!.rate).toBeCloseTo(0.04, 9);
    expect([wear!.limit, Math.round(wear!.life!.left), Math.round(wear!.life!.earliest)]).toEqual([73.08, 650, 487]);
  });

  test.each([
    ["cylinder 2, skirt, 90 degrees to pin", "real decrease", -4.6],
    ["cylinder 1, inlet valve clearance", "real decrease", -1.41],
    ["cylinder 3, bore, middle thrust", "no real change", 1],
    ["cylinder 3, bore, bottom pin", "no real change", 0],
  ])("%s: %s, En %p", async (label, verdict, en) => {
    const change = await find(label);
    expect([change.verdict, Number(change.en.toPrecision(3))]).toEqual([verdict, en]);
  });

  test("lists what is not compared, and why", async () => {
    expect((await sample).refused.map(({ label, why }) => [label.replace("engine A, cylinder ", ""), why])).toEqual([
      ["1, exhaust valve clearance", "it is measured before only"],
      ["1, small end, across", "it is measured after only"],
      ["2, ring end gap, second ring", "after: the reading is still blank"],
      ["1, crankpin, along", "it is in mm before and in in after"],
      ["2, crankpin, across", 'after: value holds the text "scored": it wants a number'],
      ["3, crankpin, along", "93.984 is far from 39.985, the reading before: were two digits swapped?"],
    ]);
  });

  test("shows no group of three cylinders to differ", async () => {
    expect((await sample).groups.map(({ characteristic, cylinders, differs }) => [characteristic, cylinders, differs])).toEqual([
      ["bore", 3, false],
      ["skirt", 3, false],
      ["ring end gap", 3, false],
      ["crankpin", 3, false],
      ["inlet valve clearance", 3, false],
    ]);
  });
});
