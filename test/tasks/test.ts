/**
 * `npm test`: types, lint, then every test; closes with a line that counts them. Arguments go on to
 * jest, so `npm test -- taper` runs one file.
 */
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { root } from "../../src/tools/paths.ts";

const require = createRequire(import.meta.url);
const RESULTS = join(root, "test", "output", "results.json");

function step(name: string, args: string[], env: NodeJS.ProcessEnv = process.env): boolean {
  console.log(`\n${name}`);
  return spawnSync(process.execPath, args, { cwd: root, stdio: "inherit", env }).status === 0;
}

const typed = step("Types", [require.resolve("typescript/bin/tsc"), "--noEmit", "-p", "."]);
const linted = step("Lint", ["--import", "tsx", "test/tasks/lint.ts"]);

mkdirSync(join(root, "test", "output"), { recursive: true });
rmSync(RESULTS, { force: true });
const modules = [process.env.NODE_OPTIONS, "--experimental-vm-modules"].filter(Boolean).join(" ");
// Each test file loads its modules anew, and what it has loaded goes late.
const room = "--max-old-space-size=8192";
const tested = step("Tests", [room, join(root, "node_modules", "jest", "bin", "jest.js"), "--json", "--outputFile", RESULTS, ...process.argv.slice(2)], {
  ...process.env,
  NODE_OPTIONS: modules,
});

const counts = existsSync(RESULTS) ? JSON.parse(readFileSync(RESULTS, "utf8")) : { numPassedTests: 0, numFailedTests: 1, numPendingTests: 0 };
if (!typed) console.log("The types do not fit: see Types above.");
if (!linted) console.log("Lint found something: see Lint above.");
const skipped = counts.numPendingTests + (counts.numTodoTests ?? 0);
// A suite that cannot even load has no failed test of its own.
const failed = counts.numFailedTests + (counts.numRuntimeErrorTestSuites ?? 0) + (typed ? 0 : 1) + (linted ? 0 : 1);
console.log(`\n${counts.numPassedTests} passed, ${failed} failed${skipped ? `, ${skipped} skipped` : ""}`);
process.exitCode = typed && linted && tested && failed === 0 && counts.numPassedTests > 0 ? 0 : 1;
