/**
 * `npm run build`: everything that is served or run, into dist/, every file local. Other tools call
 * `build` for another folder or another address.
 */
import { copyFileSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { pathToFileURL } from "node:url";
import { gzipSync } from "node:zlib";
import { type BuildOptions, build as bundle, type Metafile, type Plugin } from "esbuild";
import { buildBench } from "./build-bench.ts";
import { bundleOverPane, bundlePane, COMMON } from "./bundling.ts";
import { functionsJson } from "./functions-json.ts";
import { licencesOf, packagesIn } from "./licences.ts";
import { copyOfficeJs } from "./office-js.ts";
import { root } from "./paths.ts";

export const DIST = join(root, "dist");

/** Where office.js comes from: beside the add-in, or from Microsoft's content delivery network. */
export type OfficeJs = "local" | "cdn";
const CDN = "https://appsforoffice.microsoft.com";
const OFFICE_JS: Record<OfficeJs, { src: string; origin: string }> = {
  local: { src: "office-js/office.js", origin: "'self'" },
  cdn: { src: `${CDN}/lib/1/hosted/office.js`, origin: `'self' ${CDN}` },
};

/** The add-in's own files into `out`; says which packages went into them. */
export async function buildAddin(out: string, officeJs: OfficeJs = "local"): Promise<string[]> {
  mkdirSync(out, { recursive: true });
  const made = await Promise.all([bundleFunctions(out), bundlePane(out), bundleOverPane(out, { "pane-excel": "src/addin/pane.ts" })]);
  write(out, "functions.json", `${JSON.stringify(functionsJson(), null, 2)}\n`);
  const page = readFileSync(join(root, "src", "addin", "pane.html"), "utf8");
  const { src, origin } = OFFICE_JS[officeJs];
  write(out, "pane.html", page.replace("{{office.js}}", src).replace("{{script-src}}", origin));
  copy(join("src", "addin", "support.html"), join(out, "support.html"));
  for (const icon of readdirSync(join(root, "src", "addin", "icons"))) copy(join("src", "addin", "icons", icon), join(out, "icons", icon));
  if (officeJs === "local") copyOfficeJs(join(out, "office-js"));
  const packages = packagesIn(made);
  return officeJs === "local" ? [...packages, "node_modules/@microsoft/office-js"] : packages;
}

/** A spec's words, as the formatter lays them out: a property of the declaration with its further lines. */
const MANUAL = /^ {2}(?:summary|definition|source|examples|notes):.*\n(?: {4}.*\n| {2}[\]}].*\n)*/gm;

/** Leaves out of a declaration what only help shows: a cell needs none of it, and it is a sixth of the script. */
const WITHOUT_MANUAL: Plugin = {
  name: "without manual",
  setup: (building) =>
    building.onLoad({ filter: /[\\/]src[\\/]functions[\\/].*\.ts$/ }, ({ path }) => ({
      contents: readFileSync(path, "utf8").replace(MANUAL, ""),
      loader: "ts",
    })),
};

async function bundleFunctions(out: string): Promise<Metafile> {
  const options = {
    ...COMMON,
    entryPoints: ["src/addin/functions.ts"],
    outfile: join(out, "functions.js"),
    format: "iife",
    plugins: [WITHOUT_MANUAL],
  } satisfies BuildOptions;
  return (await bundle(options)).metafile;
}

/** The command line bundles itself, because its launcher must do so in a fresh clone, in plain JavaScript. */
async function buildCommandLine(out: string): Promise<string[]> {
  const bundler = pathToFileURL(join(root, "src", "cli", "build.mjs")).href;
  return packagesIn([await ((await import(bundler)) as { buildCommandLine(out: string): Promise<Metafile> }).buildCommandLine(out)]);
}

/** What other tasks put beside the build, and may be in use. */
export const EXTENSION = "crosshatch.oxt";
const OTHERS = ["package", "sideload", EXTENSION];

export async function build(out = DIST): Promise<void> {
  mkdirSync(out, { recursive: true });
  for (const name of readdirSync(out)) if (!OTHERS.includes(name)) rmSync(join(out, name), { recursive: true, force: true });
  const packages = [...(await buildAddin(out)), ...(await buildBench(join(out, "bench"))), ...(await buildCommandLine(out))];
  copy("manifest.xml", join(out, "manifest.xml"));
  write(out, "THIRD-PARTY-LICENSES", licencesOf(packages));
}

function write(out: string, file: string, text: string): void {
  writeFileSync(join(out, file), text);
}

function copy(from: string, to: string): void {
  mkdirSync(dirname(to), { recursive: true });
  copyFileSync(join(root, from), to);
}

/** Name, bytes and bytes gzipped of every file under `folder` that is not office.js. */
export function sizes(folder: string): { file: string; bytes: number; gzipped: number }[] {
  return readdirSync(folder, { recursive: true })
    .map(String)
    .filter((file) => !file.startsWith("office-js") && statSync(join(folder, file)).isFile())
    .sort()
    .map((file) => {
      const bytes = readFileSync(join(folder, file));
      return { file, bytes: bytes.length, gzipped: gzipSync(bytes).length };
    });
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const started = performance.now();
  await build();
  for (const { file, bytes, gzipped } of sizes(DIST)) console.log(`${String(bytes).padStart(9)} ${String(gzipped).padStart(8)} gz  ${file}`);
  console.log(`Built ${relative(root, DIST)} in ${((performance.now() - started) / 1000).toFixed(1)} s`);
}
