import { mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { workbookBytes } from "../../src/cli/read-file.ts";
import { sparseFile } from "../helpers/sparse.ts";
import { crosshatch } from "./run.ts";

import.meta.jest.setTimeout(120_000);

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "crosshatch-large-"));
  sparseFile("large.xlsx", 2.5e9, folder);
  writeFileSync(join(folder, "readings.csv"), "value,upper\n1,2\n");
});
afterAll(() => rmSync(folder, { recursive: true }));

test("a workbook too large to be taken in is refused by its size, and the others are checked", async () => {
  const { code, out, err } = await crosshatch(["check", "large.xlsx", "readings.csv"], { cwd: folder });
  expect(code).toBe(2);
  expect(err).toContain("large.xlsx is too large: 2,500 MB, and at most 200 MB are read");
  expect(out).toContain("1 of 1 row checked");
});

test("so is one that is to be compared", async () => {
  const { code, err } = await crosshatch(["compare", "large.xlsx", "readings.csv"], { cwd: folder });
  expect([code, err]).toEqual([2, expect.stringContaining("large.xlsx is too large: 2,500 MB, and at most 200 MB are read")]);
});

test("it is refused before any of it is read", async () => {
  const before = process.memoryUsage().rss;
  await expect(workbookBytes(sparseFile("fits memory.xlsx", 900e6, folder))).rejects.toThrow("is too large: 900 MB, and at most 200 MB are read");
  expect(process.memoryUsage().rss - before).toBeLessThan(400e6);
});

test("what never ends is no workbook, whatever it is called", async () => {
  if (process.platform === "win32") return;
  symlinkSync("/dev/zero", join(folder, "zero.xlsx"));
  await expect(workbookBytes(join(folder, "zero.xlsx"))).rejects.toThrow("is no ordinary file");
});
