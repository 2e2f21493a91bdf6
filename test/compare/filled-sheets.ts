import { Made } from "../setup/made.ts";

/** Sizes as built, by table and heading, one for each cylinder, ring or valve in turn. All are invented. */
const SIZES: Readonly<Record<string, Readonly<Record<string, readonly number[]>>>> = {
  BoreReadings: {
    ...{ "Top thrust": [73.012, 73.014, 73.011], "Top pin": [73.01, 73.012, 73.009], "Middle thrust": [73.01, 73.011, 73.01] },
    ...{ "Middle pin": [73.009, 73.01, 73.008], "Bottom thrust": [73.008, 73.009, 73.007], "Bottom pin": [73.007, 73.008, 73.006] },
  },
  PistonReadings: { Skirt: [72.975, 72.974, 72.976], "Pin bore": [18.006, 18.007, 18.006], Pin: [18, 17.999, 18.001] },
  RingReadings: { "End gap": [0.3, 0.34, 0.4], Groove: [1.54, 1.54, 3.05], "Ring width": [1.49, 1.5, 3] },
  ValveReadings: { Clearance: [0.2, 0.3], Shim: [2.45, 2.5] },
  GuidesAndSeats: {
    ...{ "Guide top": [6.012, 6.013], "Guide middle": [6.012, 6.013], "Guide bottom": [6.012, 6.013] },
    ...{ "Stem top": [5.97, 5.94], "Stem middle": [5.97, 5.94], "Stem bottom": [5.97, 5.94] },
  },
  VolumeReadings: { Chamber: [28, 28.1, 28.2], "Piston crown": [0.5, 0.5, 0.5], Deck: [0.1, 0.11, 0.1] },
  PressureTests: { Dry: [11.8, 11.9, 11.7], Wet: [12.4, 12.5, 12.4], Supply: [6, 6, 6], Held: [5.4, 5.5, 5.4] },
};

const CYLINDERS = 3;

/** What wear adds to each size. */
export type Worn = (table: string, heading: string, index: number) => number;

interface Filling {
  serial?: string;
  hours?: number;
  worn?: Worn;
  /** What the second person found more than the first, at each place of the bores in turn. */
  second?: readonly number[];
}

/** A build sheet of `crosshatch new`, filled down to its gauges. */
export async function filledSheet({ serial = "0417", hours = 0, worn = () => 0, second }: Filling = {}): Promise<Made> {
  const made = await Made.of({ cylinders: CYLINDERS, heights: 3, axes: 2, valves: 2, secondReadings: second !== undefined });
  for (const [item, entry] of Object.entries({
    "Standard bore": 73,
    Stroke: 72,
    "Gasket bore": 74.5,
    "Gasket thickness": 1.2,
    "Shim step": 0.05,
    "Hours run": hours,
  }))
    await made.item(item, entry);
  await made.type("EngineData", "Entry", made.rowOf("EngineData", "Serial number"), serial);
  for (const [table, columns] of Object.entries(SIZES)) {
    for (const [heading, sizes] of Object.entries(columns)) {
      const rows = table === "RingReadings" ? 3 * CYLINDERS : ["ValveReadings", "GuidesAndSeats"].includes(table) ? 2 * CYLINDERS : CYLINDERS;
      await made.fill(
        table,
        heading,
        Array.from({ length: rows }, (_, i) => Number((sizes[i % sizes.length]! + worn(table, heading, i)).toFixed(6))),
      );
    }
  }
  const gauges = { "BG-1": 0.002, "MI-1": 0.002, "FG-1": 0.02, "PG-1": 0.3 };
  for (const [i, [id, U]] of Object.entries(gauges).entries()) {
    await made.type("Gauges", "Gauge id", i, id);
    await made.type("Gauges", "U of the gauge", i, U);
  }
  const used: Readonly<Record<string, keyof typeof gauges>> = {
    ...{ Bores: "BG-1", "Piston skirts": "MI-1", "Pins and pin bores": "MI-1", "Ring end gaps": "FG-1", "Ring grooves and rings": "MI-1" },
    ...{ "Valve clearances": "FG-1", Guides: "MI-1", Stems: "MI-1", "Deck heights": "MI-1", Compression: "PG-1" },
  };
  for (const [name, id] of Object.entries(used)) await made.type("Measurements", "Gauge", made.rowOf("Measurements", name), id);
  if (second) {
    await made.type("Measurements", "Gauge", made.rowOf("Measurements", "Bores, second readings"), "BG-1");
    const { BoreReadings } = SIZES;
    const headings = Object.keys(BoreReadings!);
    const more = (i: number) => second[i % second.length]! + worn("BoreReadings", headings[i % headings.length]!, Math.floor(i / headings.length));
    const read = (i: number) => BoreReadings![headings[i % headings.length]!]![Math.floor(i / headings.length)]! + more(i);
    await made.fill(
      "SecondBores",
      "Second reading",
      Array.from({ length: headings.length * CYLINDERS }, (_, i) => Number(read(i).toFixed(6))),
    );
  }
  return made;
}
