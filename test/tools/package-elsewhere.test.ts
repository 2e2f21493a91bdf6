import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, realpathSync, rmSync, statSync, symlinkSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { root } from "../../src/tools/paths.ts";
import { ADDRESS, packaged } from "./packaged.ts";

let folder: string;
beforeAll(() => {
  folder = realpathSync(mkdtempSync(join(tmpdir(), "crosshatch-elsewhere-")));
});
afterAll(() => rmSync(folder, { recursive: true }));

const fingerprints = (of: string) =>
  readdirSync(of, { recursive: true })
    .map(String)
    .filter((name) => statSync(join(of, name)).isFile())
    .sort()
    .map(
      (name) =>
        `${createHash("sha256")
          .update(readFileSync(join(of, name)))
          .digest("hex")} ${name}`,
    );

test("the same sources in another folder, with their packages behind a link, make the same bytes", async () => {
  const elsewhere = join(folder, "a", "deeper", "place");
  mkdirSync(elsewhere, { recursive: true });
  for (const name of ["src", "package.json", "package-lock.json", "tsconfig.json", "manifest.xml"])
    cpSync(join(root, name), join(elsewhere, name), { recursive: true });
  symlinkSync(join(root, "node_modules"), join(elsewhere, "node_modules"), "junction");
  const there = join(folder, "there");
  const tool = join(elsewhere, "src", "tools", "package.ts");
  const made = spawnSync(process.execPath, ["--import", "tsx", tool, "--url", ADDRESS, "--office-js", "cdn", "--out", there], {
    cwd: elsewhere,
    env: { ...process.env, NODE_OPTIONS: "" },
    encoding: "utf8",
  });

  expect(made.stderr).toBe("");
  const here = await packaged();
  expect(fingerprints(here).length).toBeGreaterThan(20);
  expect(fingerprints(there)).toEqual(fingerprints(here));
}, 60_000);
