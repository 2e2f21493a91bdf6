import { reportInput } from "../../src/report/gather/workbook.ts";
import { fill, gauge, outside } from "./judged.ts";
import { Made } from "./made.ts";

// Readings and limits are invented; what they come to is worked out by hand beside them.

const CHOICES = { cylinders: 3, heights: 2, axes: 2, valves: 2, unit: "mm", secondReadings: false };
const firstOf = async (made: Made, table: string, heading: string) => (await made.column(table, heading))[0];

test("blow-by: per hour, with U from its volume, judged, and its trend over the hours", async () => {
  const made = await Made.of(CHOICES);
  await fill(made, "BlowBy", { "Hours run": [100, 300, 500], "Gas measured": [60, 70, 80], Minutes: [2, 2, 2] });
  await made.limit("Blow-by", null, 2300);
  // 60 L in 2 minutes is 1800 L/h.
  expect((await made.column("BlowBy", "Blow-by")).slice(0, 4)).toEqual([1800, 2100, 2400, ""]);
  expect(await outside(made)).toEqual(["Measuring 3, Blow-by | 2400 is over the upper limit 2300 by 100"]);
  await gauge(made, 5, "Gas through the breather");
  // 60 × 5 ÷ 2 = 150: 2400 is less than that over 2300, and 2100 more than that within.
  expect((await made.column("BlowBy", "U of the blow-by")).slice(0, 2)).toEqual([150, 150]);
  expect((await made.column("BlowBy", "Blow-by verdict")).slice(0, 4)).toEqual(["within", "within", "not proven", ""]);
  // 600 L/h in 400 hours, a straight line.
  expect(await firstOf(made, "BlowByTrend", "Growth per hour")).toBe(1.5);
  expect(await firstOf(made, "BlowByTrend", "In words")).toBe("grows");
});

test("oil use: what was added after the filling by the hours, with U from each measure; half a line waits", async () => {
  const made = await Made.of(CHOICES);
  await fill(made, "OilAdded", { "Hours at the mark": [100, 150, 200, 260], "Oil added": [4, 0.2, 0.25] });
  expect(await firstOf(made, "OilUse", "Oil use")).toBe("");
  await made.type("OilAdded", "Oil added", 3, 0.36);
  // The example of OILRATE: 0.81 ÷ 160, 0.36 ÷ 60.
  expect(await firstOf(made, "OilUse", "Oil use")).toBeCloseTo(0.0050625, 9);
  expect(await firstOf(made, "OilUse", "Last interval")).toBeCloseTo(0.006, 9);
  await made.limit("Oil use", null, 0.0051);
  expect(await firstOf(made, "OilUse", "Oil use verdict")).toBe("within");
  await gauge(made, 0.01, "Oil added");
  // Three measures: 0.01 × √3 ÷ 160.
  expect(await firstOf(made, "OilUse", "U of the use")).toBeCloseTo((0.01 * Math.sqrt(3)) / 160, 9);
  expect(await firstOf(made, "OilUse", "Oil use verdict")).toBe("not proven");
});

test("oil samples: each element by its own limit, what wore in by the hours on the oil, and no element mistaken for another", async () => {
  const made = await Made.of(CHOICES);
  await fill(made, "OilSamplesTaken", { "Hours on the oil": [100, 50] });
  // Iron, chromium, aluminium, copper, lead, tin, silicon of two samples.
  await fill(made, "OilSamples", { "In fresh oil": [1, 0, 1, 1, 0, 0, 5, 1, 0, 1, 1, 0, 0, 5], Content: [41, 3, 8, 21, 4, 1, 15, 101, 2, 6, 11, 2, 1, 10] });
  await made.limit("Iron in the oil", null, 100);
  await made.limit("Silicon in the oil", null, 20);
  const worn = (await made.column("OilSamples", "Worn in per hour")).slice(0, 15);
  // (41 − 1) ÷ 100, (101 − 1) ÷ 50.
  expect([worn[0], worn[6], worn[7], worn[14]]).toEqual([0.4, 0.1, 2, ""]);
  expect(await outside(made)).toEqual(["Sample 2, Iron, Content | 101 is over the upper limit 100 by 1"]);
});

test("in inches, gas in cubic feet and oil in quarts", async () => {
  const made = await Made.of({ ...CHOICES, unit: "in" });
  const units = await made.column("LimitList", "Unit");
  expect([units[made.rowOf("LimitList", "Blow-by")], units[made.rowOf("LimitList", "Oil use")]]).toEqual(["ft³/h", "qt/h"]);
});

test("crankshaft: run-out from readings round a turn, and the alignment of its main bores once all are read", async () => {
  const made = await Made.of(CHOICES);
  const turn = [0, 0.01, 0.02, 0.03, 0.04, 0.03, 0.02, 0.01];
  for (const [i, reading] of turn.entries()) await made.type("CrankshaftRunOut", `At ${45 * i}° (mm)`, 0, reading);
  await made.limit("Crankshaft run-out", null, 0.03);
  expect(await firstOf(made, "CrankshaftRunOut", "Crankshaft run-out")).toBe(0.04);
  expect(await firstOf(made, "CrankshaftRunOut", "High side at, °")).toBe(180);
  await made.fill("MainBoreHeights", "Height of the bore", [0.01, 0.03]);
  expect(await firstOf(made, "MainBoreAlignment", "Main bore alignment")).toBe("");
  // An engine with fewer main bores: slope 0.005 about the middle 0.02, left −0.005, 0.01, −0.005.
  await made.type("MainBoreHeights", "Height of the bore", 2, 0.02);
  expect(await firstOf(made, "MainBoreAlignment", "Main bores read")).toBe(3);
  expect(await firstOf(made, "MainBoreAlignment", "Main bore alignment")).toBeCloseTo(0.015, 9);
  await made.type("MainBoreHeights", "Height of the bore", 3, 0);
  await made.limit("Main bore alignment", null, 0.02);
  // Least squares by hand: slope −0.004 about the middle, left −0.011, 0.013, 0.007, −0.009.
  expect(await firstOf(made, "MainBoreAlignment", "Main bore alignment")).toBeCloseTo(0.024, 9);
  expect(await outside(made)).toEqual([
    "Crankshaft, Crankshaft run-out | 0.04 is over the upper limit 0.03 by 0.01",
    expect.stringMatching(/^Main bores, Main bore alignment \| 0\.024 is over the upper limit 0\.02 by 0\.004$/),
  ]);
  const { content } = reportInput(await made.host.read());
  expect(content.turns.map(({ what }) => what.readings)).toEqual([turn]);
  expect(content.faces.map(({ what }) => what.heights.flat())).toEqual([[0.01, 0.03, 0.02, 0]]);
  const single = await Made.of({ ...CHOICES, cylinders: 1 });
  expect(() => single.headings("MainBoreAlignment")).toThrow();
});

