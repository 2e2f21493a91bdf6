import type { BenchPage } from "../bench/stand.ts";
import { type CellXml, workbookBytes } from "../xlsx/workbook-bytes.ts";
import { memory, press } from "./drive.ts";
import type { LongUse } from "./figures.ts";

const HEAD: CellXml[] = ["Cylinder", "Measured", "Lower", "Upper", "Verdict"];
const line = (row: number): CellXml[] => [row, 73 + (row % 90) / 1000, 73, 73.08, { f: `HATCH.VERDICT(B${row + 1},C${row + 1},D${row + 1})` }];
const sheet = (name: string, rows: number) => ({ name, cells: [HEAD, ...Array.from({ length: rows }, (_, i) => line(i + 1))] });

/** Workbooks as large as a shop may come to have. Invented readings. */
export const LARGE: Readonly<Record<string, () => Uint8Array>> = {
  "16 cylinders": () => workbookBytes({ sheets: ["Bores", "Pistons", "Rings", "Valves"].map((name) => sheet(name, 16 * 12)) }),
  "10,000 rows": () => workbookBytes({ sheets: [sheet("Readings", 10_000)] }),
  "100 sheets": () => workbookBytes({ sheets: Array.from({ length: 100 }, (_, i) => sheet(`Engine ${i + 1}`, 60)) }),
};

/** Opens, checks and scrolls through each; in seconds. */
export async function useLarge(bench: BenchPage, names = Object.keys(LARGE)): Promise<LongUse["large"]> {
  const session = await bench.page.context().newCDPSession(bench.page);
  await session.send("HeapProfiler.enable");
  await session.send("Performance.enable");
  const found: LongUse["large"] = [];
  for (const workbook of names) {
    const file = `${workbook}.xlsx`;
    const bytes = LARGE[workbook]!();
    const opened = await timed(() => open(bench, file, bytes));
    const checked = await timed(() => press(bench));
    const scrolled = await timed(() => scroll(bench));
    found.push({ workbook, opened, checked, scrolled, megabytes: (await memory(session)).megabytes });
  }
  return found;
}

/** Until the workbook is shown, and a new pane beside it. */
async function open(bench: BenchPage, file: string, bytes: Uint8Array): Promise<void> {
  const pane = bench.page.locator("#pane");
  await pane.evaluate((frame: HTMLIFrameElement) => frame.contentDocument!.body.classList.add("before"));
  await bench.give(file, bytes);
  await bench.page.waitForFunction((name) => document.querySelector("#book")?.textContent === name, file, { timeout: 120_000 });
  await bench.pane.locator("body:not(.before) .primary").waitFor({ timeout: 120_000 });
}

async function scroll({ page }: BenchPage): Promise<void> {
  const grid = (await page.locator(".o-grid").boundingBox())!;
  await page.mouse.move(grid.x + grid.width / 2, grid.y + grid.height / 2);
  for (let turn = 0; turn < 20; turn++) await page.mouse.wheel(0, turn < 15 ? 5000 : -5000);
  // A frame is drawn after all of it.
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
}

async function timed(work: () => Promise<void>): Promise<number> {
  const started = performance.now();
  await work();
  return Math.round((performance.now() - started) / 100) / 10;
}
