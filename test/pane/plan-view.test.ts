import type { Page } from "playwright-core";
import { atPane } from "../helpers/pane-browser.ts";
import { fill, fillRebore, fillRings, openPlan, workOut } from "../helpers/plan-steps.ts";

import.meta.jest.setTimeout(60_000);

const pane = atPane();

async function plan(title: string): Promise<Page> {
  const page = await pane.open("engine");
  await openPlan(page, title);
  return page;
}

const rows = (page: Page, caption: string) =>
  page
    .getByRole("table", { name: caption })
    .locator("tbody tr")
    .evaluateAll((lines) => lines.map((line) => [...line.children].map((cell) => (cell.querySelector("summary") ?? cell).textContent)));

const heldIn = (page: Page, sheet: string) => page.evaluate(async (name) => (await window.stage.host.read()).sheets.find((one) => one.name === name)!, sheet);

const status = (page: Page, text: string) => page.getByRole("status").filter({ hasText: text }).waitFor();

// Common practice: bored on the worn hole, the smallest size that reaches the largest reading of every bore.
test("a rebore is planned from ranges, with the reason for every oversize", async () => {
  const page = await plan("Rebore");
  await fillRebore(page);
  await page.getByText("More", { exact: true }).click();
  await fill(page, { Names: "Bores!A2:A4" });
  await workOut(page);
  expect(await rows(page, "What each bore gets")).toEqual([
    ["No. 1", "73.09", "finish to 73.5, oversize 0.5: takes 0.41 to 0.49 off the diameter"],
    ["No. 2", "73.12", "finish to 73.5, oversize 0.5: takes 0.38 to 0.48 off the diameter"],
    ["No. 3", "73.28", "finish to 73.5, oversize 0.5: takes 0.22 to 0.45 off the diameter"],
  ]);
  expect(await rows(page, "Every oversize, and why")).toEqual([
    ["0.25", "73.25", "does not clean up No. 3 (0.03 short)"],
    ["0.5", "73.5", "cleans up every bore measured, chosen"],
  ]);
  await page.locator("summary", { hasText: "No. 3 (0.03 short)" }).click();
  await page.getByText("No. 3 does not clean up: 73.25 is 0.03 short of the 73.28 needed (largest reading 73.28)").waitFor();
});

// By hand: 50 − 2 × 0.15 = 49.7 is needed of No. 2, so 49.75 leaves it and 49.5 is the first below it.
test("a crankshaft's regrind is planned from ranges, with the reason for every undersize", async () => {
  const page = await plan("Crankshaft regrind");
  await fill(page, { "Journal readings": "Crankpins!B2:E4", "Standard journal": "50", "Undersizes available": "0.25 0.5" });
  await page.getByText("More", { exact: true }).click();
  await fill(page, { Names: "Crankpins!A2:A4" });
  await workOut(page);
  expect(await rows(page, "What each journal gets")).toEqual([
    ["No. 1", "49.9", "grind to 49.5, undersize 0.5: takes 0.45 to 0.48 off the diameter"],
    ["No. 2", "49.7", "grind to 49.5, undersize 0.5: takes 0.35 to 0.42 off the diameter"],
    ["No. 3", "49.92", "grind to 49.5, undersize 0.5: takes 0.46 to 0.47 off the diameter"],
  ]);
  expect(await rows(page, "Every undersize, and why")).toEqual([
    ["0.25", "49.75", "does not clean up No. 2 (0.05 short)"],
    ["0.5", "49.5", "cleans up every journal measured, chosen"],
  ]);
});

test("rods are matched end by end, and written as formulas that follow the masses", async () => {
  const page = await plan("Masses");
  await fill(page, { Masses: "Rods!B2:B4\nRods!C2:C4", "How much heavier a part may stay": "0.5" });
  await page.getByText("More", { exact: true }).click();
  await fill(page, { Names: "Rods!A2:A4" });
  await workOut(page);
  expect(await rows(page, "What to take off each part, Rods!B2:B4")).toEqual([
    ["No. 1", "631", "take 2 off, from 631 to 629"],
    ["No. 2", "628.5", "stays as it is"],
    ["No. 3", "630", "take 1 off, from 630 to 629"],
  ]);
  await page.getByText("Lightest, Rods!C2:C4: No. 3; the heaviest is 0.8 above it.").waitFor();
  await fill(page, { "First cell": "'Work to do'!A5" });
  await page.getByRole("button", { name: "Write to sheet" }).click();
  await status(page, "Written to 'Work to do'!A5:C12. One step back takes it out again.");
  const sheet = await heldIn(page, "Work to do");
  expect(sheet.formulas[9 - sheet.row]![2]).toBe("=HATCH.MASSMATCH(B10:B12, 0.5)");
});