test("camshaft: when a valve opens and closes at the checking lift, by its own limits", async () => {
  const made = await Made.of(CHOICES);
  // A triangle from 0 at 350° to 7 at 420° and back to 0 at 490°: 1 for each 10°.
  const angles = Array.from({ length: 15 }, (_, i) => 350 + 10 * i);
  await fill(made, "TimingLifts", { "Crank angle, inlet": angles, "Lift, inlet": angles.map((angle) => 7 - Math.abs(angle - 420) / 10) });
  expect(await firstOf(made, "ValveTiming", "Valve opens")).toBe("");
  await made.fill("ValveTiming", "Checking lift", [1.5]);
  expect(await Promise.all(["Valve opens", "Valve closes", "Duration", "Centre"].map((heading) => firstOf(made, "ValveTiming", heading)))).toEqual([
    365, 475, 110, 420,
  ]);
  await made.limit("Valve opens, inlet", 355, 362);
  expect(await outside(made)).toEqual(["Inlet, Valve opens | 365 is over the upper limit 362 by 3"]);
  await gauge(made, 0.3, "Crank angles", "Lifts for timing");
  // The flank rises by 1 in 10°, so 0.3 of lift is 3°: √(0.3² + 3²) = 3.015, by which 365 is no longer proven over 362.
  expect(await firstOf(made, "ValveTiming", "U, valve opens")).toBeCloseTo(Math.hypot(0.3, 3), 9);
  expect(await firstOf(made, "ValveTiming", "U, valve closes")).toBeCloseTo(Math.hypot(0.3, 3), 9);
  expect(await firstOf(made, "ValveTiming", "Valve opens verdict")).toBe("not proven");
});

test("springs: the height for a force that is wanted, and what is left to coil bind", async () => {
  const made = await Made.of(CHOICES);
  await fill(made, "ValveSprings", {
    ...{ "Height measured": [40], "Force in the tester": [250], "At length": [40], "Spring rate": [30], "Force wanted": [310] },
    ...{ "Valve lift": [9.2], "Solid length": [28.5] },
  });
  await made.limit("Coil bind, inlet", 2.5, null);
  // The examples of SPRINGHEIGHT and COILBIND: 40 + (250 − 310) ÷ 30, 40 − 9.2 − 28.5.
  expect(await firstOf(made, "ValveSprings", "Height for it")).toBe(38);
  expect(await firstOf(made, "ValveSprings", "Coil bind")).toBe(2.3);
  expect(await outside(made)).toEqual(["Cylinder 1, Inlet, Coil bind | 2.3 is under the lower limit 2.5 by 0.2"]);
  await gauge(made, 0.1, "Spring lengths and heights");
  expect((await made.column("ResultUncertainties", "U of the result"))[made.rowOf("ResultUncertainties", "Coil bind")]).toBeCloseTo(0.2, 9);
});

test("press fits: interference by the limits of each part, and how hot the outer part must be", async () => {
  const made = await Made.of(CHOICES);
  await fill(made, "PressFits", { "Outside diameter": [12.04, 50.05], "Hole for it": [12, 50], "Gap to fit": [0.02, 0.05] });
  await made.type("PressFits", "Material round it", 1, "steel");
  await made.limit("Guide interference", 0.01, 0.03);
  expect((await made.column("PressFits", "Interference")).slice(0, 3)).toEqual([0.04, 0.05, ""]);
  // The example of HEATFORFIT: 20 + 0.1 ÷ (50 × 11.5e-6); without a material nothing.
  const hot = await made.column("PressFits", "Heat to, °C");
  expect([hot[0], hot[1]]).toEqual(["", expect.closeTo(193.913, 2)]);
  await made.item("Ambient temperature", 10);
  expect((await made.column("PressFits", "Heat to, °C"))[1]).toBeCloseTo(183.913, 2);
  expect(await outside(made)).toEqual(["Guide, Interference | 0.04 is over the upper limit 0.03 by 0.01"]);
  const inch = await Made.of({ ...CHOICES, unit: "in" });
  await fill(inch, "PressFits", { "Outside diameter": [0, 2.002], "Hole for it": [0, 2], "Gap to fit": [0, 0.002] });
  await inch.type("PressFits", "Material round it", 1, "steel");
  await inch.item("Ambient temperature", 50);
  // 50 °F is 10 °C: 10 + 0.004 ÷ (2 × 11.5e-6), in °F as an inch shop reads it.
  expect((await inch.column("PressFits", "Heat to, °F"))[1]).toBeCloseTo(1.8 * (10 + 0.004 / (2 * 11.5e-6)) + 32, 2);
});
