import { type BuildOptions, build as bundle, type Metafile, type Plugin } from "esbuild";
import { root } from "./paths.ts";

/** What every bundle has in common. */
export const COMMON = {
  bundle: true,
  minify: true,
  metafile: true,
  target: "es2020",
  legalComments: "none",
  logLevel: "warning",
  // The names of parts come from paths too: seen from this folder, and not from where a link to the packages leads, they are the same on every machine.
  absWorkingDir: root,
  preserveSymlinks: true,
  jsx: "automatic",
  jsxImportSource: "preact",
  // The matrix package's modules in place of its one CommonJS file, of which nothing could be left out (8 KB gz less).
  alias: { "ml-matrix": "./node_modules/ml-matrix/src/index.js" },
} as const satisfies BuildOptions;

/**
 * The pane as `pane.js`, which gives `mountPane`: the same bytes in Excel and on the bench. Parts that
 * it imports on demand become files of their own.
 */
export async function bundlePane(out: string): Promise<Metafile> {
  const options = {
    ...COMMON,
    entryPoints: { pane: "src/pane/mount.tsx" },
    outdir: out,
    format: "esm",
    splitting: true,
    chunkNames: "pane-[name]-[hash]",
  } satisfies BuildOptions;
  return (await bundle(options)).metafile;
}

/** Leaves the pane where it is: beside the bundle that shows it. */
const PANE_BESIDE: Plugin = {
  name: "pane beside",
  setup: (build) => build.onResolve({ filter: /\/pane\/mount\.tsx$/ }, () => ({ path: "./pane.js", external: true })),
};

/** A host's own pages, by the names of their bundles, over the pane that stands beside them. */
export async function bundleOverPane(out: string, entryPoints: Record<string, string>, target = "es2020"): Promise<Metafile> {
  const options = {
    ...COMMON,
    target,
    entryPoints,
    outdir: out,
    format: "esm",
    splitting: true,
    chunkNames: "part-[name]-[hash]",
    plugins: [PANE_BESIDE],
  } satisfies BuildOptions;
  return (await bundle(options)).metafile;
}
