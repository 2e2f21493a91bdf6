/** The picture of the bench in README, by the browser of the tests: `npm run picture`. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { serve } from "../src/cli/bench-server.ts";
import { launchBrowser } from "../src/tools/browser.ts";
import { buildBench } from "../src/tools/build-bench.ts";
import { root } from "../src/tools/paths.ts";

const folder = mkdtempSync(join(tmpdir(), "crosshatch-picture-"));
await buildBench(folder);
const server = await serve(folder, 0);
const browser = await launchBrowser();
try {
  const page = await browser.newPage({ viewport: { width: 1280, height: 720 } });
  await page.goto(server.url);
  await page.getByRole("button", { name: "Look round in the sample" }).click();
  const pane = page.frameLocator("iframe");
  await pane.getByRole("button", { name: "Check", exact: true }).click();
  await pane.locator(".counts").waitFor();
  await page.screenshot({ path: join(root, "samples", "bench.png") });
} finally {
  await browser.close();
  await server.close();
  rmSync(folder, { recursive: true });
}
