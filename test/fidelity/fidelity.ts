/**
 * `npm run fidelity -- FOLDER`: calculates every .xlsx of a folder and compares its formulas with the values that the program which
 * saved it has left. `--functions PATTERN` names files whose purpose is to test functions, which are counted apart; it can be given
 * several times. `--all` lists what differs.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { globSync } from "tinyglobby";
import { UnreadableFile } from "../../src/xlsx/file-limits.ts";
import { compareWithKept, fidelityTable, newFidelity } from "./compare.ts";

const { positionals, values } = parseArgs({
  allowPositionals: true,
  options: { all: { type: "boolean" }, functions: { type: "string", multiple: true, default: [] } },
});
const [folder = "."] = positionals;
const { log } = console;
for (const way of ["info", "warn", "error", "debug"] as const) console[way] = () => {};

const unread: string[] = [];
const find = (patterns: string[]): string[] => globSync(patterns, { cwd: folder }).sort();
const files = find(["**/*.xlsx"]);
const testing = new Set(values.functions.length > 0 ? find(values.functions) : []);
const kinds = [
  { files: files.filter((file) => !testing.has(file)), heading: testing.size > 0 ? "Workbooks that do not test functions:" : "" },
  { files: files.filter((file) => testing.has(file)), heading: "Workbooks that test functions:" },
];
for (const { files, heading } of kinds) {
  if (files.length === 0) continue;
  const counted = newFidelity();
  for (const file of files) {
    try {
      compareWithKept(readFileSync(join(folder, file)), file, counted);
    } catch (reason) {
      unread.push(`${file} ${reason instanceof UnreadableFile ? reason.reason : `led to a fault: ${reason instanceof Error ? reason.message : reason}`}`);
    }
  }
  log(`${heading && `${heading}\n\n`}${fidelityTable(counted)}${values.all ? `\n\n${counted.differing.join("\n")}` : ""}\n`);
}
log(`${files.length - unread.length} of ${files.length} workbooks were read.${unread.map((why) => `\n- ${why}`).join("")}`);
