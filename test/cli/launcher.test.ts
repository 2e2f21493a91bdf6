import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, readFileSync, rmSync, symlinkSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { folderOf } from "./run.ts";

const ROOT = join(import.meta.dirname, "..", "..");

/** A clone in small: the launcher, a program that says one word, and an npm that links the packages that are here. */
function clone(): string {
  const { version } = JSON.parse(readFileSync(join(ROOT, "node_modules", "esbuild", "package.json"), "utf8"));
  const folder = folderOf({
    "package.json": JSON.stringify({ type: "module", dependencies: {}, devDependencies: { esbuild: version, jest: "*" }, builtFrom: ["esbuild"] }),
    "package-lock.json": JSON.stringify({ packages: { "node_modules/esbuild": { version } } }),
  });
  mkdirSync(join(folder, "src", "cli"), { recursive: true });
  for (const file of ["crosshatch.mjs", "packages.mjs", "build.mjs"]) cpSync(join(ROOT, "src", "cli", file), join(folder, "src", "cli", file));
  for (const part of ["grid-worker.ts", "workbook-worker.ts", "main.ts"]) writeFileSync(join(folder, "src", "cli", part), "export {};");
  const npm = `import { symlinkSync, appendFileSync } from "node:fs";
    appendFileSync(${JSON.stringify(join(folder, "asked.txt"))}, process.argv.slice(2).join(" "));
    symlinkSync(${JSON.stringify(join(ROOT, "node_modules"))}, "node_modules", "junction");`;
  mkdirSync(join(folder, "npm"));
  writeFileSync(join(folder, "npm", "npm-cli.js"), npm);
  return folder;
}

function says(folder: string, word: string, time: Date): void {
  const start = join(folder, "src", "cli", "start.ts");
  writeFileSync(start, `const word: string = ${JSON.stringify(word)}; console.log(word, ...process.argv.slice(2)); process.exitCode = 1;`);
  utimesSync(start, time, time);
}

function run(folder: string, npm = join(folder, "npm", "npm-cli.js")) {
  const env = { ...process.env, NODE_OPTIONS: "", npm_execpath: npm };
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(folder, "src", "cli", "crosshatch.mjs"), "a b"], { env, encoding: "utf8" });
  return { status, stdout, stderr };
}

const folders: string[] = [];
const fresh = (): string => {
  folders.push(clone());
  return folders.at(-1)!;
};
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true });
});

test("a fresh clone installs with a word on standard error, builds and runs; the next time it only runs", () => {
  const folder = fresh();
  says(folder, "one", new Date());
  expect(run(folder)).toEqual({ status: 1, stdout: "one a b\n", stderr: "crosshatch: Installing 1 missing package …\n" });
  expect(readFileSync(join(folder, "asked.txt"), "utf8")).toMatch(
    /^install --no-save --save-prod --omit=dev --loglevel=error esbuild@[\d.]+ --no-audit --no-fund$/,
  );
  expect(run(folder)).toEqual({ status: 1, stdout: "one a b\n", stderr: "" });
});

test("where the packages for tests are they stay: all are completed", () => {
  const folder = fresh();
  says(folder, "one", new Date());
  const lock = JSON.parse(readFileSync(join(folder, "package-lock.json"), "utf8"));
  lock.packages["node_modules/jest"] = { version: "1.2.3" };
  writeFileSync(join(folder, "package-lock.json"), JSON.stringify(lock));
  mkdirSync(join(folder, "node_modules", "jest"), { recursive: true });
  writeFileSync(join(folder, "node_modules", "jest", "package.json"), '{ "version": "1.2.3" }');
  run(folder);
  expect(readFileSync(join(folder, "asked.txt"), "utf8")).toBe("install --no-save --no-audit --no-fund");
});

test("a program older than its sources is built again", () => {
  const folder = fresh();
  symlinkSync(join(ROOT, "node_modules"), join(folder, "node_modules"), "junction");
  says(folder, "one", new Date());
  expect(run(folder).stdout).toBe("one a b\n");
  says(folder, "two", new Date(0));
  expect(run(folder).stdout).toBe("one a b\n");
  says(folder, "two", new Date(Date.now() + 60_000));
  expect(run(folder).stdout).toBe("two a b\n");
});

test("packages that cannot be installed are said in a sentence, which leaves 2", () => {
  const folder = fresh();
  says(folder, "one", new Date());
  writeFileSync(join(folder, "npm", "npm-cli.js"), "process.exit(1)");
  const { status, stdout, stderr } = run(folder);
  expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
  expect(stderr).toContain("crosshatch: The packages could not be installed");
});

test("a clone that nothing can be written to is said in a sentence, which leaves 2", () => {
  const folder = fresh();
  symlinkSync(join(ROOT, "node_modules"), join(folder, "node_modules"), "junction");
  says(folder, "one", new Date());
  // Also for root, who may write everywhere: where the folder should be there is a file.
  writeFileSync(join(folder, "dist"), "");
  const { status, stdout, stderr } = run(folder);
  expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
  expect(stderr).toMatch(/^crosshatch: the program cannot be built, as nothing can be written to .*dist \((?:ENOTDIR|EEXIST)\)\.\n$/);
});
