import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Frame } from "playwright-core";
import type {} from "../../src/bench/shared.ts";
import { serve } from "../../src/cli/bench-server.ts";
import { buildSheetSpec } from "../../src/setup/build-sheet.ts";
import { readChoices } from "../../src/setup/choices.ts";
import { launchBrowser } from "../../src/tools/browser.ts";
import { buildBench } from "../../src/tools/build-bench.ts";
import { writeXlsx } from "../../src/xlsx/write/workbook.ts";
import { BenchPage } from "../bench/stand.ts";
import { type BenchmarkLine, RUNS, show, summary } from "./measure.ts";

/** The build sheet of an engine with sixteen cylinders, its bores typed in and their taper and out-of-round limited. */
function workbook(): Uint8Array {
  const read = readChoices({ cylinders: 16 });
  if ("sentences" in read) throw new Error(read.sentences.join("; "));
  const book = buildSheetSpec(read.choices);
  const table = (name: string) => {
    const sheet = book.sheets.find(({ tables }) => tables.some((one) => one.name === name))!;
    const { row, rows, headings } = sheet.tables.find((one) => one.name === name)!;
    return { cells: sheet.cells.filter((cell) => cell.row > row && cell.row <= row + rows), headings };
  };
  const bores = table("BoreReadings");
  for (const cell of bores.cells)
    if (/ (?:thrust|pin)$/.test(bores.headings[cell.column] ?? "")) cell.content = 73 + ((cell.row * 7 + cell.column * 3) % 40) / 1000;
  const limits = table("LimitList");
  for (const { row } of limits.cells.filter(({ content }) => content === "Taper" || content === "Out-of-round"))
    for (const cell of limits.cells) if (cell.row === row && limits.headings[cell.column] === "Upper") cell.content = 0.02;
  return writeXlsx(book);
}

/** What a person waits for on the bench, in a real browser: from the click or key until the frame in which the answer is painted, and saving until the file is there. */
export async function benchWork(): Promise<BenchmarkLine[]> {
  const folder = mkdtempSync(join(tmpdir(), "crosshatch-bench-"));
  await buildBench(folder);
  const server = await serve(folder, 0);
  const browser = await launchBrowser();
  const took = { first: [] as number[], again: [] as number[], key: [] as number[], save: [] as number[] };
  try {
    for (let run = 0; run < RUNS; run++) {
      const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
      // Functions that run in the page come with calls of it from the loader of TypeScript, which keeps their names.
      await context.addInitScript("globalThis.__name = (named) => named;");
      const bench = new BenchPage(await context.newPage(), server.url);
      await bench.open();
      await bench.give("sixteen.xlsx", workbook());
      await bench.page.waitForFunction(() => document.title.startsWith("sixteen.xlsx"));
      const pane = bench.page.frames().find((frame) => frame.url().endsWith("/pane.html"))!;
      await pane.locator("button.primary").first().waitFor();
      took.first.push(await checked(pane));
      took.key.push(await keyToVerdict(bench));
      took.again.push(await checked(pane));
      const started = performance.now();
      await bench.saved();
      took.save.push(performance.now() - started);
      await context.close();
    }
  } finally {
    await browser.close();
    await server.close();
    rmSync(folder, { recursive: true });
  }
  const line = (what: string, key: keyof typeof took, aim: number): BenchmarkLine => {
    const timing = summary(took[key]);
    return { what: `bench, build sheet of 16 cylinders: ${what}`, measured: show(timing), yardstick: "–", value: timing.median, unit: "ms", aim };
  };
  return [
    line("first check", "first", 500),
    line("check again", "again", 150),
    line("from a key to its verdict in the cell", "key", 50),
    line("Save, until the browser hands the file over", "save", 1000),
  ];
}

/** From a click on Check until what it found is painted. */
const checked = (pane: Frame): Promise<number> =>
  pane.evaluate(async () => {
    const frame = () => new Promise(requestAnimationFrame);
    const button = document.querySelector<HTMLButtonElement>("#view-check button.primary")!;
    const start = performance.now();
    button.click();
    do await frame();
    while (button.getAttribute("aria-disabled") !== "false" || document.querySelector(".counts") === null);
    await new Promise((done) => setTimeout(done));
    return performance.now() - start;
  });

/** From Enter in a reading of the first bore until the verdict on its taper has changed and is painted. */
async function keyToVerdict(bench: BenchPage): Promise<number> {
  const { page } = bench;
  const place = await page.evaluate(() => {
    const { model } = window.crosshatchBench!;
    const { getters } = model;
    const sheetId = getters.getSheetIds().find((id) => getters.getSheetName(id) === "Bores")!;
    model.dispatch("ACTIVATE_SHEET", { sheetIdFrom: getters.getActiveSheetId(), sheetIdTo: sheetId });
    const cells = getters.getEvaluatedCellsPositions(sheetId);
    const text = (position: (typeof cells)[number]) => String(getters.getEvaluatedCell(position).value);
    const head = cells.find((position) => text(position) === "Taper verdict")!;
    const first = cells.find((position) => text(position) === "Top thrust")!;
    return {
      name: getters.zoneToXC(sheetId, { left: first.col, right: first.col, top: first.row + 1, bottom: first.row + 1 }),
      sheetId,
      col: head.col,
      row: head.row + 1,
    };
  });
  await bench.click(place.name);
  await page.keyboard.type("73.5");
  // Listening before the key is pressed.
  const heard = await page.evaluateHandle(({ name: _, ...position }) => {
    const { getters } = window.crosshatchBench!.model;
    const shown = () => String(getters.getEvaluatedCell(position).value);
    const before = shown();
    const took = new Promise<number>((done) => {
      const onKey = () => {
        const start = performance.now();
        const look = () => (shown() === before ? requestAnimationFrame(look) : setTimeout(() => done(performance.now() - start)));
        requestAnimationFrame(look);
      };
      addEventListener("keydown", onKey, { capture: true, once: true });
    });
    return { took };
  }, place);
  await page.keyboard.press("Enter");
  return heard.evaluate(({ took }) => took);
}
