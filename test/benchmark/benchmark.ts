/**
 * `npm run benchmark`: speed as ratios against a yardstick in the same run, written to
 * `test/benchmark/results.md`. Aims are stated as met or missed; nothing fails because of the clock. Names
 * of groups after it measure those alone, and write nothing.
 */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { build as bundle } from "esbuild";
import { buildCommandLine, ENGINE_BESIDE } from "../../src/cli/build.mjs";
import { buildAddin } from "../../src/tools/build.ts";
import { COMMON } from "../../src/tools/bundling.ts";
import { root } from "../../src/tools/paths.ts";
import { benchWork } from "./bench-work.ts";
import type { BenchmarkGroup } from "./benchmark-group.ts";
import { office } from "./libreoffice.ts";
import { officeCells } from "./libreoffice-cells.ts";
import { paneReady } from "./pane-ready.ts";
import { run } from "./programs.ts";
import { readings } from "./readings.ts";
import { report } from "./report.ts";
import { sizes } from "./sizes.ts";

/** Apart from `dist`, which may be in use, and where the packages are found. */
const BUILT = join(root, "node_modules", ".cache", "crosshatch-benchmark");

/** What is measured runs as it is shipped: bundled, not as the tools run from source. Names are kept for the profiles. */
async function calculations(): Promise<string> {
  const outfile = join(BUILT, "cli", "calculations.mjs");
  await bundle({
    ...COMMON,
    minify: false,
    entryPoints: ["test/benchmark/calculations.ts"],
    outfile,
    format: "esm",
    platform: "node",
    target: "node20",
    plugins: [ENGINE_BESIDE],
    external: ["hyperformula"],
    banner: { js: 'import { createRequire as makeRequire } from "node:module"; const require = makeRequire(import.meta.url);' },
  });
  return outfile;
}

async function commandLine(): Promise<string> {
  await buildCommandLine(BUILT);
  return join(BUILT, "cli", "crosshatch.js");
}

const script = await calculations();
const program = await commandLine();
/** In a process of its own, so that none meets what another has left behind. */
const apart = (group: string) => async () => JSON.parse(run({ command: process.execPath, args: [script, group] })) as BenchmarkGroup;

const GROUPS: Record<string, () => Promise<BenchmarkGroup>> = {
  elementWise: apart("elementWise"),
  assignments: apart("assignments"),
  formulas: apart("formulas"),
  growth: apart("growth"),
  archive: apart("archive"),
  excel: apart("excel"),
  office: () => office(program),
  officeCells,
  readings: () => readings(program),
  sizes: async () => {
    await buildAddin(BUILT);
    return { lines: sizes(BUILT), profiles: [] };
  },
  bench: async () => ({ lines: await benchWork(), profiles: [] }),
  pane: async () => ({ lines: await paneReady(), profiles: [] }),
};

/** What cannot be measured here keeps nothing else from being. */
const unmeasured = (name: string, { message }: Error): BenchmarkGroup => ({
  lines: [{ what: `${name}: could not be measured`, measured: "–", yardstick: message.split("\n")[0]!.slice(0, 200), unit: "×" }],
  profiles: [],
});

const wanted = process.argv.slice(2);
const started = performance.now();
const found: BenchmarkGroup[] = [];
for (const [name, measure] of Object.entries(GROUPS)) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  console.error(`${name} …`);
  found.push(await measure().catch((reason: Error) => unmeasured(name, reason)));
}
const text = report(
  found.flatMap(({ lines }) => lines),
  found.flatMap(({ profiles }) => profiles),
  (performance.now() - started) / 1000,
);
if (wanted.length === 0) writeFileSync(join(root, "test", "benchmark", "results.md"), text);
console.log(text);
