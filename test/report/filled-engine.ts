import type { ReportInput } from "../../src/report/content.ts";
import { reportInput } from "../../src/report/gather/workbook.ts";
import { Made } from "../setup/made.ts";

// A four-cylinder engine of an invented hire-boat yard, measured in every place that a new build sheet has. All numbers are invented.

/** By table and heading: what the first row reads, and what the next ones have more, again and again. */
const READINGS: Readonly<Record<string, Readonly<Record<string, readonly [first: number, step: number]>>>> = {
  BoreReadings: {
    "Top thrust": [73.025, 0.01],
    "Top pin": [73.02, 0.005],
    "Middle thrust": [73.02, 0.01],
    "Middle pin": [73.015, 0.005],
    "Bottom thrust": [73.015, 0.005],
    "Bottom pin": [73.015, 0.002],
  },
  PistonReadings: { Skirt: [72.985, 0.005], "Pin bore": [20.01, 0.001], Pin: [20.002, -0.001] },
  RingReadings: { "End gap": [0.3, 0.05], Groove: [1.54, 0.005], "Ring width": [1.49, -0.002] },
  MainBearings: {
    "Main bearing bore upright": [50.05, 0.002],
    "Main bearing bore across": [50.055, 0.002],
    "Main journal upright": [49.99, -0.003],
    "Main journal across": [49.988, -0.002],
  },
  BigEnds: {
    "Big end bore upright": [45.04, 0.003],
    "Big end bore across": [45.045, 0.002],
    "Crankpin upright": [44.99, -0.004],
    "Crankpin across": [44.985, -0.002],
  },
  CrankshaftEndFloat: { "End float": [0.12, 0] },
  RodReadings: {
    "Big end housing along": [48.01, 0.002],
    "Big end housing across": [48.005, 0.002],
    "Small end bore": [20.02, 0.002],
    "Pin in it": [20.002, -0.001],
    "Rod side clearance": [0.2, 0.02],
    "Rod bend": [0.01, 0.005],
    "Rod twist": [0.02, 0.005],
  },
  RodMasses: { "Piston mass": [412.5, 1.5], "Rod mass": [640, 2], "Big end mass": [450, 1.2], "Small end mass weighed": [190, 0.8] },
  CamLobes: { "Lobe height": [38.2, -0.02], "Base circle": [30, 0.005] },
  CamBearings: {
    "Camshaft bearing upright": [30.05, 0.002],
    "Camshaft bearing across": [30.055, 0.002],
    "Camshaft journal upright": [29.99, -0.003],
    "Camshaft journal across": [29.988, -0.002],
  },
  Camshafts: { "Camshaft run-out": [0.02, 0], "Camshaft end float": [0.1, 0] },
  GuidesAndSeats: {
    "Guide top": [7.03, 0.003],
    "Guide middle": [7.02, 0.002],
    "Guide bottom": [7.025, 0.003],
    "Stem top": [6.98, -0.002],
    "Stem middle": [6.982, -0.001],
    "Stem bottom": [6.978, -0.003],
    "Seat width": [1.4, 0.1],
    "Seat run-out": [0.02, 0.01],
  },
  ValveSprings: {
    "Spring free length": [44, -0.2],
    "Height measured": [38, 0.2],
    Shims: [0.5, 0],
    "Force in the tester": [220, 4],
    "At length": [38, 0],
    "Spring rate": [36, 0],
  },
  ValveReadings: { Clearance: [0.2, 0.03], Shim: [2.5, 0.05] },
  VolumeReadings: { Chamber: [28, 0.2], "Piston crown": [2, 0.1], Deck: [0.3, 0.02] },
  PressureTests: { Dry: [12.1, -0.3], Wet: [12.8, -0.1], Supply: [7, 0], Held: [6.6, -0.1] },
  ClearanceRecheck: { "Re-checked": [0.21, 0.02] },
};

