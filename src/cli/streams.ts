import type { Readable, Writable } from "node:stream";

type Output = Writable & { isTTY?: boolean };

/** What a run of the command line reads from and writes to. */
export interface Streams {
  stdin: Readable;
  stdout: Output;
  stderr: Output;
}

/** This process's own, unless whoever calls the command line gives others: one run at a time. */
let current: Streams = process;

export const streams = (): Streams => current;

export async function withStreams<T>(given: Streams, work: () => Promise<T>): Promise<T> {
  const before = current;
  current = given;
  try {
    return await work();
  } finally {
    current = before;
  }
}
