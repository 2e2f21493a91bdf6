import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { freshBench } from "../../src/tools/fresh-bench.ts";
import { root } from "../../src/tools/paths.ts";

import.meta.jest.setTimeout(120_000);

test("a bench that is there is made again only when something that it was made of has changed", async () => {
  const folder = mkdtempSync(join(tmpdir(), "crosshatch-fresh-"));
  const bench = join(folder, "bench");
  const record = `${bench}.made-from.json`;
  try {
    const page = join(bench, "index.html");
    // As when whoever built it last was stopped.
    mkdirSync(bench);
    writeFileSync(page, "unfinished");
    writeFileSync(record, "cut sho");
    expect(await freshBench(bench)).toBe("built");
    writeFileSync(page, "kept");
    const begun = performance.now();
    expect(await freshBench(bench)).toBe("as it was");
    expect(performance.now() - begun).toBeLessThan(1000);
    expect(readFileSync(page, "utf8")).toBe("kept");
    const files = (JSON.parse(readFileSync(record, "utf8")) as [string, number, number][]).map(([file]) => file);
    expect(files).toEqual(
      expect.arrayContaining(["src/bench/page.ts", "src/pane/mount.tsx", "src/bench/index.html", "package-lock.json", "samples/build-sheet.xlsx"]),
    );
    expect(files.filter((file) => !existsSync(join(root, file)))).toEqual([]);
    // As if one of them had been longer when it was made.
    const changed = JSON.parse(readFileSync(record, "utf8")) as [string, number, number][];
    changed[0]![2]++;
    writeFileSync(record, JSON.stringify(changed));
    expect(await freshBench(bench)).toBe("built");
    expect(readFileSync(page, "utf8")).not.toBe("kept");
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});

test("where its folder cannot be made, that is told by the file system's code", async () => {
  const folder = mkdtempSync(join(tmpdir(), "crosshatch-fresh-"));
  const file = join(folder, "dist");
  writeFileSync(file, "");
  try {
    await expect(freshBench(join(file, "bench"))).rejects.toMatchObject({
      syscall: expect.any(String),
      code: expect.stringMatching(/^(?:ENOTDIR|EEXIST|ENOENT)$/),
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
