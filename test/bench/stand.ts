import { mkdirSync } from "node:fs";
import { join } from "node:path";
import type { Browser, BrowserContextOptions, Locator, Page } from "playwright-core";
import type {} from "../../src/bench/shared.ts";
import { type BenchServer, serve } from "../../src/cli/bench-server.ts";
import type { Cell } from "../../src/core/cell.ts";
import { launchBrowser } from "../../src/tools/browser.ts";
import { buildBench } from "../../src/tools/build-bench.ts";
import { root } from "../../src/tools/paths.ts";
import type { SheetSnapshot } from "../../src/workbook/port.ts";
import { onceARun } from "../helpers/once-a-run.ts";

/** The bench, built and served, and a browser before it. */
export interface Stand {
  server: BenchServer;
  browser: Browser;
  /** A fresh page with the sample open. */
  page(options?: BrowserContextOptions): Promise<BenchPage>;
  close(): Promise<void>;
}

const PICTURES = join(root, "test", "output");

/** The folder of the bench as it is shipped. */
export const builtBench = async (): Promise<string> => join(await onceARun("bench", (into) => buildBench(join(into, "files"))), "files");

export async function stand(): Promise<Stand> {
  const server = await serve(await builtBench(), 0);
  const browser = await launchBrowser();
  return {
    server,
    browser,
    async page(options = {}) {
      const context = await browser.newContext({ viewport: { width: 1400, height: 850 }, ...options });
      const bench = new BenchPage(await context.newPage(), server.url);
      await bench.open();
      return bench;
    },
    async close() {
      await browser.close();
      await server.close();
    },
  };
}

/** The stand of a test file, up while its tests run, and its page. */
export interface AtStand {
  readonly stand: Stand;
  readonly page: BenchPage;
  /** Puts a fresh page in the place of the one that was there. */
  anew(): Promise<void>;
}

/** A page for each test of the file, one for all of them, or none but those that the tests open. */
export function atStand(pages: "a page for each test" | "one page" | "no page"): AtStand {
  let up: Stand | undefined;
  let page: BenchPage | undefined;
  const anew = async (): Promise<void> => {
    await page?.close();
    page = await up!.page();
  };
  beforeAll(async () => {
    up = await stand();
    if (pages === "one page") await anew();
  }, 120_000);
  afterAll(() => up?.close());
  if (pages === "a page for each test") beforeEach(anew, 60_000);
  return {
    anew,
    get stand() {
      return up!;
    },
    get page() {
      return page!;
    },
  };
}

/** One page with the bench, with the hands and eyes of the person before it. */
export class BenchPage {
  /** What the page did that it should not: requests elsewhere, errors, refusals of its own policy. */
  readonly trouble: string[] = [];

  constructor(
    readonly page: Page,
    readonly url: string,
  ) {
    page.on("request", (request) => {
      if (!request.url().startsWith(url) && !/^(?:data|blob):/.test(request.url())) this.trouble.push(`asked ${request.url()}`);
    });
    page.on("response", (response) => {
      if (response.status() >= 400) this.trouble.push(`${response.status()} ${response.url()}`);
    });
    page.on("pageerror", (error) => this.trouble.push(`error ${error.message}`));
    page.on("console", (message) => {
      if (message.type() === "error" || message.type() === "warning") this.trouble.push(`${message.type()} ${message.text()}`);
    });
  }

  async open(): Promise<void> {
    // The browser's own dialogs cannot be worked from here: files come and go as in browsers without them.
    await this.page.addInitScript(() => {
      for (const name of ["showOpenFilePicker", "showSaveFilePicker"])
        Object.defineProperty(window, name, { value: undefined, configurable: true, writable: true });
    });
    await this.page.goto(this.url);
    await this.page.waitForFunction(() => performance.getEntriesByName("bench-ready").length > 0);
  }

  get pane() {
    return this.page.frameLocator("#pane");
  }

