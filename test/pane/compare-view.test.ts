import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";
import { atPane } from "../helpers/pane-browser.ts";
import { sparseFile } from "../helpers/sparse.ts";
import { workbookBytes } from "../xlsx/workbook-bytes.ts";
import { BUILD } from "./page/engine.ts";

import.meta.jest.setTimeout(60_000);

const pane = atPane();

async function compare(go: (page: Page) => Promise<void>, after?: string): Promise<Page> {
  const page = await pane.open("compared");
  await page.getByRole("tab", { name: "Compare" }).click();
  await page.getByLabel("Before", { exact: true }).waitFor();
  if (after !== undefined) await page.getByLabel("After", { exact: true }).selectOption(after);
  await go(page);
  await page.getByRole("button", { name: "Compare", exact: true }).click();
  return page;
}

const sheets = async (page: Page) => {
  await page.getByLabel("Before", { exact: true }).selectOption("the sheet Build");
  await page.getByLabel("After", { exact: true }).selectOption("the sheet Strip-down");
};

const shown = (page: Page) =>
  page
    .locator(".changes li")
    .evaluateAll((items) => items.map((item) => [...item.children].filter((part) => !part.matches(".line-bar")).map((part) => part.textContent)));

// JCGM 100: U of the change √(0.003² + 0.004²) = 0.005; what may hide 0.002 + 1.645 × 0.0025. Of the mean: 0.005² + 0.0025² with 1.56 degrees of freedom (Welch-Satterthwaite).
const DIFFERS = ["differs", "engine A, cylinder 1, bore, top thrust", "73.012 → 73.024 mm", "0.012 larger, which is worse: differs, beyond its gauge (0.005)"];
const OPEN = [
  "cannot tell",
  "engine A, cylinder 2, bore, top thrust",
  "73.010 → 73.012 mm",
  "0.002 larger, which is worse: cannot tell, up to 0.0061 may hide",
];
const MEAN = [
  ...["cannot tell", "engine A, bore, mean of 2 places", ""],
  "0.0070 larger on average over 2 places: cannot tell, up to 0.027 may hide (-0.0248 to 0.0388 by the scatter; the scatter is poorly known)",
];

test("two sheets are compared: the sentence first, then what differs and what nobody can tell, and every row is counted", async () => {
  const page = await compare(sheets);
  await page.getByRole("heading", { name: "1 of 2 lies beyond its own gauge; hardly one would by chance; 1 remains." }).waitFor();
  expect((await shown(page)).map(([head, ...rest]) => [head!.replace(/'?Strip-down'?!\w+$/, ""), ...rest.slice(0, 3)])).toEqual([DIFFERS, MEAN, OPEN]);
  expect(await page.locator("h3.group").allTextContents()).toEqual(["Differs (1)", "Cannot be told (2)"]);
  await page
    .getByText("2 of 4 places compared, 2 could not be; of 3 lines 1 differs, 2 cannot be told; nothing is called the same until what matters is typed")
    .waitFor();
  await page.locator(".counts", { hasText: "Build against Strip-down" }).waitFor();
  await page.locator("summary", { hasText: "Not compared (2)" }).click();
});

test("En, p and the like stand folded under details", async () => {
  const page = await compare(sheets);
  const details = page.locator(".changes li").first().locator("details");
  expect(await details.getAttribute("open")).toBeNull();
  await details.locator("summary").click();
  expect(await details.locator("p").textContent()).toBe(
    "U of the difference 0.005; En 2.40; p below 0.0001, adjusted below 0.0001; by the gauge; seen nine times in ten from 0.0088 on",
  );
});

test("each line is a bar against what matters, on one axis for its characteristic, with its numbers in words", async () => {
  const page = await compare(async (opened) => {
    await sheets(opened);
    await opened.getByText("Uncertainty, hours, two engines").click();
    await opened.getByLabel("Smallest difference that matters").fill("0.01");
  });
  await page.locator(".line-bar").first().waitFor();
  const drawn = await page
    .locator(".line-bar")
    .evaluateAll((bars) => bars.map((bar) => [...bar.querySelectorAll("title, desc")].map((part) => part.textContent)));
  expect(drawn).toHaveLength(3);
  // U of the change is 0.005: 1.645 and 1.960 times the half of it (JCGM 100, G.1.3).
  expect(drawn[0]).toEqual([
    "Change: engine A, cylinder 1, bore, top thrust",
    "+0.012 mm: differs. 90 % from +0.008 to +0.016, 95 % from +0.007 to +0.017; ±0.01 matters. The axis goes from −0.04 to +0.04.",
  ]);
  expect(new Set(drawn.map(([, words]) => /The axis.*/.exec(words!)![0])).size).toBe(1);
});

