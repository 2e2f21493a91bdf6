import type { Scanner } from "./scanner.ts";

/** A record that is longer and not at its end is gone through again only when so many times as much of it has come: in small pieces it could come without end. */
const LONG = 1 << 14;
const GROWN = 1.25;

/**
 * Every record of the chunks goes to `take`, which finds it in the scanner. Says why the rest could not
 * be read, where that is so.
 */
export async function readRecords(chunks: AsyncIterable<Uint8Array>, scanner: Scanner, take: () => void): Promise<string | undefined> {
  const look = (): void => {
    while (scanner.advance()) take();
  };
  let due = 0;
  for await (const chunk of chunks) {
    scanner.feed(chunk);
    if (scanner.waiting < due && !scanner.isOpen) continue;
    look();
    if (scanner.isOpen) break;
    due = scanner.waiting > LONG ? scanner.waiting * GROWN : 0;
  }
  scanner.end();
  look();
  return scanner.isOpen ? scanner.brokenOff() : undefined;
}
