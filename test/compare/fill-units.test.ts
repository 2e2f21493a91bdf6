import { compareReadings } from "../../src/compare/compare.ts";
import { readingsOfWorkbook } from "../../src/compare/from-workbook.ts";
import { type Typed, workbook } from "../check/workbook.ts";

/** A build sheet in one unit of length: ring gaps judged with U, a pressure, and a bore that a function reads. */
function buildSheet(unit: "mm" | "in", gap: number, pressure: number, gauge: Typed = []) {
  const pressures = unit === "mm" ? "bar" : "psi";
  return workbook({
    Engine: [["Unit of length", unit], [null], ...gauge],
    Limits: [
      ["Characteristic", "Lower", "Upper", "Unit"],
      ["Ring end gap, top", null, null, unit],
      ["Compression pressure", null, null, pressures],
      ["Ra", null, null, "µm"],
    ],
    Rings: [
      ["Cylinder", "Ring", "Groove", "Ring width", "Side clearance"],
      [1, "Top", gap * 6, gap * 5, "=HATCH.RINGSIDE(C2, D2)"],
    ],
    Tests: [
      ["Cylinder", "Dry", "Dry verdict"],
      [1, pressure, "=HATCH.VERDICT(B2, 0.1)"],
    ],
  });
}
const read = (...given: Parameters<typeof buildSheet>) => readingsOfWorkbook(buildSheet(...given), { uncertainty: { general: 0.004, of: new Map() } });

test("readings have the unit of their workbook: by their characteristic, as the only unit of pressures, and of lengths by its entry", () => {
  const { readings } = read("mm", 0.3, 12.1);
  const units = Object.fromEntries(readings.map(({ characteristic, unit }) => [characteristic, unit]));
  expect(units).toMatchObject({ "Side clearance": "mm", Dry: "bar" });
});

// 0.30 mm is 0.0118 in, 12.1 bar 175 psi: nothing has changed but the unit.
test("a workbook in millimetres is never compared with one in inches: what changed is not told, and both units are named", () => {
  const { places, refused } = compareReadings(read("mm", 0.3, 12.1), read("in", 0.0118, 175));
  expect(places).toEqual([]);
  expect(refused.map(({ why }) => why)).toEqual(expect.arrayContaining(["it is in mm before and in inches after", "it is in bar before and in psi after"]));
});

// 0.0002 in is 0.005 mm.
test("U of a gauge in another unit than what it measured is left out, and said", () => {
  const gauge: Typed = [
    ["Gauge id", "U", "Unit"],
    ["BG-1", 0.0002, "in"],
    [null],
    [null],
    ["Measured", "Gauge", "U"],
    ["Ring grooves and rings", "BG-1", 0.0002],
  ];
  const { readings, notes } = readingsOfWorkbook(buildSheet("mm", 0.3, 12.1, gauge));
  expect(readings.filter(({ uncertainty }) => uncertainty !== undefined)).toEqual([]);
  expect(notes).toEqual(["U of gauge BG-1 is in inches and what it measured in mm: it is left out, so give it in mm"]);
});
