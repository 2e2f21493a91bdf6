import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { buildCommandLine } from "../../src/cli/build.mjs";
import { root } from "../../src/tools/paths.ts";
import { type LockedPackage, readSupply } from "../../src/tools/supply.ts";

import.meta.jest.setTimeout(240_000);

type Locked = LockedPackage & { dependencies?: Record<string, string>; optionalDependencies?: Record<string, string> };
const { manifest, packages } = readSupply();
const locked = packages as Record<string, Locked>;

const isHere = (path: string): boolean => path in locked && existsSync(join(root, path));

/** Where a package finds another one: in a folder of its own, or in one further up. */
function found(name: string, from: string): string | undefined {
  for (let at = from; at; at = at.slice(0, Math.max(0, at.lastIndexOf("/node_modules/")))) {
    if (isHere(`${at}/node_modules/${name}`)) return `${at}/node_modules/${name}`;
  }
  return isHere(`node_modules/${name}`) ? `node_modules/${name}` : undefined;
}

/** These packages and all that they need in turn. */
function closure(names: Iterable<string>): Set<string> {
  const all = new Set<string>();
  const open = [...names].map((name) => found(name, "")!);
  for (let path = open.pop(); path; path = open.pop()) {
    if (all.has(path)) continue;
    all.add(path);
    const { dependencies = {}, optionalDependencies = {} } = locked[path]!;
    for (const name of Object.keys({ ...dependencies, ...optionalDependencies })) {
      const other = found(name, path);
      if (other) open.push(other);
    }
  }
  return all;
}

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "crosshatch-shipped-"));
});
afterAll(() => rmSync(folder, { recursive: true }));

const packageOf = (input: string): string | undefined => /^.*node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(input)?.[1];

/** What the program is bundled of, what it is bundled by, and what it finds beside itself when it runs. */
async function used(): Promise<Set<string>> {
  const { inputs } = await buildCommandLine(join(folder, "built"));
  const bundled = Object.keys(inputs).flatMap((input) => packageOf(input) ?? []);
  return closure([...bundled, "esbuild", "piscina", "@odoo/o-spreadsheet"]);
}

test("installed without its tools and without running any script, it checks a workbook", async () => {
  const needed = await used();
  expect([...needed].filter((path) => locked[path]!.dev)).toEqual([]);
  const clone = join(folder, "clone");
  mkdirSync(clone);
  for (const name of ["src", "package.json", "package-lock.json", "samples"]) cpSync(join(root, name), join(clone, name), { recursive: true });
  // Whatever else it would ship is there by name alone.
  for (const name of Object.keys(manifest.dependencies))
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
