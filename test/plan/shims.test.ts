import fc from "fast-check";
import { planShims, type ShimInputs } from "../../src/plan/shims.ts";
import { bestPlan } from "../functions/valves/every-shim-plan.ts";
import { area, at, calculated, filled, type Sheets, shown } from "./stand.ts";

const NAMES = ["inlet 1", "exhaust 1", "inlet 2"];
const sheets: Sheets = {
  Valves: [
    ["Valve", "Shim", "Clearance", "Least", "Most", "Spares"],
    ["inlet 1", 2.5, 0.1, 0.15, 0.25, 2.75],
    ["exhaust 1", 2.4, 0.3, 0.15, 0.25, 2.55],
    ["inlet 2", 2.45, 0.3, 0.15, 0.25, null],
  ],
  Plan: [["Plan"]],
};
const column = (letter: string) => area("Valves", `${letter}2:${letter}4`);
const INPUTS: ShimInputs = {
  installed: column("B"),
  clearance: column("C"),
  least: column("D"),
  most: column("E"),
  spares: area("Valves", "F2:F3"),
  names: NAMES,
};
const place = { at: at("Plan", "A3"), date: "2026-05-04" };

describe("what is planned", () => {
  // Service practice: new = installed + (measured − wanted). 2.5 + 0.1 − 0.2 = 2.4, which sits in exhaust 1 (by hand).
  test("what moves where, from the spares, and with which clearance", () => {
    const { valves, buy, leftOver } = planShims(calculated(sheets), INPUTS);
    expect(valves.map(({ name, shim, source, from, clearance, says }) => [name, shim, source, from, clearance, says])).toEqual([
      ["inlet 1", 2.4, "another valve", "exhaust 1", 0.2, "take the 2.4 out of exhaust 1: 0.2 instead of 0.1"],
      ["exhaust 1", 2.5, "another valve", "inlet 1", 0.2, "take the 2.5 out of inlet 1: 0.2 instead of 0.3"],
      ["inlet 2", 2.55, "spare", "spare 2", 0.2, "take spare 2, 2.55: 0.2 instead of 0.3"],
    ]);
    expect(buy).toEqual([]);
    expect(leftOver).toEqual([
      { size: 2.45, from: "inlet 2" },
      { size: 2.75, from: "spare 1" },
    ]);
  });

  test("a valve inside its limits keeps its shim, though the spare would bring it nearer the middle", () => {
    const { valves, buy, leftOver } = planShims(calculated(sheets), {
      installed: [[2.5, 2.4]],
      clearance: [[0.24, 0.1]],
      least: 0.15,
      most: 0.25,
      spares: 2.54,
    });
    expect(valves.map(({ says }) => says)).toEqual(["keeps its 2.5: 0.24", "buy 2.3 for it: 0.2 instead of 0.1"]);
    expect([buy, leftOver]).toEqual([
      [{ size: 2.3, count: 1 }],
      [
        { size: 2.4, from: "valve 2" },
        { size: 2.54, from: "spare 1" },
      ],
    ]);
  });

  test("clearances that the sheet judges by other limits than the plan are counted", () => {
    const judged: Sheets = {
      ...sheets,
      Verdicts: [["=HATCH.VERDICT(Valves!C2,Valves!D2,Valves!E2)"], ["=HATCH.VERDICT(Valves!C3,Valves!D3,0.3)"], ["=HATCH.VERDICT(Valves!C4,,Valves!E4)"]],
    };
    expect(planShims(calculated(sheets), INPUTS).judgedOtherwise).toBe(0);
    expect(planShims(calculated(judged), INPUTS).judgedOtherwise).toBe(1);
    expect(planShims(calculated(judged), { ...INPUTS, least: 0.15, most: 0.24 }).judgedOtherwise).toBe(3);
  });

  test("what to buy, each size once with its number", () => {
    const { valves, buy, leftOver } = planShims(calculated(sheets), { installed: [[2.5, 2.5, 2.6]], clearance: [[0.3, 0.3, 0.21]], least: 0.15, most: 0.25 });
    expect(valves.map(({ says }) => says)).toEqual(["buy 2.6 for it: 0.2 instead of 0.3", "buy 2.6 for it: 0.2 instead of 0.3", "keeps its 2.6: 0.21"]);
    expect(buy).toEqual([{ size: 2.6, count: 2 }]);
    expect(leftOver).toEqual([
      { size: 2.5, from: "valve 1" },
      { size: 2.5, from: "valve 2" },
    ]);
  });

  test("a valve that is not measured keeps its shim, one that no step suits says so, a bad spare is told", () => {
    const { valves, badSpares, leftOver } = planShims(calculated(sheets), {
      installed: [[2.5, 2.4, null, 2.6]],
      clearance: [[0.2, null, 0.2, 0.32]],
      least: [[0.15, 0.15, 0.15, 0.19]],
      most: [[0.25, 0.25, 0.25, 0.21]],
      spares: [[2.1, "old"]],
    });
    expect(valves.map(({ shim, says }) => [shim, says])).toEqual([
      [2.5, "keeps its 2.5: 0.2"],
      [null, "the clearance or a limit is still blank: it keeps its shim"],
      [null, "the shim is not measured yet"],
      [null, "none: no multiple of 0.05 lands in the limits"],
    ]);
    expect(badSpares).toEqual(['spare 2: spares holds the text "old": it must be a length above 0 (column 2)']);
    expect(leftOver).toEqual([{ size: 2.1, from: "spare 1" }]);
  });

  test("ranges that do not fit are refused in the function's words", () => {
    expect(planShims(calculated(sheets), { ...INPUTS, clearance: area("Valves", "C2:C3") }).fault).toMatch(
      /^SHIMPLAN: clearance is 2×1 cells, which does not fit installed of 3×1/,
    );
  });
});