test("what is selected in the sheet is taken over, block after block", async () => {
  const page = await plan("Rebore");
  await page.getByLabel("How the readings are laid out").selectOption("blocks");
  for (const row of [1, 2]) {
    await page.evaluate((at) => window.stage.host.choose({ sheet: "Bores", row: at, column: 1, rows: 1, columns: 6 }), row);
    await page.getByRole("button", { name: "Take selection for Bore readings" }).click();
    await page.waitForFunction((count) => document.querySelector("textarea")!.value.split("\n").length === count, row);
  }
  expect(await page.getByLabel("Bore readings", { exact: true }).inputValue()).toBe("Bores!B2:G2\nBores!B3:G3");
  expect(await page.getByLabel("Axes at each height").count()).toBe(0);
});

test("fields that cannot be read are named beside the field, and nothing is planned", async () => {
  const page = await plan("Rebore");
  await fill(page, { "Bore readings": "Barrels!B2:G4", "Standard bore": "73,00" });
  await workOut(page);
  const said = async (label: string) => {
    const field = page.getByLabel(label, { exact: true });
    expect(await field.getAttribute("aria-invalid")).toBe("true");
    return page.locator(`#${await field.getAttribute("aria-describedby")}`).textContent();
  };
  expect(await said("Bore readings")).toBe("there is no sheet Barrels in this workbook");
  expect(await said("Standard bore")).toBe("73,00 has a decimal comma, which is not read here: type 73.00");
  expect(await said("Oversizes available")).toBe("this is needed for the plan");
  expect(await page.locator("table.plan").count()).toBe(0);
  await status(page, "Not worked out: see what is said beside the fields.");
  expect(await page.evaluate(() => document.activeElement?.id)).toBe("plan-bores");
});

// Gap of 0.004 for each unit of the smallest reading of the bore: 73.01 × 0.004 = 0.29204.
test("rings are paired with their bores by row, and the plan is written as formulas in one step", async () => {
  const page = await plan("Ring filing");
  await fillRings(page);
  await workOut(page);
  const planned = await rows(page, "What to file off each ring");
  expect(planned[0]).toEqual(["No. 1, top", "0.22", "file 0.07204 off, from 0.22 to 0.29204"]);
  expect(planned[4]).toEqual(["No. 3, top", "–", "the gap is not measured yet"]);
  await page.evaluate(() => window.stage.host.choose({ sheet: "Work to do", row: 3, column: 0, rows: 2, columns: 2 }));
  await page.getByRole("button", { name: "Take selection for First cell" }).click();
  await page.getByRole("button", { name: "Write to sheet" }).click();
  await status(page, "Written to 'Work to do'!A4:C10. One step back takes it out again.");
  const sheet = await heldIn(page, "Work to do");
  expect(sheet.formulas[4 - sheet.row]![2]).toBe("=HATCH.RINGGAPFILE(Rings!B2, B5)");
  await page.evaluate(() => window.stage.host.undo());
  expect((await heldIn(page, "Work to do")).values.flat().filter(Boolean)).toEqual(["kept"]);
});

test("cells in the way are named and kept until somebody says that they may go", async () => {
  const page = await plan("Shims");
  await fill(page, {
    "Shims as fitted": "Valves!B2:B5",
    "Clearances as measured": "Valves!C2:C5",
    "Least clearance": "0.15",
    "Largest clearance": "0.25",
    "Spare shims": "2.35",
  });
  await workOut(page);
  await fill(page, { "First cell": "'Work to do'!A1" });
  await page.getByLabel("Written as").selectOption("values");
  await page.getByRole("button", { name: "Write to sheet" }).click();
  await page.getByText("1 cell holds something: 'Work to do'!B2.").waitFor();
  expect((await heldIn(page, "Work to do")).values.flat().filter(Boolean)).toEqual(["kept"]);
  await page.getByRole("button", { name: "Write over them" }).click();
  await status(page, "Written to 'Work to do'!A1:D6.");
  const { values } = await heldIn(page, "Work to do");
  expect(values[1]![1]).not.toBe("kept");
  expect(String(values[5]![0])).toMatch(/^planned \d{4}-\d\d-\d\d; values, which do not follow the readings$/);
});

