import { type ChildProcess, fork } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";
import { root } from "../../src/tools/paths.ts";
import type { TriedInput } from "./levels.ts";
import type { FuzzTask } from "./worker.ts";

/** What an input may take: wall time of a process that says nothing, and memory of the whole process. */
const SILENCE = 60;
const PROCESSOR_SECONDS = 10;
const MEGABYTES = 512;
/** Of those, what JavaScript's own objects may take; the rest is the program and what it reads into. */
const HEAP = 400;
/** What a process may take to start where many run. */
const STARTING = 120;
/** Inputs handed to a process at a time. */
const PORTION = 2000;
/** Where the program takes itself to stand, to find the samples. */
const HERE = new URL("../../src/tools/paths.ts", import.meta.url).href;

export interface FuzzOptions {
  seed: number;
  inputs: number;
  from?: number;
  processes: number;
  /** The program of the processes. */
  entry?: string;
  /** Seconds after which a process that says nothing is given up. */
  silence?: number;
  /** Told of each input that was tried. */
  tried?: (one: TriedInput) => void;
}

export interface LevelFigures {
  inputs: number;
  results: number;
  refusals: number;
  defects: number;
  worstMilliseconds: number;
}

export interface Fuzzed {
  /** The beginning of the SHA-256 of the program that tried the inputs: figures of other code are not to be added to these. */
  code: string;
  levels: Map<string, LevelFigures>;
  defects: { index: number; level: string; what: string }[];
  worstMilliseconds: number;
  peakMegabytes: number;
}

type Said = { started: number } | { done: true; megabytes: number } | TriedInput;

/** Tries inputs in processes of their own, which are watched: one that hangs or ends is a defect of the input it was at, and the others go on. */
export async function fuzz({ seed, inputs, from = 0, processes, entry = "test/fuzz/worker.ts", silence = SILENCE, tried }: FuzzOptions): Promise<Fuzzed> {
  // Bundled once, so that changes to the sources do not get into a run. It stands where its packages are found.
  const folder = mkdtempSync(join(root, "node_modules", ".fuzz-"));
  const worker = join(folder, "worker.mjs");
  const fuzzed: Fuzzed = { code: "", levels: new Map(), defects: [], worstMilliseconds: 0, peakMegabytes: 0 };
  let next = from;
  const note = (one: TriedInput): void => {
    record(fuzzed, one);
    tried?.(one);
  };
  try {
    fuzzed.code = await bundle(entry, worker);
    const portions = function* (): Generator<[number, number]> {
      while (next < from + inputs) {
        const start = next;
        next = Math.min(from + inputs, next + PORTION);
        yield [start, next];
      }
    };
    const queue = portions();
    const work = async (): Promise<void> => {
      for (const [start, end] of queue) {
        for (let at = start; at < end; ) {
          const came = await portion({ worker, silence }, { seed, from: at, to: end }, fuzzed, note);
          at = came.next;
          if (!came.lost) continue;
          // Where many programs run, silence may be waiting: alone and with more patience it has another chance.
          const again = came.silent ? await portion({ worker, silence: silence * 10 }, { seed, from: at, to: at + 1 }, fuzzed, note) : came;
          if (again.lost) note(again.lost);
          at++;
        }
      }
    };
    await Promise.all(Array.from({ length: processes }, work));
  } finally {
    rmSync(folder, { recursive: true });
  }
  fuzzed.defects.sort((a, b) => a.index - b.index);
  return fuzzed;
}

/** Gives the beginning of the program's SHA-256. */
async function bundle(entry: string, outfile: string): Promise<string> {
  await build({
    absWorkingDir: root,
    entryPoints: [entry],
    outfile,
    bundle: true,
    platform: "node",
    format: "esm",
    target: "node20",
    packages: "external",
    define: { "import.meta.url": JSON.stringify(HERE) },
    logLevel: "warning",
  });
  const program = readFileSync(outfile, "utf8").replaceAll(HERE, "");
  return createHash("sha256").update(program).digest("hex").slice(0, 12);
}

interface Came {
  /** The input to go on with: the end, or the one at which the process was lost. */
  next: number;
  lost?: TriedInput;
  silent?: boolean;
}

function portion({ worker, silence }: { worker: string; silence: number }, order: FuzzTask, fuzzed: Fuzzed, note: (one: TriedInput) => void): Promise<Came> {
  const child = fork(worker, { execArgv: [`--max-old-space-size=${HEAP}`, "--max-semi-space-size=4"], stdio: ["ignore", "ignore", "ignore", "ipc"] });
  let at = order.from;
  let silent = false;
  let isDone = false;
  let timer = setTimeout(() => {}, 0);
  const listen = (seconds = silence): void => {
    clearTimeout(timer);
    timer = setTimeout(() => {
      silent = true;
      child.kill("SIGKILL");
    }, seconds * 1000);
  };
  listen(silence + STARTING);
  child.on("message", (said: Said) => {
    listen();
    if ("started" in said) at = said.started;
    else if ("done" in said) {
      isDone = true;
      noteMemory(fuzzed, said.megabytes, order);
      child.disconnect();
    } else note(said);
  });
  child.send(order);
  return ended(child).then((code) => {
    clearTimeout(timer);
    if (isDone) return { next: order.to };
    const what = silent ? `said nothing for ${silence} s` : `ended the process (${code})`;
    return { next: at, silent, lost: { index: at, level: "lost", outcome: "defect", what, milliseconds: 0 } };
  });
}

function noteMemory(fuzzed: Fuzzed, megabytes: number, { from, to }: FuzzTask): void {
  fuzzed.peakMegabytes = Math.max(fuzzed.peakMegabytes, megabytes);
  if (megabytes > MEGABYTES) fuzzed.defects.push({ index: from, level: "memory", what: `${Math.round(megabytes)} MB from there to ${to}` });
}

const ended = (child: ChildProcess): Promise<string> =>
  new Promise((resolve) => {
    child.on("exit", (code, signal) => resolve(String(code ?? signal)));
  });

function record(fuzzed: Fuzzed, { index, level, outcome, what, milliseconds }: TriedInput): void {
  const found = fuzzed.levels.get(level) ?? { inputs: 0, results: 0, refusals: 0, defects: 0, worstMilliseconds: 0 };
  fuzzed.levels.set(level, found);
  found.inputs++;
  if (outcome === "result") found.results++;
  else if (outcome === "refused") found.refusals++;
  const isSlow = milliseconds > PROCESSOR_SECONDS * 1000;
  if (outcome === "defect" || isSlow) {
    found.defects++;
    fuzzed.defects.push({ index, level, what: what ?? `took ${Math.round(milliseconds / 1000)} s of the processor` });
  }
  found.worstMilliseconds = Math.max(found.worstMilliseconds, milliseconds);
  fuzzed.worstMilliseconds = Math.max(fuzzed.worstMilliseconds, milliseconds);
}
