/**
 * `npm run mutation [-- folder …]`: changes the sources of core, math and the functions in small ways,
 * one at a time, and counts how many of the changes the tests notice; the count and the changes that pass
 * unnoticed go to `test/mutation/`. Folders are `core`, `math` and the
 * groups of functions, `core/verdict` is one file; all without an argument. What has not changed since the last run is not run again.
 */
import { mkdirSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { Stryker } from "@stryker-mutator/core";
import { GROUPS } from "../../src/core/define.ts";
import { root } from "../../src/tools/paths.ts";
import { publish, reportsIn, score } from "./publish.ts";

/** Outside git, and kept between runs. */
const CACHE = join(root, "node_modules", ".cache", "crosshatch-mutation");

const FOLDERS: Readonly<Record<string, string>> = {
  math: "src/math",
  core: "src/core",
  ...Object.fromEntries(GROUPS.map((group) => [group, `src/functions/${group}`])),
};

const { positionals, values } = parseArgs({
  allowPositionals: true,
  options: { concurrency: { type: "string", default: "2" }, force: { type: "boolean", default: false } },
});
/** `math`, or of it only `math/anova`. */
const asked = (positionals.length ? positionals : Object.keys(FOLDERS)).map((name) => name.split("/") as [folder: string, file?: string]);
const unknown = asked.map(([name]) => name).filter((name) => !FOLDERS[name]);
if (unknown.length) throw new Error(`There is no folder called ${unknown.join(", ")}: they are ${Object.keys(FOLDERS).join(", ")}`);

process.chdir(root);
mkdirSync(CACHE, { recursive: true });
const PUBLISHED = join(root, "test", "mutation");
for (const [name, file = "**/*"] of asked) {
  await new Stryker({
    mutate: [`${FOLDERS[name]}/${file}.ts`, "!src/core/version.ts", "!**/*.d.ts"],
    ignorePatterns: ["**", "!src/**", "!test/**", "test/output", "!package.json", "!tsconfig.json"],
    plugins: ["left-alone", "runner"].map((name) => join(PUBLISHED, `${name}.ts`)),
    testRunner: "in-process",
    testRunnerNodeArgs: ["--import", "tsx"],
    checkerNodeArgs: ["--import", "tsx"],
    ignorers: ["help-text"],
    coverageAnalysis: "perTest",
    concurrency: Number(values.concurrency),
    // What never ends is noticed by counting; the clock is only the last resort, so that a busy machine kills nothing.
    timeoutMS: 120_000,
    dryRunTimeoutMinutes: 60,
    incremental: true,
    incrementalFile: join(CACHE, `${name}.json`),
    force: values.force,
    reporters: ["clear-text", "json", "progress-append-only"],
    clearTextReporter: { logTests: false, reportTests: false, allowColor: false },
    jsonReporter: { fileName: join(CACHE, `${name}-report.json`) },
    tempDirName: join(tmpdir(), "crosshatch-mutation"),
    cleanTempDir: "always",
  } as ConstructorParameters<typeof Stryker>[0]).runMutationTest();
  const whole = publish(reportsIn(CACHE, Object.keys(FOLDERS)), PUBLISHED);
  console.log(`${whole.noticed} of ${whole.tried} changes are noticed by the tests: ${score(whole)} %`);
}
