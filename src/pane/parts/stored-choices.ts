import { createContext } from "preact";
import { useCallback, useContext, useEffect, useRef, useState } from "preact/hooks";
import type { SheetHost } from "../../workbook/port.ts";
import { PANE_KEY } from "../../workbook/storage.ts";

/** Typing comes in bursts: it is written once it rests, in milliseconds. */
const REST = 800;

/**
 * What people typed and chose, view by view, kept inside the workbook. Nothing is written until
 * somebody changes something; where the workbook does not take it, it lasts as long as the pane.
 */
export class StoredChoices {
  /** Fulfilled once what the workbook keeps is known; a workbook that cannot be asked keeps nothing. */
  readonly recalled: Promise<void>;
  readonly #host: Pick<SheetHost, "loadText" | "storeText">;
  readonly #values = new Map<string, unknown>();
  #isInWorkbook = false;
  #resting: ReturnType<typeof setTimeout> | undefined;

  constructor(host: Pick<SheetHost, "loadText" | "storeText">) {
    this.#host = host;
    this.recalled = this.#recall().catch(() => {});
  }

  async #recall(): Promise<void> {
    const text = await this.#host.loadText(PANE_KEY);
    this.#isInWorkbook = text !== null;
    const read: unknown = JSON.parse(text ?? "{}");
    if (typeof read !== "object" || read === null) return;
    // What was changed while the workbook was asked is newer.
    for (const [name, value] of Object.entries(read)) if (!this.#values.has(name)) this.#values.set(name, value);
  }

  /** As foreign as any file: whoever takes it checks it. */
  value(name: string): unknown {
    return this.#values.get(name);
  }

  /** `isAside` goes along with the next change, and is no reason to change a workbook that keeps nothing yet. */
  put(name: string, value: unknown, isAside = false): void {
    this.#values.set(name, value);
    if (isAside && !this.#isInWorkbook) return;
    clearTimeout(this.#resting);
    this.#resting = setTimeout(() => this.write(), REST);
  }

  /** Writes what waits to be written. That a workbook does not take it is nobody's concern. */
  write(): void {
    if (this.#resting === undefined) return;
    clearTimeout(this.#resting);
    this.#resting = undefined;
    this.recalled
      .then(() => this.#host.storeText(PANE_KEY, JSON.stringify(Object.fromEntries(this.#values))))
      .then(
        () => {
          this.#isInWorkbook = true;
        },
        () => {},
      );
  }
}

export const StoredChoicesContext = createContext<StoredChoices | null>(null);

type Change<T> = (next: T | ((before: T) => T)) => void;

/** State of a view that its workbook keeps. `take` makes of what was kept what can be used; `undefined` for nothing. */
export function useStored<T>(name: string, first: T, take: (given: unknown) => T | undefined): [value: T, change: Change<T>] {
  const kept = useContext(StoredChoicesContext);
  const [value, setValue] = useState<T>(() => take(kept?.value(name)) ?? first);
  const now = useRef(value);
  const isChanged = useRef(false);
  useEffect(() => {
    kept?.recalled.then(() => {
      const recalled = isChanged.current ? undefined : take(kept.value(name));
      if (recalled === undefined) return;
      now.current = recalled;
      setValue(recalled);
    });
  }, [kept, name]);
  const change = useCallback<Change<T>>(
    (next) => {
      isChanged.current = true;
      now.current = typeof next === "function" ? (next as (before: T) => T)(now.current) : next;
      kept?.put(name, now.current);
      setValue(now.current);
    },
    [kept, name],
  );
  return [value, change];
}

export const textFrom = (given: unknown): string | undefined => (typeof given === "string" ? given : undefined);

/** The fields of an object that have the type that they have in `first`, over those of `first`. */
export function fieldsLike<T extends object>(first: T, given: unknown): T | undefined {
  if (typeof given !== "object" || given === null) return undefined;
  const alike = Object.entries(first).flatMap(([key, value]) => {
    const one = (given as Record<string, unknown>)[key];
    return typeof one === typeof value && one !== null ? [[key, one]] : [];
  });
  return { ...first, ...Object.fromEntries(alike) };
}
