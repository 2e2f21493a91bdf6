import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { root } from "../../src/tools/paths.ts";
import { type LockedPackage, readSupply, supplyFaults } from "../../src/tools/supply.ts";

test("every package is of an exact version, sealed by a checksum, under a licence that allows it, and needs no script", () => {
  const supply = readSupply();
  expect(supplyFaults(supply)).toEqual([]);
  expect(Object.keys(supply.packages).length).toBeGreaterThan(100);
});

const SOUND: LockedPackage = { version: "1.2.3", integrity: "sha512-x", license: "MIT" };
const faults = (one: LockedPackage, name = "a", typed = "1.2.3") =>
  supplyFaults({ manifest: { dependencies: { [name]: typed }, devDependencies: {} }, packages: { "": {}, [`node_modules/${name}`]: { ...SOUND, ...one } } });

test.each<[string, LockedPackage, string[]]>([
  ["nothing", {}, []],
  ["another version in the lock file", { version: "1.2.4" }, ["package-lock.json holds another version of a than package.json"]],
  ["no checksum", { integrity: "" }, ["package-lock.json: a has no checksum"]],
  ["a weak checksum", { integrity: "sha1-x" }, ["package-lock.json: a has no checksum"]],
  ["an address elsewhere", { resolved: "https://example.org/a.tgz" }, ["package-lock.json: a does not come from the registry"]],
  ["a folder", { link: true }, ["package-lock.json: a does not come from the registry"]],
  ["a licence that takes hold of what it is in", { license: "GPL-3.0-only" }, ["package-lock.json: a is under GPL-3.0-only"]],
  ["the same for what is used here alone", { license: "GPL-3.0-only", dev: true }, []],
  ["a licence that nobody has looked at", { license: "SEE LICENSE IN x", dev: true }, ["package-lock.json: a is under SEE LICENSE IN x"]],
  ["a choice of licences", { license: "(MIT OR GPL-3.0-only)" }, []],
  ["two licences at once", { license: "MIT AND GPL-3.0-only" }, ["package-lock.json: a is under MIT AND GPL-3.0-only"]],
  ["a script", { hasInstallScript: true }, ["package-lock.json: a runs a script when it is installed"]],
  ["a script of what is used here alone", { hasInstallScript: true, dev: true }, []],
])("%s", (_, one, want) => {
  expect(faults(one)).toEqual(want);
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