test("a plan never stands on the cells that it is made from", async () => {
  const page = await plan("Piston matching");
  await fill(page, { Bores: "Bores!B2:B4", "Piston skirts": "Pistons!A2:A4", "Clearance wanted": "0.1" });
  await workOut(page);
  expect((await rows(page, "Which piston each bore gets"))[2]![2]).toBe("piston 3: clearance 0.07, 0.03 under the target");
  await fill(page, { "First cell": "Pistons!A3" });
  await page.getByRole("button", { name: "Write to sheet" }).click();
  await status(page, "Not written: the plan would stand on cells that it is made from: choose another place.");
});

test("a refusal of the host is shown as its sentence", async () => {
  const page = await plan("Ring filing");
  await fillRings(page);
  await workOut(page);
  await page.evaluate(() => window.stage.host.protect("Work to do"));
  await fill(page, { "First cell": "'Work to do'!E5" });
  await page.getByRole("button", { name: "Write to sheet" }).click();
  await page.getByRole("alert").filter({ hasText: 'The sheet "Work to do" is protected' }).waitFor();
});

test("a plan says when the sheet has changed since", async () => {
  const page = await plan("Ring filing");
  await fillRings(page);
  await workOut(page);
  await page.evaluate(() => window.stage.host.type({ sheet: "Rings", row: 3, column: 1 }, 0.29));
  await page.getByText("The sheet changed since this plan was worked out.").waitFor();
});

test("a plan is made by keyboard alone", async () => {
  const page = await pane.open("engine");
  await page.getByRole("tab", { name: "Check" }).focus();
  await page.keyboard.press("ArrowRight");
  await page.getByRole("combobox", { name: "Plan", exact: true }).waitFor();
  await page.keyboard.press("Tab");
  await page.keyboard.type("Pis");
  for (let presses = 0; presses < 4; presses++) await page.keyboard.press("Tab");
  await page.keyboard.type("Bores!B2:B4");
  for (let presses = 0; presses < 2; presses++) await page.keyboard.press("Tab");
  await page.keyboard.type("Pistons!A2:A4");
  for (let presses = 0; presses < 2; presses++) await page.keyboard.press("Tab");
  await page.keyboard.type("0.1");
  for (let presses = 0; presses < 2; presses++) await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await page.getByRole("table", { name: "Which piston each bore gets" }).waitFor();
});

/** A build sheet of two cylinders, set up in the pane, with invented readings and limits in it. */
async function builtPlan(title: string): Promise<Page> {
  const page = await pane.open("blank");
  await page.getByRole("tab", { name: "Set up" }).click();
  await page.getByRole("combobox", { name: "Cylinders" }).selectOption("2");
  await page.getByRole("button", { name: "Add these sheets" }).click();
  await page.getByText(/^\d+ new sheets/).waitFor();
  await page.evaluate(async () => {
    const { host } = window.stage;
    const { sheets } = await host.read();
    const rowOf = (name: string, text: string) => {
      const sheet = sheets.find((one) => one.name === name)!;
      return sheet.row + sheet.values.findIndex((line) => line[0] === text);
    };
    const limit = (name: string, lower: number, upper: number) => ({ sheet: "Limits", row: rowOf("Limits", name), column: 1, cells: [[lower, upper]] });
    const valves = [0.12, 0.3, 0.2, 0.2].map((clearance) => [clearance, 2.5]);
    await host.write([
      { sheet: "Engine", row: rowOf("Engine", "Standard bore"), column: 1, cells: [[73]] },
      { sheet: "Bores", row: 3, column: 1, cells: [Array(6).fill(73.09), Array(6).fill(73.28)] },
      { sheet: "Valves", row: 4, column: 2, cells: valves },
      limit("Valve clearance, inlet", 0.15, 0.25),
      limit("Valve clearance, exhaust", 0.25, 0.35),
      limit("Piston clearance", 0.03, 0.05),
    ]);
  });
  await openPlan(page, title);
  await page.getByRole("button", { name: "Fill from the build sheet" }).click();
  return page;
}

