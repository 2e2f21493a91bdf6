/** Format, lint, import direction (Biome), the rules for Office code (ESLint) and the gate over the specs. */
import { spawnSync } from "node:child_process";
import { createRequire } from "node:module";
import { pathToFileURL } from "node:url";
import { root } from "../../src/tools/paths.ts";

const require = createRequire(import.meta.url);
export const OFFICE_CODE = ["src/addin", "src/hosts/excel"];

const steps: [string, string[]][] = [
  ["Biome", [require.resolve("@biomejs/biome/bin/biome"), "check", "--error-on-warnings", "."]],
  ["ESLint, Office rules", [require.resolve("eslint/package.json").replace(/package\.json$/, "bin/eslint.js"), "--max-warnings", "0", ...OFFICE_CODE]],
  ["Gate", ["--import", "tsx", "test/tasks/gate.ts"]],
];

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  for (const [name, args] of steps) {
    const done = spawnSync(process.execPath, args, { cwd: root, stdio: "inherit" });
    if (done.status !== 0) {
      console.error(`${name} found something: see above.`);
      process.exitCode = 1;
    }
  }
}
