import { type ChildProcess, fork } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";
import { root } from "../../src/tools/paths.ts";

/** What came of one file at the front door. */
export interface Came {
  /** Why it was refused. */
  refused?: string;
  counts?: { rowsIn: number; checked: number; refused: number };
  findings?: string[];
  notes?: string[];
  /** What stands in the first cell of the first sheet. */
  first?: unknown;
  sheets?: string[];
  /** An exception: never to be. */
  fault?: string;
  /** Of the processor, on a machine as fast as the one for which the bounds are meant; memory is that of the process, most so far. */
  seconds: number;
  megabytes: number;
}

/** A process behind the front door, with as much memory as hostile files may take. */
export class Door {
  readonly #folder = mkdtempSync(join(root, "node_modules", ".door-"));
  #child: ChildProcess | undefined;

  async open(): Promise<void> {
    await build({
      absWorkingDir: root,
      entryPoints: ["test/hostile/door-worker.ts"],
      outfile: join(this.#folder, "worker.mjs"),
      bundle: true,
      platform: "node",
      format: "esm",
      target: "node20",
      packages: "external",
      logLevel: "warning",
    });
  }

  /** Each file meets a process of its own, so that its memory can be told. */
  async check(name: string, bytes: Uint8Array | Iterable<Uint8Array>): Promise<Came> {
    const path = join(this.#folder, name);
    mkdirSync(this.#folder, { recursive: true });
    if (bytes instanceof Uint8Array) writeFileSync(path, bytes);
    else for (const piece of bytes) writeFileSync(path, piece, { flag: "a" });
    const child = fork(join(this.#folder, "worker.mjs"), { execArgv: ["--max-old-space-size=400"], stdio: ["ignore", "ignore", "pipe", "ipc"] });
    this.#child = child;
    let complaint = "";
    child.stderr!.on("data", (piece) => {
      complaint = `${complaint}${piece}`.slice(-2000);
    });
    return await new Promise((resolve) => {
      child.on("message", (came: Came) => {
        resolve(came);
        child.disconnect();
      });
      child.on("exit", (code, signal) => resolve({ fault: `ended (${code ?? signal}): ${complaint}`, seconds: 0, megabytes: 0 }));
      child.send(path);
    });
  }

  close(): void {
    this.#child?.kill("SIGKILL");
    rmSync(this.#folder, { recursive: true, force: true });
  }
}
