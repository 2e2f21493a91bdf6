import { spawnSync } from "node:child_process";
import { rmSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";
import { root } from "../../src/tools/paths.ts";
import { workbookBytes } from "../xlsx/workbook-bytes.ts";
import { folderOf } from "./run.ts";

import.meta.jest.setTimeout(120_000);

const book = (rows: number): Uint8Array =>
  workbookBytes({
    sheets: [
      {
        name: "Bores",
        cells: [
          ["Cylinder", "Clearance", "Verdict"],
          ...Array.from({ length: rows }, (_, i) => [i + 1, 0.03, { f: `HATCH.VERDICT(B${i + 2},0.02,0.04)`, v: "" }]),
        ],
      },
    ],
  });

test("a workbook that takes all memory is told so, and those before, beside and behind it are checked", async () => {
  const folder = folderOf({ "small.xlsx": book(3), "huge.xlsx": book(40_000) });
  await build({
    entryPoints: ["pool", "workbook-worker"].map((name) => join(root, "src", "cli", `${name}.ts`)),
    outdir: folder,
    bundle: true,
    platform: "node",
    format: "esm",
    external: ["@odoo/o-spreadsheet", "piscina"],
    banner: { js: 'import { createRequire as makeRequire } from "node:module"; const require = makeRequire(import.meta.url);' },
    logLevel: "error",
  });
  symlinkSync(join(root, "node_modules"), join(folder, "node_modules"), "junction");
  writeFileSync(join(folder, "package.json"), '{ "type": "module" }');
  writeFileSync(
    join(folder, "run.js"),
    `import { WorkbookPool } from "./pool.js";
    const pool = new WorkbookPool(2, 64);
    const answers = await Promise.all(["small", "huge", "none", "small", "small", "small"].map((name) => pool.check({ path: name + ".xlsx" })));
    await pool.close();
    console.log(JSON.stringify(answers.map(({ fault, result }) => fault ?? result.rowsIn)));`,
  );
  const { stdout, stderr } = spawnSync(process.execPath, ["run.js"], { cwd: folder, env: { ...process.env, NODE_OPTIONS: "" }, encoding: "utf8" });
  rmSync(folder, { recursive: true });
  expect({ answers: JSON.parse(stdout), stderr }).toEqual({
    answers: [3, "needs more memory than one workbook may take (64 MB): --memory allows more", "is not there", 3, 3, 3],
    stderr: expect.not.stringContaining("Error"),
  });
});
