import { toView } from "../helpers/to-view.ts";
import { atStand } from "./stand.ts";

const at = atStand("one page");

const tab = (name: string) => toView(at.page.pane, name);
const status = (text: string) => at.page.pane.getByRole("status").filter({ hasText: text }).waitFor();
const undo = () => at.page.page.evaluate(() => void window.crosshatchBench!.model.dispatch("REQUEST_UNDO"));

test("a plan is made from what is selected in the grid, written as formulas that calculate, and taken back by one step", async () => {
  await tab("Plan");
  await at.page.pane.getByRole("combobox", { name: "Plan", exact: true }).selectOption("Piston matching");
  await at.page.pane.getByRole("combobox", { name: "How the bores are laid out" }).selectOption("one block a bore");
  await at.page.click("C4");
  await at.page.page.keyboard.down("Shift");
  await at.page.click("D6");
  await at.page.page.keyboard.up("Shift");
  await at.page.pane.getByRole("button", { name: "Take selection for Bores" }).click();
  const bores = at.page.pane.getByLabel("Bores", { exact: true });
  await at.page.pane.locator("textarea:not(:placeholder-shown)").waitFor();
  expect(await bores.inputValue()).toBe("Bores!C4:D6");
  await bores.fill("Bores!C4:D6\nBores!C7:D9\nBores!C10:D12");
  await at.page.pane.getByLabel("Piston skirts", { exact: true }).fill("72.985 72.98 73");
  await at.page.pane.getByLabel("Clearance wanted", { exact: true }).fill("0.03");
  await at.page.pane.getByRole("button", { name: "Work it out" }).click();
  await at.page.pane.getByRole("table", { name: "Which piston each bore gets" }).waitFor();
  await at.page.pane.getByLabel("First cell", { exact: true }).fill("Limits!A40");
  await at.page.pane.getByRole("combobox", { name: "Written as" }).selectOption("values with the day");
  await at.page.pane.getByRole("button", { name: "Write to sheet" }).click();
  await status("Written to Limits!A40");
  expect(await at.page.value("Limits!A41")).toBe("bore 1");
  await undo();
  expect(await at.page.value("Limits!A41")).toBeNull();
}, 60_000);

// Invented readings of the sample: 0.3 is open, the least gap is 0.25; 0.22 lacks 0.03.
test("rings are planned from cells, and their formulas stand and calculate in the sheet", async () => {
  await at.page.page.evaluate(() => window.crosshatchBench!.host.write([{ sheet: "Limits", row: 49, column: 0, cells: [[0.3], [0.22]] }]));
  await at.page.pane.getByRole("combobox", { name: "Plan", exact: true }).selectOption("Ring filing");
  await at.page.pane.getByRole("combobox", { name: "Where the gap wanted comes from" }).selectOption("a number or cells");
  await at.page.pane.getByLabel("End gaps as measured", { exact: true }).fill("Limits!A50:A51");
  await at.page.pane.getByLabel("Gap wanted", { exact: true }).fill("0.25");
  await at.page.pane.getByRole("button", { name: "Work it out" }).click();
  await at.page.pane.getByLabel("First cell", { exact: true }).fill("Limits!C50");
  await at.page.pane.getByRole("button", { name: "Write to sheet" }).click();
  await status("Written to Limits!C50:E52");
  expect([await at.page.value("Limits!E51"), await at.page.value("Limits!E52")]).toEqual([0, 0.03]);
  expect(await at.page.formula("Limits!E52")).toBe("=HATCH.RINGGAPFILE(A51,D52)");
}, 60_000);

test("where a sheet of that name is there already nothing is set up; in an empty workbook a sample comes in and is found fault with", async () => {
  await tab("Set up");
  await at.page.pane.getByRole("button", { name: "Add these sheets" }).click();
  await at.page.pane.getByRole("alert").filter({ hasText: 'There is a sheet "Limits" in this workbook already' }).waitFor();
  // Emptied as a person does who keeps the file.
  await at.page.page.evaluate(() => {
    const { model } = window.crosshatchBench!;
    const [first, ...others] = model.getters.getSheetIds();
    for (const sheetId of others) model.dispatch("DELETE_SHEET", { sheetId, sheetName: model.getters.getSheetName(sheetId) });
    const target = [{ left: 0, top: 0, right: model.getters.getNumberCols(first!) - 1, bottom: model.getters.getNumberRows(first!) - 1 }];
    model.dispatch("DELETE_CONTENT", { sheetId: first!, target });
    model.dispatch("RENAME_SHEET", { sheetId: first!, oldName: model.getters.getSheetName(first!), newName: "Sheet1" });
  });
  await tab("Check");
  await at.page.pane.getByRole("button", { name: "Insert a sample build sheet" }).click();
  await status("A sample was put in, with invented readings. 22 new sheets");
  await at.page.pane.getByRole("button", { name: "Check", exact: true }).click();
  await at.page.pane.getByText("Cylinder 3, Second, End gap").waitFor();
  expect(await at.page.selected()).toBe("Engine!A1");
  expect((await at.page.saved()).bytes.length).toBeGreaterThan(1000);
}, 60_000);

test("the sample is drawn and reported, with nothing asked for elsewhere and no rule of either page broken", async () => {
  await tab("Draw");
  await at.page.pane.getByRole("button", { name: "Draw" }).click();
  await at.page.pane.locator("svg.drawing").waitFor();
  await tab("Report");
  await at.page.pane.getByRole("button", { name: "Make the report" }).click();
  const [download] = await Promise.all([at.page.page.waitForEvent("download"), at.page.pane.getByRole("link", { name: "Save Report" }).click()]);
  expect(download.suggestedFilename()).toMatch(/^Report build-sheet \d{4}-\d\d-\d\d\.html$/);
  expect(at.page.trouble).toEqual([]);
}, 60_000);
