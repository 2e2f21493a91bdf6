import { createStore, del, entries, set, type UseStore } from "idb-keyval";

/** A workbook with changes that are not in its file, as this browser keeps it. */
export interface Kept {
  id: string;
  name: string;
  bytes: Uint8Array;
  /** When it was kept, in milliseconds since 1970. */
  time: number;
}

/** Between two keepings at least so long, and so many times as long as the last one took. */
const PAUSE = 1_500;
const TIMES = 10;

const lockOf = (id: string): string => `crosshatch bench ${id}`;

/**
 * Keeps what is not saved yet in the browser, so that a page which is closed, reloaded or dies loses
 * nothing. Each page keeps its own; what a page left that is no longer there can be offered again.
 */
export class KeptWork {
  readonly #id = crypto.randomUUID();
  readonly #store: UseStore = createStore("crosshatch-bench", "kept-work");
  #timer: ReturnType<typeof setTimeout> | undefined;
  #took = 0;

  /** `make` gives the workbook as it is now, or nothing where all of it is saved. */
  constructor(
    readonly make: () => Promise<Pick<Kept, "name" | "bytes"> | undefined>,
    readonly failed: (reason: Error) => void,
  ) {
    // Held as long as the page lives: by it other pages know that this work is in hands.
    void navigator.locks.request(lockOf(this.#id), () => new Promise(() => {}));
  }

  /** Something has changed: it is kept soon. */
  soon(): void {
    this.#timer ??= setTimeout(() => void this.now(), Math.max(PAUSE, TIMES * this.#took));
  }

  async now(): Promise<void> {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    const started = performance.now();
    try {
      const work = await this.make();
      this.#took = performance.now() - started;
      if (work) await set(this.#id, { ...work, time: Date.now() }, this.#store);
      else await del(this.#id, this.#store);
    } catch (reason) {
      this.failed(reason as Error);
    }
  }

  /** What pages left that are gone, the latest first. */
  async left(): Promise<Kept[]> {
    const { held = [] } = await navigator.locks.query();
    const living = new Set(held.map(({ name }) => name));
    const all = await entries<string, Omit<Kept, "id">>(this.#store);
    return all.flatMap(([id, work]) => (living.has(lockOf(id)) ? [] : [{ id, ...work }])).sort((a, b) => b.time - a.time);
  }

  drop(id: string): Promise<void> {
    return del(id, this.#store);
  }
}