  /** After a change the check is made again by itself; on a machine so busy that the last one took long, on demand. Waits for what it finds. */
  async checkedAgain(found: Locator): Promise<void> {
    const again = this.pane.getByRole("button", { name: "Check again" });
    await found.or(again).first().waitFor();
    if (await again.isVisible()) await again.click();
    await found.waitFor();
  }

  /** Where a cell is drawn, for the mouse. */
  async centre(name: string): Promise<{ x: number; y: number }> {
    return this.page.evaluate((cell) => {
      const { model } = window.crosshatchBench!;
      const [, letters, digits] = /([A-Z]+)(\d+)/.exec(cell)!;
      const col = [...letters!].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
      const row = Number(digits) - 1;
      const { x, y, width, height } = model.getters.getVisibleRect({ left: col, right: col, top: row, bottom: row });
      const grid = document.querySelector(".o-grid canvas")!.getBoundingClientRect();
      return { x: grid.x + x + width / 2, y: grid.y + y + height / 2 };
    }, name);
  }

  async click(name: string): Promise<void> {
    const { x, y } = await this.centre(name);
    await this.page.mouse.click(x, y);
  }

  /** Types into a cell as a person does: click, keys, Enter. */
  async type(name: string, text: string): Promise<void> {
    await this.click(name);
    await this.page.keyboard.type(text);
    await this.page.keyboard.press("Enter");
  }

  sheets(): Promise<SheetSnapshot[]> {
    return this.page.evaluate(async () => (await window.crosshatchBench!.host.read()).sheets);
  }

  /** The calculated value of `Sheet!A1`. */
  async value(place: string): Promise<Cell> {
    return (await this.#look(place, "values")) as Cell;
  }

  async formula(place: string): Promise<string | null> {
    return (await this.#look(place, "formulas")) as string | null;
  }

  async #look(place: string, pick: "values" | "formulas"): Promise<unknown> {
    const [, name, letters, digits] = /^(.+)!([A-Z]+)(\d+)$/.exec(place)!;
    const sheet = (await this.sheets()).find((one) => one.name === name)!;
    const column = [...letters!].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
    return sheet[pick][Number(digits) - 1]?.[column] ?? null;
  }

  fill(name: string): Promise<string> {
    return this.page.evaluate((cell) => {
      const { model } = window.crosshatchBench!;
      const [, letters, digits] = /([A-Z]+)(\d+)/.exec(cell)!;
      const col = [...letters!].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
      const sheetId = model.getters.getActiveSheetId();
      return model.getters.getCell({ sheetId, col, row: Number(digits) - 1 })?.style?.fillColor ?? "";
    }, name);
  }

  /** The active cell as `Sheet!A1`. */
  selected(): Promise<string> {
    return this.page.evaluate(() => {
      const { model } = window.crosshatchBench!;
      const { sheetId, col, row } = model.getters.getActivePosition();
      return `${model.getters.getSheetName(sheetId)}!${model.getters.zoneToXC(sheetId, { left: col, right: col, top: row, bottom: row })}`;
    });
  }

  async message(): Promise<string> {
    return (await this.page.locator("#message").isVisible()) ? ((await this.page.locator("#message-text").textContent()) ?? "") : "";
  }

  async give(name: string, bytes: Uint8Array): Promise<void> {
    await this.page.setInputFiles("#file", { name, mimeType: "application/octet-stream", buffer: Buffer.from(bytes) });
  }

  /** The bytes of the file that a press on Save hands over, and its name. */
  async saved(): Promise<{ name: string; bytes: Uint8Array }> {
    const coming = this.page.waitForEvent("download");
    await this.page.getByRole("button", { name: "Save", exact: true }).click();
    const download = await coming;
    const pieces: Buffer[] = [];
    for await (const piece of await download.createReadStream()) pieces.push(piece as Buffer);
    return { name: download.suggestedFilename(), bytes: new Uint8Array(Buffer.concat(pieces)) };
  }

  async picture(name: string): Promise<void> {
    mkdirSync(PICTURES, { recursive: true });
    await this.page.screenshot({ path: join(PICTURES, `bench-${name}.png`) });
  }

  close(): Promise<void> {
    return this.page.context().close();
  }
}
