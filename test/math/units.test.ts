import { lengthFactor } from "../../src/math/units.ts";

// NIST SP 811, appendix B: 1 in = 25.4 mm, 1 ft = 304.8 mm, 1 yd = 914.4 mm, 1 mil = 0.0254 mm, all exact.
test.each([
  ["in", "mm", 25.4],
  ["ft", "mm", 304.8],
  ["yard", "mm", 914.4],
  ["mil", "mm", 0.0254],
  ["m", "mm", 1000],
  ["cm", "mm", 10],
  ["um", "mm", 0.001],
  ["mm", "in", 1 / 25.4],
  ["ft", "in", 12],
])("one %s is so many %s: %p", (from, to, factor) => {
  expect(lengthFactor(from, to)! / factor).toBeCloseTo(1, 14);
});

test("what is no length has no factor", () => {
  for (const name of ["kg", "s", "bar", "litre", "no such unit", "", "degC", "K", "m^2", "m/s"]) expect(lengthFactor(name, "mm")).toBeUndefined();
});
