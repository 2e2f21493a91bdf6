import fc from "fast-check";
import { planMasses } from "../../src/plan/masses.ts";
import { area, at, calculated, filled, type Sheets, shown } from "./stand.ts";

/** Pistons in a column; rods in a row for each end. */
const sheets: Sheets = {
  Pistons: [[412], [409.5], [410.2], [null]],
  Rods: [
    [631, 628.5, 630],
    [204, 204, 203.2],
  ],
  Plan: [["Plan"]],
};
const pistons = area("Pistons", "A1:A4");
const [big, small] = ["A1:C1", "A2:C2"].map((range) => area("Rods", range)) as [typeof pistons, typeof pistons];
const place = { at: at("Plan", "A3"), date: "2026-05-04" };

describe("what is planned", () => {
  // Common practice: every part comes to the lightest of its set. By hand.
  test("what to take off each part, and the lightest of the set", () => {
    const { sets } = planMasses(calculated(sheets), { sets: [pistons], names: [["No. 1", "No. 2", "No. 3", "No. 4"]] });
    expect(sets).toEqual([
      {
        parts: [
          { name: "No. 1", mass: 412, off: 2.5, says: "take 2.5 off, from 412 to 409.5" },
          { name: "No. 2", mass: 409.5, off: 0, says: "stays as it is" },
          { name: "No. 3", mass: 410.2, off: 0.7, says: "take 0.7 off, from 410.2 to 409.5" },
          { name: "No. 4", mass: null, off: null, says: "not weighed yet" },
        ],
        lightest: "No. 2",
        spread: 2.5,
      },
    ]);
  });

  test("both ends of the rods are matched by themselves, within a tolerance", () => {
    const { sets } = planMasses(calculated(sheets), { sets: [big, small], tolerance: 0.5 });
    expect(sets.map(({ parts }) => parts.map(({ off }) => off))).toEqual([
      [2, 0, 1],
      [0.3, 0.3, 0],
    ]);
    expect(sets.map(({ lightest, spread }) => [lightest, spread])).toEqual([
      ["part 2", 2.5],
      ["part 3", 0.8],
    ]);
  });

  test("several that are lightest are all named, each set by its own names", () => {
    const { sets } = planMasses(calculated(sheets), { sets: [pistons, small], names: [undefined, ["rod 1", "rod 2", "rod 3"]] });
    expect(sets.map(({ lightest }) => lightest)).toEqual(["part 2", "rod 3"]);
    const tied = planMasses(calculated(sheets), { sets: [[[204, 204, 204.8]]], names: [["rod 1", "rod 2", "rod 3"]] });
    expect(tied.sets[0]).toMatchObject({ lightest: "rod 1, rod 2", spread: 0.8 });
  });

  test("a mass that is none of the set is refused in its own row, and the others go on", () => {
    const { sets } = planMasses(calculated(sheets), { sets: [[[412], [4.12], [410]]] });
    expect(sets[0]!.parts.map(({ off }) => off)).toEqual([2, null, 0]);
    expect(sets[0]!.parts[1]!.says).toBe("masses 4.12 is about 1/100 of the middle one 410: is a decimal point wrong?");
    expect([sets[0]!.lightest, sets[0]!.spread]).toEqual(["part 3", 2]);
  });

  test("the sentence of the function says why there is no plan, and nothing weighed has no lightest", () => {
    expect(planMasses(calculated(sheets), { sets: [pistons], tolerance: -1 })).toMatchObject({
      sets: [],
      fault: "MASSMATCH: tolerance -1 is too small: it must be a mass of at least 0",
    });
    expect(planMasses(calculated(sheets), { sets: [[[null], [null]]] }).sets).toEqual([]);
  });
});

test("after the cut no part is heavier than the lightest and the tolerance, and none is cut that need not be", () => {
  const tenths = fc.integer({ min: 4000, max: 4300 });
  fc.assert(
    fc.property(fc.array(tenths, { minLength: 1, maxLength: 8 }), fc.integer({ min: 0, max: 20 }), (masses, tolerance) => {
      const { sets } = planMasses({ name: "", sheets: [] }, { sets: [[masses.map((mass) => mass / 10)]], tolerance: tolerance / 10 });
      const most = Math.min(...masses) + tolerance;
      expect(sets[0]!.parts.map(({ off }) => Math.round(off! * 10))).toEqual(masses.map((mass) => (mass > most ? mass - most : 0)));
    }),
  );
});

describe("written to the sheet", () => {
  test("each set has its head, its masses below one another and one formula, which follows them", () => {
    const made = planMasses(calculated(sheets), { sets: [big, small], tolerance: 0.5 }, place);
    const after = filled(sheets, made.edits);
    const table = () => shown(calculated(after), area("Plan", "A3:C10"));
    expect(table()).toEqual([
      ["part", "mass", "take off"],
      ["part 1", 631, 2],
      ["part 2", 628.5, 0],
      ["part 3", 630, 1],
      ["part", "mass", "take off"],
      ["part 1", 204, 0.3],
      ["part 2", 204, 0.3],
      ["part 3", 203.2, 0],
    ]);
    expect(made.edits[1]!.cells[0]![0]).toBe("=HATCH.MASSMATCH(B4:B6, 0.5)");
    after.Rods![0]![1] = 630.5;
    expect(table()[1]).toEqual(["part 1", 631, 0.5]);
  });

  test("a part that is not weighed stays empty", () => {
    const made = planMasses(calculated(sheets), { sets: [pistons] }, place);
    expect(shown(calculated(filled(sheets, made.edits)), area("Plan", "C4:C7"))).toEqual([[2.5], [0], [0.7], [null]]);
  });

  test("typed masses get values with the day; a place on the masses themselves is refused", () => {
    const made = planMasses(calculated(sheets), { sets: [[[412], [4.12], [410]]] }, place);
    expect(made.as).toBe("values");
    expect(made.edits[0]!.cells.map(([, , off]) => off)).toEqual(["take off", 2, expect.stringContaining("decimal point wrong"), 0, null]);
    expect(planMasses(calculated(sheets), { sets: [pistons] }, { ...place, at: at("Pistons", "A2") }).refused).toBe(
      "the plan would stand on cells that it is made from: choose another place",
    );
  });
});
