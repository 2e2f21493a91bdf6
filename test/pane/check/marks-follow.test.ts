import { atPane, check } from "../../helpers/pane-browser.ts";

const pane = atPane();

test("marks follow a check that is asked for while they are on, also in a pane that was opened since, and no other", async () => {
  const page = await pane.open("findings");
  await page.evaluate(() => {
    const { host } = window.stage;
    const { mark } = host;
    host.mark = (marks) => {
      document.documentElement.dataset.marked = String(Number(document.documentElement.dataset.marked ?? 0) + 1);
      return mark(marks);
    };
  });
  const marked = () => page.evaluate(() => Number(document.documentElement.dataset.marked ?? 0));
  await check(page);
  await check(page);
  expect(await marked()).toBe(0);
  await page.getByRole("button", { name: "Mark cells" }).click();
  await page.getByText("cells marked.").waitFor();
  expect(await marked()).toBe(1);
  await page.getByRole("button", { name: "Check", exact: true }).click();
  await page.waitForFunction(() => document.documentElement.dataset.marked === "2");
  await page.evaluate(() => window.stage.again());
  await check(page);
  await page.waitForFunction(() => document.documentElement.dataset.marked === "3");
  await page.getByRole("button", { name: "Take marks off" }).click();
  await page.getByText("Marks taken off").waitFor();
  await page.getByRole("button", { name: "Check", exact: true }).click();
  await page.waitForTimeout(500);
  expect(await marked()).toBe(3);
});

test("marks that a check made by itself has left behind are told as older, until a check that is asked for moves them", async () => {
  const page = await pane.open("sheet");
  const type = (value: number) => page.evaluate((typed) => window.stage.host.type({ sheet: "Bores", row: 1, column: 1 }, typed), value);
  const old = page.getByText("The marks in the sheet are of an earlier check.");
  await check(page);
  await page.getByRole("button", { name: "Mark cells" }).click();
  await page.getByText("cell marked.").waitFor();
  await type(0.07);
  await page.getByRole("heading", { name: "2 findings" }).waitFor();
  await old.waitFor();
  // Back as it was: they are those of the check again.
  await type(0.02);
  await page.getByRole("heading", { name: "1 finding" }).waitFor();
  await old.waitFor({ state: "detached" });
  await type(0.07);
  await old.waitFor();
  await page.getByRole("button", { name: "Check", exact: true }).click();
  await old.waitFor({ state: "detached" });
  await page.getByRole("button", { name: "Take marks off" }).click();
  await page.getByText("Marks taken off 2 cells.").waitFor();
  await type(0.02);
  await page.getByRole("heading", { name: "1 finding" }).waitFor();
  expect(await old.count()).toBe(0);
});
