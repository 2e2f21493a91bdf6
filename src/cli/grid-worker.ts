import { parentPort } from "node:worker_threads";
import { TooMuchWork } from "../calc/grid-model.ts";
import { evaluateOne } from "../calc/one-formula.ts";
import { UnreadableFile } from "../xlsx/file-limits.ts";
import type { Task, ThreadAnswer } from "./grid-thread.ts";
import { tooMuchWork } from "./workbook-limits.ts";

/** The far end of the engine's thread: works out one task after the other. */
parentPort!.on("message", async (task: Task) => {
  parentPort!.postMessage(await answer(task));
});

async function answer(task: Task): Promise<ThreadAnswer> {
  try {
    if (task.kind === "formula") return evaluateOne(task.formula);
    return await (await import("./grid-readings.ts")).readingsIn(task);
  } catch (error) {
    if (error instanceof TooMuchWork) return { fault: tooMuchWork(error.reason) };
    if (error instanceof UnreadableFile) return { fault: error.reason };
    // Whatever the input made of the engine must not end the run.
    return { fault: `led to a fault in Crosshatch: ${error instanceof Error ? error.message : error}` };
  }
}
