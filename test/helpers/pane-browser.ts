import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { launchBrowser } from "../../src/tools/browser.ts";
// Types of what the page under test holds for the tests.
import type {} from "../pane/page/entry.ts";
import type { SceneName } from "../pane/page/scenes.ts";
import { type PanePage, panePage } from "./pane-page.ts";

type Surroundings = Pick<BrowserContextOptions, "viewport" | "colorScheme" | "permissions">;

export interface PaneBrowser {
  readonly served: PanePage;
  readonly browser: Browser;
  /** Opens a scene in a narrow window of its own. What the page complains of is collected in `complaints`. */
  open(scene: SceneName, surroundings?: Surroundings): Promise<Page>;
  /** Takes back a window that was opened outside a test; those of a test are taken back at its end. */
  takeBack(page: Page): void;
  readonly complaints: string[];
}

/** The least width that a pane has. */
const NARROW = { width: 320, height: 900 };

/** The pane over a workbook in memory, in a real browser, while the tests of a file run. */
export function atPane(): PaneBrowser {
  let served: PanePage;
  let browser: Browser;
  const complaints: string[] = [];
  /** Windows of tests that have ended: one made anew takes longer than most tests. Scenes are loaded anew in any, and the pane keeps nothing in the browser. */
  const free: Page[] = [];
  /** Those of the test that runs. */
  let taken: Page[] | undefined;

  beforeAll(async () => {
    [served, browser] = await Promise.all([panePage("test/pane/page/entry.ts"), launchBrowser()]);
  });
  afterAll(async () => {
    await browser?.close();
    await served?.close();
  });
  beforeEach(() => {
    taken = [];
  });
  afterEach(() => {
    free.push(...taken!);
    taken = undefined;
  });

  async function newWindow(permissions?: string[]): Promise<Page> {
    const context = await browser.newContext({ viewport: NARROW, ...(permissions && { permissions }) });
    const page = await context.newPage();
    page.on("console", (message) => message.type() === "error" && complaints.push(message.text()));
    page.on("pageerror", (error) => complaints.push(error.message));
    page.on("request", (request) => request.url().startsWith(served.address) || complaints.push(`asked for ${request.url()}`));
    return page;
  }

  return {
    get served() {
      return served;
    },
    get browser() {
      return browser;
    },
    complaints,
    takeBack: (page) => void free.push(page),
    async open(scene, { viewport = NARROW, colorScheme = "light", permissions } = {}) {
      const page = permissions ? await newWindow(permissions) : (free.pop() ?? (await newWindow()));
      if (!permissions) taken?.push(page);
      await page.setViewportSize(viewport!);
      await page.emulateMedia({ colorScheme, forcedColors: "none" });
      await page.goto(`${served.address}/pane.html?scene=${scene}`);
      await page.getByRole("button", { name: "Check" }).waitFor();
      return page;
    },
  };
}

/** Presses Check and waits for its result. */
export async function check(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Check", exact: true }).click();
  await page.locator(".counts").waitFor();
}