test("nothing better exists: against every plan there is, for up to four valves", () => {
  const problem = fc.integer({ min: 1, max: 4 }).chain((count) => {
    const each = (min: number, max: number, length = count) => fc.array(fc.integer({ min, max }), { minLength: length, maxLength: length });
    const spares = fc.integer({ min: 1, max: 3 }).chain((some) => each(238, 264, some));
    return fc.record({ installed: each(240, 262), clearance: each(6, 34), least: each(14, 17), most: each(19, 24), spares, step: fc.constantFrom(5, 10) });
  });
  const across = (sizes: readonly number[]) => [sizes.map((size) => size / 100)];
  fc.assert(
    fc.property(problem, (given) => {
      const { installed, clearance, least, most, spares, step } = given;
      const inputs = {
        installed: across(installed),
        clearance: across(clearance),
        least: across(least),
        most: across(most),
        spares: across(spares),
        step: step / 100,
      };
      const { valves, buy, leftOver } = planShims({ name: "", sheets: [] }, inputs);
      const best = bestPlan(given);
      expect(valves.map(({ shim, clearance: gives }) => [shim ?? "none", gives ?? ""])).toEqual(
        best.map(([, shim, , gives]) => [typeof shim === "number" ? shim : "none", gives]),
      );
      expect(buy.reduce((sum, { count }) => sum + count, 0)).toBe(best.filter(([, , from]) => from === "buy").length);
      // Every shim at hand is in a valve, left over, or still in the valve that has no plan.
      const fitted = valves.filter(({ source }) => source !== "buy" && source !== null).length;
      const unset = valves.filter(({ name, shim }) => shim === null && !valves.some(({ from }) => from === name)).length;
      expect(fitted + leftOver.length + unset).toBe(installed.length + spares.length);
    }),
    { numRuns: 200 },
  );
});

