import { specs } from "../../src/functions/index.ts";
import { atPane } from "../helpers/pane-browser.ts";
import { toView } from "../helpers/to-view.ts";

import.meta.jest.setTimeout(60_000);

const pane = atPane();

async function openFunctions() {
  const page = await pane.open("findings", { permissions: ["clipboard-read", "clipboard-write"] });
  await toView(page, "Functions");
  await page.locator("details").first().waitFor();
  return page;
}

test("every function is listed under its group", async () => {
  const page = await openFunctions();
  expect(await page.locator(".function-name").allTextContents()).toEqual(specs.map(({ name }) => name));
  await page.getByRole("heading", { name: "Cylinder and piston" }).waitFor();
});

test("the search narrows the list, says by how much, and says when nothing fits", async () => {
  const page = await openFunctions();
  await page.getByRole("searchbox", { name: "Search functions" }).fill("skirt");
  await page.getByRole("status").getByText(`of ${specs.length} functions`).waitFor();
  expect(await page.locator(".function-name").allTextContents()).toContain("PISTONCLEARANCE");
  expect(await page.locator(".function-name").allTextContents()).not.toContain("TAPER");
  await page.getByRole("searchbox").fill("carburettor");
  await page.getByText("No function has all of these words.").waitFor();
});

test("an opened function shows inputs with defaults, definition, examples and source", async () => {
  const page = await openFunctions();
  await page.getByRole("searchbox").fill("PISTONCLEARANCE");
  await page.locator("summary", { hasText: /^PISTONCLEARANCE/ }).click();
  const manual = page.locator(".manual");
  const spec = specs.find(({ name }) => name === "PISTONCLEARANCE")!;
  await manual.getByText("=HATCH.PISTONCLEARANCE(readings, skirt, [basis], [axes])", { exact: true }).waitFor();
  const text = await manual.textContent();
  for (const part of [
    "smallest if left out",
    "needed",
    "may be left out",
    spec.definition,
    spec.source,
    spec.examples[0]!.formula,
    "gives 0.04",
    ...spec.notes!,
  ]) {
    expect(text).toContain(part);
  }
  expect(text).toContain("Must be one of smallest, mean, largest");
});

test("an example is copied as it would be typed", async () => {
  const page = await openFunctions();
  await page.locator("summary", { hasText: /^TAPER/ }).click();
  const { formula } = specs.find(({ name }) => name === "TAPER")!.examples[0]!;
  await page.getByRole("button", { name: `Copy ${formula}`, exact: true }).click();
  await page.getByRole("button", { name: `Copied ${formula}`, exact: true }).waitFor();
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(formula);
});

test("where the clipboard is closed to frames, copying falls back to a selection", async () => {
  const page = await openFunctions();
  await page.evaluate(() => {
    Object.defineProperty(navigator.clipboard, "writeText", { value: () => Promise.reject(new Error("closed")) });
  });
  await page.locator("summary", { hasText: /^TAPER/ }).click();
  const { formula } = specs.find(({ name }) => name === "TAPER")!.examples[1]!;
  await page.getByRole("button", { name: `Copy ${formula}`, exact: true }).click();
  await page.getByRole("button", { name: `Copied ${formula}`, exact: true }).waitFor();
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(formula);
});

test("a list that cannot be loaded says so and can be tried again", async () => {
  const page = await pane.open("findings");
  await page.route(/functions-.*\.js/, (route) => route.abort(), { times: 1 });
  await toView(page, "Functions");
  await page.getByRole("alert").getByText("This part of the pane could not be loaded.").waitFor();
  await page.getByRole("button", { name: "Reload the pane" }).click();
  await toView(page, "Functions");
  await page.locator("details").first().waitFor();
});

test("tabs are chosen by arrow keys, and a view is found as it was left", async () => {
  const page = await openFunctions();
  await page.getByRole("searchbox").fill("gap");
  await page.getByRole("tab", { name: "Functions" }).focus();
  await page.keyboard.press("ArrowRight");
  await page.getByRole("heading", { name: "Cautions" }).waitFor();
  await page.getByRole("tab", { name: "Help" }).focus();
  await page.keyboard.press("Home");
  await page.getByRole("heading", { name: "Set up a build sheet" }).waitFor();
  for (let presses = 0; presses < 2; presses++) await page.keyboard.press("ArrowRight");
  await page.getByRole("button", { name: "Check", exact: true }).waitFor();
  await toView(page, "Functions");
  expect(await page.getByRole("searchbox").inputValue()).toBe("gap");
});
