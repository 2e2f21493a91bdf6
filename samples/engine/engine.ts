/**
 * Engine B of the invented hire-boat yard, stripped after three seasons: its crankshaft, its head and its oil. What is
 * planted, and what must be found, is told in samples/engine/README.md.
 */
import { buildSheetSpec } from "../../src/setup/build-sheet.ts";
import { lengthFormat, resultColumn } from "../../src/setup/columns.ts";
import type { BuildSheet } from "../../src/setup/model.ts";
import { SheetBuilder } from "../../src/setup/page.ts";
import { type Filling, fillBuildSheet } from "../../src/setup/sample.ts";
import { writeXlsx } from "../../src/xlsx/write/workbook.ts";

const CHOICES = {
  ...({ cylinders: 3, heights: 3, axes: 2, valves: 2, unit: "mm", secondReadings: false } as const),
  without: [
    "bores",
    "pistons",
    "rings",
    "rods",
    "camshaft",
    "springs",
    "surface",
    "valves",
    "volumes",
    "tests",
    "run-in",
    "torques",
    "parts",
    "notes",
  ] as const,
};

/** mg/kg of iron, chromium, aluminium, copper, lead, tin and silicon. Iron and lead have risen in the last sample, as crankpin 2 has worn. */
const FRESH = [2, 0, 1, 1, 0, 0, 4];
const SAMPLES = [
  [18, 2, 5, 6, 3, 1, 8],
  [20, 2, 5, 7, 4, 1, 9],
  [26, 2, 6, 8, 5, 1, 9],
  [74, 3, 8, 19, 31, 4, 11],
];

/** Crankpin 2 is worn, main 3 stands on its limit; the head is hollow along its middle, and its second exhaust guide is worn wide at one end. */
const FILLING: Filling = {
  entries: {
    ...{ Owner: "Hire-boat yard (invented)", Engine: "Engine B", "Hours run": 1840, "Standard main journal": 48, "Standard crankpin": 40 },
    ...{ "Standard head height": 92, "Places of a span": 3, Stroke: 72, "Rod length": 118 },
  },
  columns: {
    MainBearings: {
      "Main bearing bore upright": [48.05, 48.052, 48.051, 48.05],
      "Main bearing bore across": [48.052, 48.054, 48.053, 48.051],
      "Main journal upright": [47.992, 47.99, 47.971, 47.991],
      "Main journal across": [47.99, 47.988, 47.969, 47.99],
    },
    BigEnds: {
      "Big end bore upright": [40.048, 40.05, 40.049],
      "Big end bore across": [40.05, 40.052, 40.05],
      "Crankpin upright": [39.988, 39.951, 39.986],
      "Crankpin across": [39.986, 39.924, 39.985],
    },
    CrankshaftEndFloat: { "End float": [0.14] },
    GuidesAndSeats: {
      ...{ "Guide top": [7.02, 7.022, 7.021, 7.024, 7.02, 7.023], "Guide middle": [7.018, 7.02, 7.019, 7.021, 7.018, 7.021] },
      ...{ "Guide bottom": [7.021, 7.024, 7.022, 7.066, 7.021, 7.025], "Stem top": [6.975, 6.965, 6.976, 6.964, 6.975, 6.966] },
      ...{ "Stem middle": [6.974, 6.964, 6.975, 6.962, 6.974, 6.965], "Stem bottom": [6.975, 6.963, 6.976, 6.96, 6.975, 6.964] },
      ...{ "Seat width": [1.4, 1.6, 1.4, 1.7, 1.5, 1.6], "Seat run-out": [0.02, 0.03, 0.02, 0.03, 0.02, 0.02] },
    },
    FaceHeights: {
      "Head left": [0, 0.005, 0.01, 0.01, 0.01, 0.005, 0],
      "Head middle": [-0.01, -0.03, -0.05, -0.06, -0.05, -0.03, -0.01],
      "Head right": [0, 0.005, 0.01, 0.015, 0.01, 0.005, 0],
    },
    Faces: { Height: [91.7] },
    BlowBy: {
      "Hours run": [200, 400, 650, 900, 1150, 1400, 1600, 1840],
      "Gas measured": [50, 51, 50, 52, 53, 53, 55, 57],
      Minutes: [2, 2, 2, 2, 2, 2, 2, 2],
    },
    // From one change of oil to the next; the first is the filling.
    OilAdded: { "Hours at the mark": [1600, 1650, 1700, 1750, 1800, 1840], "Oil added": [4.5, 0.1, 0.12, 0.16, 0.2, 0.2] },
    OilSamplesTaken: { "Hours on the oil": [250, 250, 250, 240], "Added since": [0.5, 0.55, 0.6, 0.78] },
    OilSamples: { Content: SAMPLES.flat(), "In fresh oil": SAMPLES.flatMap(() => FRESH) },
  },
  limits: {
    ...{ "Main bearing clearance": [0.03, 0.08], "Main journal wear": [null, 0.04], "Big end clearance": [0.03, 0.08], "Crankpin wear": [null, 0.04] },
    ...{ "Crankshaft end float": [0.08, 0.25], "Guide taper, inlet": [null, 0.03], "Guide taper, exhaust": [null, 0.03] },
    ...{ "Stem taper, inlet": [null, 0.02], "Stem taper, exhaust": [null, 0.02] },
    ...{ "Stem clearance, inlet": [0.02, 0.06], "Stem clearance, exhaust": [0.04, 0.08], "Seat width, inlet": [1.2, 1.8], "Seat width, exhaust": [1.4, 2] },
    ...{ "Seat run-out, inlet": [null, 0.05], "Seat run-out, exhaust": [null, 0.05], "Head flatness": [null, 0.05], "Head flatness over a span": [null, 0.05] },
    ...{ "Head height": [91.4, null], "Blow-by": [null, 2000], "Oil use": [null, 0.006] },
    ...{ "Iron in the oil": [null, 60], "Chromium in the oil": [null, 8], "Aluminium in the oil": [null, 15], "Copper in the oil": [null, 30] },
    ...{ "Lead in the oil": [null, 20], "Tin in the oil": [null, 10], "Silicon in the oil": [null, 20] },
  },
};