describe("written to the sheet", () => {
  test("is one formula that comes to the plan, with room for spares that go bad", () => {
    const made = planShims(calculated(sheets), INPUTS, place);
    expect(made.edits.map(({ cells }) => cells[0]![0])).toEqual([
      "=HATCH.SHIMPLAN(Valves!B2:B4, Valves!C2:C4, Valves!D2:D4, Valves!E2:E4, Valves!F2:F3)",
      "name",
    ]);
    expect(made.area).toEqual(area("Plan", "A3:E8"));
    expect(shown(calculated(filled(sheets, made.edits)), area("Plan", "A4:D6"))).toEqual([
      [1, 2.4, "valve 2", 0.2],
      [2, 2.5, "valve 1", 0.2],
      [3, 2.55, "spare 2", 0.2],
    ]);
  });

  test("as values it keeps the sheet's own names and the day", () => {
    const made = planShims(calculated(sheets), INPUTS, { ...place, as: "values" });
    expect(made.edits[0]!.cells).toEqual([
      ["valve", "shim", "from", "clearance"],
      ["inlet 1", 2.4, "exhaust 1", 0.2],
      ["exhaust 1", 2.5, "inlet 1", 0.2],
      ["inlet 2", 2.55, "spare 2", 0.2],
      ["planned 2026-05-04; values, which do not follow the readings", null, null, null],
    ]);
  });

  test("a name that looks like a formula is written as text", () => {
    const made = planShims(calculated(sheets), { ...INPUTS, names: ["=1+1"] }, { ...place, as: "values" });
    expect(made.edits[0]!.cells[1]![0]).toBe(" =1+1");
  });

  // Inlets 0.15 to 0.25, exhausts 0.25 to 0.35 (invented). By hand: exhaust 1 has 0.3 and keeps its 2.4; inlet 2 takes the spare 2.55,
  // 2.45 + 0.3 − 2.55 = 0.2, which leaves its 2.45 for inlet 1: 2.5 + 0.1 − 2.45 = 0.15, so that none is bought.
  test("limits of inlet and exhaust stand beside the plan as cells, which it follows", () => {
    const given: Sheets = {
      ...sheets,
      Limits: [
        ["inlet", 0.15, 0.25],
        ["exhaust", 0.25, 0.35],
      ],
    };
    const side = (row: number) => ({ least: area("Limits", `B${row}`), most: area("Limits", `C${row}`) });
    const inputs = { ...INPUTS, least: null, most: null, limits: [side(1), side(2), side(1)] };
    const made = planShims(calculated(given), inputs, place);
    const expected = [2.45, 2.4, 2.55];
    expect(made.valves.map(({ shim }) => shim)).toEqual(expected);
    const after = filled(given, made.edits);
    expect(shown(calculated(after), area("Plan", "B4:B6")).flat()).toEqual(expected);
    expect(shown(calculated(after), area("Plan", "E3:H6"))).toEqual([
      ["name", null, "least", "most"],
      ["inlet 1", null, 0.15, 0.25],
      ["exhaust 1", null, 0.25, 0.35],
      ["inlet 2", null, 0.15, 0.25],
    ]);
    after.Limits![1] = ["exhaust", 0.15, 0.25];
    expect(shown(calculated(after), area("Plan", "B4:B6")).flat()).toEqual([2.4, 2.5, 2.55]);
  });

  test("a limit that is not typed keeps the shim, also where its cell is handed over as 0", () => {
    const given: Sheets = {
      ...sheets,
      Limits: [
        ["inlet", 0.15, 0.25],
        ["exhaust", null, null],
      ],
    };
    const side = (row: number) => ({ least: area("Limits", `B${row}`), most: area("Limits", `C${row}`) });
    const inputs = { ...INPUTS, least: null, most: null, limits: [side(1), side(2), side(1)] };
    const made = planShims(calculated(given), inputs, place);
    expect(made.valves[1]!.says).toBe("the clearance or a limit is still blank: it keeps its shim");
    expect(shown(calculated(filled(given, made.edits)), area("Plan", "B4:B6")).flat()).toEqual([made.valves[0]!.shim, null, made.valves[2]!.shim]);
  });
});
