/**
 * `npm run fidelity -- FOLDER`: calculates every .xlsx of a folder and compares its formulas with the values that the program which
 * saved it has left. `--all` lists what differs.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { globSync } from "tinyglobby";
import { UnreadableFile } from "../../src/xlsx/file-limits.ts";
import { compareWithKept, fidelityTable, newFidelity } from "./compare.ts";

const [folder = ".", ...flags] = process.argv.slice(2);
const { log } = console;
for (const way of ["info", "warn", "error", "debug"] as const) console[way] = () => {};

const counted = newFidelity();
const unread: string[] = [];
const files = globSync("**/*.xlsx", { cwd: folder }).sort();
for (const file of files) {
  try {
    compareWithKept(readFileSync(join(folder, file)), file, counted);
  } catch (reason) {
    unread.push(`${file} ${reason instanceof UnreadableFile ? reason.reason : `led to a fault: ${reason instanceof Error ? reason.message : reason}`}`);
  }
}
log(fidelityTable(counted));
log(`\n${files.length - unread.length} of ${files.length} workbooks were read.${unread.map((why) => `\n- ${why}`).join("")}`);
if (flags.includes("--all")) log(`\n${counted.differing.join("\n")}`);
