import { fileURLToPath } from "node:url";
import type { ResourceLimits } from "node:worker_threads";
import type { Piscina } from "piscina";

/** Threads that run the program of this name beside ours. */
export async function startThreads(program: string, threads: number, resourceLimits: ResourceLimits): Promise<Piscina> {
  const { Piscina } = await import("piscina");
  const filename = fileURLToPath(new URL(`./${program}.js`, import.meta.url));
  // All of them stay until the end: a thread takes longer to start than a workbook to be checked.
  const pool = new Piscina({ filename, minThreads: threads, maxThreads: threads, resourceLimits });
  // A thread that fails with nothing to do could not even start; without an end to it the rest would wait for ever.
  pool.on("error", () => void pool.destroy());
  return pool;
}
