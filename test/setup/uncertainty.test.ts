import { broadcast } from "../../src/core/broadcast.ts";
import { specByName } from "../../src/functions/index.ts";
import { SeededNormal } from "../helpers/normal.ts";
import { Made } from "./made.ts";

/*
 * The U that verdicts on results are given, against simulation: JCGM 101:2008 (Monte Carlo), the functions' own code over
 * readings that scatter by the normal law, with a seed. Readings are invented.
 */
const DRAWS = 20_000;
const CHOICES = { cylinders: 1, heights: 2, axes: 2, valves: 2 };

const call = (name: string, ...args: unknown[]): number => broadcast(specByName.get(name)!, args as never) as number;
/** What a function gives in a row of its own, below its labels. */
const first = (name: string, ...args: unknown[]): number => (broadcast(specByName.get(name)!, args as never) as unknown as number[][])[1]![0]!;

function simulated(of: (read: (value: number, U: number) => number) => number): number {
  const random = new SeededNormal(11);
  const results = Array.from({ length: DRAWS }, () => of((value, U) => value + random.normal(U / 2)));
  const mean = results.reduce((sum, one) => sum + one, 0) / DRAWS;
  return 2 * Math.sqrt(results.reduce((sum, one) => sum + (one - mean) ** 2, 0) / DRAWS);
}

async function measuredWith(gauges: Readonly<Record<string, number>>, choices: object = CHOICES): Promise<Made> {
  const made = await Made.of(choices);
  for (const [i, [what, U]] of Object.entries(gauges).entries()) {
    await made.type("Gauges", "Gauge id", i, `G${i}`);
    await made.type("Gauges", "U of the gauge", i, U);
    await made.type("Measurements", "Gauge", made.rowOf("Measurements", what), `G${i}`);
  }
  return made;
}

const U_OF = async (made: Made, result: string): Promise<number> =>
  (await made.column("ResultUncertainties", "U of the result"))[made.rowOf("ResultUncertainties", result)] as number;
const one = async (made: Made, table: string, heading: string): Promise<number> => (await made.column(table, heading))[0] as number;

/** 20,000 draws give their own scatter to 0.5 %: three of those. */
const agrees = (said: number, scatter: number) => expect(Math.abs(said / scatter - 1)).toBeLessThan(0.015);

test.each([
  ["mm", "mm", false],
  ["mm", "", false],
  ["mm", "Inch", true],
  ["mm", '"', true],
  ["mm", "thou", true],
  ["in", "in", false],
  ["in", "mm", true],
])("lengths in %s and the U of their gauge in %j: nothing is judged by a number in another unit", async (unit, typed, isOther) => {
  const size = unit === "mm" ? 1 : 1 / 25.4;
  const made = await measuredWith({ Bores: 0.002 * size }, { ...CHOICES, unit });
  await made.type("Gauges", "Unit", 0, typed);
  await made.type("LimitList", "Upper", made.rowOf("LimitList", "Taper"), 0.03 * size);
  for (const [heading, bore] of Object.entries({ "Top thrust": 73.02, "Top pin": 73.02, "Bottom thrust": 73, "Bottom pin": 73 }))
    await made.type("BoreReadings", heading, 0, Math.round(bore * size * 1e6) / 1e6);
  const u = (await made.column("Measurements", "U"))[made.rowOf("Measurements", "Bores")];
  const [verdict] = await made.column("BoreReadings", "Taper verdict");
  expect(verdict === "within").toBe(!isOther);
  if (isOther) expect(u).toBe(`check: the unit of gauge G0 (${typed}) is not that of its readings: type its U in theirs`);
  else expect(u).toBe(0.002 * size);
});

test("a compression ratio: bore, chamber, crown and deck", async () => {
  const made = await measuredWith({ Bores: 0.02, "Chambers and crowns": 0.4, "Deck heights": 0.05 });
  await made.item("Stroke", 72);
  await made.item("Gasket bore", 74.5);
  await made.item("Gasket thickness", 1.2);
  for (const heading of ["Top thrust", "Top pin", "Bottom thrust", "Bottom pin"]) await made.type("BoreReadings", heading, 0, 73);
  for (const [heading, size] of Object.entries({ Chamber: 28, "Piston crown": 1.5, Deck: 0.3 })) await made.type("VolumeReadings", heading, 0, size);
  const gasket = call("DISCVOLUME", 74.5, 1.2, "mm");
  const scatter = simulated((read) => {
    const bore = read(73, 0.02);
    return call(
      "COMPRESSIONRATIO",
      ...[call("SWEPTVOLUME", bore, 72, 1, "mm"), read(28, 0.4), gasket, call("DISCVOLUME", bore, read(0.3, 0.05), "mm"), read(1.5, 0.4)],
    );
  });
  agrees(await one(made, "VolumeReadings", "U of the ratio"), scatter);
});

