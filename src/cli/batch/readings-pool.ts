import type { Piscina } from "piscina";
import type { ReadingsAnswer, ReadingsTask } from "./readings-worker.ts";
import { startThreads } from "./threads.ts";

/** What becomes of findings is soon handed over, so that little room for what is new will do. */
const YOUNG_MEGABYTES = 8;

/** Threads that read stretches of files of readings; they start with the first one. */
export class ReadingsPool {
  #pool: Promise<Piscina> | undefined;

  constructor(readonly threads: number) {}

  async read(task: ReadingsTask): Promise<ReadingsAnswer> {
    this.#pool ??= startThreads("readings-worker", this.threads, { maxYoungGenerationSizeMb: YOUNG_MEGABYTES });
    return (await (await this.#pool).run(task)) as ReadingsAnswer;
  }

  async close(): Promise<void> {
    await (await this.#pool)?.destroy();
  }
}
