import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { root } from "../../src/tools/paths.ts";
import { type LockedPackage, readSupply, type Supply, supplyFaults } from "../../src/tools/supply.ts";

test("every package is of an exact version, sealed by a checksum, under a licence that allows it, and needs no script", () => {
  const supply = readSupply();
  expect(supplyFaults(supply)).toEqual([]);
  expect(Object.keys(supply.packages).length).toBeGreaterThan(100);
});

const NOTHING: Supply["manifest"] = { dependencies: {}, devDependencies: {}, builtFrom: [] };
const SOUND: LockedPackage = { version: "1.2.3", integrity: "sha512-x", license: "MIT" };
const faults = (one: LockedPackage, name = "a", typed = "1.2.3", manifest: Partial<Supply["manifest"]> = { dependencies: { [name]: typed } }) =>
  supplyFaults({ manifest: { ...NOTHING, ...manifest }, packages: { "": {}, [`node_modules/${name}`]: { ...SOUND, ...one } } });
const testedBy = (one: LockedPackage) => faults(one, "a", "1.2.3", { devDependencies: { a: "1.2.3" } });
const builtFrom = (one: LockedPackage) => faults(one, "a", "1.2.3", { devDependencies: { a: "1.2.3" }, builtFrom: ["a"] });

test.each<[string, LockedPackage, string[]]>([
  ["nothing", {}, []],
  ["another version in the lock file", { version: "1.2.4" }, ["package-lock.json holds another version of a than package.json"]],
  ["no checksum", { integrity: "" }, ["package-lock.json: a has no checksum"]],
  ["a weak checksum", { integrity: "sha1-x" }, ["package-lock.json: a has no checksum"]],
  ["an address elsewhere", { resolved: "https://example.org/a.tgz" }, ["package-lock.json: a does not come from the registry"]],
  ["a folder", { link: true }, ["package-lock.json: a does not come from the registry"]],
  ["a licence that takes hold of what it is in", { license: "GPL-3.0-only" }, ["package-lock.json: a is under GPL-3.0-only"]],
  ["a choice of licences", { license: "(MIT OR GPL-3.0-only)" }, []],
  ["two licences at once", { license: "MIT AND GPL-3.0-only" }, ["package-lock.json: a is under MIT AND GPL-3.0-only"]],
  ["a script", { hasInstallScript: true }, ["package-lock.json: a runs a script when it is installed"]],
])("%s", (_, one, want) => {
  expect(faults(one)).toEqual(want);
});

test("what only tests use may have other licences and scripts, but no licence that nobody has looked at", () => {
  expect(testedBy({ license: "GPL-3.0-only", hasInstallScript: true })).toEqual([]);
  expect(testedBy({ license: "SEE LICENSE IN x" })).toEqual(["package-lock.json: a is under SEE LICENSE IN x"]);
});

test("what the product is built from is held to what ships, with all that it needs", () => {
  expect(builtFrom({ license: "GPL-3.0-only" })).toEqual(["package-lock.json: a is under GPL-3.0-only"]);
  const packages = {
    "node_modules/a": { ...SOUND, dependencies: { b: "1.2.3" } },
    "node_modules/a/node_modules/b": { ...SOUND, license: "GPL-3.0-only" },
    "node_modules/b": SOUND,
  };
  const manifest = { ...NOTHING, devDependencies: { a: "1.2.3" }, builtFrom: ["a"] };
  expect(supplyFaults({ manifest, packages })).toEqual(["package-lock.json: b is under GPL-3.0-only"]);
  expect(supplyFaults({ manifest: { ...NOTHING, builtFrom: ["a"] }, packages: {} })).toEqual(["package.json: a is built from and not listed"]);
});

test.each(["^1.2.3", "~1.2.3", "1.x", "latest", "git+https://example.org/a.git", "file:../a", "*"])("a version written %s is not exact", (typed) => {
  expect(faults({}, "a", typed)).toContain(`package.json: a ${typed} is no exact version`);
});

test("the one package that brings a script works where it has not been run", () => {
  const folder = mkdtempSync(join(tmpdir(), "crosshatch-scripts-"));
  const native = `@esbuild/${process.platform}-${process.arch}`;
  for (const part of ["esbuild/package.json", "esbuild/lib", native]) {
    mkdirSync(join(folder, "node_modules", part, ".."), { recursive: true });
    cpSync(join(root, "node_modules", part), join(folder, "node_modules", part), { recursive: true });
  }
  writeFileSync(join(folder, "a.ts"), "const size: number = 73;\nconsole.log(size);\n");
  const program = 'const { buildSync } = require("esbuild"); console.log(buildSync({ entryPoints: ["a.ts"], write: false }).outputFiles[0].text)';
  const { stdout, stderr } = spawnSync(process.execPath, ["-e", program], {
    cwd: folder,
    encoding: "utf8",
    env: { ...process.env, NODE_OPTIONS: "", NODE_PATH: "" },
  });
  rmSync(folder, { recursive: true });
  expect({ stdout: stdout.trim(), stderr }).toEqual({ stdout: "const size = 73;\nconsole.log(size);", stderr: "" });
}, 30_000);
