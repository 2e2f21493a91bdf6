import { atStand } from "./stand.ts";

import.meta.jest.setTimeout(120_000);

// What one test types comes after what the others look at.
const at = atStand("one page");
beforeAll(() => at.page.pane.getByRole("tab").first().waitFor());
const press = (key: string) => at.page.page.keyboard.press(key);

/** Which part of the page takes the keys. */
const here = () =>
  at.page.page.evaluate(() => {
    const { activeElement } = document;
    return activeElement?.id === "pane" ? "pane" : activeElement?.closest("#grid") ? "sheet" : "bar";
  });

test("F6 leads round bar, sheet and pane and back to where one was in each, with Shift the other way", async () => {
  await at.page.click("B3");
  expect(await here()).toBe("sheet");
  const seen: string[] = [];
  for (let i = 0; i < 3; i++) {
    await press("F6");
    seen.push(await here());
  }
  expect(seen).toEqual(["pane", "bar", "sheet"]);
  expect(await at.page.selected()).toBe("Bores!B3");
  await press("Shift+F6");
  expect(await here()).toBe("bar");
  await press("Shift+F6");
  expect(await here()).toBe("pane");
  // In the pane it is the open tab.
  expect(await at.page.pane.locator(":focus").getAttribute("role")).toBe("tab");
  // A pane that is hidden is passed over.
  await press("F6");
  await at.page.page.getByRole("button", { name: "Hide pane" }).press("Enter");
  await press("F6");
  expect(await here()).toBe("sheet");
  await press("F6");
  expect(await here()).toBe("bar");
  await at.page.page.getByRole("button", { name: "Show pane" }).press("Enter");
});

test("Escape first ends what is being typed, and then leads out of the sheet", async () => {
  await at.page.click("C4");
  await at.page.page.keyboard.type("99");
  await press("Escape");
  expect(await here()).toBe("sheet");
  await press("Escape");
  expect(await here()).toBe("pane");
  await press("F6");
  await press("F6");
  expect(await here()).toBe("sheet");
  await press("ArrowRight");
  // The grid moves on when it has drawn.
  await at.page.page.waitForFunction(async () => (await window.crosshatchBench!.host.selection()).column === 3);
  expect(await at.page.selected()).toBe("Bores!D4");
});

test("a finding that is chosen takes the keys to its cell, and F8 there goes on to the next", async () => {
  await at.page.pane.getByRole("button", { name: "Check", exact: true }).click();
  await at.page.pane.locator(".counts").waitFor();
  await at.page.pane.locator(".finding button").last().press("Enter");
  expect(await at.page.selected()).toBe("Rings!C7");
  await at.page.page.waitForFunction(() => document.activeElement?.closest("#grid"));
  // The reading that was missing, typed at once.
  await at.page.page.keyboard.type("0.3");
  await press("Enter");
  await at.page.checkedAgain(at.page.pane.getByRole("heading", { name: "4 findings", exact: true }));
  await press("F8");
  await at.page.page.waitForFunction(() => document.activeElement?.closest("#grid"));
  const first = await at.page.selected();
  await press("F8");
  await at.page.page.waitForTimeout(200);
  expect(await at.page.selected()).not.toBe(first);
  expect(at.page.trouble).toEqual([]);
});
