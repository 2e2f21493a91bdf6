import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createContext, runInContext } from "node:vm";
import { buildAddin, type OfficeJs } from "../../src/tools/build.ts";

export interface Built {
  folder: string;
  packages: string[];
  remove(): void;
}

/** The add-in built into a folder of its own. */
export async function builtAddin(officeJs: OfficeJs = "cdn"): Promise<Built> {
  const folder = mkdtempSync(join(tmpdir(), "crosshatch-addin-"));
  const packages = await buildAddin(folder, officeJs);
  return { folder, packages, remove: () => rmSync(folder, { recursive: true }) };
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
