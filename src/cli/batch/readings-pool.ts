import { setImmediate } from "node:timers/promises";
import type { Piscina } from "piscina";
import { type ReadingsAnswer, type ReadingsTask, readStretch } from "./read-stretch.ts";
import { startThreads } from "./threads.ts";

/** What becomes of findings is soon handed over, so that little room for what is new will do. */
const YOUNG_MEGABYTES = 8;
/** Stretches that each thread has before it, so that it never waits for the next one. */
const BEFORE_EACH = 2;

/** Reads stretches of files of readings on several threads, of which this one is the last; the others start with the first stretch. */
export class ReadingsPool {
  #pool: Promise<Piscina> | undefined;
  #given = 0;

  constructor(readonly threads: number) {}

  /** Stretches in work or waiting for their turn that keep all threads busy. */
  get ahead(): number {
    return BEFORE_EACH * this.threads;
  }

  async read(task: ReadingsTask): Promise<ReadingsAnswer> {
    const others = this.threads - 1;
    this.#pool ??= startThreads("readings-worker", others, { maxYoungGenerationSizeMb: YOUNG_MEGABYTES }, BEFORE_EACH);
    const pool = await this.#pool;
    // Until now others may have come to their end, which is heard of only while nothing is done here.
    await setImmediate();
    if (this.#given >= BEFORE_EACH * others) return readStretch(task);
    this.#given++;
    try {
      return (await pool.run(task)) as ReadingsAnswer;
    } finally {
      this.#given--;
    }
  }

  async close(): Promise<void> {
    await (await this.#pool)?.destroy();
  }
}
