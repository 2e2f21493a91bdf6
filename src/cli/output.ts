import { once } from "node:events";
import { writeSync } from "node:fs";
import { UNREADABLE } from "./exit-codes.ts";
import { refusalOf } from "./safe-file.ts";
import { streams } from "./streams.ts";
import { plain } from "./text.ts";

/**
 * Writes a line to standard output, and waits where the reader is slower. A reader that has gone,
 * as `head` does, ends the program quietly.
 */
export const print = (line: string): Promise<void> => write(`${line}\n`);

/** Characters that are written together, as each writing costs more than a line. */
const PIECE = 1 << 16;

export async function printAll(lines: Iterable<string>): Promise<void> {
  let text = "";
  for (const line of lines) {
    text += `${line}\n`;
    if (text.length < PIECE) continue;
    await write(text);
    text = "";
  }
  if (text !== "") await write(text);
}

/** Resolves when a reader that was slower has come up; nothing where there is nothing to wait for. */
export function readerIsReady(): Promise<void> | undefined {
  const { stdout } = streams();
  return stdout.writableNeedDrain ? once(stdout, "drain").then(() => {}) : undefined;
}

async function write(text: string): Promise<void> {
  const { stdout } = streams();
  if (!stdout.write(text)) await once(stdout, "drain");
}

/** Whatever the sentence holds of somebody else's text steers no terminal. */
export function complain(sentence: string): void {
  streams().stderr.write(`crosshatch: ${plain(sentence)}\n`);
}

/** A reader that has gone ends the program quietly; a disk that is full, or a device that fails, is said where that is still possible. */
export function endWithReader(): void {
  process.stdout.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code === "EPIPE") process.exit();
    try {
      // At once, as nothing is waited for any more.
      writeSync(process.stderr.fd, `crosshatch: ${refusalOf("standard output", error).message}\n`);
    } finally {
      process.exit(UNREADABLE);
    }
  });
  process.stderr.on("error", ({ code }: NodeJS.ErrnoException) => process.exit(code === "EPIPE" ? undefined : UNREADABLE));
}
