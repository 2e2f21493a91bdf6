import { shopBook } from "./shop-book.ts";
import { type BenchPage, type Stand, stand } from "./stand.ts";

let bench: Stand;
let page: BenchPage;
let shop: Uint8Array;

beforeAll(async () => {
  shop = await shopBook();
  bench = await stand();
}, 120_000);
afterAll(() => bench?.close());
beforeEach(async () => {
  page = await bench.page();
}, 60_000);
afterEach(async () => {
  await page.close();
});

/** Whether the browser holds the person back when the page is left. */
async function heldBack(): Promise<boolean> {
  let asked = false;
  page.page.once("dialog", (dialog) => {
    asked = dialog.type() === "beforeunload";
    void dialog.accept();
  });
  await page.page.goto("about:blank");
  return asked;
}

const bookName = () => page.page.locator("#book").textContent();
const unsaved = () => page.page.locator("#unsaved").isVisible();

test("an untouched workbook is left without a question", async () => {
  expect(await unsaved()).toBe(false);
  await page.click("C4");
  expect(await heldBack()).toBe(false);
}, 60_000);

test("leaving with unsaved changes is asked about", async () => {
  await page.type("C4", "73.031");
  expect([await unsaved(), await page.page.title()]).toEqual([true, "* build-sheet.xlsx – Crosshatch bench"]);
  expect(await heldBack()).toBe(true);
}, 60_000);

test("leaving while a reading is being typed is asked about", async () => {
  await page.click("C4");
  await page.page.keyboard.type("73.03");
  expect(await heldBack()).toBe(true);
}, 60_000);

test("what is being typed is in the saved file, and a saved workbook is left without a question", async () => {
  await page.click("C4");
  await page.page.keyboard.type("73.031");
  await page.saved();
  expect([await page.value("Bores!C4"), await unsaved()]).toEqual([73.031, false]);
  expect(await heldBack()).toBe(false);
}, 60_000);

test.each(["grid", "pane"])(
  "Ctrl+S saves from the %s",
  async (from) => {
    await page.type("C4", "73.031");
    if (from === "pane") await page.pane.getByRole("tab", { name: "Check" }).click();
    const coming = page.page.waitForEvent("download");
    await page.page.keyboard.press("Control+s");
    expect((await coming).suggestedFilename()).toBe("build-sheet.xlsx");
  },
  60_000,
);

test("a sheet name that no file can hold is refused in a sentence before anything is written", async () => {
  const name = "Bores measured after the first season";
  await page.page.evaluate((newName) => {
    const { model } = window.crosshatchBench!;
    model.dispatch("RENAME_SHEET", { sheetId: model.getters.getActiveSheetId(), oldName: "Bores", newName });
  }, name);
  await page.page.getByRole("button", { name: "Save", exact: true }).click();
  await page.page.locator("#message").waitFor();
  expect(await page.message()).toBe(
    `The sheet "${name}" has a name of more than 31 characters, which a workbook file cannot hold: give it a shorter one, then save.`,
  );
  expect(await unsaved()).toBe(true);
}, 60_000);

describe("opening another workbook over unsaved changes asks first", () => {
  beforeEach(async () => {
    await page.type("C4", "73.031");
    await page.give("shop.xlsx", shop);
    await page.page.getByRole("dialog").waitFor();
  }, 60_000);

  test("and stays when told to", async () => {
    expect(await page.page.getByRole("dialog").textContent()).toContain("build-sheet.xlsx has changes that are not saved.");
    await page.picture("question");
    await page.page.getByRole("button", { name: "Keep working here" }).click();
    expect([await bookName(), await page.value("Bores!C4")]).toEqual(["build-sheet.xlsx", 73.031]);
  }, 60_000);

  test("and stays on Escape", async () => {
    await page.page.keyboard.press("Escape");
    await page.page.getByRole("dialog").waitFor({ state: "hidden" });
    expect([await bookName(), await unsaved()]).toEqual(["build-sheet.xlsx", true]);
  }, 60_000);

  test("and goes on without saving when told to", async () => {
    await page.page.getByRole("button", { name: "Open without saving" }).click();
    await page.page.locator("#book", { hasText: "shop.xlsx" }).waitFor();
    expect(await unsaved()).toBe(false);
  }, 60_000);

  test("or saves first", async () => {
    const coming = page.page.waitForEvent("download");
    await page.page.getByRole("button", { name: "Save, then open" }).click();
    expect((await coming).suggestedFilename()).toBe("build-sheet.xlsx");
    await page.page.locator("#book", { hasText: "shop.xlsx" }).waitFor();
  }, 60_000);
});

test("the sample comes back by its button, after the same question", async () => {
  await page.type("C4", "73.031");
  await page.page.getByRole("button", { name: "Sample" }).click();
  await page.page.getByRole("button", { name: "Open without saving" }).click();
  await page.page.getByRole("dialog").waitFor({ state: "hidden" });
  await page.page.locator("#unsaved").waitFor({ state: "hidden" });
  expect(await page.value("Bores!C4")).toBe(73.025);
}, 60_000);

test("a failure of ours is said in the page, and the work can still be saved", async () => {
  await page.type("C4", "73.031");
  await page.page.evaluate(() => {
    setTimeout(() => {
      throw new Error("a part of ours broke");
    });
  });
  await page.page.locator("#message").waitFor();
  expect(await page.message()).toBe("Something in Crosshatch did not work: a part of ours broke. Save your work and load the page again.");
  expect((await page.saved()).bytes.length).toBeGreaterThan(1000);
}, 60_000);

/** A file let go over the page or the pane, as the browser tells it. */
async function drop(over: "page" | "pane"): Promise<void> {
  const frame = over === "page" ? page.page.mainFrame() : page.page.frames().find((one) => one.url().endsWith("pane.html"))!;
  await frame.evaluate(
    (bytes) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([new Uint8Array(bytes)], "dropped.xlsx"));
      const event = (type: string) => new DragEvent(type, { dataTransfer: transfer, bubbles: true, cancelable: true });
      for (const type of ["dragover", "drop"]) if (document.body.dispatchEvent(event(type))) throw new Error(`${type} was left to the browser`);
    },
    [...shop],
  );
}

test.each(["page", "pane"] as const)(
  "a workbook let go over the %s is opened",
  async (over) => {
    await page.pane.locator("main").waitFor();
    await drop(over);
    await page.page.locator("#book", { hasText: "dropped.xlsx" }).waitFor();
    expect(await page.page.locator("#drop").isVisible()).toBe(false);
  },
  60_000,
);
