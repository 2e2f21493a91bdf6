import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { compileFunction } from "node:vm";
import { transformSync } from "esbuild";
import { root } from "../../src/tools/paths.ts";

type Exports = Record<string, unknown>;
type Body = (exports: Exports, require: (asked: string) => unknown, module: { exports: Exports }, url: string, folder: string) => void;

/** Packages that only exist as modules of the newer kind. */
const NEWER = ["linear-sum-assignment"];

const packages = new Map<string, unknown>();
const bodies = new Map<string, Body>();
const nodeRequire = createRequire(join(root, "package.json"));

/** Must be done once before anything is loaded. */
export async function loadPackages(): Promise<void> {
  for (const name of NEWER) packages.set(name, await import(name));
}

/** The file as a function, which is made once: running it again gives the file's modules anew. */
function bodyOf(file: string): Body {
  const known = bodies.get(file);
  if (known) return known;
  const { code } = transformSync(readFileSync(file, "utf8"), {
    loader: "ts",
    format: "cjs",
    target: "node20",
    define: { "import.meta.url": "__url", "import.meta.dirname": "__folder" },
  });
  const body = compileFunction(code, ["exports", "require", "module", "__url", "__folder"], { filename: file }) as Body;
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
    bodyOf(file)(module.exports, (asked) => resolved(asked, dirname(file), load), module, pathToFileURL(file).href, dirname(file));
    return module.exports;
  };
  return load;
}

function resolved(asked: string, folder: string, load: (file: string) => unknown): unknown {
  if (asked.startsWith(".")) return load(join(folder, asked));
  return packages.get(asked) ?? nodeRequire(asked);
}
