import { execFile, execFileSync } from "node:child_process";
import * as system from "node:fs";
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, statSync, symlinkSync, utimesSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { build } from "esbuild";
import { type Files, leftOver, put, SafeFile, unfinishedName } from "../../src/cli/safe-file.ts";
import { root } from "../../src/tools/paths.ts";

const fresh = (): string => mkdtempSync(join(tmpdir(), "safe-file-"));
const text = (path: string): string => readFileSync(path, "utf8");
const fault = (code: string, syscall: string): Error => Object.assign(new Error(`${code}, ${syscall}`), { code, syscall });
/** The file system, with one of its steps failing. */
const failing = (step: keyof Files, code: string, syscall = step.replace("Sync", "")): Files => ({
  ...system,
  [step]: () => {
    throw fault(code, syscall);
  },
});

function write(out: string, content: string, force: boolean, files: Files): void {
  const file = new SafeFile(out, force, files);
  file.write(content);
  file.close();
}

/** A disk of 64 kB, where this machine lets one be made. */
function mount(folder: string): boolean {
  try {
    execFileSync("mount", ["-t", "tmpfs", "-o", "size=64k", "tmpfs", folder], { stdio: "pipe" });
    return true;
  } catch {
    return false;
  }
}

/** No process has a number as large as that. */
const ENDED = 999_999_999;

describe("a kill before any step", () => {
  let program: string;
  beforeAll(async () => {
    program = join(fresh(), "dying-writer.mjs");
    await build({ entryPoints: [join(root, "test/cli/dying-writer.ts")], outfile: program, bundle: true, platform: "node", format: "esm", logLevel: "error" });
  });
  const run = (...args: string[]): Promise<{ stdout: string }> => promisify(execFile)(process.execPath, [program, ...args]);

  test.each(["force", "keep"])(
    "leaves the old file or the new one, never half, and the next run tidies up (%s)",
    async (force) => {
      const before = force === "force" ? "the old content" : undefined;
      const whole = fresh();
      if (before) writeFileSync(join(whole, "out.txt"), before);
      const steps = (await run(join(whole, "out.txt"), "the new content", force)).stdout.trim().split(" ");
      expect(steps).toEqual(expect.arrayContaining(["openSync", "writeSync", "fsyncSync", force === "force" ? "renameSync" : "linkSync"]));
      const found: (string | undefined)[] = [];
      for (const step of steps.keys()) {
        const folder = fresh();
        const out = join(folder, "out.txt");
        if (before) writeFileSync(out, before);
        await expect(run(out, "the new content", force, String(step + 1))).rejects.toMatchObject({ signal: "SIGKILL" });
        found.push(existsSync(out) ? text(out) : undefined);
        expect(readdirSync(folder).filter((name) => name !== "out.txt" && !/^\.crosshatch-.*\.tmp$/.test(name))).toEqual([]);
        put(join(folder, "next.txt"), "next", force === "force");
        expect(readdirSync(folder).filter((name) => name !== "out.txt")).toEqual(["next.txt"]);
      }
      // From some step on it is the new file.
      expect(new Set(found)).toEqual(new Set([before, "the new content"]));
      expect(found).toEqual([...found.filter((one) => one === before), ...found.filter((one) => one !== before)]);
    },
    120_000,
  );
});

describe("what cannot be written is said with the file and what to do, and leaves no trace", () => {
  test.each<[step: keyof Files, code: string, sentence: string]>([
    ["openSync", "EACCES", "OUT may not be written: its permissions, or those of its folder, forbid it: give another folder, or have them changed"],
    ["openSync", "EROFS", "OUT cannot be written: the disk may only be read: give a folder on another one"],
    ["writeSync", "ENOSPC", "OUT cannot be written: the disk is full: make room on it, or give a folder on another one"],
    ["fsyncSync", "EDQUOT", "OUT cannot be written: the disk is full: make room on it, or give a folder on another one"],
    ["writeSync", "EFBIG", "OUT cannot be written: it is larger than this disk takes: give a folder on another one"],
    ["writeSync", "EIO", "OUT cannot be written (EIO)"],
    ["renameSync", "EBUSY", "OUT cannot be replaced: another program has it open or it is protected from changes: close it there, or give another name"],
    ["renameSync", "EPERM", "OUT cannot be replaced: another program has it open or it is protected from changes: close it there, or give another name"],
  ])("%s %s", (step, code, sentence) => {
    const folder = fresh();
    const out = join(folder, "out.txt");
    writeFileSync(out, "old");
    expect(() => write(out, "new", true, failing(step, code))).toThrow(sentence.replace("OUT", out));
    expect(text(out)).toBe("old");
    expect(readdirSync(folder)).toEqual(["out.txt"]);
  });

  test("a file that another program holds for a moment only is waited for", () => {
    const out = join(fresh(), "out.txt");
    writeFileSync(out, "old");
    let busy = 2;
    const renameSync: Files["renameSync"] = (from, to) => {
      if (busy-- > 0) throw fault("EBUSY", "rename");
      system.renameSync(from, to);
    };
    write(out, "new", true, { ...system, renameSync });
    expect(text(out)).toBe("new");
  });

  test("a disk that is really full", () => {
    const disk = fresh();
    const mounted = process.platform === "linux" && process.getuid?.() === 0 && mount(disk);
    if (!mounted) {
      console.info("no disk of a given size can be had here: a full one is only acted");
      return;
    }
    try {
      const out = join(disk, "out.txt");
      writeFileSync(out, "old");
      expect(() => write(out, "x".repeat(1 << 20), true, system)).toThrow(`${out} cannot be written: the disk is full`);
      expect([readdirSync(disk), text(out)]).toEqual([["out.txt"], "old"]);
    } finally {
      execFileSync("umount", [disk]);
    }
  });
});

