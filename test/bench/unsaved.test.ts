import type { Dialog } from "playwright-core";
import { readXlsx } from "../../src/xlsx/read/read.ts";
import { shopBook } from "./shop-book.ts";
import { atStand } from "./stand.ts";

const at = atStand("a page for each test");
let shop: Uint8Array;

beforeAll(async () => {
  shop = await shopBook();
});

/** Whether the browser holds the person back when the page is left; who is held back stays. */
async function heldBack(): Promise<boolean> {
  let asked = false;
  const answered = (dialog: Dialog): void => {
    asked = dialog.type() === "beforeunload";
    void dialog.dismiss();
  };
  at.page.page.once("dialog", answered);
  // The browser tells of a page that is not left after all as of one that could not be reached.
  await at.page.page.goto("about:blank").catch(() => {});
  at.page.page.off("dialog", answered);
  return asked;
}

const bookName = () => at.page.page.locator("#book").textContent();
const unsaved = () => at.page.page.locator("#unsaved").isVisible();
const button = (name: string) => at.page.page.getByRole("button", { name, exact: true });

test("an untouched workbook is left without a question", async () => {
  expect(await unsaved()).toBe(false);
  await at.page.click("C4");
  expect(await heldBack()).toBe(false);
}, 60_000);

test("leaving is asked about while a reading is being typed and when it stands there; what is being typed is saved with the rest, and a saved workbook is left without a question", async () => {
  await at.page.click("C4");
  await at.page.page.keyboard.type("73.03");
  expect(await heldBack()).toBe(true);
  await at.page.page.keyboard.press("Escape");
  await at.page.type("C4", "73.031");
  expect([await unsaved(), await at.page.page.title()]).toEqual([true, "* build-sheet.xlsx – Crosshatch bench"]);
  expect(await heldBack()).toBe(true);
  await at.page.click("C5");
  await at.page.page.keyboard.type("73.032");
  const { bytes } = await at.page.saved();
  expect(readXlsx(bytes).sheets[0]!.cells.find(({ row, column }) => row === 4 && column === 2)!.value).toBe(73.032);
  expect([await at.page.value("Bores!C5"), await unsaved()]).toEqual([73.032, false]);
  expect(await heldBack()).toBe(false);
}, 60_000);

test("Ctrl+S saves from the grid and from the pane", async () => {
  for (const from of ["grid", "pane"]) {
    await at.page.type("C4", from === "grid" ? "73.031" : "73.032");
    if (from === "pane") await at.page.pane.getByRole("tab", { name: "Check" }).click();
    const coming = at.page.page.waitForEvent("download");
    await at.page.page.keyboard.press("Control+s");
    expect((await coming).suggestedFilename()).toBe("build-sheet.xlsx");
    await at.page.page.locator("#unsaved").waitFor({ state: "hidden" });
  }
}, 60_000);

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

test("opening another workbook, or the sample, over unsaved changes asks first: whether to stay, to go on without saving, or to save", async () => {
  const openOver = async (): Promise<void> => {
    await at.page.give("shop.xlsx", shop);
    await at.page.page.getByRole("dialog").waitFor();
  };
  await at.page.type("C4", "73.031");
  await openOver();
  expect(await at.page.page.getByRole("dialog").textContent()).toContain("build-sheet.xlsx has changes that are not saved.");
  await at.page.picture("question");
  await button("Keep working here").click();
  expect([await bookName(), await at.page.value("Bores!C4")]).toEqual(["build-sheet.xlsx", 73.031]);

  await openOver();
  await at.page.page.keyboard.press("Escape");
  await at.page.page.getByRole("dialog").waitFor({ state: "hidden" });
  expect([await bookName(), await unsaved()]).toEqual(["build-sheet.xlsx", true]);

  await openOver();
  const coming = at.page.page.waitForEvent("download");
  await button("Save, then open").click();
  expect((await coming).suggestedFilename()).toBe("build-sheet.xlsx");
  await at.page.page.locator("#book", { hasText: "shop.xlsx" }).waitFor();

  await at.page.type("C4", "73.031");
  await openOver();
  await button("Open without saving").click();
  await at.page.page.locator("#unsaved").waitFor({ state: "hidden" });
  expect([await bookName(), await at.page.value("Bores!C4")]).toEqual(["shop.xlsx", 73.04]);

  await at.page.type("C4", "73.031");
  await button("Sample").click();
  await button("Open without saving").click();
  await at.page.page.locator("#book", { hasText: "build-sheet.xlsx" }).waitFor();
  expect([await unsaved(), await at.page.value("Bores!C4")]).toEqual([false, 73.025]);
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
    ({ bytes, name }) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([new Uint8Array(bytes)], name));
      const event = (type: string) => new DragEvent(type, { dataTransfer: transfer, bubbles: true, cancelable: true });
      for (const type of ["dragover", "drop"]) if (document.body.dispatchEvent(event(type))) throw new Error(`${type} was left to the browser`);
    },
    { bytes: [...shop], name: `dropped on the ${over}.xlsx` },
  );
}

test("a workbook let go over the page or the pane is opened", async () => {
  await at.page.pane.locator("main").waitFor();
  // A workbook that is opened brings a pane of its own.
  for (const over of ["pane", "page"] as const) {
    await drop(over);
    await at.page.page.locator("#book", { hasText: `dropped on the ${over}.xlsx` }).waitFor();
    expect(await at.page.page.locator("#drop").isVisible()).toBe(false);
  }
}, 60_000);
