import { existsSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "./paths.ts";

/** What decides as well how a bench is made of its files. */
const MAKERS = ["src/tools/build-bench.ts", "src/tools/bundling.ts", "package.json", "package-lock.json"];

/** Of every file that a bench was made of: when it was last changed and how long it was. */
type Inputs = readonly (readonly [file: string, changed: number, size: number])[];

/**
 * Builds the bench into a folder unless it stands there and nothing that it was made of has changed since, which is seen
 * by the times and lengths of the files: building takes seconds, looking a few hundredths of one.
 */
export async function freshBench(folder: string): Promise<"built" | "as it was"> {
  const record = `${folder}.made-from.json`;
  if (existsSync(join(folder, "index.html")) && isFresh(record)) return "as it was";
  // Whoever is stopped halfway leaves no record behind.
  rmSync(record, { force: true });
  // Where nothing can be written that is said here, by its code; the bundler says it in its own way.
  mkdirSync(folder, { recursive: true });
  const { makeBench } = await import("./build-bench.ts");
  const { files } = await makeBench(folder);
  writeFileSync(record, JSON.stringify([...new Set([...files, ...MAKERS])].flatMap((file) => stateOf(file) ?? [])));
  return "built";
}

function isFresh(record: string): boolean {
  try {
    const files = JSON.parse(readFileSync(record, "utf8")) as Inputs;
    return (
      files.length > 0 &&
      files.every(([file, changed, size]) => {
        const [now] = stateOf(file) ?? [];
        return now !== undefined && now[1] === changed && now[2] === size;
      })
    );
  } catch {
    return false;
  }
}

function stateOf(file: string): [Inputs[number]] | undefined {
  const state = statSync(join(root, file), { throwIfNoEntry: false });
  return state && [[file, state.mtimeMs, state.size]];
}
