import { atPane, check } from "../../helpers/pane-browser.ts";

import.meta.jest.setTimeout(60_000);

const pane = atPane();

test("a sheet of which most is judged by nothing is named, its layout is a click away, and what is not placed is listed there", async () => {
  const page = await pane.open("loose");
  await check(page);
  await page.getByText("Most numbers of the sheet Pistons are judged by nothing, and look like readings laid out in the shop's own way").waitFor();
  await page.getByRole("button", { name: "Propose a layout" }).click();
  await page.getByRole("checkbox", { name: "Use Pistons!B2:C4" }).waitFor();
  expect(await page.getByText("Not placed").count()).toBe(0);
  await page.getByRole("checkbox", { name: "Use Pistons!E6:E7" }).uncheck();
  await page.locator("summary", { hasText: "Not placed: 1 group of numbers" }).click();
  await page.getByText("Pistons!E6:E7 (2 numbers)").waitFor();
  await page.getByRole("button", { name: "Keep this layout" }).click();
  await page.getByText("Kept in the workbook").waitFor();
  await page.getByRole("tab", { name: "Check" }).click();
  await page.getByText("Most numbers of the sheet Pistons").waitFor({ state: "detached" });
});

test("where every sheet is judged nothing is offered", async () => {
  const page = await pane.open("sheet");
  await check(page);
  await page.waitForTimeout(1000);
  expect(await page.getByRole("button", { name: "Propose a layout" }).count()).toBe(0);
});
