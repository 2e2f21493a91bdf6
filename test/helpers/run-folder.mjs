/**
 * Before all test files and after them: a folder for what several of them need built. Its name tells which process it belongs to,
 * so that the next run removes what one that was killed has left.
 */
import { mkdirSync, readdirSync, rmSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

// Below the project's folder, where the packages are found.
const output = join(dirname(dirname(fileURLToPath(import.meta.url))), "output");
const NAME = /^run-(\d+)$/;

function isRunning(id) {
  try {
    process.kill(id, 0);
    return true;
  } catch {
    return false;
  }
}

export default function makeRunFolder() {
  mkdirSync(output, { recursive: true });
  for (const name of readdirSync(output)) {
    const [, id] = NAME.exec(name) ?? [];
    if (id && !isRunning(Number(id))) rmSync(join(output, name), { recursive: true });
  }
  const folder = join(output, `run-${process.pid}`);
  mkdirSync(folder, { recursive: true });
  process.env.CROSSHATCH_TEST_RUN = folder;
}
