import { atPane } from "../helpers/pane-browser.ts";

import.meta.jest.setTimeout(120_000);

const pane = atPane();

test("the tabs are one stop, and the arrow keys go round them", async () => {
  const page = await pane.open("engine");
  await page.getByRole("tab", { name: "Check" }).focus();
  const shown: string[] = [];
  do {
    await page.keyboard.press("ArrowRight");
    shown.push((await page.getByRole("tablist", { name: "Crosshatch" }).getByRole("tab", { selected: true }).textContent())!);
  } while (shown.at(-1) !== "Check" && shown.length < 20);
  expect(shown).toEqual(["Plan", "Compare", "Report", "?", "Set up", "Measure", "Check"]);
});

test("the views behind a tab are the next stop, with arrow keys of their own", async () => {
  const page = await pane.open("engine");
  await page.getByRole("tab", { name: "Check" }).focus();
  for (let presses = 0; presses < 3; presses++) await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Tab");
  const within = page.getByRole("tablist", { name: "Report" }).getByRole("tab", { selected: true });
  expect(await within.textContent()).toBe("Page");
  await page.keyboard.press("ArrowRight");
  expect(await within.textContent()).toBe("Drawings");
  await page.keyboard.press("ArrowRight");
  expect(await within.textContent()).toBe("Page");
});

test("an example is found, unfolded and copied without a mouse", async () => {
  const page = await pane.open("engine", { permissions: ["clipboard-read", "clipboard-write"] });
  await page.getByRole("tab", { name: "Check" }).focus();
  await page.keyboard.press("End");
  await page.getByRole("searchbox").waitFor();
  for (let presses = 0; presses < 2; presses++) await page.keyboard.press("Tab");
  await page.keyboard.type("ringgapfile");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await page.locator(".manual").waitFor();
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await page.getByRole("status").filter({ hasText: "Copied." }).waitFor({ state: "attached" });
  expect(await page.evaluate(() => navigator.clipboard.readText())).toMatch(/^=HATCH\.RINGGAPFILE\(/);
});

test("a sample is put into an empty workbook without a mouse", async () => {
  const page = await pane.open("blank");
  await page.getByRole("tab", { name: "Check" }).focus();
  for (let presses = 0; presses < 5; presses++) await page.keyboard.press("Tab");
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Insert a sample build sheet");
  await page.keyboard.press("Enter");
  await page.getByRole("status").filter({ hasText: "A sample was put in, with invented readings." }).waitFor();
});