// By hand: inlet 1 2.5 + 0.12 − 0.2 = 2.42, step 0.05: 2.4 gives 0.22; exhaust 0.3 is inside; inlet 2 0.2 is inside; exhaust 2 2.5 + 0.2 − 0.3 = 2.4.
test("one click fills the shims from the sheets of Set up and works them out, by the limits of each valve and in the sheet's names", async () => {
  const page = await builtPlan("Shims");
  await page.getByRole("region", { name: "Plan: Shims" }).waitFor();
  expect(await rows(page, "What each valve gets")).toEqual([
    ["Cylinder 1, Inlet", "0.12", "buy 2.4 for it: 0.22 instead of 0.12"],
    ["Cylinder 1, Exhaust", "0.3", "keeps its 2.5: 0.3"],
    ["Cylinder 2, Inlet", "0.2", "keeps its 2.5: 0.2"],
    ["Cylinder 2, Exhaust", "0.2", "buy 2.4 for it: 0.3 instead of 0.2"],
  ]);
  expect(await page.getByLabel("Shims as fitted", { exact: true }).inputValue()).toBe("Valves!D5:D8");
});

test("one click fills a rebore as far as the sheets say it, names what is still to be typed and goes there", async () => {
  const page = await builtPlan("Rebore");
  await status(page, "Filled with the bores. Still to be typed: oversizes available.");
  expect(await page.evaluate(() => document.activeElement?.id)).toBe("plan-oversizes");
  await fill(page, { "Oversizes available": "0.25 0.5", "Stock to leave for honing": "0.05" });
  await workOut(page);
  expect(await rows(page, "What each bore gets")).toEqual([
    ["Cylinder 1", "73.14", "bore to 73.45, finish to 73.5, oversize 0.5: takes 0.41 off the diameter"],
    ["Cylinder 2", "73.33", "bore to 73.45, finish to 73.5, oversize 0.5: takes 0.22 off the diameter"],
  ]);
});

test("where the sheets hold two sets for a plan, the other one is a click as well", async () => {
  const page = await builtPlan("Crankshaft regrind");
  const journals = page.getByLabel("Journal readings", { exact: true });
  await status(page, "Filled with the main journals.");
  const mains = await journals.inputValue();
  await page.getByRole("button", { name: "With the crankpins instead" }).click();
  await status(page, "Filled with the crankpins.");
  expect(await journals.inputValue()).not.toBe(mains);
  await page.getByRole("button", { name: "With the main journals instead" }).waitFor();
});

test("the clearance wanted of pistons is the middle of its limits", async () => {
  const page = await builtPlan("Piston matching");
  await page.getByRole("region", { name: "Plan: Piston matching" }).waitFor();
  expect(await page.getByLabel("Clearance wanted", { exact: true }).inputValue()).toBe("0.04");
});

test("inlet and exhaust valves are told apart by the words beside them, each with limits of its own", async () => {
  const page = await plan("Shims");
  await page.getByLabel("Limits").selectOption("inlet and exhaust apart");
  await fill(page, { "Shims as fitted": "Valves!B2:B5", "Clearances as measured": "Valves!C2:C5" });
  await fill(page, {
    "Least clearance, inlet": "0.15",
    "Largest clearance, inlet": "0.25",
    "Least clearance, exhaust": "0.25",
    "Largest clearance, exhaust": "0.35",
  });
  await workOut(page);
  // By hand: 2.4 + 0.2 − 0.3 = 2.3 is bought for exhaust 1, whose 2.4 gives exhaust 2 its 2.45 + 0.21 − 2.4 = 0.26.
  const planned = await rows(page, "What each valve gets");
  expect(planned.map(([name]) => name)).toEqual(["inlet 1", "exhaust 1", "inlet 2", "exhaust 2"]);
  expect([planned[1]![2], planned[3]![2]]).toEqual(["buy 2.3 for it: 0.3 instead of 0.2", "take the 2.4 out of exhaust 1: 0.26 instead of 0.21"]);
});

test("without sheets of Set up the button says so", async () => {
  const page = await plan("Rebore");
  await page.getByRole("button", { name: "Fill from the build sheet" }).click();
  await status(page, "No sheet of Set up in this workbook holds what this plan is made from, as it was set up: say below where it stands.");
});
