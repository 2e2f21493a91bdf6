import { execFileSync, spawn } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { root } from "../../src/tools/paths.ts";
import { readSupply } from "../../src/tools/supply.ts";

/** What `npm pack` makes of this clone, unpacked where an install puts it; the packages that it needs are those that are here. */
const folder = mkdtempSync(join(tmpdir(), "crosshatch-packed-"));
const installed = join(folder, "shop", "node_modules", "crosshatch");
const launcher = join(installed, "src", "cli", "crosshatch.mjs");
let files: string[] = [];
const env = { ...process.env, NODE_OPTIONS: "" };
const npm = (args: string[], cwd: string): string => execFileSync("npm", args, { cwd, env, encoding: "utf8", shell: process.platform === "win32" });

beforeAll(() => {
  const clone = join(folder, "clone");
  for (const file of execFileSync("git", ["ls-files", "-z"], { cwd: root, encoding: "utf8" }).split("\0").filter(Boolean))
    cpSync(join(root, file), join(clone, file), { recursive: true });
  symlinkSync(join(root, "node_modules"), join(clone, "node_modules"), "junction");
  const [packed] = JSON.parse(npm(["pack", "--json", "--silent"], clone).replace(/^[^[]*/, "")) as { filename: string; files: { path: string }[] }[];
  files = packed!.files.map(({ path }) => path);
  mkdirSync(installed, { recursive: true });
  execFileSync("tar", ["-xzf", join(clone, packed!.filename), "-C", installed, "--strip-components", "1"]);
  for (const name of Object.keys(readSupply().manifest.dependencies)) {
    const to = join(folder, "shop", "node_modules", name);
    mkdirSync(join(to, ".."), { recursive: true });
    symlinkSync(join(root, "node_modules", name), to, "junction");
  }
}, 240_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test("the package holds what runs and what its licences ask for, no sources and no tests", () => {
  expect(files).toEqual(expect.arrayContaining(["package.json", "README.md", "dist/cli/crosshatch.js", "dist/bench/index.html", "dist/THIRD-PARTY-LICENSES"]));
  expect(files.filter((file) => /^(?:test|samples)\/|\.tsx?$|\.map$/.test(file))).toEqual([]);
  expect(files.filter((file) => file.startsWith("src/"))).toEqual(["src/cli/crosshatch.mjs"]);
});

test("installed, it checks a workbook and serves the bench without a clone and without building", async () => {
  cpSync(join(root, "samples", "build-sheet.xlsx"), join(folder, "shop", "build-sheet.xlsx"));
  const checked = spawn(process.execPath, [launcher, "check", "build-sheet.xlsx", "--json"], { cwd: join(folder, "shop"), env });
  let out = "";
  checked.stdout.on("data", (piece) => {
    out += piece;
  });
  expect(await new Promise((resolve) => checked.once("close", resolve))).toBe(1);
  expect(JSON.parse(out.trim().split("\n").at(-1)!)).toMatchObject({ files: 1, unread: [] });

  // As npx starts it: by a shell, which dies of a signal without passing it on.
  const command = [process.execPath, launcher, "bench", "--port", "0", "--no-open"];
  const [program, ...args] = process.platform === "win32" ? command : ["/bin/sh", "-c", '"$0" "$@"; exit $?', ...command];
  const bench = spawn(program!, args, { cwd: join(folder, "shop"), env: { ...env, npm_command: "exec" } });
  const url = await new Promise<string>((resolve, reject) => {
    bench.stdout.on("data", (piece) => {
      const [address] = /http:\/\/127\.0\.0\.1:\d+\//.exec(String(piece)) ?? [];
      if (address) resolve(address);
    });
    bench.once("close", () => reject(new Error("The bench has ended.")));
  });
  expect(await (await fetch(url)).text()).toContain("<title>Crosshatch bench</title>");
  bench.kill("SIGTERM");
  // Its streams are closed once all that write to them have ended.
  await new Promise((resolve) => bench.once("close", resolve));
}, 60_000);
