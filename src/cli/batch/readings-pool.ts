import { fileURLToPath } from "node:url";
import type { Piscina } from "piscina";
import type { ReadingsAnswer, ReadingsTask } from "./readings-worker.ts";

/** What becomes of findings is soon handed over, so that little room for what is new will do. */
const YOUNG_MEGABYTES = 8;

/** Threads that read stretches of files of readings; they start with the first one. */
export class ReadingsPool {
  #pool: Promise<Piscina> | undefined;

  constructor(readonly threads: number) {}

  async read(task: ReadingsTask): Promise<ReadingsAnswer> {
    this.#pool ??= this.#start();
    return (await (await this.#pool).run(task)) as ReadingsAnswer;
  }

  async close(): Promise<void> {
    await (await this.#pool)?.destroy();
  }

  async #start(): Promise<Piscina> {
    const { Piscina } = await import("piscina");
    const filename = fileURLToPath(new URL("./readings-worker.js", import.meta.url));
    const resourceLimits = { maxYoungGenerationSizeMb: YOUNG_MEGABYTES };
    const pool = new Piscina({ filename, minThreads: this.threads, maxThreads: this.threads, resourceLimits, concurrentTasksPerWorker: 1 });
    // A thread that fails with nothing to do could not even start; without an end to it the rest would wait for ever.
    pool.on("error", () => void pool.destroy());
    return pool;
  }
}
