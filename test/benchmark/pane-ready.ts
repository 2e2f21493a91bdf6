import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { BrowserContext } from "playwright-core";
import { serve } from "../../src/cli/bench-server.ts";
import { launchBrowser } from "../../src/tools/browser.ts";
import { buildBench } from "../../src/tools/build-bench.ts";
import { type BenchmarkLine, show, summary } from "./measure.ts";

const RUNS = 5;
const AIM = 350;

/** From asking for the pane's page until its first button is painted, in a real browser without a cache. */
export async function paneReady(): Promise<BenchmarkLine[]> {
  const folder = mkdtempSync(join(tmpdir(), "crosshatch-bench-"));
  await buildBench(folder);
  const server = await serve(folder, 0);
  const browser = await launchBrowser();
  try {
    const took: number[] = [];
    for (let run = 0; run < RUNS; run++) {
      const context = await browser.newContext();
      took.push(await readyIn(context, server.url));
      await context.close();
    }
    const timing = summary(took);
    return [
      {
        what: "pane on the bench, from asking for its page to its first button painted",
        measured: show(timing),
        yardstick: "–",
        value: timing.median,
        unit: "ms",
        aim: AIM,
      },
    ];
  } finally {
    await browser.close();
    await server.close();
    rmSync(folder, { recursive: true });
  }
}

async function readyIn(context: BrowserContext, url: string): Promise<number> {
  await context.addInitScript(() => {
    if (!location.pathname.endsWith("/pane.html")) return;
    new MutationObserver((_, observer) => {
      if (!document.querySelector("#pane button")) return;
      observer.disconnect();
      // After the frame in which the button is painted.
      requestAnimationFrame(() => setTimeout(() => performance.mark("ready")));
    }).observe(document, { childList: true, subtree: true });
  });
  const page = await context.newPage();
  await page.goto(url);
  const frame = await page.waitForSelector("iframe").then((element) => element.contentFrame());
  const mark = await frame!.waitForFunction(() => performance.getEntriesByName("ready")[0]?.startTime);
  return mark.jsonValue() as Promise<number>;
}
