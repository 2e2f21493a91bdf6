import { setFlagsFromString } from "node:v8";

/** The newest release of Node in which this was tried; one that does not know the word would say so on standard error. */
const TRIED = 24;

/**
 * Keeps the room for what is new as small as it is by now. By itself it grows to 48 MB, which does
 * nothing for readings: hardly anything stays of them. It counts for all threads, so it is not for
 * workbooks, which need the room.
 */
export function keepYoungSpace(): void {
  if (Number.parseInt(process.versions.node, 10) <= TRIED) setFlagsFromString("--semi-space-growth-factor=1");
}
