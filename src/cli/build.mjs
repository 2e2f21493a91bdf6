/**
 * Bundles the command line into plain JavaScript: the program and the thread of its engine. Plain
 * JavaScript itself, so that the launcher can build in a fresh clone.
 */
import { mkdirSync, readdirSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");

/** The engine as a module: an import of its CommonJS form is read twice by Node, which costs 0.3 s in every thread. */
const ENGINE_MODULE = "@odoo/o-spreadsheet/dist/o_spreadsheet.esm.js";
const ENGINE = "o-spreadsheet";

/** Leaves the engine a file of its own beside the program, which anyone may replace by their own copy (it is under the LGPL). */
export const ENGINE_BESIDE = {
  name: "engine beside",
  setup: (build) => build.onResolve({ filter: /^@odoo\/o-spreadsheet$/ }, () => ({ path: `./${ENGINE}.js`, external: true })),
};

/** What is started by name, or called by who gives it streams of its own (main); the program itself last: it is what tells that all is there. */
const STARTED = {
  "grid-worker": "src/cli/grid-worker.ts",
  "workbook-worker": "src/cli/workbook-worker.ts",
  main: "src/cli/main.ts",
  crosshatch: "src/cli/start.ts",
};

/** Parts of earlier builds stay so long, as a program that runs may still ask for them. */
const DAY = 86_400_000;

/** What the program and its engine have in common. */
const COMMON = {
  absWorkingDir: root,
  bundle: true,
  write: false,
  metafile: true,
  platform: "node",
  target: "node20",
  format: "esm",
  legalComments: "none",
  logLevel: "warning",
};

/** Into `out`/cli; gives esbuild's account of what went in. */
export async function buildCommandLine(out) {
  const { build } = await import("esbuild");
  const folder = join(out, "cli");
  const engine = await build({ ...COMMON, entryPoints: { [ENGINE]: ENGINE_MODULE }, outdir: folder, minify: true });
  const program = await build({
    ...COMMON,
    entryPoints: STARTED,
    outdir: folder,
    // A few files start four times as fast as hundreds of small ones, and a command reads only those that it needs.
    splitting: true,
    // The pool finds its threads beside itself, and the database and what steers a browser are there or they are not.
    plugins: [ENGINE_BESIDE],
    external: ["piscina", "@duckdb/node-api", "playwright-core"],
    // Packages of the older kind ask for Node's modules by `require`.
    banner: { js: 'import { createRequire as makeRequire } from "node:module"; const require = makeRequire(import.meta.url);' },
  });
  const started = Object.keys(STARTED).map((name) => `${name}.js`);
  const parts = [...engine.outputFiles, ...program.outputFiles].map(({ path, contents }) => ({ name: basename(path), contents }));
  mkdirSync(folder, { recursive: true });
  for (const { name, contents } of parts.sort((a, b) => started.indexOf(a.name) - started.indexOf(b.name))) {
    // Put in place whole, so that two that start at once never run half a file.
    const unfinished = join(folder, `${name}.${process.pid}`);
    writeFileSync(unfinished, contents);
    renameSync(unfinished, join(folder, name));
  }
  removeOld(folder, new Set(parts.map(({ name }) => name)));
  // What Node kept compiled of earlier parts is of no use.
  rmSync(join(out, "compiled"), { recursive: true, force: true });
  return { inputs: { ...engine.metafile.inputs, ...program.metafile.inputs }, outputs: { ...engine.metafile.outputs, ...program.metafile.outputs } };
}

function removeOld(folder, names) {
  for (const name of readdirSync(folder)) {
    const path = join(folder, name);
    if (!names.has(name) && Date.now() - (statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? Number.NaN) > DAY) rmSync(path, { force: true });
  }
}
