import { Worker } from "node:worker_threads";
import type { FormulaAnswer } from "../calc/one-formula.ts";
import type { ReadingSet } from "../compare/readings.ts";
import type { TypedSizes } from "../compare/typed-sizes.ts";
import { tooMuchMemory } from "./workbook-limits.ts";

export type Task =
  | { kind: "formula"; formula: string }
  | { kind: "readings"; name: string; bytes: Uint8Array; uncertainty: TypedSizes | undefined; work?: number | undefined };
export type ReadingsAnswer = { set: ReadingSet } | { fault: string };
export type ThreadAnswer = FormulaAnswer | ReadingsAnswer;

/**
 * The spreadsheet engine in a thread of its own: a formula or workbook that takes all memory or all
 * time ends the thread and is told so; the next task gets a new one.
 */
export class GridThread {
  #worker: Worker | undefined;
  /** The task under way. */
  #open: { answer: (answer: ThreadAnswer) => void; subject: string; timer: NodeJS.Timeout | undefined } | undefined;

  /** `megabytes`: what one task may take. */
  constructor(readonly megabytes: number) {}

  /** One task at a time: the next is asked when the last has been answered. */
  ask(task: Task & { kind: "formula" }, seconds: number): Promise<FormulaAnswer>;
  ask(task: Task & { kind: "readings" }): Promise<ReadingsAnswer>;
  ask(task: Task, seconds?: number): Promise<ThreadAnswer> {
    const worker = this.#running();
    const subject = task.kind === "formula" ? "the formula " : "";
    const late = (): void => this.#giveUp(worker, `took longer than ${seconds} s to work out`);
    return new Promise((answer) => {
      this.#open = { answer, subject, timer: seconds === undefined ? undefined : setTimeout(late, seconds * 1000) };
      worker.postMessage(task);
    });
  }

  async close(): Promise<void> {
    const worker = this.#worker;
    this.#worker = undefined;
    await worker?.terminate();
  }

  #running(): Worker {
    if (this.#worker) return this.#worker;
    // The engine's remarks on its own running must not get between our lines.
    const options = { resourceLimits: { maxOldGenerationSizeMb: this.megabytes }, stdout: true, stderr: true };
    const worker = new Worker(new URL("./grid-worker.js", import.meta.url), options);
    this.#worker = worker;
    worker.on("message", (answer: ThreadAnswer) => this.#end(answer));
    worker.on("error", ({ code, message }: NodeJS.ErrnoException) => {
      this.#giveUp(worker, code === "ERR_WORKER_OUT_OF_MEMORY" ? this.#tooLarge() : `led to a fault in Crosshatch: ${message}`);
    });
    worker.on("exit", () => this.#giveUp(worker, "ended the engine that works it out"));
    return worker;
  }

  #tooLarge(): string {
    return this.#open?.subject ? "needs more memory than there is" : tooMuchMemory(this.megabytes);
  }

  /** Ends a thread that is of no more use. A thread that has been given up already says nothing more. */
  #giveUp(worker: Worker, why: string): void {
    if (worker !== this.#worker) return;
    this.#worker = undefined;
    void worker.terminate();
    this.#end({ fault: `${this.#open?.subject ?? ""}${why}` });
  }

  #end(answer: ThreadAnswer): void {
    const open = this.#open;
    this.#open = undefined;
    clearTimeout(open?.timer);
    open?.answer(answer);
  }
}