test("what matters makes it the same, by characteristic too", async () => {
  const page = await compare(async (opened) => {
    await sheets(opened);
    await opened.getByText("Uncertainty, hours, two engines").click();
    await opened.getByLabel("Smallest difference that matters").fill("0.001; bore = 0.0062");
  });
  await page.getByRole("heading", { name: "The same within what matters (1)" }).waitFor();
});

test("a change is gone to in the sheet", async () => {
  const page = await compare(sheets);
  await page.getByRole("button", { name: "'Strip-down'!E2" }).click();
  await page.waitForFunction(() => window.stage.host.active()?.row === 1);
  expect(await page.evaluate(() => window.stage.host.active())).toEqual({ sheet: "Strip-down", row: 1, column: 4 });
});

test("a workbook from a file is read in the pane and compared with a sheet of this one", async () => {
  const buffer = Buffer.from(workbookBytes({ sheets: [{ name: "Build", cells: BUILD }] }));
  const page = await compare(async (opened) => {
    await opened.getByLabel("After", { exact: true }).selectOption("the sheet Strip-down");
    await opened.getByLabel("File with the readings before").setInputFiles({ name: "as built.xlsx", mimeType: "application/octet-stream", buffer });
  });
  await page.locator(".counts", { hasText: "as built.xlsx against Strip-down" }).waitFor();
  expect((await shown(page)).map(([, ...rest]) => rest.slice(0, 3))).toEqual([DIFFERS, MEAN, OPEN].map(([, ...rest]) => rest));
});

test.each<[string, (page: Page) => Promise<void>, string]>([
  ["no file", async () => {}, "Choose the file to compare with."],
  [
    "a file that is no workbook",
    (page) => page.getByLabel("File with the readings before").setInputFiles({ name: "notes.xlsx", mimeType: "text/plain", buffer: Buffer.from("bore 1") }),
    "notes.xlsx is ",
  ],
  [
    "a workbook too large to be taken in",
    (page) => page.getByLabel("File with the readings before").setInputFiles(sparseFile("large.xlsx", 2.5e9)),
    "large.xlsx is too large: 2,500 MB, and at most 200 MB are read.",
  ],
  [
    "the same side twice",
    async (page) => void (await page.getByLabel("Before", { exact: true }).selectOption("this workbook")),
    "Both sides are the same and hold no columns before and after: choose another side, or name two engines.",
  ],
  [
    "hours that are no number",
    async (page) => {
      await sheets(page);
      await page.getByText("Uncertainty, hours, two engines").click();
      await page.getByLabel("Hours run between").fill("many");
    },
    "For the hours a number above 0 is wanted, with a decimal point, and there is many.",
  ],
])("%s is refused in a sentence", async (_, go, sentence) => {
  const page = await compare(go);
  await page.getByRole("alert").filter({ hasText: sentence }).waitFor();
  expect(await page.locator(".changes").count()).toBe(0);
});

test("comparing breaks no rule of the page", () => {
  expect(pane.complaints).toEqual([]);
});

const SAMPLES = new URL("../../samples/compare/", import.meta.url);

test("two CSV files are compared as on the command line, and the parser is loaded only then", async () => {
  const asked: string[] = [];
  const page = await pane.open("compared");
  page.on("request", (request) => asked.push(request.url()));
  await page.getByRole("tab", { name: "Compare" }).click();
  await page.getByLabel("After", { exact: true }).selectOption("a file: another workbook, or readings as CSV");
  await page.getByLabel("File with the readings before").setInputFiles(fileURLToPath(new URL("build.csv", SAMPLES)));
  await page.getByLabel("File with the readings after").setInputFiles(fileURLToPath(new URL("strip-down.csv", SAMPLES)));
  expect(asked.filter((url) => /csv/.test(url))).toEqual([]);
  await page.getByRole("button", { name: "Compare", exact: true }).click();
  // Rows and what differs as samples/compare/README.md lists them.
  await page.locator(".counts", { hasText: "32 of 38 places compared, 6 could not be; of 38 lines 11 differ" }).waitFor();
  await page.getByRole("heading", { name: "15 of 32 lie beyond their own gauge; about 1 would by chance; 11 remain." }).waitFor();
  expect(await page.locator(".changes .label").first().textContent()).toContain("cylinder 2, bore, top thrust");
  expect(asked.filter((url) => /csv/.test(url)).length).toBeGreaterThan(0);
  expect(pane.complaints).toEqual([]);
});

