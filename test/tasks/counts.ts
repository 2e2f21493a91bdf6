import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { root } from "../../src/tools/paths.ts";

/** What a run of tests came to. */
export interface Counts {
  passed: number;
  failed: number;
  skipped: number;
}

/** The runs that keep their counts for the sum over all. */
export const RUNS = ["test", "test:long", "test:libreoffice"] as const;
export type RunName = (typeof RUNS)[number];

const fileOf = (run: RunName, folder: string): string => join(folder, `${run.replace(":", "-")}-counts.json`);
const OUTPUT = join(root, "test", "output");

export function keepCounts(run: RunName, counts: Counts, folder = OUTPUT): void {
  mkdirSync(dirname(fileOf(run, folder)), { recursive: true });
  writeFileSync(fileOf(run, folder), JSON.stringify(counts));
}

export const forgetCounts = (run: RunName, folder = OUTPUT): void => rmSync(fileOf(run, folder), { force: true });

/** All runs together. One that has kept no counts did not come to its end, which counts as a failure. */
export function sumOfCounts(folder = OUTPUT): Counts {
  const sum: Counts = { passed: 0, failed: 0, skipped: 0 };
  for (const run of RUNS) {
    const file = fileOf(run, folder);
    const { passed, failed, skipped } = existsSync(file) ? (JSON.parse(readFileSync(file, "utf8")) as Counts) : { passed: 0, failed: 1, skipped: 0 };
    sum.passed += passed;
    sum.failed += failed;
    sum.skipped += skipped;
  }
  return sum;
}

/** The line that closes a run. */
export const closingLine = ({ passed, failed, skipped }: Counts): string => `${passed} passed, ${failed} failed${skipped ? `, ${skipped} skipped` : ""}`;

export const isWell = ({ passed, failed }: Counts): boolean => failed === 0 && passed > 0;
