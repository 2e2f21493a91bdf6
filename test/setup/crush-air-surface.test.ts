import { type Cell, isCellError } from "../../src/core/cell.ts";
import { fill, gauge, outside } from "./judged.ts";
import { Made } from "./made.ts";

// Readings and limits are invented; what they come to is worked out by hand beside them.

const CHOICES = { cylinders: 2, heights: 2, axes: 2, valves: 2, unit: "mm", secondReadings: false };
const firstOf = async (made: Made, table: string, heading: string) => (await made.column(table, heading))[0];

test("crush: from the gap under the cap or from all four ends, judged bearing by bearing, and three ends wait", async () => {
  const made = await Made.of(CHOICES);
  expect(await made.column("BearingCrush", "Bearing")).toEqual(["Main 1", "Main 2", "Main 3", "Big end 1", "Big end 2"]);
  await made.fill("BearingCrush", "Gap under the cap (mm)", [0.1]);
  for (const [i, end] of [0.04, 0.05, 0.03].entries()) await made.type("BearingCrush", `Shell end ${i + 1}`, 3, end);
  const crush = () => made.column("BearingCrush", "Crush");
  expect(await crush()).toEqual([expect.closeTo(0.1 / Math.PI, 9), "", "", "", ""]);
  await made.type("BearingCrush", "Shell end 4", 3, 0.04);
  // The examples of CRUSH: 0.1 ÷ π, 0.16 ÷ π.
  expect((await crush())[3]).toBeCloseTo(0.16 / Math.PI, 9);
  await made.limit("Main bearing crush", 0.035, 0.06);
  await made.limit("Big end crush", 0.035, 0.07);
  expect(await outside(made)).toEqual([expect.stringMatching(/^Main 1, Crush \| 0\.03\d+ is under the lower limit 0\.035 by 0\.003\d*$/)]);
  await gauge(made, 0.015, "Shell ends and cap gaps");
  // One gap, or four ends: 0.015 ÷ π, 2 × 0.015 ÷ π.
  const u = await made.column("BearingCrush", "U of the crush");
  expect([u[0], u[1], u[3]]).toEqual([expect.closeTo(0.015 / Math.PI, 9), "", expect.closeTo(0.03 / Math.PI, 9)]);
  expect(await made.column("BearingCrush", "Crush verdict")).toEqual(["not proven", "", "", "within", ""]);
});

test("bobweight: of one rod with every set at its lightest, once all is typed", async () => {
  const made = await Made.of(CHOICES);
  await fill(made, "RodMasses", { "Piston mass": [500, 498], "Rod mass": [612, 613], "Big end mass": [430, 431] });
  await fill(made, "Bobweight", { "Shells (g)": [46], Pin: [120], Rings: [34], Locks: [2] });
  expect(await firstOf(made, "Bobweight", "Bobweight")).toBe("");
  await fill(made, "Bobweight", { "Rods on it": [2], "Share balanced": [0.5] });
  // The example of BOBWEIGHT, without its oil: 2 × (430 + 46 + (182 + 498 + 120 + 34 + 2) ÷ 2).
  expect(await firstOf(made, "Bobweight", "Bobweight")).toBe(1788);
  await fill(made, "Bobweight", { "Oil in it": [4] });
  expect(await firstOf(made, "Bobweight", "Bobweight")).toBe(1792);
  expect(await outside(made)).toEqual([]);
});

test("compression at standard air: from the ambient pressure, or from the altitude, with U in the same proportion", async () => {
  const made = await Made.of(CHOICES);
  await fill(made, "PressureTests", { Dry: [11.5, 11.2] });
  const standard = () => made.column("StandardAir", "At standard air");
  expect(await standard()).toEqual(["", ""]);
  await made.item("Ambient pressure", 0.92);
  // The example of COMPRESSIONATSTANDARD in bar: 11.5 × 1.01325 ÷ 0.92.
  expect(await standard()).toEqual([expect.closeTo(12.665625, 8), expect.closeTo(12.33521739, 8)]);
  await made.limit("Compression at standard air", 12.4, null);
  expect(await outside(made)).toEqual(["Cylinder 2, At standard air | 12.335 is under the lower limit 12.4 by 0.065"]);
  await gauge(made, 0.2, "Compression");
  expect((await made.column("StandardAir", "U at standard air"))[0]).toBeCloseTo((0.2 * 1.01325) / 0.92, 9);
  expect(await made.column("StandardAir", "At standard air verdict")).toEqual(["within", "not proven"]);
  const inch = await Made.of({ ...CHOICES, unit: "in" });
  await fill(inch, "PressureTests", { Dry: [150] });
  await inch.item("Altitude", 5000);
  // The example of COMPRESSIONATSTANDARD for 5000 ft.
  expect(await firstOf(inch, "StandardAir", "At standard air")).toBeCloseTo(180.278, 3);
  // 59 °F is the standard's 15 °C, by which nothing changes; a dead cylinder stays dead.
  await inch.item("Air temperature", 59);
  await inch.type("PressureTests", "Dry", 1, 0);
  expect(await inch.column("StandardAir", "At standard air")).toEqual([expect.closeTo(180.278, 3), 0]);
  await inch.item("Ambient pressure", 14);
  // Both given: one too many, as the cell says.
  expect(isCellError((await firstOf(inch, "StandardAir", "At standard air")) as Cell)).toBe(true);
});

