import { checkWorkbook } from "../../src/check/check-workbook.ts";
import { compareReadings, compareTrial } from "../../src/compare/compare.ts";
import { readingsOfWorkbook } from "../../src/compare/from-workbook.ts";
import { isCellError } from "../../src/core/cell.ts";
import { drawn, trialWorkbookSpec } from "../../src/setup/trial-workbook.ts";
import type { WorkbookSnapshot } from "../../src/workbook/port.ts";
import { SeededNormal } from "../helpers/normal.ts";
import { Made } from "./made.ts";

const CHOICES = { cylinders: 2, heights: 2, axes: 2, unit: "mm", engines: 2, seed: 7 } as const;
const ITEMS = 4 + 5;
const SIZES = [73.01, 73.02, 73.01, 73.02, 72.97, 0.3, 0.32, 39.98, 39.99];
const make = (choices: object = {}) => Made.ofBook(trialWorkbookSpec({ ...CHOICES, ...choices }));

const errorsIn = ({ sheets }: WorkbookSnapshot): string[] =>
  sheets.flatMap(({ name, values }) => values.flatMap((line) => line.flatMap((cell) => (isCellError(cell) ? [`${name}: ${cell.message ?? cell.error}`] : []))));

/** Four engines filled in; bores of the second group wear by 0.02 more, and the bore gauge's ring reads 0.006 larger after. */
async function filled(): Promise<Made> {
  const made = await make();
  const random = new SeededNormal(1019);
  for (const [i, [engine, group]] of Object.entries({ A: "plain", B: "plain", C: "coated", D: "coated" }).entries()) {
    await made.type("Engines", "Engine", i, engine);
    await made.type("Engines", "Group", i, group);
  }
  for (const [i, [id, U, common]] of (
    [
      ["BG-1", 0.002, 0.001],
      ["FG-1", 0.02, 0],
    ] as const
  ).entries()) {
    await made.type("Gauges", "Gauge id", i, id);
    await made.type("Gauges", "Uncertainty", i, U);
    await made.type("Gauges", "Common part", i, common);
  }
  await made.fill("TrialLimits", "Matters", [0.005, 0.005, 0.03, 0.03, 0.005]);
  for (const [i, value] of [73, 73, 73.006, 73.006].entries()) {
    await made.type("Masters", "Gauge", i, "BG-1");
    await made.type("Masters", "Value", i, value);
  }
  for (const [c, campaign] of ["before", "after"].entries()) {
    const rows = Array.from({ length: 4 * ITEMS }, (_, row) => ({ engine: Math.floor(row / ITEMS), item: row % ITEMS }));
    for (const cylinder of [1, 2]) {
      await made.fill(
        `Readings${campaign}`,
        `Cylinder ${cylinder}`,
        rows.map(({ engine, item }) => {
          const worn = item < 4 ? 0.01 + (engine > 1 ? 0.02 : 0) + engine / 5000 : 0;
          const isGap = item === 5 || item === 6;
          return Number((SIZES[item]! + c * (worn + (isGap ? 0 : 0.006)) + random.normal(isGap ? 0.005 : 0.0007)).toFixed(4));
        }),
      );
    }
    for (const [row, { item }] of rows.entries()) {
      await made.type(`Readings${campaign}`, "Gauge", row, item === 5 || item === 6 ? "FG-1" : "BG-1");
      await made.type(`Readings${campaign}`, "Hours", row, c * 600);
    }
  }
  return made;
}

test("a new workbook for a trial shows no error, and nothing to compare yet", async () => {
  for (const choices of [{}, { engines: 1 }, { cylinders: 16, heights: 5, axes: 4, unit: "in", engines: 3 }]) {
    const made = await make(choices);
    const snapshot = await made.host.read();
    expect(errorsIn(snapshot)).toEqual([]);
    expect(readingsOfWorkbook(snapshot).readings.filter(({ value }) => value !== null)).toEqual([]);
    expect(checkWorkbook(snapshot).refused).toBe(0);
  }
}, 120_000);

describe("filled in", () => {
  const book = filled().then(async (made) => ({ made, snapshot: await made.host.read() }));

  test("it is read again as a trial: engines, groups, campaigns, gauges, what matters and the masters", async () => {
    const { snapshot } = await book;
    expect(errorsIn(snapshot)).toEqual([]);
    const { places, groups, refused } = compareTrial([readingsOfWorkbook(snapshot)]);
    expect(refused).toEqual([]);
    expect(places).toHaveLength(4 * ITEMS * 2);
    expect(places[0]).toMatchObject({ matters: expect.any(Number), commonUncertainty: expect.any(Number) });
    const bores = groups.find(({ characteristic }) => characteristic === "bore")!;
    expect(bores).toMatchObject({ groups: ["plain", "coated"], engines: [2, 2], verdict: "differs" });
    expect(bores.difference).toBeCloseTo(0.02, 2);
    expect(places.filter(({ own }) => own === "bore").map(({ master }) => master?.moved)).toEqual(Array(32).fill(0.006));
    expect(groups.find(({ characteristic }) => characteristic === "crankpin")!.verdict).not.toBe("differs");
  });

  test("its own verdicts go by the same numbers, but for the masters", async () => {
    const { made, snapshot } = await book;
    const set = readingsOfWorkbook(snapshot);
    const { means } = compareReadings({ ...set, readings: set.readings.filter(({ characteristic }) => characteristic !== "master") }, undefined);
    const sheet = snapshot.sheets.find(({ name }) => name === "Verdicts")!;
    const value = (table: string, heading: string, index: number) => {
      const { row, column } = made.at(table, heading, index);
      return sheet.values[row - sheet.row]![column - sheet.column];
    };
    for (const [index, engine] of ["A", "B", "C", "D"].entries()) {
      const mean = means.find((one) => one.engine === engine && one.characteristic === "bore")!;
      expect(value("Verdicts", "Mean change", index)).toBeCloseTo(mean.difference, 8);
      expect(value("Verdicts", "p", index)).toBeCloseTo(mean.p!, 8);
      expect(value("Verdicts", "Verdict", index)).toBe("differs");
    }
    expect(value("Groups", "Groups", 0)).toBe("coated against plain");
    expect(value("Groups", "Difference", 0)).toBeCloseTo(0.02, 2);
  });

  test("a second person's readings are repeats of the same places", async () => {
    const made = await filled();
    await made.fill("Readingsbeforesecond", "Cylinder 1", [73.011]);
    await made.fill("Readingsbeforesecond", "Cylinder 2", [73.012]);
    const { places } = compareTrial([readingsOfWorkbook(await made.host.read())]);
    expect(places.filter(({ before }) => before.readings.length === 2)).toHaveLength(2);
  });
});

test("the order of measuring is drawn by the seed: every number once, the same again, and another for another seed", () => {
  const order = drawn(50, 7);
  expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: 50 }, (_, i) => i + 1));
  expect(drawn(50, 7)).toEqual(order);
  expect(drawn(50, 8)).not.toEqual(order);
  // Each number comes first about as often as any other: 5 of 1,000 and more lie beyond this by chance.
  const first = new Map<number, number>();
  for (let seed = 1; seed <= 6000; seed++) first.set(drawn(6, seed)[0]!, (first.get(drawn(6, seed)[0]!) ?? 0) + 1);
  for (const count of first.values()) expect(Math.abs(count - 1000)).toBeLessThan(2.81 * Math.sqrt(6000 * (1 / 6) * (5 / 6)) + 20);
});
