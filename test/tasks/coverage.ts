/**
 * `npm run coverage`: how much of the code that calculates and judges its tests run, kept in test/tasks/coverage.json. A file that none
 * of them loads is not counted: jest cannot tell how many statements it has, as this project translates its TypeScript.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { root } from "../../src/tools/paths.ts";

export const FOLDERS = ["core", "functions", "math", "vocabulary", "formula", "layout", "check", "compare", "plan", "setup"].map((name) => `src/${name}`);
export const TESTS = [...FOLDERS.map((folder) => folder.replace("src/", "test/")), "test/reference"];

export type Coverage = { folder: string; statements: number; branches: number }[];

/** As istanbul keeps it for one file: how often each statement and each way of each branch was run. */
export interface FileCoverage {
  s: Record<string, number>;
  b: Record<string, number[]>;
}

/** The shares of each folder, of files named from the project's folder. */
export function sharesOf(files: Readonly<Record<string, FileCoverage>>): Coverage {
  return FOLDERS.map((folder) => {
    const own = Object.entries(files).filter(([path]) => path.startsWith(`${folder}/`));
    const statements = own.flatMap(([, { s }]) => Object.values(s));
    const branches = own.flatMap(([, { b }]) => Object.values(b).flat());
    return { folder, statements: share(statements), branches: share(branches) };
  });
}

function share(runs: readonly number[]): number {
  const run = runs.filter((times) => times > 0).length;
  return runs.length === 0 ? 100 : Math.floor((1000 * run) / runs.length) / 10;
}

function measured(): Coverage {
  const folder = mkdtempSync(join(tmpdir(), "crosshatch-coverage-"));
  const wanted = FOLDERS.flatMap((one) => ["--collectCoverageFrom", `${one}/**/*.ts`]);
  const args = ["--coverage", "--coverageReporters", "json", "--coverageDirectory", folder, ...wanted, ...TESTS];
  const options = { cwd: root, stdio: "inherit", env: { ...process.env, NODE_OPTIONS: "--experimental-vm-modules" } } as const;
  try {
    if (spawnSync(process.execPath, [join(root, "node_modules", "jest", "bin", "jest.js"), ...args], options).status !== 0)
      throw new Error("a test has failed");
    const found = JSON.parse(readFileSync(join(folder, "coverage-final.json"), "utf8")) as Record<string, FileCoverage>;
    const named = Object.entries(found).map(([path, file]) => [
      path
        .slice(root.length + 1)
        .replaceAll("\\", "/")
        .replace(/^\//, ""),
      file,
    ]);
    return sharesOf(Object.fromEntries(named));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const coverage = measured();
  console.table(coverage);
  writeFileSync(join(root, "test", "tasks", "coverage.json"), `${JSON.stringify(coverage, null, 2)}\n`);
}
