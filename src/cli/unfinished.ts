import { createHash } from "node:crypto";
import { hostname } from "node:os";

/**
 * The names of files that are being written: by which machine and process, so that a run can tell
 * what an earlier one left behind when it was killed from what another is writing at this moment.
 */
const NAME = /^\.crosshatch-([0-9a-f]{6})-(\d+)-[0-9a-f]+\.tmp$/;

/** On a shared disk other machines' processes cannot be asked about; none writes for as long as this. */
const DAY = 86_400_000;

const machine = createHash("sha256").update(hostname()).digest("hex").slice(0, 6);

export const unfinishedName = (random: string): string => `.crosshatch-${machine}-${process.pid}-${random}.tmp`;

/** Whether a file of that name is of no more use to anyone. `changed`: when it was last written to. */
export function leftOver(name: string, changed: () => number): boolean {
  const [, where, writer] = NAME.exec(name) ?? [];
  if (where === undefined) return false;
  return where === machine ? !isRunning(Number(writer)) : Date.now() - changed() > DAY;
}

function isRunning(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    // Another user's process may not be signalled, but is there.
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
}
