import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { root } from "../../src/tools/paths.ts";
import { crosshatch, jsonLines } from "./run.ts";

import.meta.jest.setTimeout(240_000);

/*
 * Every file that the command line writes, on disks that are really full, may only be read, or hold the
 * old file fast. Such disks are made where this machine lets them be made; what happens at each step of
 * the writing is tried in safe-file.test.ts on all machines.
 */
const mount = (...args: string[]) => execFileSync("mount", args, { stdio: "pipe" });
const mounted: string[] = [];

function disk(size: string, ...more: string[]): string {
  const folder = mkdtempSync(join(tmpdir(), "crosshatch-disk-"));
  mount("-t", "tmpfs", "-o", [`size=${size}`, ...more].join(","), "tmpfs", folder);
  mounted.push(folder);
  return folder;
}

const canMount = ((): boolean => {
  try {
    disk("4k");
    return true;
  } catch {
    return false;
  }
})();
const withDisks = canMount ? describe : describe.skip;

let cwd: string;
beforeAll(() => {
  cwd = mkdtempSync(join(tmpdir(), "crosshatch-"));
  writeFileSync(join(cwd, "book.xlsx"), readFileSync(join(root, "samples", "build-sheet.xlsx")));
  writeFileSync(join(cwd, "readings.csv"), `value,upper\n${"2,1\n".repeat(300)}${"two,1\n".repeat(3000)}`);
});
afterAll(() => {
  for (const folder of mounted.reverse()) execFileSync("umount", [folder]);
});

/** What writes a file on a disk: the arguments, and the file. */
const WRITERS: [what: string, args: (on: string) => string[], file: string][] = [
  ["--marked", (on) => ["check", "book.xlsx", "--marked", on, "--force"], "book.xlsx"],
  ["--report as a page", (on) => ["check", "book.xlsx", "--report", join(on, "report.html"), "--force"], "report.html"],
  ["--refused", (on) => ["check", "readings.csv", "--refused", join(on, "refused.csv"), "--force"], "refused.csv"],
  ["--ledger", (on) => ["check", "readings.csv", "--ledger", join(on, "ledger.ndjson")], "ledger.ndjson"],
  ["new", (on) => ["new", join(on, "new.xlsx"), "--cylinders", "16", "--force"], "new.xlsx"],
];

const run = (args: string[]) => crosshatch(args, { cwd });

withDisks("a disk that is full", () => {
  test.each(WRITERS)("%s: it is said with the file and what to do, and nothing unfinished stays", async (_, args, file) => {
    const full = disk("4k");
    const { code, err } = await run(args(full));
    expect(err).toMatch(new RegExp(`^crosshatch: ${join(full, file)} cannot be written: the disk is full: make room on it, or give a folder on another one`));
    expect([code, err.trim().split("\n").length]).toEqual([2, 1]);
    expect(readdirSync(full).filter((name) => name !== "ledger.ndjson")).toEqual([]);
  });

  test("a ledger that broke off there is taken up again once there is room", async () => {
    const full = disk("4k");
    const args = ["check", "--json", "book.xlsx", "readings.csv", "--ledger", join(full, "ledger.ndjson")];
    expect((await run(args)).code).toBe(2);
    mount("-o", "remount,size=4m", full);
    const again = await run(args);
    expect(jsonLines(again.out).at(-1)).toMatchObject({ files: 2, refused: 3000 });
    expect(jsonLines((await run(args)).out).at(-1)).toMatchObject({ rowsIn: 0, skipped: { files: 2 } });
  });

  test("what is printed there is said on standard error", async () => {
    const script =
      'require("node:child_process").spawn(process.argv[1], process.argv.slice(2), { stdio: ["ignore", require("node:fs").openSync("/dev/full", "w"), "inherit"] }).on("close", (code) => process.exit(code))';
    const command = ["-e", script, process.execPath, join(root, "src", "cli", "crosshatch.mjs"), "check", "readings.csv"];
    let failed: { status?: number; stderr?: Buffer } = {};
    try {
      execFileSync(process.execPath, command, { cwd, stdio: "pipe", env: { ...process.env, NODE_OPTIONS: "" } });
    } catch (error) {
      failed = error as typeof failed;
    }
    expect([failed.status, String(failed.stderr)]).toEqual([
      2,
      "crosshatch: standard output cannot be written: the disk is full: make room on it, or give a folder on another one\n",
    ]);
  });
});

withDisks("a disk that may only be read", () => {
  test.each(WRITERS)("%s: it is said, and the old file stays", async (_, args, file) => {
    const sealed = disk("4m");
    writeFileSync(join(sealed, file), "");
    mount("-o", "remount,ro", sealed);
    const { code, err } = await run(args(sealed));
    expect([code, err]).toEqual([
      2,
      expect.stringContaining(`${join(sealed, file)} cannot be written: the disk may only be read: give a folder on another one`),
    ]);
    expect(readdirSync(sealed)).toEqual([file]);
  });
});

withDisks("a file that something holds fast", () => {
  // A ledger is added to, never replaced.
  test.each(WRITERS.filter(([what]) => what !== "--ledger"))("%s: it is said, and the old file stays", async (_, args, file) => {
    const folder = mkdtempSync(join(tmpdir(), "crosshatch-held-"));
    const held = join(folder, file);
    for (const path of [held, join(cwd, "other")]) writeFileSync(path, "old");
    // A file on which another one is mounted cannot be replaced, as one that another program has locked.
    mount("--bind", join(cwd, "other"), held);
    mounted.push(held);
    const { code, err } = await run(args(folder));
    expect([code, err]).toEqual([2, expect.stringContaining(`${held} cannot be replaced: another program has it open or it is protected from changes`)]);
    expect([readFileSync(held, "utf8"), readdirSync(folder)]).toEqual(["old", [file]]);
  });
});

test("a folder where the file should be is refused, for each of them", async () => {
  for (const [, args, file] of WRITERS) {
    const folder = mkdtempSync(join(tmpdir(), "crosshatch-folder-"));
    mkdirSync(join(folder, file));
    const { code, err } = await run(args(folder));
    expect([code, err]).toEqual([2, expect.stringContaining(join(folder, file))]);
    expect(err).not.toContain("fault in Crosshatch");
    expect(readdirSync(folder)).toEqual([file]);
  }
});
