import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { build, sizes } from "../../src/tools/build.ts";
import { DEVELOPMENT_ADDRESS } from "../../src/tools/manifest.ts";
import { filesUnder, manifestFaults } from "../../src/tools/manifest-check.ts";

let out: string;
beforeAll(async () => {
  out = join(mkdtempSync(join(tmpdir(), "crosshatch-build-")), "dist");
  await build(out);
}, 60_000);
afterAll(() => rmSync(join(out, ".."), { recursive: true }));

const text = (name: string) => readFileSync(join(out, name), "utf8");
const gzipped = (name: string) => gzipSync(readFileSync(join(out, name))).length;

/** A script and what it imports at once, not what it asks for later. */
function atOnce(name: string, found = new Set<string>()): Set<string> {
  found.add(name);
  for (const [, , next] of text(name).matchAll(/(from|import)\s*"\.\/([^"]+)"/g)) if (!found.has(next!)) atOnce(next!, found);
  return found;
}

test("the manifest fits the files that are built", () => {
  const { version } = JSON.parse(readFileSync("package.json", "utf8")) as { version: string };
  expect(manifestFaults(text("manifest.xml"), { fileOf: filesUnder(out, DEVELOPMENT_ADDRESS), version })).toEqual([]);
});

test("functions.js is at most 120 KB gzipped, the pane's first load at most 60 KB", () => {
  expect(gzipped("functions.js")).toBeLessThanOrEqual(120 * 1024);
  const first = [...atOnce("pane-excel.js"), "pane.css"];
  expect(first.reduce((sum, name) => sum + gzipped(name), 0)).toBeLessThanOrEqual(60 * 1024);
  // What the pane loads later is there, and does not count as its first load.
  expect(readdirSync(out).filter((name) => name.startsWith("pane-")).length).toBeGreaterThan(first.length - 2);
});

test("the pane is the same bundle in Excel and on the bench, byte for byte", () => {
  expect(text("bench/pane.js")).toBe(text("pane.js"));
  expect(text("bench/pane.css")).toBe(text("pane.css"));
  for (const entry of ["pane-excel.js", "bench/pane-bench.js"]) expect(text(entry)).toContain('from"./pane.js"');
});

test("every script that a script names is there", () => {
  const scripts = readdirSync(out).filter((name) => name.endsWith(".js"));
  const named = scripts.flatMap((name) => [...text(name).matchAll(/(?:from|import)\s*\(?"\.\/([^"]+\.js)"/g)].map((found) => found[1]!));
  expect(named.length).toBeGreaterThan(0);
  expect(named.filter((name) => !existsSync(join(out, name)))).toEqual([]);
});

test("the licences name the packages that are shipped, with their texts", () => {
  const licences = text("THIRD-PARTY-LICENSES");
  for (const name of ["preact", "mathjs", "@stdlib/stats-base-dists-t-cdf", "@microsoft/office-js", "@odoo/o-spreadsheet"])
    expect(licences).toContain(`\n${name} `);
});

test("the sizes that are printed are those of the files, without office.js", () => {
  const listed = sizes(out);
  expect(listed.find(({ file }) => file === "functions.js")).toEqual({
    file: "functions.js",
    bytes: readFileSync(join(out, "functions.js")).length,
    gzipped: gzipped("functions.js"),
  });
  expect(listed.some(({ file }) => file.startsWith("office-js"))).toBe(false);
});
