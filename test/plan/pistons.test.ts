import fc from "fast-check";
import { planPistons } from "../../src/plan/pistons.ts";
import { leastBy, pairings } from "../helpers/pairings.ts";
import { area, at, calculated, filled, type Sheets, shown } from "./stand.ts";

const sheets: Sheets = {
  Bores: [
    [73.03, 73.02],
    [73.02, 73.02],
    [73.01, 73.02],
    [73.01, 73.01],
    [73.04, 73.03],
    [73.03, 73.03],
  ],
  Pistons: [[72.98], [72.97], [72.99], [72.95]],
  Plan: [["Plan"]],
};
const blocks = ["A1:B2", "A3:B4", "A5:B6"].map((range) => area("Bores", range));
const pistons = area("Pistons", "A1:A4");
const place = { at: at("Plan", "A3"), date: "2026-05-04" };

describe("what is planned", () => {
  // Smallest readings 73.02, 73.01, 73.03; each less 0.04 is one of the pistons (by hand).
  test("each bore's piston, from the smallest reading, with clearance and what is left over", () => {
    const plan = planPistons(calculated(sheets), { bores: { blocks }, pistons, target: 0.04, pistonNames: ["P1", "P2", "P3", "P4"] });
    expect(plan.matches.map(({ bore, boreSize, piston, clearance, offTarget, says }) => [bore, boreSize, piston, clearance, offTarget, says])).toEqual([
      ["bore 1", 73.02, "P1", 0.04, 0, "P1: clearance 0.04, on target"],
      ["bore 2", 73.01, "P2", 0.04, 0, "P2: clearance 0.04, on target"],
      ["bore 3", 73.03, "P3", 0.04, 0, "P3: clearance 0.04, on target"],
    ]);
    expect(plan.leftOver).toEqual([{ piston: "P4", size: 72.95, says: "left over" }]);
    expect(plan.worst).toBe(0);
  });

  test("a greedy choice is not made, and the worst is told", () => {
    const plan = planPistons(calculated(sheets), { bores: { sizes: [[73.04], [73.06]] }, pistons: [[73], [72.98]], target: 0.04 });
    expect(plan.matches.map(({ piston, says }) => [piston, says])).toEqual([
      ["piston 2", "piston 2: clearance 0.06, 0.02 over the target"],
      ["piston 1", "piston 1: clearance 0.06, 0.02 over the target"],
    ]);
    expect(plan.worst).toBe(0.02);
  });

  test("unfinished bores, too few pistons and bad sizes say so in their own row", () => {
    const some = structuredClone(sheets);
    some.Bores![2]![1] = null;
    const { matches } = planPistons(calculated(some), { bores: { blocks }, pistons: [[72.99]], target: 0.04 });
    expect(matches.map(({ piston, says }) => [piston, says])).toEqual([
      [null, "no piston is left for it"],
      [null, "not measured yet"],
      ["piston 1", "piston 1: clearance 0.04, on target"],
    ]);
    some.Bores![2]![1] = "wide";
    const { matches: bad } = planPistons(calculated(some), { bores: { blocks }, pistons: [[72.99], [72.98], [73.1]], target: 0.04 });
    expect(bad[1]!.says).toContain('holds the text "wide"');
    const { matches: tight } = planPistons(calculated(some), { bores: { sizes: [[73], [73.2]] }, pistons: [[73.05], [73.1]], target: 0.04 });
    expect(tight[0]!.says).toBe("piston 73.05: it is larger than bore 73");
  });

  test("a bore of which one reading is in inches says so in its own row, the others are matched", () => {
    const some = structuredClone(sheets);
    some.Bores![2]![1] = 2.875;
    const { matches, fault } = planPistons(calculated(some), { bores: { blocks }, pistons, target: 0.04 });
    expect(fault).toBeNull();
    expect(matches.map(({ says }) => says)).toEqual([
      "piston 1: clearance 0.04, on target",
      "BORESUMMARY: readings 2.875 is about 1/25.4 of the middle reading 73.01: is one in inches, the other in millimetres? (row 1, column 2)",
      "piston 3: clearance 0.04, on target",
    ]);
  });

  test("without a bore, a piston or a target there is no plan and no fault", () => {
    for (const inputs of [
      { bores: { sizes: [[null]] }, pistons: [[72.98]], target: 0.04 },
      { bores: { sizes: [[73.02]] }, pistons: [[""]], target: 0.04 },
      { bores: { sizes: [[73.02]] }, pistons: [[72.98]], target: null },
    ]) {
      expect(planPistons(calculated(sheets), inputs, place)).toMatchObject({ matches: [], leftOver: [], worst: null, fault: null, edits: [] });
    }
  });

  test("pistons that are all larger than all bores are refused in the function's words", () => {
    expect(planPistons(calculated(sheets), { bores: { sizes: [[73]] }, pistons: [[73.5]], target: 0.04 }).fault).toBe(
      "PISTONMATCH: pistons 73.5 is larger than bores 73: are they swapped?",
    );
  });
});

