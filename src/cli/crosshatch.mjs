#!/usr/bin/env node
/**
 * Starts the command line from a clone: installs what is missing, bundles what has changed, runs it.
 * Plain JavaScript without dependencies.
 */
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
const program = join(root, "dist", "cli", "crosshatch.js");

function installMissing() {
  const { dependencies } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
  const packages = join(root, "node_modules");
  if (Object.keys(dependencies).every((name) => existsSync(join(packages, name, "package.json")))) return;
  console.error("crosshatch: installing the packages that it needs, once …");
  // `npm ci` empties node_modules first, so an existing folder is completed by `npm install` instead.
  const args = existsSync(packages) ? ["install", "--no-save"] : ["ci", "--omit=dev"];
  const npm = process.env.npm_execpath;
  const [command, first] = npm?.endsWith("npm-cli.js") ? [process.execPath, [npm]] : ["npm", []];
  const options = { cwd: root, stdio: ["ignore", 2, 2], shell: command === "npm" && process.platform === "win32" };
  if (spawnSync(command, [...first, ...args, "--no-audit", "--no-fund"], options).status === 0) return;
  console.error("crosshatch: the packages could not be installed; see above. Without network, install once where there is one.");
  process.exit(2);
}

/** When the newest of the sources was changed. */
function newest(folder) {
  let time = 0;
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    time = Math.max(time, entry.isDirectory() ? newest(path) : statSync(path).mtimeMs);
  }
  return time;
}

function isBuilt() {
  const built = statSync(program, { throwIfNoEntry: false })?.mtimeMs ?? 0;
  return built > Math.max(newest(join(root, "src")), statSync(join(root, "package.json")).mtimeMs);
}

installMissing();
if (!isBuilt()) await (await import("./build.mjs")).buildCommandLine(join(root, "dist"));
await import(pathToFileURL(program).href);
