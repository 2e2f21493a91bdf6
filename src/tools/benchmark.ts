/**
 * `npm run benchmark`: speed as ratios against a yardstick in the same run, written to
 * `benchmark/results.md`. Aims are stated as met or missed; nothing fails because of the clock.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { cpus, platform, release, totalmem } from "node:os";
import { join } from "node:path";
import { build as bundle } from "esbuild";
import type * as calculations from "./benchmark/calculations.ts";
import { type Line, RUNS } from "./benchmark/measure.ts";
import { paneReady } from "./benchmark/pane.ts";
import { sizes } from "./benchmark/sizes.ts";
import { build, DIST } from "./build.ts";
import { COMMON } from "./bundling.ts";
import { root } from "./paths.ts";

const figure = ({ value, unit }: Line): string => (unit === "ratio" ? `${value.toFixed(2)} ×` : `${value.toFixed(1)} ${unit}`);

function report(lines: readonly Line[]): string {
  const processor = cpus()[0]?.model ?? "unknown processor";
  return [
    "# Speed",
    "",
    `Made by \`npm run benchmark\` on ${processor}, ${cpus().length} cores, ${(totalmem() / 2 ** 30).toFixed(0)} GiB, ${platform()} ${release()}, Node ${process.version}. Medians of at least 5 runs (element-wise: ${RUNS}), least and most in brackets; ratios are to the yardstick of the same run.`,
    "",
    "| what | ours | yardstick | figure | aim | |",
    "|---|---|---|---|---|---|",
    ...lines.map(
      (line) =>
        `| ${line.what} | ${line.measured} | ${line.yardstick} | ${figure(line)} | ≤ ${line.aim}${line.unit === "ratio" ? " ×" : ` ${line.unit}`} | ${line.value <= line.aim ? "met" : "**missed**"} |`,
    ),
    "",
    "Yardsticks: for element-wise functions a bare loop over typed arrays that computes the same values and checks nothing; for workbooks the same sheet in native formulas in the same engine.",
    "",
  ].join("\n");
}

/** What is measured runs as it is shipped: bundled, not as the tools run from source. */
async function calculated(): Promise<typeof calculations> {
  const outfile = join(root, "node_modules", ".cache", "crosshatch-benchmark.cjs");
  await bundle({
    ...COMMON,
    entryPoints: ["src/tools/benchmark/calculations.ts"],
    outfile,
    format: "cjs",
    platform: "node",
    external: ["@odoo/o-spreadsheet"],
  });
  return createRequire(import.meta.url)(outfile);
}

await build();
const { elementWise, assignments, tenThousandFormulas } = await calculated();
const lines = [...elementWise(), ...assignments(), ...tenThousandFormulas(), ...sizes(DIST), ...(await paneReady())];
const text = report(lines);
mkdirSync(join(root, "benchmark"), { recursive: true });
writeFileSync(join(root, "benchmark", "results.md"), text);
console.log(text);