test("nothing better exists: against every pairing there is, for up to five of each", () => {
  const thousandths = (from: number) => fc.array(fc.integer({ min: from, max: from + 9 }), { minLength: 1, maxLength: 5 });
  fc.assert(
    fc.property(thousandths(73_040), thousandths(73_000), (bores, skirts) => {
      const off = (pairing: readonly number[]) => pairing.map((piston, bore) => (piston < 0 ? 0 : Math.abs(bores[bore]! - skirts[piston]! - 40)));
      const best = leastBy(pairings(bores.length, skirts.length), (p) => [Math.max(...off(p)), off(p).reduce((a, b) => a + b, 0)]);
      const thousandth = (sizes: readonly number[]) => [sizes.map((size) => size / 1000)];
      const plan = planPistons({ name: "", sheets: [] }, { bores: { sizes: thousandth(bores) }, pistons: thousandth(skirts), target: 0.04 });
      expect(plan.matches.map(({ piston }) => (piston === null ? -1 : Number(piston.slice(7)) - 1))).toEqual(best.pairing);
      expect(Math.round(plan.worst! * 1000)).toBe(best.keys[0]);
    }),
    { numRuns: 200 },
  );
});

describe("written to the sheet", () => {
  test("readings are brought to their smallest beside the plan, all in formulas, which come to the plan", () => {
    const made = planPistons(calculated(sheets), { bores: { blocks }, pistons, target: 0.04 }, place);
    expect(made.edits.map(({ cells }) => cells[0]![0])).toEqual(["=HATCH.PISTONMATCH(H4:H6, Pistons!A1:A4, 0.04)", "smallest reading"]);
    expect(made.edits[1]!.cells[1]).toEqual(["=INDEX(HATCH.BORESUMMARY(Bores!A1:B2),2,1)"]);
    const written = filled(sheets, made.edits);
    expect(shown(calculated(written), area("Plan", "A4:F7"))).toEqual([
      [1, 73.02, 1, 72.98, 0.04, 0],
      [2, 73.01, 2, 72.97, 0.04, 0],
      [3, 73.03, 3, 72.99, 0.04, 0],
      ["left over", null, 4, 72.95, null, null],
    ]);
    written.Bores![0]![1] = null;
    expect(shown(calculated(written), area("Plan", "A4:C5"))).toEqual([
      [1, null, null],
      [2, 73.01, 2],
    ]);
  });

  test("sizes that stand in cells are one formula, typed ones are values with the day", () => {
    const made = planPistons(calculated(sheets), { bores: { sizes: area("Bores", "A1:A3") }, pistons, target: area("Pistons", "A4") }, place);
    expect(made.edits.map(({ cells }) => cells[0]![0])).toEqual(["=HATCH.PISTONMATCH(Bores!A1:A3, Pistons!A1:A4, Pistons!A4)"]);
    const values = planPistons(calculated(sheets), { bores: { sizes: [[73.02], [73.5]] }, pistons: [[72.98]], target: 0.04 }, place);
    expect(values.edits[0]!.cells).toEqual([
      ["bore", "bore size", "piston", "piston size", "clearance", "off target"],
      ["bore 1", 73.02, "piston 1", 72.98, 0.04, 0],
      ["bore 2", 73.5, null, null, null, null],
      ["planned 2026-05-04; values, which do not follow the readings", null, null, null, null, null],
    ]);
  });

  test("as values too a bad size says why in its own row, and a piston too large for its bore beside it", () => {
    const { edits } = planPistons(
      calculated(sheets),
      { bores: { sizes: [["73,02"], [73.02], [72.97]] }, pistons: [["thick"], [73.01], [72.98]], target: 0.04 },
      place,
    );
    expect(edits[0]!.cells.slice(1, 5)).toEqual([
      ["bore 1", 'bores holds the text "73,02": a decimal comma is not read, type it with this sheet\'s decimal sign (row 1)', null, null, null, null],
      ["bore 2", 73.02, "piston 2", 73.01, 0.01, -0.03],
      ["bore 3", 72.97, "piston 3", 72.98, "piston 72.98: it is larger than bore 72.97", -0.05],
      ["left over", null, "piston 1", 'pistons holds the text "thick": it must be a length above 0 (row 1)', null, null],
    ]);
  });
});