test("a run-in of typed length is apart in the wear", async () => {
  const page = await compare(async (opened) => {
    for (const [side, name] of [
      ["before", "build.csv"],
      ["after", "strip-down.csv"],
    ])
      await opened.getByLabel(`File with the readings ${side}`).setInputFiles(fileURLToPath(new URL(name!, SAMPLES)));
    await opened.getByText("Uncertainty, hours, two engines").click();
    await opened.getByLabel("Length of run-in").fill("50");
  }, "a file: another workbook, or readings as CSV");
  await page.locator("summary", { hasText: "Wear (" }).click();
  // 0.034 in 850 h, as without a run-in, but no life is drawn on from it.
  await page.getByText("grows 0.0400 in 1000 h, the run-in included, so no life is predicted from it (0.0335 to 0.0465)").waitFor();
});

test("a CSV that is no table of readings is refused in a sentence", async () => {
  const page = await compare((opened) =>
    opened
      .getByLabel("File with the readings before")
      .setInputFiles({ name: "notes.csv", mimeType: "text/csv", buffer: Buffer.from("when,what\nMonday,oil\n") }),
  );
  await page.getByRole("alert").filter({ hasText: "notes.csv has in line 1 no heading for the value" }).waitFor();
});

describe("a trial is planned", () => {
  const plan = async (entries: Record<string, string>) => {
    const page = await pane.open("blank");
    await page.getByRole("tab", { name: "Compare" }).click();
    await page.locator("summary", { hasText: "Plan a trial" }).click();
    await page.getByText("A trial is work on running engines").waitFor();
    for (const [label, text] of Object.entries(entries)) await page.getByLabel(label).fill(text);
    await page.getByRole("button", { name: "Work out" }).click();
    return page;
  };

  test("it says what is seen with 80 and 90 %, how many engines it takes, and draws how that falls", async () => {
    const page = await plan({
      "Expanded uncertainty U of one reading": "0.004",
      "Standard deviation between engines that are treated alike": "0.005",
      "Smallest difference between the groups that must not be missed": "0.01",
    });
    await page.locator(".planned").waitFor();
    // As crosshatch trial plan prints them for the same entries; the groups by quadrature with SciPy 1.17.1, at 0.05/5: 43.24 and 60.58 × 0.005044.
    expect(await page.locator(".planned tbody tr").allTextContents()).toEqual([
      "one place, among 3600.0130.014",
      "mean of 18 places of one engine, among 200.00300.0033",
      "two groups of 2 engines, among 50.220.31",
    ]);
    await page.getByText("A difference of 0.01 between the groups takes 8 engines in each to be seen 8 times in 10, 10 to be seen 9 times in 10.").waitFor();
    expect(await page.locator(".trial-plan svg.drawing desc").textContent()).toContain("By engines in each of two groups: 2 (planned) 0.22 and 0.31");
    expect(pane.complaints).toEqual([]);
  });

  test("an entry that cannot be is named at its field", async () => {
    const page = await plan({ "Expanded uncertainty U of one reading": "0,004", "Readings of each place": "0" });
    await page.getByText("0,004 is no number above 0").waitFor();
    await page.getByText("0 is no whole number from 1 to 1000").waitFor();
    expect(await page.locator(".planned").count()).toBe(0);
  });

  test("its workbook is written into the open one, and not over sheets that are there", async () => {
    const page = await plan({ "Cylinders of each engine": "2" });
    await page.getByRole("button", { name: "Add these sheets" }).click();
    await page.getByRole("status").filter({ hasText: "9 new sheets: Trial, Limits, Gauge study, Campaigns, Before," }).waitFor();
    const { sheets: added } = await page.evaluate(() => window.stage.host.read());
    expect(added.find(({ name }) => name === "Before")!.values.flat()).toContain("Cylinder 2");
    await page.getByRole("button", { name: "Add these sheets" }).click();
    await page.getByRole("alert").filter({ hasText: 'There is a sheet "Trial" in this workbook already' }).waitFor();
  });
});
