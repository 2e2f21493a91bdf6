/**
 * Bundles the command line into plain JavaScript: the program and the thread of its engine. Plain
 * JavaScript itself, so that the launcher can build in a fresh clone.
 */
import { mkdirSync, renameSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");

/** The engine as a module: an import of its CommonJS form is read twice by Node, which costs 0.3 s in every thread. */
export const ENGINE_AS_MODULE = {
  name: "engine as module",
  setup: (build) => build.onResolve({ filter: /^@odoo\/o-spreadsheet$/ }, ({ path }) => ({ path: `${path}/dist/o_spreadsheet.esm.js`, external: true })),
};

/** Into `out`/cli; gives esbuild's account of what went in. */
export async function buildCommandLine(out) {
  const { build } = await import("esbuild");
  const made = await build({
    absWorkingDir: root,
    entryPoints: {
      crosshatch: "src/cli/main.ts",
      "engine-worker": "src/cli/engine-worker.ts",
      "book-worker": "src/cli/batch/book-worker.ts",
      "readings-worker": "src/cli/batch/readings-worker.ts",
    },
    outdir: join(out, "cli"),
    bundle: true,
    write: false,
    metafile: true,
    platform: "node",
    target: "node20",
    format: "esm",
    // Everything in one file starts four times as fast as hundreds of small ones; the engine stays a replaceable part
    // of its own, the pool finds its threads beside itself, and the database and what steers a browser are there or they are not.
    plugins: [ENGINE_AS_MODULE],
    external: ["piscina", "@duckdb/node-api", "playwright-core"],
    // Packages of the older kind ask for Node's modules by `require`.
    banner: { js: 'import { createRequire as makeRequire } from "node:module"; const require = makeRequire(import.meta.url);' },
    legalComments: "none",
    logLevel: "warning",
  });
  mkdirSync(join(out, "cli"), { recursive: true });
  for (const { path, contents } of made.outputFiles) {
    // Put in place whole, so that two that start at once never run half a file.
    const unfinished = `${path}.${process.pid}`;
    writeFileSync(unfinished, contents);
    renameSync(unfinished, path);
  }
  return made.metafile;
}