describe("what is there", () => {
  test("is never overwritten unless that is asked for, also when it comes into being meanwhile", () => {
    const out = join(fresh(), "out.txt");
    const file = new SafeFile(out, false);
    file.write("late");
    writeFileSync(out, "first");
    expect(() => file.close()).toThrow(`${out} is already there and is left as it is: give another name, or --force to overwrite it`);
    expect(text(out)).toBe("first");
  });

  test("where a disk knows no second names, the file still gets its own", () => {
    const folder = fresh();
    const out = join(folder, "out.txt");
    write(out, "new", false, failing("linkSync", "EPERM"));
    expect([text(out), readdirSync(folder)]).toEqual(["new", ["out.txt"]]);
    expect(() =>
      write(join(folder, "other.txt"), "", false, { ...failing("linkSync", "EPERM"), renameSync: failing("renameSync", "EBUSY").renameSync }),
    ).toThrow("other.txt cannot be replaced");
  });

  test("a read-only file, a folder and a device are left alone even with force", () => {
    const folder = fresh();
    const out = join(folder, "out.txt");
    writeFileSync(out, "old");
    chmodSync(out, 0o444);
    expect(() => put(out, "new", true)).toThrow(`${out} is read-only and is left as it is: give another name, or make it writable`);
    mkdirSync(join(folder, "inside"));
    expect(() => put(join(folder, "inside"), "new", true)).toThrow("is a folder: name the file to be written in it");
    if (process.platform !== "win32") expect(() => put("/dev/null", "new", true)).toThrow("/dev/null is no ordinary file: give another name");
    expect([text(out), readdirSync(folder).sort()]).toEqual(["old", ["inside", "out.txt"]]);
  });

  test("keeps its permissions, and a link stays one", () => {
    if (process.platform === "win32") return;
    const folder = fresh();
    const out = join(folder, "out.txt");
    writeFileSync(out, "old", { mode: 0o640 });
    symlinkSync(out, join(folder, "link.txt"));
    put(join(folder, "link.txt"), "new", true);
    expect([text(out), statSync(out).mode & 0o777, system.lstatSync(join(folder, "link.txt")).isSymbolicLink()]).toEqual(["new", 0o640, true]);
  });
});

describe("what earlier runs left behind", () => {
  test("is known by its name: by the machine and process that wrote it", () => {
    const mine = unfinishedName("0f");
    const ended = mine.replace(`-${process.pid}-`, `-${ENDED}-`);
    const elsewhere = ended.replace(/^\.crosshatch-[0-9a-f]{6}/, ".crosshatch-000000");
    const now = (): number => Date.now();
    expect([leftOver(mine, now), leftOver(ended, now), leftOver(elsewhere, now), leftOver(elsewhere, () => 0)]).toEqual([false, true, false, true]);
    expect(["out.txt", `x${ended}`, `${ended}x`, ".crosshatch-1-2-3.tmp"].some((name) => leftOver(name, () => 0))).toBe(false);
  });

  test("is removed from a folder that is written to; what is still being written stays", () => {
    const folder = fresh();
    const ended = unfinishedName("0f").replace(`-${process.pid}-`, `-${ENDED}-`);
    for (const name of [ended, unfinishedName("0e"), "mine.tmp"]) writeFileSync(join(folder, name), "half");
    utimesSync(join(folder, "mine.tmp"), 0, 0);
    put(join(folder, "out.txt"), "new", false);
    expect(readdirSync(folder).sort()).toEqual([unfinishedName("0e"), "mine.tmp", "out.txt"].sort());
  });
});
