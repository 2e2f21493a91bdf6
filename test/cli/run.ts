import { spawn } from "node:child_process";
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { root } from "../../src/tools/paths.ts";

const LAUNCHER = join(root, "src", "cli", "crosshatch.mjs");

export interface Ran {
  code: number | null;
  out: string;
  err: string;
}

export interface Given {
  /** What comes in on standard input; pieces are written one after the other. */
  input?: string | Uint8Array | readonly string[];
  cwd?: string;
  env?: Record<string, string>;
}

/** Runs `crosshatch` as its user does, as a process of its own. */
export function crosshatch(args: readonly string[], { input = "", cwd, env }: Given = {}): Promise<Ran> {
  const child = spawn(process.execPath, [LAUNCHER, ...args], { cwd, env: { ...process.env, NODE_OPTIONS: "", ...env } });
  const out: Buffer[] = [];
  const err: Buffer[] = [];
  child.stdout.on("data", (chunk: Buffer) => out.push(chunk));
  child.stderr.on("data", (chunk: Buffer) => err.push(chunk));
  // A program that has refused its arguments reads no input.
  child.stdin.on("error", () => {});
  for (const piece of Array.isArray(input) ? (input as readonly string[]) : [input as string | Uint8Array]) child.stdin.write(piece);
  child.stdin.end();
  return new Promise((resolve) => {
    child.on("close", (code) => resolve({ code, out: Buffer.concat(out).toString(), err: Buffer.concat(err).toString() }));
  });
}

/** A folder with these files in it, for one test file. */
export function folderOf(files: Record<string, string | Uint8Array>): string {
  const folder = mkdtempSync(join(tmpdir(), "crosshatch-"));
  for (const [name, content] of Object.entries(files)) writeFileSync(join(folder, name), content);
  return folder;
}

export const jsonLines = (text: string): Record<string, unknown>[] =>
  text
    .split("\n")
    .filter(Boolean)
    .map((line) => JSON.parse(line));
