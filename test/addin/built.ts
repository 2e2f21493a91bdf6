import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { createContext, runInContext } from "node:vm";
import { buildAddin, type OfficeJs } from "../../src/tools/build.ts";
import { onceARun } from "../helpers/once-a-run.ts";

export interface Built {
  folder: string;
  packages: string[];
}

/** The add-in, built once for all test files. */
export async function builtAddin(officeJs: OfficeJs = "cdn"): Promise<Built> {
  const built = await onceARun(`addin-${officeJs}`, async (into) => {
    const packages = await buildAddin(join(into, "files"), officeJs);
    writeFileSync(join(into, "packages.json"), JSON.stringify(packages));
  });
  return { folder: join(built, "files"), packages: JSON.parse(readFileSync(join(built, "packages.json"), "utf8")) as string[] };
}

/** The error that office.js brings, as far as a function can see it. */
export class HostError {
  constructor(
    readonly code: string,
    readonly message?: string,
  ) {}
}

export type HostFunction = (...given: unknown[]) => unknown;

/** Runs the built script as the page does: only what office.js has at that moment is there. */
export function associated(folder: string): Map<string, HostFunction> {
  const functions = new Map<string, HostFunction>();
  const CustomFunctions: Record<string, unknown> = {
    associate(id: string, implementation: HostFunction) {
      if (functions.has(id)) throw new Error(`${id} is associated twice`);
      functions.set(id, implementation);
    },
  };
  runInContext(readFileSync(join(folder, "functions.js"), "utf8"), createContext({ CustomFunctions }));
  // The error class comes with the host's own part of office.js, after the script has run.
  Object.assign(CustomFunctions, { Error: HostError, ErrorCode: { invalidValue: "#VALUE!" } });
  return functions;
}
