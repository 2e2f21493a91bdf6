/**
 * `npm test`: types, lint, then every test but the long ones; `npm run test:long`: those; `npm run test:libreoffice`: those in the cells
 * of LibreOffice, which it installs where it may. Each closes with a line that counts them.
 * Arguments go on to jest, so `npm test -- taper` runs one file.
 */
import { spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { root } from "../../src/tools/paths.ts";
import { type Installed, installed } from "../libreoffice/install.ts";
import { type Counts, closingLine, forgetCounts, isWell, keepCounts, type RunName } from "./counts.ts";

const require = createRequire(import.meta.url);
const given = process.argv.slice(2);
/** Runs apart: their names, and how their files end. */
const APART: Readonly<Record<string, readonly [run: RunName, ending: string, title: string]>> = {
  "--long": ["test:long", "long", "Long tests"],
  "--libreoffice": ["test:libreoffice", "office", "Tests in LibreOffice"],
};
const apart = APART[given[0] ?? ""];
const run = apart?.[0] ?? "test";
const RESULTS = join(root, "test", "output", "results.json");

function step(name: string, args: string[], env: NodeJS.ProcessEnv = process.env): boolean {
  console.log(`\n${name}`);
  return spawnSync(process.execPath, args, { cwd: root, stdio: "inherit", env }).status === 0;
}

/** A step beside others: what it prints comes in one piece, at its end. */
async function stepBeside(name: string, args: string[]): Promise<boolean> {
  const running = spawn(process.execPath, args, { cwd: root, stdio: ["ignore", "pipe", "pipe"] });
  const printed: Buffer[] = [];
  for (const output of [running.stdout, running.stderr]) output.on("data", (piece: Buffer) => printed.push(piece));
  const [code] = await once(running, "close");
  console.log(`\n${name}\n${Buffer.concat(printed)}`.trimEnd());
  if (code !== 0) console.log(`${name} found something: see above.`);
  return code === 0;
}

/** How many of types and lint found something. They have been looked at where the other tests ran. */
async function checksOfCode(): Promise<number> {
  const went = await Promise.all([
    stepBeside("Types", [require.resolve("typescript/bin/tsc"), "--noEmit", "-p", "."]),
    stepBeside("Lint", ["--import", "tsx", "test/tasks/lint.ts"]),
  ]);
  return went.filter((isWell) => !isWell).length;
}

function tests(): Counts {
  mkdirSync(join(root, "test", "output"), { recursive: true });
  rmSync(RESULTS, { force: true });
  const NODE_OPTIONS = [process.env.NODE_OPTIONS, "--experimental-vm-modules"].filter(Boolean).join(" ");
  // Each test file loads its modules anew, and what it has loaded goes late. Room for what is soon thrown away saves a fifth of the processor's time.
  const memory = ["--max-old-space-size=8192", "--max-semi-space-size=64"];
  const jest = [...memory, join(root, "node_modules", "jest", "bin", "jest.js"), "--json", "--outputFile", RESULTS];
  const which = apart ? ["--testMatch", `<rootDir>/test/**/*.${apart[1]}.ts`, ...given.slice(1)] : given;
  const ended = step(apart?.[2] ?? "Tests", [...jest, ...which], { ...process.env, NODE_OPTIONS });
  if (!existsSync(RESULTS)) return { passed: 0, failed: 1, skipped: 0 };
  const { numPassedTests, numFailedTests, numPendingTests, numTodoTests = 0, numRuntimeErrorTestSuites = 0 } = JSON.parse(readFileSync(RESULTS, "utf8"));
  // A suite that cannot even load has no failed test of its own.
  const failed = numFailedTests + numRuntimeErrorTestSuites;
  return { passed: numPassedTests, failed: failed || (ended ? 0 : 1), skipped: numPendingTests + numTodoTests };
}

forgetCounts(run);
const office: Installed = run === "test:libreoffice" ? installed() : { isThere: true };
if (!office.isThere) console.log(`\n${office.why}: the tests in LibreOffice were not run.`);
const faults = apart ? 0 : await checksOfCode();
const found = office.isThere ? tests() : { passed: 0, failed: office.mustBe ? 1 : 0, skipped: 1 };
const counts = { ...found, failed: found.failed + faults };
keepCounts(run, counts);
if (run === "test") console.log("\nNot run here: the long tests (npm run test:long) and those in LibreOffice (npm run test:libreoffice).");
console.log(`\n${closingLine(counts)}`);
process.exitCode = isWell(counts) || (!office.isThere && !office.mustBe) ? 0 : 1;
