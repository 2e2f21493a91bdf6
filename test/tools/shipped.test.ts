import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { isBuiltin } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import type { Metafile } from "esbuild";
import { buildCommandLine } from "../../src/cli/build.mjs";
import { root } from "../../src/tools/paths.ts";
import { closure, readSupply } from "../../src/tools/supply.ts";

import.meta.jest.setTimeout(240_000);

const { manifest, packages } = readSupply();

let folder: string;
let made: Metafile;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "crosshatch-shipped-"));
  made = await buildCommandLine(join(folder, "built"));
});
afterAll(() => rmSync(folder, { recursive: true }));

const packageOf = (input: string): string | undefined => /^.*node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(input)?.[1];

test("what is installed with the package is what its program imports and does not bring", () => {
  const imported = Object.values(made.outputs).flatMap(({ imports }) => imports.filter(({ external }) => external).map(({ path }) => path));
  const packaged = imported.filter((path) => !path.startsWith("./") && !isBuiltin(path)).map((path) => packageOf(`node_modules/${path}/`));
  expect([...new Set(packaged)].sort()).toEqual(Object.keys(manifest.dependencies).sort());
  // The engine stands beside it as a file of its own, which finds all that it stands on in itself.
  expect(imported.filter((path) => path.startsWith("./o-"))).not.toEqual([]);
  expect(made.outputs[Object.keys(made.outputs).find((path) => path.endsWith("/o-spreadsheet.js"))!]!.imports).toEqual([]);
});

/** What the program is bundled of, what it is bundled by, and what it finds beside itself when it runs. */
function used(): string[] {
  const bundled = Object.keys(made.inputs).flatMap((input) => packageOf(input) ?? []);
  return [...closure([...bundled, "esbuild", "piscina"], packages)].filter((path) => existsSync(join(root, path)));
}

test("installed without its tools and without running any script, it checks a workbook", () => {
  const needed = used();
  const shipped = closure([...Object.keys(manifest.dependencies), ...manifest.builtFrom], packages);
  expect(needed.filter((path) => !shipped.has(path))).toEqual([]);
  const clone = join(folder, "clone");
  mkdirSync(clone);
  for (const name of ["src", "package.json", "package-lock.json", "samples"]) cpSync(join(root, name), join(clone, name), { recursive: true });
  // Whatever else it would ship is there by name alone.
  for (const name of [...Object.keys(manifest.dependencies), ...manifest.builtFrom])
    cpSync(join(root, "node_modules", name, "package.json"), join(clone, "node_modules", name, "package.json"));
  for (const path of needed) {
    mkdirSync(dirname(join(clone, path)), { recursive: true });
    cpSync(join(root, path), join(clone, path), { recursive: true, dereference: true });
  }
  // Nothing can be installed: there is no npm.
  const env = { PATH: "", NODE_OPTIONS: "", npm_execpath: "" };
  const ran = spawnSync(process.execPath, [join(clone, "src", "cli", "crosshatch.mjs"), "check", "samples/build-sheet.xlsx"], {
    cwd: clone,
    env,
    encoding: "utf8",
  });
  expect([ran.status, ran.stderr]).toEqual([1, ""]);
  expect(ran.stdout).toContain("27 of 27 rows checked, 5 findings");
});
