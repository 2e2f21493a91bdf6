/**
 * `npm run long-use -- --edits N --checks N`: drives the bench and its pane in a browser as in a very
 * long day, and looks at what they hold after their garbage is collected. Fails when that grows.
 * `--record` keeps the figures for the contributors' page.
 */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { Command } from "commander";
import { root } from "../../src/tools/paths.ts";
import { stand } from "../bench/stand.ts";
import { useLong } from "./drive.ts";
import { growthOf, type LongUse } from "./figures.ts";
import { useLarge } from "./large.ts";

/** MB that may come to a thousand edits: what is measured twice at rest differs by as much. */
const NOISE = 0.5;

const command = new Command("npm run long-use --")
  .description("Drives the bench and its pane through many edits and checks, and measures what they hold.")
  .option("--edits <count>", "cells typed over", Number, 10_000)
  .option("--checks <count>", "checks made between them", Number, 1000)
  .option("--moments <count>", "how often memory is looked at", Number, 40)
  .option("--record", "keep the figures in test/long-use/figures.json")
  .parse();
const { edits, checks, moments, record } = command.opts<{ edits: number; checks: number; moments: number; record?: boolean }>();

const up = await stand();
try {
  const page = await up.page();
  const series = await useLong(page, { edits, checks, moments, told: (moment) => console.log(moment) });
  await page.close();
  // Nothing is asked about a workbook in which nothing was changed, so each of these is opened at once.
  const fresh = await up.page();
  const figures: LongUse = { edits, checks, series, growth: growthOf(series), large: await useLarge(fresh) };
  const trouble = [...page.trouble, ...fresh.trouble];
  console.table(figures.large);
  console.log(`${figures.growth} MB for a thousand edits`);
  for (const one of trouble) console.error(one);
  if (record) writeFileSync(join(root, "test", "long-use", "figures.json"), `${JSON.stringify(figures, null, 2)}\n`);
  process.exitCode = figures.growth > NOISE || trouble.length > 0 ? 1 : 0;
} finally {
  await up.close();
}
