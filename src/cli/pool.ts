import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import type { ResourceLimits } from "node:worker_threads";
import type { Piscina } from "piscina";
import type { WorkbookAnswer, WorkbookTask } from "./checked.ts";
import { MEGABYTES, tooMuchMemory } from "./workbook-limits.ts";

/** Room for what is new: with the little that a thread is given otherwise, a tenth more time goes into clearing up. */
const YOUNG_MEGABYTES = 64;
/** More threads than this wait for the disk and for one another. */
const MOST_THREADS = 16;

const threadsOfMachine = (): number => Math.min(availableParallelism(), MOST_THREADS);

/** Threads that check workbooks; they start with the first one. A workbook that takes all memory ends its thread, is told so, and the others go on. */
export class WorkbookPool {
  readonly threads: number;
  #pool: Promise<Piscina> | undefined;

  constructor(
    books: number,
    readonly megabytes = MEGABYTES,
    most = threadsOfMachine(),
  ) {
    this.threads = Math.max(1, Math.min(books, most));
  }

  async check(task: WorkbookTask): Promise<WorkbookAnswer> {
    this.#pool ??= startThreads("workbook-worker", this.threads, { maxOldGenerationSizeMb: this.megabytes, maxYoungGenerationSizeMb: YOUNG_MEGABYTES });
    try {
      return (await (await this.#pool).run(task)) as WorkbookAnswer;
    } catch (error) {
      const { code, message } = error as NodeJS.ErrnoException;
      return {
        fault: code === "ERR_WORKER_OUT_OF_MEMORY" ? tooMuchMemory(this.megabytes) : `led to a fault in Crosshatch: ${message}`,
      };
    }
  }

  async close(): Promise<void> {
    await (await this.#pool)?.destroy();
  }
}

/** Threads that run the program of this name beside ours. */
async function startThreads(program: string, threads: number, resourceLimits: ResourceLimits): Promise<Piscina> {
  const { Piscina } = await import("piscina");
  const filename = fileURLToPath(new URL(`./${program}.js`, import.meta.url));
  // All of them stay until the end: a thread takes longer to start than a workbook to be checked.
  const pool = new Piscina({ filename, minThreads: threads, maxThreads: threads, resourceLimits });
  // A thread that fails with nothing to do could not even start; without an end to it the rest would wait for ever.
  pool.on("error", () => void pool.destroy());
  return pool;
}
