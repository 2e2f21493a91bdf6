/**
 * The gate: what every declared function must have, and what packages may bring in. Prints one line for each thing that is missing
 * and fails if there is any.
 */
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Spec } from "../../src/core/define.ts";
import { specFiles } from "../../src/tools/generated.ts";
import { root } from "../../src/tools/paths.ts";
import { readSupply, supplyFaults } from "../../src/tools/supply.ts";
import { checksFor } from "../reference/checks/index.ts";
import { stale } from "./generate.ts";

const LONGEST_DESCRIPTION = 128;
const NAME = /^[A-Z]{3,}$/;
// Excel columns end at XFD: three letters with digits would be a cell, letters alone never are.
const EXAMPLE_START = /^=HATCH\./;

/** What is missing from one spec, as sentences. */
export function shortcomings(spec: Spec, group: string, hasTest: boolean): string[] {
  const missing: string[] = [];
  const need = (holds: boolean, what: string) => holds || missing.push(`${spec.name}: ${what}`);
  need(NAME.test(spec.name), "the name must be three or more capital letters");
  need(spec.group === group, `declares group ${spec.group} but stands in ${group}/`);
  need(spec.source.trim().length > 0, "has no source");
  need(spec.definition.trim().length > 0, "has no definition");
  need(spec.summary.length > 0 && spec.summary.length <= LONGEST_DESCRIPTION, `the summary must have 1 to ${LONGEST_DESCRIPTION} characters`);
  for (const { name, param } of spec.inputs) {
    need(param.help.length > 0 && param.help.length <= LONGEST_DESCRIPTION, `the description of ${name} must have 1 to ${LONGEST_DESCRIPTION} characters`);
  }
  const firstOptional = spec.inputs.findIndex(({ param }) => param.isOptional);
  need(firstOptional < 0 || spec.inputs.slice(firstOptional).every(({ param }) => param.isOptional), "a needed param stands after an optional one");
  need(spec.examples.length >= (spec.inputs.length ? 2 : 1), "has fewer than two examples");
  need(
    spec.examples.every(({ formula }) => EXAMPLE_START.test(formula)),
    "an example does not start with =HATCH.",
  );
  need(spec.inputs.length === 0 || spec.examples.some(({ formula }) => formula.includes("{")), "has no example with a range");
  need(hasTest, "has no test file");
  return missing;
}

export async function gate(): Promise<string[]> {
  const missing: string[] = [];
  const names = new Set<string>();
  for (const { group, file, exported } of specFiles()) {
    const module = (await import(pathToFileURL(join(root, "src", "functions", group, file)).href)) as Record<string, Spec>;
    const spec = module[exported]!;
    if (names.has(spec.name)) missing.push(`${spec.name} is declared twice`);
    names.add(spec.name);
    const test = join(root, "test", "functions", group, file.replace(/\.ts$/, ".test.ts"));
    missing.push(...shortcomings(spec, group, existsSync(test) && readFileSync(test, "utf8").includes("test(")));
    if (checksFor(spec.name).length === 0) missing.push(`${spec.name}: has no value from outside the project in test/reference/checks/`);
  }
  missing.push(...supplyFaults(readSupply()));
  for (const path of await stale()) missing.push(`${path} is not what the specs make: run npm run generate`);
  return missing;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const missing = await gate();
  for (const line of missing) console.error(line);
  process.exitCode = missing.length ? 1 : 0;
}
