import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { atPane } from "../helpers/pane-browser.ts";
import { toView } from "../helpers/to-view.ts";

import.meta.jest.setTimeout(60_000);

const pane = atPane();

async function draw(scene: "judged" | "blank"): Promise<Page> {
  const page = await pane.open(scene);
  await toView(page, "Draw");
  await page.getByRole("button", { name: "Draw" }).press("Enter");
  return page;
}

/** What the link saves: the name of the file and the text in it. */
async function saved(page: Page, link: string): Promise<{ name: string; text: string }> {
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("link", { name: link }).click()]);
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), "utf8") };
}

test("what the functions read is drawn, chosen from a list, with every number also in words", async () => {
  const page = await draw("judged");
  const list = page.getByRole("combobox", { name: "Drawing" });
  await list.waitFor();
  const titles = await list.locator("option").allTextContents();
  expect(titles).toHaveLength(2);
  expect(titles[0]).toMatch(/^Bore profile: .*Cylinders!/);
  const picture = page.locator("svg.drawing");
  expect(await picture.getAttribute("role")).toBe("img");
  await page.getByText("In words").click();
  for (const reading of ["73.06", "73.025"]) await page.locator("details[open] p", { hasText: reading }).waitFor();
  await list.selectOption(titles[1]!);
  await picture.locator("title", { hasText: "Compression test" }).waitFor({ state: "attached" });
  expect((await picture.boundingBox())!.width).toBeLessThanOrEqual(296);
});

test("a picture is saved as a file of its own, which any program that reads SVG takes", async () => {
  const page = await draw("judged");
  const { name, text } = await saved(page, "Save Bore profile");
  expect(name).toMatch(/^Bore profile .*\.svg$/);
  expect(text).toMatch(/^<svg xmlns="http:\/\/www.w3.org\/2000\/svg"/);
});

test("a drawing is put in the sheet where a cell is selected, with the same words, and can be taken back", async () => {
  const page = await draw("judged");
  await page.evaluate(() => window.stage.host.select({ sheet: "Cylinders", row: 8, column: 3 }));
  await page.getByRole("button", { name: "Put in the sheet" }).click();
  await page.getByRole("status").filter({ hasText: "Put in at Cylinders!D9." }).waitFor();
  const words = await page.locator("svg.drawing desc").textContent();
  const [put] = await page.evaluate(() => window.stage.host.pictures());
  expect(put!.corner).toMatchObject({ sheet: "Cylinders", row: 8, column: 3 });
  expect([put!.picture.description, put!.picture.width <= 480]).toEqual([words, true]);
  // A PNG begins with its kind and its size in dots (W3C PNG, 5.2 and 11.2.1).
  const file = Buffer.from(put!.picture.png, "base64");
  expect(file.subarray(1, 4).toString()).toBe("PNG");
  expect([file.readUInt32BE(16), file.readUInt32BE(20)]).toEqual([put!.picture.width * 3, put!.picture.height * 3]);
  await page.evaluate(() => window.stage.host.undo());
  expect(await page.evaluate(() => window.stage.host.pictures())).toEqual([]);
});

test("on a protected sheet no picture is put, and the sheet is named", async () => {
  const page = await draw("judged");
  await page.evaluate(async () => {
    await window.stage.host.select({ sheet: "Cylinders", row: 0, column: 0 });
    window.stage.host.protect("Cylinders");
  });
  await page.getByRole("button", { name: "Put in the sheet" }).click();
  await page.getByRole("alert").filter({ hasText: 'The sheet "Cylinders" is protected' }).waitFor();
});

test("where there is nothing to draw, it says what would be drawn", async () => {
  const page = await draw("blank");
  await page.getByText("Nothing in this workbook can be drawn yet.").waitFor();
});

test("the report is saved as one page: without scripts, with what was typed escaped, and with the same hash for the same sheet", async () => {
  const page = await pane.open("judged");
  await toView(page, "Report");
  const make = async () => {
    await page.getByRole("button", { name: "Make the report" }).click();
    await page.getByRole("status").filter({ hasText: "The report is made; save it below." }).waitFor();
    return saved(page, "Save Report");
  };
  const { name, text } = await make();
  expect(name).toMatch(/^Report engine A \d{4}-\d\d-\d\d\.html$/);
  expect(text).toContain("&lt;engine A&gt;.xlsx");
  expect(text).not.toContain("<script");
  expect(text).not.toContain("0.025 is over the upper limit 0.02 by 0.005");
  const hash = /class="hash">([0-9a-f]{64})</;
  const [, first] = hash.exec(text)!;
  expect(hash.exec((await make()).text)![1]).toBe(first);
  await page.evaluate(() => window.stage.host.type({ sheet: "Cylinders", row: 2, column: 1 }, 73.051));
  await page.getByText("The sheet changed since this report was made.").waitFor();
  expect(hash.exec((await make()).text)![1]).not.toBe(first);
});

test("findings and method come with it when they are asked for, and the pane remembers that", async () => {
  const page = await pane.open("judged");
  await toView(page, "Report");
  await page.getByRole("checkbox", { name: "Add the findings" }).check();
  await page.getByRole("button", { name: "Make the report" }).click();
  const { text } = await saved(page, "Save Report");
  for (const part of ["Behind these figures", "0.025 is over the upper limit 0.02 by 0.005", "How verdicts are reached"]) expect(text).toContain(part);
  await toView(page, "Check");
  await toView(page, "Report");
  expect(await page.getByRole("checkbox", { name: "Add the findings" }).isChecked()).toBe(true);
});

test("the page is shown as it will be saved, with its own looks, and nothing of it is wider than the pane", async () => {
  const page = await pane.open("judged");
  await toView(page, "Report");
  await page.getByRole("button", { name: "Make the report" }).click();
  const preview = page.getByRole("region", { name: "Preview" });
  await preview.getByText("Engine build sheet").waitFor();
  expect(await preview.getByText("Judged: 2 within, 1 over, 1 under.").evaluate((line) => getComputedStyle(line).borderTopStyle)).toBe("solid");
  expect(
    await preview
      .locator("table")
      .first()
      .evaluate((table) => getComputedStyle(table).borderCollapse),
  ).toBe("collapse");
  expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBeLessThanOrEqual(0);
});

test("the saved page keeps its looks when it is opened", async () => {
  const page = await pane.open("judged");
  await toView(page, "Report");
  await page.getByRole("button", { name: "Make the report" }).click();
  const { text } = await saved(page, "Save Report");
  const opened = await pane.browser.newPage();
  await opened.setContent(text);
  expect(await opened.evaluate(() => getComputedStyle(document.querySelector("table")!).borderCollapse)).toBe("collapse");
  await opened.close();
});

test("drawing and reporting break no rule of the page", () => {
  expect(pane.complaints).toEqual([]);
});
