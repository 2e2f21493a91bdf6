import { checkWorkbook } from "../../../src/check/check-workbook.ts";
import { compareReadings, compareTrial } from "../../../src/compare/compare.ts";
import { readingsOfWorkbook } from "../../../src/compare/from-workbook.ts";
import { isCellError } from "../../../src/core/cell.ts";
import { drawn } from "../../../src/setup/trial/readings-sheets.ts";
import type { WorkbookSnapshot } from "../../../src/workbook/port.ts";
import { csv } from "../../compare/stand.ts";
import type { Made } from "../made.ts";
import { asCsv, CHARACTERISTICS, filled, ITEMS, linesSaid, make } from "./filled-trial.ts";

const errorsIn = ({ sheets }: WorkbookSnapshot): string[] =>
  sheets.flatMap(({ name, values }) => values.flatMap((line) => line.flatMap((cell) => (isCellError(cell) ? [`${name}: ${cell.message ?? cell.error}`] : []))));

/** A cell of a table as it is calculated. */
function valueIn(made: Made, snapshot: WorkbookSnapshot, table: string, heading: string, index = 0) {
  const { sheet, row, column } = made.at(table, heading, index);
  const found = snapshot.sheets.find(({ name }) => name === sheet)!;
  return found.values[row - found.row]?.[column - found.column];
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

describe("filled in, with a ring that moved, temperatures and a run-in", () => {
  const FILLING = { ring: [73, 73.001, 73.006, 73.007], temperatures: [20, 26], runIn: 25 } as const;
  const book = filled(FILLING).then(async (made) => ({ made, snapshot: await made.host.read() }));

  test("it is read again as a trial: engines, groups, campaigns, gauges, what matters and the masters", async () => {
    const { snapshot } = await book;
    expect(errorsIn(snapshot)).toEqual([]);
    const set = readingsOfWorkbook(snapshot);
    expect(set.runIn).toBe(25);
    const { places, groups, refused } = compareTrial([set]);
    expect(refused).toEqual([]);
    expect(places).toHaveLength(4 * ITEMS * 2);
    const bores = groups.find(({ characteristic }) => characteristic === "bore")!;
    expect(bores).toMatchObject({ groups: ["plain", "coated"], engines: [2, 2], verdict: "differs" });
    expect(bores.difference).toBeCloseTo(0.02, 2);
    expect(places.filter(({ own }) => own === "bore").map(({ master }) => master?.moved)).toEqual(Array(32).fill(0.006));
  });

  test("every line, wear included, is exactly what the same trial gives from CSV", async () => {
    const { snapshot } = await book;
    const [fromBook, fromCsv] = [compareTrial([readingsOfWorkbook(snapshot)]), compareTrial([await csv(asCsv(FILLING))], { runIn: 25 })];
    expect(linesSaid(fromBook)).toEqual(linesSaid(fromCsv));
    expect(fromBook.wear[0]!.stage).toBe("the run-in and after");
    expect(fromBook.places.filter(({ thermal }) => thermal !== undefined)).toHaveLength(72);
  });

  test("where masters and temperatures count no verdict stands in the workbook that could be another one", async () => {
    const { made, snapshot } = await book;
    expect(valueIn(made, snapshot, "Verdicts", "Also counts")).toBe("master temperature");
    expect(valueIn(made, snapshot, "Verdicts", "Verdict")).toBe("judged by Compare or crosshatch trial");
    expect(valueIn(made, snapshot, "Verdicts", "p")).toBe("left out");
    expect(valueIn(made, snapshot, "Groups", "p")).toBe("");
  });
});

test("limits and the way of wear come from the sheet Limits, so a life is told to them", async () => {
  const made = await filled();
  await made.type("TrialLimits", "Upper", 0, 73.1);
  await made.type("TrialLimits", "Lower", 1, 72.9);
  await made.type("TrialLimits", "Direction of wear", 4, "smaller");
  const { places, wear, refused } = compareTrial([readingsOfWorkbook(await made.host.read())]);
  expect(refused).toEqual([]);
  const bore = wear.find(({ characteristic, distinguishable }) => characteristic === "bore" && distinguishable)!;
  // By hand: what is left to the limit, by what was worn in 600 h.
  const place = places.find(({ label }) => label === bore.label)!;
  expect(bore.limit).toBe(73.1);
  expect(bore.life).toBeCloseTo((600 * (73.1 - place.before.value)) / place.difference, 6);
  expect(
    places
      .filter(({ own }) => own === "crankpin")
      .every(({ before, after }) => before.readings[0]!.wears === "smaller" && after.readings[0]!.wears === "smaller"),
  ).toBe(true);
  expect(places.filter(({ own }) => own === "piston skirt").every(({ after }) => after.readings[0]!.lower === 72.9)).toBe(true);
});

test.each(["miles", "km"] as const)("use in %s is read as such, and no hours are made of it", async (use) => {
  const made = await make({ use });
  const heading = use === "km" ? "Km" : "Miles";
  await made.type("Engines", "Engine", 0, "A");
  await made.type("Engines", `${heading} before`, 0, 0);
  await made.type("Engines", `${heading} after`, 0, 12_000);
  await made.type("TrialData", "Entry", 0, 500);
  for (const [campaign, size] of [
    ["before", 73],
    ["after", 73.02],
  ] as const) {
    await made.type(`Readings${campaign}`, "Cylinder 1", 0, size);
    await made.type(`Readings${campaign}`, "Cylinder 2", 0, size);
    await made.type("Campaigns", "Gauge", campaign === "before" ? 0 : 8, "BG-1");
    await made.type(`Readings${campaign}`, "Session", 0, `${campaign} 1`);
  }
  await made.type("Gauges", "Gauge id", 0, "BG-1");
  await made.type("Gauges", "Uncertainty", 0, 0.002);
  const { wear } = compareTrial([readingsOfWorkbook(await made.host.read())]);
  expect(wear).toMatchObject([1, 2].map(() => ({ useUnit: use, useTo: 12_000, stage: "the run-in and after" })));
  expect(wear[0]!.says).toMatch(new RegExp(`in 1000 ${use}`));
});

describe("filled in, with nothing but readings", () => {
  const book = filled().then(async (made) => ({ made, snapshot: await made.host.read() }));

  test("its own verdicts are those of Compare, by the same numbers", async () => {
    const { made, snapshot } = await book;
    const { means, groups } = compareReadings(readingsOfWorkbook(snapshot), undefined);
    const value = (table: string, heading: string, index: number) => valueIn(made, snapshot, table, heading, index);
    for (const [c, characteristic] of CHARACTERISTICS.entries()) {
      for (const [e, engine] of ["A", "B", "C", "D"].entries()) {
        const index = 4 * c + e;
        const mean = means.find((one) => one.engine === engine && one.characteristic === characteristic)!;
        expect(value("Verdicts", "Mean change", index)).toBeCloseTo(mean.difference, 8);
        expect(value("Verdicts", "p", index)).toBeCloseTo(mean.p!, 8);
        expect(value("Verdicts", "p adjusted, at most", index)).toBeCloseTo(mean.pAdjusted!, 8);
        expect(String(value("Verdicts", "Verdict", index)).startsWith(mean.verdict)).toBe(true);
      }
      const group = groups.find((one) => one.characteristic === characteristic)!;
      expect(value("Groups", "Difference", c)).toBeCloseTo(group.difference, 8);
      // What the engines' spread alone cannot tell, nobody calls different.
      if (String(value("Groups", "By the spread of the engines", c)) === "cannot tell") expect(group.verdict).not.toBe("differs");
    }
    expect(value("Groups", "Groups", 0)).toBe("coated against plain");
    expect(String(value("Groups", "By the spread of the engines", 0))).toMatch(/^differs; /);
  });

  test("a second person's readings are repeats of the same places, and leave the verdict to Compare", async () => {
    const made = await filled();
    await made.fill("Readingsbeforesecond", "Cylinder 1", [73.011]);
    await made.fill("Readingsbeforesecond", "Cylinder 2", [73.012]);
    const snapshot = await made.host.read();
    const { places } = compareTrial([readingsOfWorkbook(snapshot)]);
    expect(places.filter(({ before }) => before.readings.length === 2)).toHaveLength(2);
    expect(valueIn(made, snapshot, "Verdicts", "Also counts")).toBe("second readings");
    expect(valueIn(made, snapshot, "Verdicts", "Also counts", 1)).toBe("");
  });

  test("where a ring counts for one gauge, no other row is called different that Compare does not call so", async () => {
    const made = await filled({ ring: [73, 73, 73.006, 73.006] });
    const snapshot = await made.host.read();
    const { means } = compareReadings(readingsOfWorkbook(snapshot), undefined);
    for (const [c, characteristic] of CHARACTERISTICS.entries()) {
      for (const [e, engine] of ["A", "B", "C", "D"].entries()) {
        const verdict = String(valueIn(made, snapshot, "Verdicts", "Verdict", 4 * c + e));
        const { verdict: judged } = means.find((one) => one.engine === engine && one.characteristic === characteristic)!;
        expect(verdict.startsWith(judged) || verdict === "judged by Compare or crosshatch trial").toBe(true);
      }
    }
    expect(valueIn(made, snapshot, "Verdicts", "Verdict", 8)).not.toBe("judged by Compare or crosshatch trial");
  });

  test("a gauge without U leaves its rows untold, as Compare does", async () => {
    const made = await filled();
    await made.type("Gauges", "Uncertainty", 1, "");
    const snapshot = await made.host.read();
    const { means } = compareReadings(readingsOfWorkbook(snapshot), undefined);
    expect(means.find(({ characteristic }) => characteristic === "top ring end gap")!.verdict).toBe("cannot tell");
    expect(valueIn(made, snapshot, "Verdicts", "Verdict", 8)).toBe("cannot tell: no U of its gauge");
    expect(valueIn(made, snapshot, "Verdicts", "p", 8)).toBe("");
  });

  test("a part and a gauge that lie apart by more than a degree, and a ring that was read once of twice, are said", async () => {
    const made = await filled({ ring: [73, 73, 73.006] });
    await made.type("Campaigns", "Part temperature", 0, 31);
    await made.type("Campaigns", "Gauge temperature", 0, 20);
    const { notes } = compareTrial([readingsOfWorkbook(await made.host.read())]);
    expect(notes).toContainEqual(expect.stringMatching(/^in the campaign before the part was at 31 °C and the gauge BG-1 at 20 °C: only 1 °C counts/));
    expect(notes).toContainEqual(
      expect.stringMatching(/^a reading of the master of gauge BG-1 is left out \(Campaigns, row 15\): the reading is still blank$/),
    );
  });
});

/**
 * 3 parts, 2 people, 2 readings each, worked out by hand from the sums of squares of the crossed analysis of variance (D. C. Montgomery,
 * Introduction to Statistical Quality Control); the same study stands as the example of GAUGESTUDY.
 */
test("a gauge study becomes U of the gauge, by the formula that the sheet names", async () => {
  const made = await make();
  const study = [
    [73.01, 73.02],
    [73.02, 73.02],
    [73.05, 73.06],
    [73.05, 73.05],
    [73.09, 73.08],
    [73.08, 73.09],
  ];
  const names = made.at("GaugeStudy", "Person 1");
  await made.host.write([{ sheet: names.sheet, row: names.row - 2, column: names.column, cells: [["Ann", "Ben", ""]] }]);
  await made.fill(
    "GaugeStudy",
    "Person 1",
    study.map(([first]) => first!),
  );
  await made.fill(
    "GaugeStudy",
    "Person 2",
    study.map(([, second]) => second!),
  );
  // Specimens that are not there are cleared.
  for (let row = 6; row < 20; row++) await made.type("GaugeStudy", "Specimen", row, "");
  await made.type("GaugeStudyEntries", "Entry", 1, 0.01);
  await made.type("GaugeStudyEntries", "Entry", 2, 0.004);
  const note = made.book.sheets.find(({ name }) => name === "Gauge study")!.cells.find(({ content }) => String(content).startsWith("To take them over"))!;
  const [, U, common] = /: (=.+?) under Uncertainty, (=.+?) under Common part/.exec(String(note.content))!;
  await made.type("Gauges", "Gauge id", 0, "BG-1");
  await made.type("Gauges", "Uncertainty", 0, U!);
  await made.type("Gauges", "Common part", 0, common!);
  const snapshot = await made.host.read();
  expect(errorsIn(snapshot)).toEqual([]);
  const number = (table: string, heading: string, index = 0) => valueIn(made, snapshot, table, heading, index) as number;
  // JCGM 100:2008, F.2.2.1 (a step's u is step/√12) and 5.1.2: squares add up.
  const [gauge, people] = [number("GaugeStudyResult", "Deviation", 2), number("GaugeStudyResult", "Deviation", 1)];
  expect(gauge).toBeCloseTo(0.0053, 4);
  expect(people).toBeCloseTo(0.001, 4);
  expect(number("Gauges", "Uncertainty")).toBeCloseTo(2 * Math.sqrt(gauge ** 2 + 0.01 ** 2 / 12 + 0.002 ** 2), 9);
  expect(number("Gauges", "Common part")).toBeCloseTo(2 * Math.sqrt(people ** 2 + 0.002 ** 2), 9);
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
