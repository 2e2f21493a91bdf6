/**
 * The add-in's icons, drawn from src/addin/icon.svg by the tests' browser into src/addin/icons/.
 * The pictures are kept in the repository, because a build must not need a browser; run this after
 * changing the drawing: `npx tsx src/tools/icons.ts`.
 */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { launchBrowser } from "./browser.ts";
import { root } from "./paths.ts";

export const ICONS = join(root, "src", "addin", "icons");
/** Ribbon: 16, 32, 80. List of add-ins: 32, and 64 on dense screens. 128 for catalogues. */
export const ICON_SIZES = [16, 32, 64, 80, 128];

/** The drawing as PNG files on a clear ground, by size. */
export async function drawIcons(sizes: readonly number[] = ICON_SIZES): Promise<Map<number, Buffer>> {
  const svg = readFileSync(join(root, "src", "addin", "icon.svg"), "utf8");
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage({ deviceScaleFactor: 1 });
    await page.setContent(`<style>html,body{margin:0;background:transparent}svg{display:block;width:100vw;height:100vh}</style>${svg}`);
    const drawn = new Map<number, Buffer>();
    for (const size of sizes) {
      await page.setViewportSize({ width: size, height: size });
      drawn.set(size, await page.screenshot({ omitBackground: true, type: "png" }));
    }
    return drawn;
  } finally {
    await browser.close();
  }
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  mkdirSync(ICONS, { recursive: true });
  for (const [size, picture] of await drawIcons()) writeFileSync(join(ICONS, `icon-${size}.png`), picture);
}