const LIMITS: Readonly<Record<string, readonly [lower: number | null, upper: number | null]>> = {
  Taper: [null, 0.02],
  "Out-of-round": [null, 0.02],
  "Bore wear": [null, 0.08],
  "Piston clearance": [0.02, 0.05],
  "Pin clearance": [0.004, 0.02],
  "Ring end gap, top": [0.25, 0.5],
  "Ring end gap, second": [0.25, 0.5],
  "Ring end gap, oil": [0.2, 0.5],
  "Ring side clearance, top": [0.03, 0.08],
  "Ring side clearance, second": [0.03, 0.08],
  "Ring side clearance, oil": [0.03, 0.08],
  "Main bearing clearance": [0.03, 0.08],
  "Main journal wear": [null, 0.03],
  "Big end clearance": [0.03, 0.08],
  "Crankpin wear": [null, 0.03],
  "Crankshaft end float": [0.08, 0.2],
  "Valve clearance, inlet": [0.18, 0.28],
  "Valve clearance, exhaust": [0.22, 0.32],
  "Compression ratio": [9.4, 10.4],
  Squish: [1, 1.8],
  "Compression pressure": [10, null],
  "Compression spread": [null, 1],
  "Leak-down": [null, 10],
  "Rod bend": [null, 0.03],
  "Rod twist": [null, 0.05],
  "Camshaft run-out": [null, 0.03],
  "Lobe wear, inlet": [null, 0.1],
  "Lobe wear, exhaust": [null, 0.1],
  "Stem clearance, inlet": [0.02, 0.08],
  "Stem clearance, exhaust": [0.03, 0.1],
  "Spring free length, inlet": [43, null],
  "Spring free length, exhaust": [43, null],
  "Seat run-out, inlet": [null, 0.05],
  "Seat run-out, exhaust": [null, 0.05],
};

const ENTRIES: Readonly<Record<string, number>> = {
  "Standard bore": 73,
  Stroke: 72,
  "Standard main journal": 50,
  "Standard crankpin": 45,
  "Gasket bore": 74.5,
  "Gasket thickness": 1.2,
  "Mass tolerance": 2,
  "Standard lobe lift, inlet": 8.25,
  "Standard lobe lift, exhaust": 8.2,
};

/** What is measured at most overhauls: bores to big ends, valve clearances, volumes, tests. */
export const SHORT_BLOCK = [
  ...["BoreReadings", "PistonReadings", "RingReadings", "MainBearings", "BigEnds", "CrankshaftEndFloat"],
  ...["ValveReadings", "VolumeReadings", "PressureTests"],
];

export async function filledEngine(choices: object = {}, tables: readonly string[] = Object.keys(READINGS)): Promise<Made> {
  const made = await Made.of({ cylinders: 4, ...choices });
  for (const [name, entry] of Object.entries(ENTRIES)) await made.item(name, entry);
  for (const [item, text] of [
    ["Owner", "Hire-boat yard at the lock"],
    ["Engine", "A"],
    ["Serial number", "E-0417"],
    ["Built by", "the yard"],
  ] as const)
    await made.type("EngineData", "Entry", made.rowOf("EngineData", item), text);
  for (const [name, [lower, upper]] of Object.entries(LIMITS)) {
    await made.limit(name, lower, upper);
    await made.type("LimitList", "Source", made.rowOf("LimitList", name), "service manual, section 4");
  }
  for (const table of tables) {
    for (const [heading, [first, step]] of Object.entries(READINGS[table]!)) {
      const { rows } = made.book.sheets.flatMap((sheet) => sheet.tables).find(({ name }) => name === table)!;
      await made.fill(
        table,
        heading,
        Array.from({ length: rows }, (_, i) => Number((first + step * (i % 4)).toFixed(3))),
      );
    }
  }
  for (const [heading, text] of [
    ["About", "Cylinder 2"],
    ["Note", "Light score below the top ring; left, as agreed."],
    ["Agreed with", "the owner"],
  ] as const)
    await made.type("JobNotes", heading, 0, text);
  await made.type("Torques", "Tightened to", 2, 65);
  await made.type("Torques", "Done by", 2, "the yard");
  for (const [heading, text] of [
    ["Part", "Piston rings"],
    ["Part number", "HB-204"],
    ["Quantity", 4],
  ] as const)
    await made.type("PartsList", heading, 0, text);
  return made;
}

export const filledInput = async (made: Made): Promise<ReportInput> => ({ ...reportInput(await made.host.read()), name: "engine-a.xlsx" });
