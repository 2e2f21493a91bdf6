import { spawn } from "node:child_process";
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PassThrough, Readable } from "node:stream";
import { pathToFileURL } from "node:url";
import { buildCommandLine } from "../../src/cli/build.mjs";
import type { run as Run } from "../../src/cli/main.ts";
import { root } from "../../src/tools/paths.ts";
import { onceARun } from "../helpers/once-a-run.ts";

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

function pieces(input: string | Uint8Array | readonly string[]): Buffer[] {
  const all = Array.isArray(input) ? (input as readonly string[]) : [input as string | Uint8Array];
  return all.filter((piece) => piece.length > 0).map((piece) => Buffer.from(piece));
}

/** The folder of the built program, where the launcher has it too: its threads stand beside it. */
export async function builtProgram(): Promise<string> {
  const dist = join(root, "dist");
  await onceARun("program", () => buildCommandLine(dist));
  return join(dist, "cli");
}

let last: Promise<unknown> = Promise.resolve();

/**
 * Runs the built program in this process, which spares it starting: for whatever shows in its code, its output and its files.
 * One run at a time, as the folder it stands in and the environment are the process's.
 */
export function crosshatch(args: readonly string[], given: Given = {}): Promise<Ran> {
  const next = last.then(() => runHere(args, given));
  last = next.catch(() => {});
  return next;
}

async function runHere(args: readonly string[], { input = "", cwd, env = {} }: Given): Promise<Ran> {
  const { run } = (await import(pathToFileURL(join(await builtProgram(), "main.js")).href)) as { run: typeof Run };
  const [stdout, stderr] = [new PassThrough(), new PassThrough()];
  const [out, err] = [collected(stdout), collected(stderr)];
  const folder = process.cwd();
  const before = Object.keys(env).map((name) => [name, process.env[name]] as const);
  try {
    if (cwd !== undefined) process.chdir(cwd);
    Object.assign(process.env, env);
    const code = await run(args, { stdin: Readable.from(pieces(input)), stdout, stderr });
    return { code, out: out(), err: err() };
  } finally {
    process.chdir(folder);
    for (const [name, value] of before) {
      if (value === undefined) delete process.env[name];
      else process.env[name] = value;
    }
  }
}

function collected(stream: PassThrough): () => string {
  const chunks: Buffer[] = [];
  stream.on("data", (chunk: Buffer) => chunks.push(chunk));
  return () => Buffer.concat(chunks).toString();
}

const LAUNCHER = join(root, "src", "cli", "crosshatch.mjs");

/** Runs `crosshatch` as its user does, as a process of its own: for signals, pipes, memory and whatever belongs to a process. */
export function crosshatchProcess(args: readonly string[], { input = "", cwd, env }: Given = {}): Promise<Ran> {
  const child = spawn(process.execPath, [LAUNCHER, ...args], { cwd, env: { ...process.env, NODE_OPTIONS: "", ...env } });
  const out: Buffer[] = [];
  const err: Buffer[] = [];
  child.stdout.on("data", (chunk: Buffer) => out.push(chunk));
  child.stderr.on("data", (chunk: Buffer) => err.push(chunk));
  // A program that has refused its arguments reads no input.
  child.stdin.on("error", () => {});
  for (const piece of pieces(input)) child.stdin.write(piece);
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
