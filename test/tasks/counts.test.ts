import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { closingLine, forgetCounts, isWell, keepCounts, sumOfCounts } from "./counts.ts";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "crosshatch-counts-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

test("the last line counts the tests of all runs", () => {
  keepCounts("test", { passed: 1900, failed: 0, skipped: 2 }, folder);
  keepCounts("test:long", { passed: 60, failed: 0, skipped: 0 }, folder);
  keepCounts("test:libreoffice", { passed: 20, failed: 0, skipped: 0 }, folder);
  expect(closingLine(sumOfCounts(folder))).toBe("1980 passed, 0 failed, 2 skipped");
  expect(isWell(sumOfCounts(folder))).toBe(true);
});

test("a failure of any is one of the sum", () => {
  keepCounts("test", { passed: 1900, failed: 0, skipped: 0 }, folder);
  keepCounts("test:long", { passed: 59, failed: 1, skipped: 0 }, folder);
  keepCounts("test:libreoffice", { passed: 0, failed: 0, skipped: 1 }, folder);
  expect(closingLine(sumOfCounts(folder))).toBe("1959 passed, 1 failed, 1 skipped");
  expect(isWell(sumOfCounts(folder))).toBe(false);
});

test("a run that broke off, whose counts of an earlier time are forgotten, fails", () => {
  keepCounts("test", { passed: 1900, failed: 0, skipped: 0 }, folder);
  keepCounts("test:long", { passed: 60, failed: 0, skipped: 0 }, folder);
  keepCounts("test:libreoffice", { passed: 20, failed: 0, skipped: 0 }, folder);
  forgetCounts("test", folder);
  expect(sumOfCounts(folder)).toEqual({ passed: 80, failed: 1, skipped: 0 });
});

test("no tests at all are not well", () => {
  expect(isWell({ passed: 0, failed: 0, skipped: 0 })).toBe(false);
});
