import { memoryHost } from "../../../src/hosts/memory.ts";
import { measuringForm } from "../../../src/pane/measure/form.ts";
import { groupsIn, heldIn, selectedGroup } from "../../../src/pane/measure/places.ts";
import { described } from "../../setup/made.ts";

async function sheets(choices: object) {
  const host = memoryHost([]);
  await host.addSheets(described(choices));
  return { host, snapshot: await host.read() };
}

const CHOICES = { cylinders: 3, heights: 3, axes: 2, valves: 2 };

test("the places of a sheet of Set up come in the order of measuring: a bore from its top to its bottom, then the next", async () => {
  const { snapshot } = await sheets(CHOICES);
  const [bores, skirt] = groupsIn(snapshot);
  expect(bores).toMatchObject({ title: "Bores", isSecond: false });
  expect(bores!.places.map(({ name }) => name).slice(0, 7)).toEqual([
    ...["Cylinder 1, Top thrust", "Cylinder 1, Top pin", "Cylinder 1, Middle thrust", "Cylinder 1, Middle pin", "Cylinder 1, Bottom thrust"],
    ...["Cylinder 1, Bottom pin", "Cylinder 2, Top thrust"],
  ]);
  expect(bores!.places).toHaveLength(18);
  expect(bores!.places[0]).toMatchObject({ cell: { sheet: "Bores", row: 3, column: 1 }, unit: "mm", least: 0, allowsZero: false });
  expect(skirt!.title).toBe("Pistons: Skirt");
  expect(skirt!.places.map(({ name }) => name)).toEqual(["Cylinder 1, Skirt", "Cylinder 2, Skirt", "Cylinder 3, Skirt"]);
});

test("no cell with a formula, a day or a remark is a place, on any sheet", async () => {
  const { snapshot } = await sheets({ ...CHOICES, secondReadings: true });
  const groups = groupsIn(snapshot);
  expect(groups.map(({ title }) => title)).toEqual(expect.arrayContaining(["Rings: End gap", "Tests: Dry", "Second readings: bores", "Volumes: Deck"]));
  for (const { title } of groups) expect(title).not.toMatch(/verdict|Remarks|Day|on$|Limits|Torques|Engine/);
  expect(groups.find(({ title }) => title === "Second readings: bores")).toMatchObject({ isSecond: true });
  // A deck may stand proud of its face, a dead cylinder shows 0.
  expect(groups.find(({ title }) => title === "Volumes: Deck")!.places[0]!.least).toBe(Number.NEGATIVE_INFINITY);
  expect(groups.find(({ title }) => title === "Tests: Dry")!.places[0]!.allowsZero).toBe(true);
});

test("sheets that are left out, or whose headings were changed, have no places", async () => {
  const { host } = await sheets({ ...CHOICES, without: "rings" });
  await host.write([{ sheet: "Pistons", row: 2, column: 1, cells: [["Skirt diameter"]] }]);
  const titles = groupsIn(await host.read()).map(({ title }) => title);
  expect(titles.filter((title) => /^(?:Rings|Pistons)/.test(title))).toEqual([]);
  expect(titles).toContain("Bores");
});

test("what the places hold is read from the sheet", async () => {
  const { host } = await sheets(CHOICES);
  await host.write([{ sheet: "Bores", row: 3, column: 2, cells: [[73.02]] }]);
  const snapshot = await host.read();
  expect(heldIn(snapshot, groupsIn(snapshot)[0]!.places).slice(0, 3)).toEqual([null, 73.02, null]);
});

test("cells that are selected on a shop's own sheet are named by the words beside and above them", async () => {
  const host = memoryHost([
    {
      name: "Own",
      cells: [
        ["", "Top", "Bottom"],
        ["No 1", null, 2],
        ["No 2", "worn", "=1+1"],
      ],
    },
  ]);
  const snapshot = await host.read();
  const group = selectedGroup(snapshot, { sheet: "Own", row: 1, column: 1, rows: 2, columns: 2 });
  expect("places" in group && group.places.map(({ name }) => name)).toEqual(["No 1, Top", "No 1, Bottom"]);
  expect(selectedGroup(snapshot, { sheet: "Own", row: 0, column: 1, rows: 1, columns: 2 })).toEqual({
    sentence: "The cells that are selected hold formulas or text alone: select those that readings go into.",
  });
});

test("a form to write on has every place once, and texts of the workbook as text", async () => {
  const { snapshot } = await sheets(CHOICES);
  const page = measuringForm("<b>yard</b>.xlsx", groupsIn(snapshot).slice(0, 2), "mm");
  expect(page).toContain("&lt;b&gt;yard&lt;/b&gt;.xlsx, lengths in mm");
  expect(page.match(/<li>/g)).toHaveLength(21);
  expect(page).toContain("<span>Cylinder 3, Bottom pin</span>");
});
