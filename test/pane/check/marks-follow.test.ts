import { check, type PaneBrowser, paneBrowser } from "../../helpers/pane-browser.ts";

let pane: PaneBrowser;
beforeAll(async () => {
  pane = await paneBrowser();
});
afterAll(() => pane.close());

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
