import { shopBook } from "./shop-book.ts";
import { atStand } from "./stand.ts";

const at = atStand("a page for each test");
let shop: Uint8Array;

beforeAll(async () => {
  shop = await shopBook();
});

/** Whether the browser holds the person back when the page is left. */
async function heldBack(): Promise<boolean> {
  let asked = false;
  at.page.page.once("dialog", (dialog) => {
    asked = dialog.type() === "beforeunload";
    void dialog.accept();
  });
  await at.page.page.goto("about:blank");
  return asked;
}

const bookName = () => at.page.page.locator("#book").textContent();
const unsaved = () => at.page.page.locator("#unsaved").isVisible();

test("an untouched workbook is left without a question", async () => {
  expect(await unsaved()).toBe(false);
  await at.page.click("C4");
  expect(await heldBack()).toBe(false);
}, 60_000);

test("leaving with unsaved changes is asked about", async () => {
  await at.page.type("C4", "73.031");
  expect([await unsaved(), await at.page.page.title()]).toEqual([true, "* build-sheet.xlsx – Crosshatch bench"]);
  expect(await heldBack()).toBe(true);
}, 60_000);

test("leaving while a reading is being typed is asked about", async () => {
  await at.page.click("C4");
  await at.page.page.keyboard.type("73.03");
  expect(await heldBack()).toBe(true);
}, 60_000);

test("what is being typed is in the saved file, and a saved workbook is left without a question", async () => {
  await at.page.click("C4");
  await at.page.page.keyboard.type("73.031");
  await at.page.saved();
  expect([await at.page.value("Bores!C4"), await unsaved()]).toEqual([73.031, false]);
  expect(await heldBack()).toBe(false);
}, 60_000);

test.each(["grid", "pane"])(
  "Ctrl+S saves from the %s",
  async (from) => {
    await at.page.type("C4", "73.031");
    if (from === "pane") await at.page.pane.getByRole("tab", { name: "Check" }).click();
    const coming = at.page.page.waitForEvent("download");
    await at.page.page.keyboard.press("Control+s");
    expect((await coming).suggestedFilename()).toBe("build-sheet.xlsx");
  },
  60_000,
);

test("a sheet name that no file can hold is refused in a sentence before anything is written", async () => {
  const name = "Bores measured after the first season";
  await at.page.page.evaluate((newName) => {
    const { model } = window.crosshatchBench!;
    model.dispatch("RENAME_SHEET", { sheetId: model.getters.getActiveSheetId(), oldName: "Bores", newName });
  }, name);
  await at.page.page.getByRole("button", { name: "Save", exact: true }).click();
  await at.page.page.locator("#message").waitFor();
  expect(await at.page.message()).toBe(
    `The sheet "${name}" has a name of more than 31 characters, which a workbook file cannot hold: give it a shorter one, then save.`,
  );
  expect(await unsaved()).toBe(true);
}, 60_000);

describe("opening another workbook over unsaved changes asks first", () => {
  beforeEach(async () => {
    await at.page.type("C4", "73.031");
    await at.page.give("shop.xlsx", shop);
    await at.page.page.getByRole("dialog").waitFor();
  }, 60_000);

  test("and stays when told to", async () => {
    expect(await at.page.page.getByRole("dialog").textContent()).toContain("build-sheet.xlsx has changes that are not saved.");
    await at.page.picture("question");
    await at.page.page.getByRole("button", { name: "Keep working here" }).click();
    expect([await bookName(), await at.page.value("Bores!C4")]).toEqual(["build-sheet.xlsx", 73.031]);
  }, 60_000);

  test("and stays on Escape", async () => {
    await at.page.page.keyboard.press("Escape");
    await at.page.page.getByRole("dialog").waitFor({ state: "hidden" });
    expect([await bookName(), await unsaved()]).toEqual(["build-sheet.xlsx", true]);
  }, 60_000);

  test("and goes on without saving when told to", async () => {
    await at.page.page.getByRole("button", { name: "Open without saving" }).click();
    await at.page.page.locator("#book", { hasText: "shop.xlsx" }).waitFor();
    expect(await unsaved()).toBe(false);
  }, 60_000);

  test("or saves first", async () => {
    const coming = at.page.page.waitForEvent("download");
    await at.page.page.getByRole("button", { name: "Save, then open" }).click();
    expect((await coming).suggestedFilename()).toBe("build-sheet.xlsx");
    await at.page.page.locator("#book", { hasText: "shop.xlsx" }).waitFor();
  }, 60_000);
});

test("the sample comes back by its button, after the same question", async () => {
  await at.page.type("C4", "73.031");
  await at.page.page.getByRole("button", { name: "Sample", exact: true }).click();
  await at.page.page.getByRole("button", { name: "Open without saving" }).click();
  await at.page.page.getByRole("dialog").waitFor({ state: "hidden" });
  await at.page.page.locator("#unsaved").waitFor({ state: "hidden" });
  expect(await at.page.value("Bores!C4")).toBe(73.025);
}, 60_000);

test("a failure of ours is said in the page, and the work can still be saved", async () => {
  await at.page.type("C4", "73.031");
  await at.page.page.evaluate(() => {
    setTimeout(() => {
      throw new Error("a part of ours broke");
    });
  });
  await at.page.page.locator("#message").waitFor();
  expect(await at.page.message()).toBe("Something in Crosshatch did not work: a part of ours broke. Save your work and load the page again.");
  expect((await at.page.saved()).bytes.length).toBeGreaterThan(1000);
}, 60_000);

/** A file let go over the page or the pane, as the browser tells it. */
async function drop(over: "page" | "pane"): Promise<void> {
  const frame = over === "page" ? at.page.page.mainFrame() : at.page.page.frames().find((one) => one.url().endsWith("pane.html"))!;
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
    await at.page.pane.locator("main").waitFor();
    await drop(over);
    await at.page.page.locator("#book", { hasText: "dropped.xlsx" }).waitFor();
    expect(await at.page.page.locator("#drop").isVisible()).toBe(false);
  },
  60_000,
);