test("the same ratio where bores have no sheet of their own", async () => {
  const made = await measuredWith({ "Mean bores": 0.02, "Chambers and crowns": 0.4, "Deck heights": 0.05 }, { ...CHOICES, without: ["bores"] });
  await made.item("Stroke", 72);
  await made.item("Gasket bore", 74.5);
  await made.item("Gasket thickness", 1.2);
  for (const [heading, size] of Object.entries({ "Mean bore": 73, Chamber: 28, "Piston crown": 1.5, Deck: 0.3 }))
    await made.type("VolumeReadings", heading, 0, size);
  // As above: RATIOUNCERTAINTY of volumes with U of 0.165, 0.4, 0, 0.209 and 0.4 cm³.
  const [swept, deck] = [call("SWEPTVOLUME", 73, 72, 1, "mm"), call("DISCVOLUME", 73, 0.3, "mm")];
  const said = call("RATIOUNCERTAINTY", swept, 28, call("DISCVOLUME", 74.5, 1.2, "mm"), deck, 1.5, (2 * swept * 0.02) / 73, 0.4, 0, (swept * 0.05) / 72, 0.4);
  expect(await one(made, "VolumeReadings", "U of the ratio")).toBeCloseTo(said, 6);
});

test("leak-down: the pressures supplied and held", async () => {
  const made = await measuredWith({ "Leak-down": 0.05 });
  await made.type("PressureTests", "Supply", 0, 6);
  await made.type("PressureTests", "Held", 0, 5.2);
  agrees(
    await one(made, "PressureTests", "U of the leak-down"),
    simulated((read) => call("LEAKDOWN", read(6, 0.05), read(5.2, 0.05))),
  );
});

test("the force of a spring: its force in the tester, and three lengths", async () => {
  const made = await measuredWith({ "Spring forces": 4, "Spring lengths and heights": 0.1 });
  for (const [heading, size] of Object.entries({ "Height measured": 40.6, Shims: 0.6, "Force in the tester": 250, "At length": 40, "Spring rate": 30 }))
    await made.type("ValveSprings", heading, 0, size);
  agrees(
    await one(made, "ValveSprings", "U of the force"),
    simulated((read) => call("SPRINGFORCE", read(250, 4), read(40, 0.1), 30, call("INSTALLEDHEIGHT", read(40.6, 0.1), read(0.6, 0.1)))),
  );
  agrees(
    await U_OF(made, "Installed height"),
    simulated((read) => call("INSTALLEDHEIGHT", read(40.6, 0.1), read(0.6, 0.1))),
  );
});

test("sums and differences: a stack, a lobe, a pin in its small end, a gap between valve and piston", async () => {
  const made = await measuredWith({
    ...{ "Head, block, rod and piston heights": 0.02, "Cam lobes": 0.01, "Rod bores": 0.004, "Pins in the small ends": 0.002, "Valve lifts and gaps": 0.05 },
  });
  agrees(
    await U_OF(made, "Deck clearance"),
    simulated((read) => call("DECKCLEARANCE", read(205, 0.02), 74, read(129, 0.02), read(38.8, 0.02))),
  );
  agrees(
    await U_OF(made, "Lobe lift"),
    simulated((read) => call("LOBEWEAR", call("LOBELIFT", read(38.4, 0.01), read(32, 0.01)), 6.5)),
  );
  agrees(
    await U_OF(made, "Small end clearance"),
    simulated((read) => call("CLEARANCE", read(20.03, 0.004), read(20, 0.002))),
  );
  // The angles lie so far apart that one of them decides.
  agrees(
    await U_OF(made, "Valve to piston"),
    simulated((read) => first("VALVETOPISTON", [[-20, 0, 20]], [[0.2, 2.1, 6.2].map((lift) => read(lift, 0.05))], 80, 130, read(3.5, 0.05), 12)),
  );
});

test("what is the largest of several readings less the smallest scatters no more than is said, and less where several are as large", async () => {
  const made = await measuredWith({ Guides: 0.004, Stems: 0.004, "Face heights": 0.01, "Rod bores": 0.004 });
  const apart = simulated((read) => call("TAPER", [[read(7.05, 0.004), read(7.03, 0.004), read(7.01, 0.004)]], 1));
  agrees(await U_OF(made, "Guide taper"), apart);
  const alike = simulated((read) => call("TAPER", [[7.02, 7.02, 7.02].map((size) => read(size, 0.004))], 1));
  expect(await U_OF(made, "Guide taper")).toBeGreaterThan(alike);
  const flat = simulated((read) =>
    call(
      "FLATNESS",
      [0, 0.01, 0].map((height) => [height, 0.05 + height, height].map((one) => read(one, 0.01))),
    ),
  );
  expect(await U_OF(made, "Flatness")).toBeGreaterThan(flat);
});

test("a verdict on such a result goes by its U, and has none while a gauge is not told", async () => {
  const made = await measuredWith({ "Leak-down": 0.05 });
  await made.type("PressureTests", "Supply", 0, 6);
  await made.type("PressureTests", "Held", 0, 5.7);
  await made.limit("Leak-down", null, 5.5);
  // 5 % with a U of 100 × 0.05 ÷ 6 × √(1 + 0.95²) = 1.149.
  expect(await one(made, "PressureTests", "U of the leak-down")).toBeCloseTo(1.1494, 3);
  expect((await made.column("PressureTests", "Leak-down verdict"))[0]).toBe("not proven");
  const without = await Made.of(CHOICES);
  await without.type("PressureTests", "Supply", 0, 6);
  await without.type("PressureTests", "Held", 0, 5.7);
  await without.limit("Leak-down", null, 5.5);
  expect((await without.column("PressureTests", "Leak-down verdict"))[0]).toBe("within");
});
