/**
 * `npm run fuzz -- --inputs N --seed S`: damages the sample files in every way a program can think
 * of, tries them, and fails when one leads to anything but a result or a sentence. The same seed
 * makes the same inputs on every machine. `--record` keeps the figures for the contributors' page.
 */
import { writeFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { Command } from "commander";
import { FIGURES, figuresOf, keptRuns, withRun } from "./figures.ts";
import { type TriedInput, tryInput } from "./levels.ts";
import { fuzz } from "./run.ts";

const count = (text: string): number => {
  const number = Number(text);
  if (!Number.isSafeInteger(number) || number < 0) throw new Error(`${text} is no whole number`);
  return number;
};

const command = new Command("npm run fuzz --")
  .description("Damages the sample files, tries them, and looks at what comes of it.")
  .option("--inputs <count>", "how many", count, 2000)
  .option("--seed <number>", "which ones", count, 1)
  .option("--from <index>", "the first of them", count, 0)
  .option("--processes <count>", "how many at a time", count, availableParallelism())
  .option("--only <index>", "try one input in this process and show what comes of it", count)
  .option("--record", "keep the figures in test/fuzz/figures.json, beside those of the same code alone")
  .parse();
const options = command.opts<{ inputs: number; seed: number; from: number; processes: number; only?: number; record?: boolean }>();

if (options.only !== undefined) {
  console.log(await tryInput(options.seed, options.only));
} else {
  let done = 0;
  const tried = ({ index, level, what }: TriedInput): void => {
    if (what !== undefined) console.log(`input ${index} (${level}): ${what}`);
    if (++done % 1000 === 0) console.log(`${done} of ${options.inputs}`);
  };
  const fuzzed = await fuzz({ ...options, tried });
  const figures = figuresOf(options, fuzzed);
  if (fuzzed.defects.length > 0) console.log(fuzzed.defects);
  console.log(JSON.stringify(figures, null, 2));
  if (options.record) writeFileSync(FIGURES, `${JSON.stringify(withRun(keptRuns(), figures), null, 2)}\n`);
  process.exitCode = fuzzed.defects.length > 0 ? 1 : 0;
}
