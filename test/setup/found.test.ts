import { specByName } from "../../src/functions/index.ts";
import { FIELDS, FILLED_BY, firstForm, isAsked, PLAN_NAMES } from "../../src/pane/plan/fields.ts";
import { formsFromSheets } from "../../src/pane/plan/from-sheets.ts";
import { planFor } from "../../src/pane/plan/plans.ts";
import { buildSheetIn, planSourcesIn } from "../../src/setup/found.ts";
import { described, Made } from "./made.ts";

test("what the sheets hold for a plan goes by the names of the function's params, and every plan finds something", () => {
  const { plans } = described({ cylinders: 2 });
  for (const { of, inputs, middles } of plans!) {
    const known = Object.keys(specByName.get(of)!.params);
    expect(known).toEqual(expect.arrayContaining([...Object.keys(inputs), ...Object.keys(middles ?? {})].filter((key) => key !== "masses")));
  }
  for (const name of PLAN_NAMES) expect(plans!.some(({ of }) => of === FILLED_BY[name].spec.name)).toBe(true);
});

test.each(PLAN_NAMES)("the form of %s has a field for all that is filled in, and all of it can be read", async (name) => {
  const made = await Made.of({ cylinders: 3, heights: 4, axes: 3, valves: 5, unit: "in" });
  await made.item("Standard bore", 2.875);
  const snapshot = await made.host.read();
  const forms = formsFromSheets(name, snapshot);
  expect(forms.length).toBeGreaterThan(0);
  for (const { form } of forms) {
    const whole = { ...firstForm(name), ...form };
    const asked = FIELDS[name].filter((field) => isAsked(field, whole)).map(({ key }) => key);
    expect(asked).toEqual(expect.arrayContaining(Object.keys(form)));
    const planned = planFor(name, snapshot, whole);
    // What nobody has typed yet, such as the oversizes, is all that is wanted.
    expect(new Set("troubles" in planned ? Object.values(planned.troubles) : [])).toEqual(
      new Set("troubles" in planned ? ["this is needed for the plan"] : []),
    );
  }
});

test("ranges hold what they are said to: bores from the first reading to the last, one bore a row", async () => {
  const snapshot = await (await Made.of({ cylinders: 3, heights: 4, axes: 3 })).host.read();
  expect(planSourcesIn(snapshot, "REBOREPLAN")).toMatchObject([{ about: "bores", inputs: { bores: "Bores!B4:M6", axes: "3" } }]);
  expect(planSourcesIn(snapshot, "SHIMPLAN")[0]!.inputs).toMatchObject({ installed: "Valves!D5:D10", clearance: "Valves!C5:C10" });
});

test("a table in which a row was put in is no longer taken, for its cells are others then", async () => {
  const snapshot = await (await Made.of({ cylinders: 2 })).host.read();
  const engine = snapshot.sheets.find(({ name }) => name === "Engine")!;
  const values = engine.values.toSpliced(6 - engine.row, 0, ["Harbour", "A"]);
  const moved = { ...snapshot, sheets: snapshot.sheets.map((sheet) => (sheet === engine ? { ...sheet, values } : sheet)) };
  expect(buildSheetIn(moved)).not.toBeNull();
  expect(planSourcesIn(moved, "REBOREPLAN")).toEqual([]);
  expect(planSourcesIn(moved, "RINGGAPFILE")).toHaveLength(1);
});

test("a workbook of another kind holds nothing", () => {
  expect(planSourcesIn({ name: "own.xlsx", sheets: [] }, "REBOREPLAN")).toEqual([]);
});
