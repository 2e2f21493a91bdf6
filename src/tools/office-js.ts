/**
 * The local copy of office.js: the files that Excel's hosts load from beside it, unmodified, as its
 * licence allows for an add-in's own use.
 */
import { copyFileSync, mkdirSync, readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";

const packageFolder = dirname(createRequire(import.meta.url).resolve("@microsoft/office-js/package.json"));

/**
 * office.js adds a script named after host, platform and version. The platforms are those where both
 * a shared runtime and custom functions exist; on the iPad and on Android they do not.
 */
const HOST_SCRIPTS = ["excel-win32-16.00.js", "excel-win32-16.01.js", "excel-winrt-16.00.js", "excel-mac-16.00.js", "excel-web-16.00.js"];
const SHARED_SCRIPTS = ["office.js", "o15apptofilemappingtable.js", "telemetry/oteljs_agave.js", "ariatelemetry/aria-web-telemetry.js"];

/** Paths under the package's `dist/`; texts only in the languages that this office.js names. */
export function officeFiles(): string[] {
  const loader = readFileSync(join(packageFolder, "dist", "office.js"), "utf8");
  const texts = readdirSync(join(packageFolder, "dist"), { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && loader.includes(`"${entry.name}"`) && /^[a-z]{2,3}-/.test(entry.name))
    .map((entry) => `${entry.name}/office_strings.js`);
  return [...SHARED_SCRIPTS, ...HOST_SCRIPTS, ...texts];
}

export function copyOfficeJs(out: string): void {
  for (const file of officeFiles()) {
    mkdirSync(dirname(join(out, file)), { recursive: true });
    copyFileSync(join(packageFolder, "dist", file), join(out, file));
  }
  copyFileSync(join(packageFolder, "LICENSE.md"), join(out, "LICENSE.md"));
}