/** To what size the crankpins are ground, the worn one deciding for all three. */
function regrindPage(book: BuildSheet): SheetBuilder {
  const sheet = book.sheets.find(({ name }) => name === "Crankshaft")!;
  const pins = sheet.tables.find(({ name }) => name === "BigEnds")!;
  const left = pins.column + pins.headings.indexOf("Crankpin upright");
  const letter = (column: number) => String.fromCharCode(65 + column);
  const readings = `Crankshaft!$${letter(left)}$${pins.row + 2}:$${letter(left + 1)}$${pins.row + 1 + pins.rows}`;
  const page = new SheetBuilder("Regrind", "Regrinding the crankpins", [
    "Undersizes of 0.25, 0.50 and 0.75 mm, 0.03 mm left for finishing, on the original centre line. If one is ground, all are. Invented; which undersizes a crankshaft bears, its maker's service manual says.",
  ]);
  const columns = ["Needed", "Undersize", "Finish", "Least stock", "Most stock"];
  page.table(
    "RegrindCrankpins",
    2,
    [
      { heading: "Crankpin", look: "label", width: 10, cell: ({ index }) => index + 1 },
      ...columns.map((heading, c) =>
        resultColumn(
          heading,
          lengthFormat(CHOICES),
          ({ index }) => `=INDEX(HATCH.REGRINDPLAN(${readings},40,{0.25,0.5,0.75},0.03,"true",2),${index + 2},${c + 2})`,
        ),
      ),
    ],
    pins.rows,
  );
  return page;
}

/** The workbook of the sample. */
export function engineBook(): BuildSheet {
  const book = buildSheetSpec({ ...CHOICES, without: [...CHOICES.without] });
  fillBuildSheet(book, FILLING);
  const regrind = regrindPage(book).described(CHOICES);
  return { ...book, title: "Engine B: crankshaft, head and oil (invented)", sheets: [...book.sheets.slice(0, -1), regrind, book.sheets.at(-1)!] };
}

export const engineSample = (): Uint8Array => writeXlsx(engineBook());
