import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { root } from "../../src/tools/paths.ts";
import { type CpuProfile, type Profile, selfTimes } from "./profile.ts";

/** Runs `work` with a folder that is gone afterwards. */
export async function inFolder<T>(work: (folder: string) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), "crosshatch-benchmark-"));
  try {
    return await work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export interface Program {
  command: string;
  args: readonly string[];
}

/** Runs it to its end and gives what it printed; `fine` are the codes that it may end with. */
export function run({ command, args }: Program, fine: readonly number[] = [0]): string {
  const { status, stdout, stderr, error } = spawnSync(command, args, { cwd: root, encoding: "utf8", maxBuffer: 2 ** 30 });
  if (error || status === null || !fine.includes(status)) throw new Error(`${command} ${args.join(" ")} ended with ${status}: ${error?.message ?? stderr}`);
  return stdout;
}

/** Whether a program is there and ends well. */
export function succeeds({ command, args }: Program): boolean {
  return spawnSync(command, args, { cwd: root, stdio: "ignore" }).status === 0;
}

/** Only the first `count` processors are there for it; where the system cannot do that, `undefined`. */
export function onProcessors(count: number, { command, args }: Program): Program | undefined {
  return succeeds({ command: "taskset", args: ["--version"] }) ? { command: "taskset", args: ["-c", `0-${count - 1}`, command, ...args] } : undefined;
}

/** Runs a script of Node once more under its profiler. */
export function profileOf(of: string, folder: string, script: readonly string[], fine: readonly number[]): Profile {
  run({ command: process.execPath, args: ["--cpu-prof", `--cpu-prof-dir=${folder}`, ...script] }, fine);
  // One profile for each thread, of which most wait.
  const threads = readdirSync(folder)
    .filter((name) => name.endsWith(".cpuprofile"))
    .map((name) => selfTimes(JSON.parse(readFileSync(join(folder, name), "utf8")) as CpuProfile))
    .sort((a, b) => b.busy - a.busy);
  return { of, self: threads[0]?.self ?? [] };
}
