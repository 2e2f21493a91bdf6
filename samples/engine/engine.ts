/**
 * Engine B of the invented hire-boat yard, stripped after three seasons: its crankshaft, its head and its oil. What is
 * planted, and what must be found, is told in samples/engine/README.md.
 */
import { buildSheetSpec } from "../../src/setup/build-sheet.ts";
import { lengthFormat, numberColumn, resultColumn, whenFilled } from "../../src/setup/columns.ts";
import type { BuildSheet } from "../../src/setup/model.ts";
import { SheetBuilder } from "../../src/setup/page.ts";
import { type Filling, fillBuildSheet } from "../../src/setup/sample.ts";
import { writeXlsx } from "../../src/xlsx/write/workbook.ts";

const CHOICES = {
  ...({ cylinders: 3, heights: 3, axes: 2, valves: 2, unit: "mm", secondReadings: false } as const),
  without: ["bores", "pistons", "rings", "rods", "camshaft", "springs", "valves", "volumes", "tests", "run-in", "torques", "parts", "notes"] as const,
};

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
  },
  limits: {
    ...{ "Main bearing clearance": [0.03, 0.08], "Main journal wear": [null, 0.04], "Big end clearance": [0.03, 0.08], "Crankpin wear": [null, 0.04] },
    ...{ "Crankshaft end float": [0.08, 0.25], "Guide taper, inlet": [null, 0.03], "Guide taper, exhaust": [null, 0.03] },
    ...{ "Stem taper, inlet": [null, 0.02], "Stem taper, exhaust": [null, 0.02] },
    ...{ "Stem clearance, inlet": [0.02, 0.06], "Stem clearance, exhaust": [0.04, 0.08], "Seat width, inlet": [1.2, 1.8], "Seat width, exhaust": [1.4, 2] },
    ...{ "Seat run-out, inlet": [null, 0.05], "Seat run-out, exhaust": [null, 0.05], "Head flatness": [null, 0.05], "Head flatness over a span": [null, 0.05] },
    ...{ "Head height": [91.4, null] },
  },
};

/** One list of topping up, from one oil change to the next, in hours and litres. */
const TOPPED_UP: readonly (readonly [hours: number, litres: number])[] = [
  ...([
    [1600, 4.5],
    [1650, 0.1],
    [1700, 0.12],
    [1750, 0.16],
    [1800, 0.2],
    [1840, 0.2],
  ] as const),
];

/** Iron and lead have risen: the bearing of crankpin 2. */
const IN_THE_OIL: readonly (readonly [element: string, fresh: number, before: number, now: number])[] = [
  ...([
    ["Iron", 2, 26, 74],
    ["Copper", 1, 8, 19],
    ["Lead", 0, 5, 31],
    ["Aluminium", 1, 6, 8],
    ["Silicon", 4, 9, 11],
  ] as const),
];
const HOURS_ON_OIL = { before: 250, now: 240 };

function oilPage(): SheetBuilder {
  const page = new SheetBuilder("Oil", "Oil history", [
    "Invented. Litres that brought the oil back to one mark, from one change to the next; the first entry is the filling.",
    "Samples: mg/kg, less what fresh oil holds, for each 100 hours on the oil. What was added in between thins the oil: a rate is at least this. A laboratory's own limits decide.",
  ]);
  const added = page.table(
    "OilAdded",
    3,
    [
      { ...numberColumn("Hours", "0", "Hours, typed as a number.", "at least zero"), cell: ({ index }) => TOPPED_UP[index]![0] },
      { ...numberColumn("Litres added", "0.00", "Litres, typed as a number.", "at least zero"), cell: ({ index }) => TOPPED_UP[index]![1] },
    ],
    TOPPED_UP.length,
  );
  const rates = ["rate", "last interval", "trend"];
  page.table(
    "OilRates",
    3 + TOPPED_UP.length + 3,
    [
      {
        heading: "Oil use",
        look: "label",
        width: 32,
        cell: ({ index }) => ["Litres an hour, on the whole", "in the last interval", "how fast it grows, an hour"][index]!,
      },
      resultColumn("Rate", "0.000000", ({ index }) => `=INDEX(HATCH.OILRATE(${added.body("Hours")},${added.body("Litres added")}),2,${index + 1})`),
    ],
    rates.length,
  );
  const perHundred = (hours: string, of: string) => (row: { ref(heading: string): string }) =>
    whenFilled([row.ref(of), row.ref("Fresh oil"), row.ref(hours)], `ROUND(100*(${row.ref(of)}-${row.ref("Fresh oil")})/${row.ref(hours)},1)`);
  const number = (heading: string, of: (index: number) => number) => ({
    ...numberColumn(heading, "0", "A number of at least 0.", "at least zero"),
    cell: ({ index }: { index: number }) => of(index),
  });
  page.table(
    "OilSamples",
    3 + TOPPED_UP.length + 3 + rates.length + 3,
    [
      { heading: "Element", look: "label", cell: ({ index }) => IN_THE_OIL[index]![0] },
      number("Fresh oil", (index) => IN_THE_OIL[index]![1]),
      number("Sample before", (index) => IN_THE_OIL[index]![2]),
      number("Hours on it before", () => HOURS_ON_OIL.before),
      number("Sample now", (index) => IN_THE_OIL[index]![3]),
      number("Hours on it now", () => HOURS_ON_OIL.now),
      resultColumn("Rate before", "0.0", perHundred("Hours on it before", "Sample before")),
      resultColumn("Rate now", "0.0", perHundred("Hours on it now", "Sample now")),
    ],
    IN_THE_OIL.length,
  );
  return page;
}

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
  const more = [regrindPage(book), oilPage()].map((page) => page.described(CHOICES));
  return { ...book, title: "Engine B: crankshaft, head and oil (invented)", sheets: [...book.sheets.slice(0, -1), ...more, book.sheets.at(-1)!] };
}

export const engineSample = (): Uint8Array => writeXlsx(engineBook());
