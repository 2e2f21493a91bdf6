import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { launchBrowser } from "../../src/tools/browser.ts";
// Types of what the page under test holds for the tests.
import type {} from "../pane/page/entry.ts";
import type { SceneName } from "../pane/page/scenes.ts";
import { type PanePage, panePage } from "./pane-page.ts";

export interface PaneBrowser {
  served: PanePage;
  browser: Browser;
  /** Opens a scene in a narrow window of its own. What the page complains of is collected in `complaints`. */
  open(scene: SceneName, options?: BrowserContextOptions): Promise<Page>;
  complaints: string[];
  close(): Promise<void>;
}

/** The pane over a workbook in memory, in a real browser at the least width that a pane has. */
export async function paneBrowser(): Promise<PaneBrowser> {
  const [served, browser] = await Promise.all([panePage("test/pane/page/entry.ts"), launchBrowser()]);
  const complaints: string[] = [];
  return {
    served,
    browser,
    complaints,
    async open(scene, options = {}) {
      const context = await browser.newContext({ viewport: { width: 320, height: 900 }, ...options });
      const page = await context.newPage();
      page.on("console", (message) => message.type() === "error" && complaints.push(message.text()));
      page.on("pageerror", (error) => complaints.push(error.message));
      page.on("request", (request) => request.url().startsWith(served.address) || complaints.push(`asked for ${request.url()}`));
      await page.goto(`${served.address}/pane.html?scene=${scene}`);
      await page.getByRole("button", { name: "Check" }).waitFor();
      return page;
    },
    async close() {
      await browser.close();
      await served.close();
    },
  };
}

/** Presses Check and waits for its result. */
export async function check(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Check", exact: true }).click();
  await page.locator(".counts").waitFor();
}
