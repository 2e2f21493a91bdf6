import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout } from "node:timers/promises";
import { root } from "../../src/tools/paths.ts";

const OUTPUT = join(root, "test", "output");
/** Milliseconds to wait for another test file that is making it. */
const PATIENCE = 120_000;

/** A folder that `make` fills, once for all test files of a run; outside a run, for whoever asks. Nobody writes into it afterwards. */
export async function onceARun(name: string, make: (folder: string) => Promise<unknown>): Promise<string> {
  const folder = join(process.env.CROSSHATCH_TEST_RUN ?? folderOfThisProcess(), name);
  const mark = (end: "made" | "failed"): string => `${folder}.${end}`;
  if (isFirst(folder)) {
    try {
      await make(folder);
      writeFileSync(mark("made"), "");
    } catch (error) {
      writeFileSync(mark("failed"), "");
      throw error;
    }
  }
  for (let waited = 0; !existsSync(mark("made")); waited += 50) {
    if (existsSync(mark("failed")) || waited > PATIENCE) throw new Error(`${name} could not be built: see the test file that was the first to ask for it`);
    await setTimeout(50);
  }
  return folder;
}

let own: string | undefined;

/** Tasks that are no run of tests use the same helpers. */
function folderOfThisProcess(): string {
  if (own !== undefined) return own;
  mkdirSync(OUTPUT, { recursive: true });
  const made = mkdtempSync(join(OUTPUT, "alone-"));
  process.once("exit", () => rmSync(made, { recursive: true, force: true }));
  own = made;
  return made;
}

function isFirst(folder: string): boolean {
  try {
    mkdirSync(folder);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "EEXIST") return false;
    throw error;
  }
}