test("leak-down: the spread between cylinders, and its growth over tests without a gap", async () => {
  const made = await Made.of(CHOICES);
  await fill(made, "PressureTests", { Supply: [7, 7], Held: [6.3, 5.6] });
  // 10 % and 20 %.
  expect(await firstOf(made, "PressureSpread", "Leak-down spread")).toBe(10);
  await made.limit("Leak-down spread", null, 8);
  expect(await outside(made)).toEqual(["all, Leak-down spread | 10 is over the upper limit 8 by 2"]);
  await gauge(made, 0.1, "Leak-down");
  // The wider of both: 100 × 0.1 ÷ 7 × √(1 + 0.9²), and the same again for the other cylinder.
  expect(await firstOf(made, "PressureSpread", "U of the leak-down spread")).toBeCloseTo((10 / 7) * Math.sqrt(1.81) * Math.SQRT2, 9);
  const [first, second] = [1, 2].map((cylinder) => `Leak-down, cylinder ${cylinder} (%)`) as [string, string];
  await fill(made, "LeakDownHistory", { "Hours run": [0, 500, 1000], [first]: [5, 7.5, 10], [second]: [5, 12.5] });
  // 5 % in 1000 hours, in a straight line; cylinder 2 has not been tested the third time.
  expect(await made.column("LeakDownTrend", "Growth per hour")).toEqual([expect.closeTo(0.005, 12), ""]);
  await made.type("LeakDownHistory", second, 2, 20);
  expect(await made.column("LeakDownTrend", "Growth per hour")).toEqual([expect.closeTo(0.005, 12), expect.closeTo(0.015, 12)]);
  expect(await made.column("LeakDownTrend", "In words")).toEqual(["grows", "grows"]);
  await made.type("LeakDownHistory", "Hours run", 4, 1500);
  expect(await made.column("LeakDownTrend", "Growth per hour")).toEqual(["", ""]);
  expect(() => made.headings("nothing")).toThrow();
});

test("surface: each figure by the shop's limits and by the U of its kind, and the angle of the cross-hatch", async () => {
  const made = await Made.of(CHOICES);
  await fill(made, "BoreSurface", {
    Ra: [0.5, 0.72],
    Rz: [4.1, 6],
    Rk: [1.1, 1.2],
    Rpk: [0.2, 0.35],
    Rvk: [1.5, 1.6],
    "Peak material ratio": [6, 9],
    "Valley material ratio": [78, 82],
  });
  await made.limit("Ra", null, 0.7);
  await made.limit("Rpk", null, 0.3);
  await made.limit("Valley material ratio", 75, 85);
  expect(await outside(made)).toEqual([
    "Cylinder 2, Ra | 0.72 is over the upper limit 0.7 by 0.02",
    "Cylinder 2, Rpk | 0.35 is over the upper limit 0.3 by 0.05",
  ]);
  await gauge(made, 0.03, "Bore surface, roughness");
  expect(await made.column("BoreSurface", "Ra verdict")).toEqual(["within", "not proven"]);
  expect(await made.column("BoreSurface", "Valley material ratio verdict")).toEqual(["within", "within"]);
  await fill(made, "Honing", { "Bore honed (mm)": [73], "Strokes a minute": [50], "Stroke of the hone": [110] });
  expect(await firstOf(made, "Honing", "Cross-hatch angle")).toBe("");
  await fill(made, "Honing", { "Turns a minute": [160] });
  await made.limit("Cross-hatch angle", 40, 50);
  // The example of HONEANGLE.
  expect(await firstOf(made, "Honing", "Cross-hatch angle")).toBeCloseTo(33.375164, 6);
  expect(await outside(made)).toContain("Bores, Cross-hatch angle | 33.375 is under the lower limit 40 by 6.625");
  const inch = await Made.of({ ...CHOICES, unit: "in" });
  expect((await inch.column("LimitList", "Unit"))[inch.rowOf("LimitList", "Rk")]).toBe("µin");
});
