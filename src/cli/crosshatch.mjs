#!/usr/bin/env node
/**
 * Starts the command line: as it was packed, or from a clone, where it installs what is missing and
 * bundles what has changed. Plain JavaScript without dependencies.
 */
import { existsSync, readdirSync, statSync } from "node:fs";
import nodeModule from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
const program = join(root, "dist", "cli", "crosshatch.js");

const OLDEST = 20;
if (Number.parseInt(process.versions.node, 10) < OLDEST) {
  console.error(`crosshatch: Node ${OLDEST} or newer is wanted, and this is ${process.versions.node}.`);
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

async function build() {
  const { buildCommandLine } = await import("./build.mjs");
  try {
    if (!isBuilt()) await buildCommandLine(join(root, "dist"));
  } catch (error) {
    if (!error.syscall) throw error;
    console.error(`crosshatch: the program cannot be built, as nothing can be written to ${join(root, "dist")} (${error.code}).`);
    process.exit(2);
  }
}

if (existsSync(join(root, "src", "cli", "build.mjs"))) {
  const { installMissing } = await import("./packages.mjs");
  if (!installMissing(root, { tests: false, say: (text) => console.error(`crosshatch: ${text}`) })) process.exit(2);
  await build();
}
// From Node 22.8 on what was compiled is kept, for the threads too, so that the next command starts sooner. It lies beside the
// program: only who may change that may change it.
const compiled = nodeModule.enableCompileCache?.(join(root, "dist", "compiled")).directory;
if (compiled) process.env.NODE_COMPILE_CACHE = compiled;
await import(pathToFileURL(program).href);
