/** A process that tries inputs of a seed, one after the other, and tells what came of each. */
import { tryInput } from "./levels.ts";

// The engine's remarks on its own running.
for (const way of ["log", "info", "warn", "error", "debug"] as const) console[way] = () => {};

export interface FuzzTask {
  seed: number;
  from: number;
  to: number;
}

process.on("message", async ({ seed, from, to }: FuzzTask) => {
  for (let index = from; index < to; index++) {
    process.send!({ started: index });
    process.send!(await tryInput(seed, index));
  }
  process.send!({ done: true, megabytes: process.resourceUsage().maxRSS / 1024 });
});

// Nobody listens any more.
process.on("disconnect", () => process.exit());
