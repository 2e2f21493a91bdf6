import { shopBook } from "./shop-book.ts";
import { atStand } from "./stand.ts";

import.meta.jest.setTimeout(180_000);

const at = atStand("a page for each test");

const check = async (): Promise<void> => {
  await at.page.pane.getByRole("button", { name: "Check", exact: true }).click();
  await at.page.pane.locator(".counts").waitFor();
};
const heading = (name: string) => at.page.pane.getByRole("heading", { name, exact: true });
const words = () => at.page.pane.locator(".word").allTextContents();

test("F8 goes from finding to finding in the grid, and what is typed there is checked again by itself", async () => {
  await check();
  await heading("5 findings").waitFor();
  const seen: string[] = [];
  for (let i = 0; i < 5; i++) {
    await at.page.pane.getByRole("combobox", { name: "Order" }).press("F8");
    seen.push(await at.page.selected());
  }
  expect(seen).toEqual(["Bores!C17", "Bores!E17", "Bores!I17", "Bore book!I5", "Rings!C7"]);
  // The reading that was missing; then a number over a formula of the same column.
  await at.page.type("C7", "0.3");
  await at.page.checkedAgain(heading("4 findings"));
  await at.page.type("E6", "0.1");
  await at.page.checkedAgain(heading("5 findings"));
  expect((await words()).at(-1)).toBe("overwritten formula");
  await at.page.pane.locator(".finding button").last().click();
  expect(await at.page.selected()).toBe("Rings!E6");
  await at.page.page.evaluate(() => void window.crosshatchBench!.model.dispatch("REQUEST_UNDO"));
  await at.page.checkedAgain(heading("4 findings"));
  expect(at.page.trouble).toEqual([]);
});

test("a limit that a formula calls by name is judged and shown like one in a cell", async () => {
  await at.page.give("shop.xlsx", await shopBook());
  await at.page.page.waitForFunction(() => document.querySelector("#book")?.textContent === "shop.xlsx");
  await check();
  await at.page.pane.getByText("1 of 1 row checked", { exact: true }).waitFor();
  expect(await words()).not.toContain("over");
  await at.page.type("G1", "0.01");
  await at.page.checkedAgain(at.page.pane.locator(".word", { hasText: "over" }).first());
  const over = at.page.pane.locator(".finding", { hasText: "at most 0.01" });
  // 73.04 − 73.02.
  expect(await over.locator(".sentence").textContent()).toBe("0.02 is over the upper limit 0.01 by 0.01");
});
