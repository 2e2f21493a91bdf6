import { serve } from "../../src/cli/bench-server.ts";
import { readXlsx } from "../../src/xlsx/read/read.ts";
import { shopBook } from "./shop-book.ts";
import { atStand, BenchPage, builtBench } from "./stand.ts";

const at = atStand("a page for each test");
let shop: Uint8Array;

beforeAll(async () => {
  shop = await shopBook();
});

const button = (name: string) => at.page.page.getByRole("button", { name, exact: true });
const dialog = () => at.page.page.getByRole("dialog");
const opened = (name: string, page = at.page) => page.page.locator("#book", { hasText: name }).waitFor();
const unsaved = () => at.page.page.locator("#unsaved").isVisible();

test("New opens an empty workbook, which Save hands over; a click on its name gives it another one", async () => {
  await button("New").click();
  await opened("workbook.xlsx");
  await at.page.type("A1", "73.02");
  expect(await unsaved()).toBe(true);
  const { name, bytes } = await at.page.saved();
  expect([name, readXlsx(bytes).sheets[0]!.cells[0]!.value]).toEqual(["workbook.xlsx", 73.02]);
  expect(await unsaved()).toBe(false);
  await at.page.page.locator("#book").click();
  await dialog().getByRole("textbox").fill("port engine");
  await at.page.page.keyboard.press("Enter");
  await opened("port engine.xlsx");
  expect(await unsaved()).toBe(true);
  await at.page.page.locator("#book").click();
  await at.page.page.keyboard.press("Escape");
  await dialog().waitFor({ state: "hidden" });
  expect(await at.page.page.locator("#book").textContent()).toBe("port engine.xlsx");
}, 60_000);

test("the bench starts on the sample and offers a new build sheet, a file or the sample, until one is taken", async () => {
  const start = at.page.page.getByRole("region", { name: "Start" });
  expect(await start.isVisible()).toBe(true);
  await button("Look round in the sample").click();
  expect(await start.isVisible()).toBe(false);
  expect(await at.page.page.locator("#book").textContent()).toBe("build-sheet.xlsx");
  await at.page.page.reload();
  await button("New build sheet").click();
  await opened("workbook.xlsx");
  expect(await start.isVisible()).toBe(false);
  await at.page.pane.getByRole("heading", { name: "Set up a build sheet" }).waitFor();
  expect(await unsaved()).toBe(false);
}, 60_000);

describe("where the browser gives pages the files themselves", () => {
  /** Files of the page's own stand for those that a person chooses: they are written to in the same way. */
  async function givePickers(bytes: Uint8Array): Promise<void> {
    await at.page.page.evaluate(
      async (content) => {
        const folder = await navigator.storage.getDirectory();
        const file = await folder.getFileHandle("shop.xlsx", { create: true });
        const writing = await file.createWritable();
        await writing.write(new Uint8Array(content));
        await writing.close();
        Object.assign(window, {
          showOpenFilePicker: () => Promise.resolve([file]),
          showSaveFilePicker: () => folder.getFileHandle("another.xlsx", { create: true }),
        });
      },
      [...bytes],
    );
  }

  /** The first sheet's cell B1 as it stands in a file of the page. */
  async function stored(name: string): Promise<unknown> {
    const bytes = await at.page.page.evaluate(async (file) => {
      const folder = await navigator.storage.getDirectory();
      return [...new Uint8Array(await (await (await folder.getFileHandle(file)).getFile()).arrayBuffer())];
    }, name);
    return readXlsx(new Uint8Array(bytes)).sheets[0]!.cells.find(({ row, column }) => row === 0 && column === 1)!.value;
  }

  beforeEach(async () => {
    await givePickers(shop);
    await button("Open…").click();
    await opened("shop.xlsx");
    await at.page.type("B1", "73.5");
  }, 60_000);

  test("the file that was opened is written over after asking, and from then on without; Save as puts it elsewhere, and Save stays there", async () => {
    const before = await stored("shop.xlsx");
    await button("Save").click();
    expect(await dialog().textContent()).toContain("shop.xlsx would be written over.");
    await at.page.picture("write-over");
    await button("Do not save").click();
    expect([await stored("shop.xlsx"), await unsaved()]).toEqual([before, true]);
    await button("Save").click();
    await button("Write over it").click();
    await at.page.page.locator("#unsaved").waitFor({ state: "hidden" });
    expect(await stored("shop.xlsx")).toBe(73.5);
    await at.page.type("B1", "73.6");
    await button("Save").click();
    await at.page.page.locator("#unsaved").waitFor({ state: "hidden" });
    expect(await stored("shop.xlsx")).toBe(73.6);

    await button("Save as…").click();
    await opened("another.xlsx");
    await at.page.type("B1", "73.7");
    await button("Save").click();
    await at.page.page.locator("#unsaved").waitFor({ state: "hidden" });
    expect([await stored("another.xlsx"), await stored("shop.xlsx")]).toEqual([73.7, 73.6]);
  }, 60_000);

  test("who thinks better of it has saved nothing; a file that cannot be written to is said, and the work stays unsaved", async () => {
    await at.page.page.evaluate(() => Object.assign(window, { showSaveFilePicker: () => Promise.reject(new DOMException("", "AbortError")) }));
    await button("Save as…").click();
    expect([await unsaved(), await at.page.message()]).toEqual([true, expect.not.stringContaining("saved")]);
    await at.page.page.evaluate(() =>
      Object.assign(window, {
        showSaveFilePicker: () => Promise.resolve({ name: "x.xlsx", createWritable: () => Promise.reject(new Error("The disk is full.")) }),
      }),
    );
    await button("Save as…").click();
    await at.page.page.locator("#message", { hasText: "could not be saved" }).waitFor();
    expect([await at.page.message(), await unsaved()]).toEqual(["shop.xlsx could not be saved: The disk is full. The workbook is still open here.", true]);
  }, 60_000);
});

