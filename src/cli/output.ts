import { once } from "node:events";
import { UNREADABLE } from "./exit-codes.ts";

/**
 * Writes a line to standard output, and waits where the reader is slower. A reader that has gone,
 * as `head` does, ends the program quietly.
 */
export async function print(line: string): Promise<void> {
  if (!process.stdout.write(`${line}\n`)) await once(process.stdout, "drain");
}

export function complain(line: string): void {
  process.stderr.write(`crosshatch: ${line}\n`);
}

export function endQuietlyWithReader(): void {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on("error", (error: NodeJS.ErrnoException) => {
      if (error.code === "EPIPE") process.exit();
      // Nowhere is left to say more: a full disk, a broken device.
      process.exit(UNREADABLE);
    });
  }
}
