import { unitIn } from "../../src/vocabulary/units.ts";

test.each([
  ["Thrust (mm)", "length", "mm"],
  ["Thrust (in)", "length", "in"],
  ['Thrust (")', "length", "in"],
  ["Deviation [µm]", "length", "µm"],
  ["bores and pistons, mm at 20 °C", "length", "mm"],
  ["Diameters in mm. Heights from the top", "length", "mm"],
  ["Diameters in inches", "length", "in"],
  ["Pressures in bar. All plugs out", "pressure", "bar"],
  ["Dry (PSI)", "pressure", "psi"],
  ["kpa", "pressure", "kPa"],
] as const)("%s is in a unit of %s: %s", (text, kind, unit) => {
  expect(unitIn(text, kind)).toBe(unit);
});

test("the word in is no unit, nor is one of another kind", () => {
  expect(unitIn("readings taken in the shop", "length")).toBeUndefined();
  expect(unitIn("Pressures in bar", "length")).toBeUndefined();
  expect(unitIn("Thrust (mm)", "pressure")).toBeUndefined();
});