describe("work that was not saved", () => {
  const question = "build-sheet.xlsx was open here until";

  /** How many workbooks the browser keeps. */
  const kept = () =>
    at.page.page.evaluate(async () => {
      const done = <T>(request: IDBRequest<T>) =>
        new Promise<T>((resolve, reject) => {
          request.onsuccess = () => resolve(request.result);
          request.onerror = reject;
        });
      const database = await done(indexedDB.open("crosshatch-bench"));
      const count = await done(database.transaction("kept-work").objectStore("kept-work").count());
      database.close();
      return count;
    });

  /** Loads the page again, as after a crash: whatever the browser asks is agreed to. */
  async function reload(): Promise<void> {
    while ((await kept()) === 0) await at.page.page.waitForTimeout(100);
    at.page.page.once("dialog", (asked) => void asked.accept());
    await at.page.open();
    await dialog().waitFor();
  }

  beforeEach(() => at.page.type("C4", "73.031"), 60_000);

  test("is offered again after a reload, and is still not saved", async () => {
    await reload();
    expect(await dialog().textContent()).toContain(question);
    await at.page.picture("kept-work");
    await button("Open them again").click();
    await at.page.page.locator("#unsaved").waitFor();
    expect(await at.page.value("Bores!C4")).toBe(73.031);
    await reload();
    await button("Throw them away").click();
    await dialog().waitFor({ state: "hidden" });
    expect([await at.page.value("Bores!C4"), await unsaved()]).toEqual([73.025, false]);
    await at.page.open();
    expect(await dialog().isVisible()).toBe(false);
  }, 120_000);

  test("stays kept where it is not wanted now, and is not offered to a second page while the first is open", async () => {
    await reload();
    await at.page.page.keyboard.press("Escape");
    await at.page.open();
    await dialog().waitFor();
    await button("Open them again").click();
    await at.page.page.locator("#unsaved").waitFor();
    await at.page.type("C5", "73.032");
    const second = new BenchPage(await at.page.page.context().newPage(), at.stand.server.url);
    await second.open();
    expect(await second.page.getByRole("dialog").isVisible()).toBe(false);
  }, 120_000);

  test("that has been saved is not offered", async () => {
    await at.page.saved();
    await at.page.page.locator("#unsaved").waitFor({ state: "hidden" });
    // What was typed just before is not kept later either.
    await at.page.page.waitForTimeout(2_000);
    while ((await kept()) > 0) await at.page.page.waitForTimeout(100);
    await at.page.open();
    expect(await dialog().isVisible()).toBe(false);
  }, 60_000);
});

test("the workbook that the bench was started with is opened, a file of any other name is not there", async () => {
  const server = await serve(await builtBench(), 0, { name: "port & side.xlsx", bytes: Buffer.from(shop) });
  try {
    const page = new BenchPage(await at.page.page.context().newPage(), server.url);
    await page.open();
    await opened("port & side.xlsx", page);
    expect(await page.page.locator("#unsaved").isVisible()).toBe(false);
    await page.page.goto(server.url.replace(/file=.*/, "file=other.xlsx"));
    await page.page.locator("#message").waitFor();
    expect(await page.message()).toBe("other.xlsx is not what this bench was started with: open it here.");
  } finally {
    await server.close();
  }
}, 60_000);
