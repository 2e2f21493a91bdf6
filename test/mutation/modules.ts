import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { compileFunction } from "node:vm";
import { transformSync } from "esbuild";
import { root } from "../../src/tools/paths.ts";

type Exports = Record<string, unknown>;
type Body = (exports: Exports, require: (asked: string) => unknown, module: { exports: Exports }, url: string) => void;

/** Packages that only exist as modules of the newer kind, and our way in to one of them. */
const UNIT = join("node_modules", "mathjs", "lib", "esm", "type", "unit", "Unit.js");
const NEWER = { "linear-sum-assignment": "linear-sum-assignment", [UNIT]: pathToFileURL(join(root, UNIT)).href };

const packages = new Map<string, unknown>();
const bodies = new Map<string, Body>();
const nodeRequire = createRequire(join(root, "package.json"));

/** Must be done once before anything is loaded. */
export async function loadPackages(): Promise<void> {
  for (const [name, url] of Object.entries(NEWER)) packages.set(name, await import(url));
}

/** The file as a function, which is made once: running it again gives the file's modules anew. */
function bodyOf(file: string): Body {
  const known = bodies.get(file);
  if (known) return known;
  const { code } = transformSync(readFileSync(file, "utf8"), { loader: "ts", format: "cjs", target: "node20", define: { "import.meta.url": "__url" } });
  const body = compileFunction(code, ["exports", "require", "module", "__url"], { filename: file }) as Body;
  bodies.set(file, body);
  return body;
}

/** A loader with a memory of its own: what it loads shares nothing with what others load, packages apart. */
export function freshLoader(): (file: string) => unknown {
  const loaded = new Map<string, { exports: Exports }>();
  const load = (file: string): unknown => {
    const known = loaded.get(file);
    if (known) return known.exports;
    const module = { exports: {} };
    loaded.set(file, module);
    bodyOf(file)(module.exports, (asked) => resolved(asked, dirname(file), load), module, pathToFileURL(file).href);
    return module.exports;
  };
  return load;
}

function resolved(asked: string, folder: string, load: (file: string) => unknown): unknown {
  const path = asked.startsWith(".") ? join(folder, asked) : asked;
  const newer = [...packages.keys()].find((name) => path.endsWith(name));
  if (newer) return packages.get(newer);
  return asked.startsWith(".") ? load(path) : nodeRequire(asked);
}
