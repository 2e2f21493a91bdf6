import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { BenchmarkGroup } from "./benchmark-group.ts";
import { bookFile, clearanceRows, NATIVE, OURS } from "./book-file.ts";
import { ratioLine, together } from "./measure.ts";
import { inFolder, profileOf, run, succeeds } from "./programs.ts";

const FORMULAS = 50_000;
const WHAT = "check of a workbook of 50 000 formulas of ours, the whole command; LibreOffice: the same in native formulas, opened, calculated and saved as CSV";
const OFFICE = "soffice";

/** The whole command against LibreOffice without a window, each from its start to its end. */
export async function office(program: string): Promise<BenchmarkGroup> {
  if (!succeeds({ command: OFFICE, args: ["--version"] }))
    return { lines: [{ what: WHAT, measured: "–", yardstick: "LibreOffice is not installed", unit: "×" }], profiles: [] };
  return inFolder(async (folder) => {
    const [ours, theirs] = ["ours.xlsx", "native.xlsx"].map((name) => join(folder, name)) as [string, string];
    writeFileSync(ours, bookFile(clearanceRows(FORMULAS, OURS)));
    writeFileSync(theirs, bookFile(clearanceRows(FORMULAS, NATIVE)));
    const script = [program, "check", ours, "--json"];
    // A profile of its own: the one of whoever sits here stays as it is.
    const apart = `-env:UserInstallation=${pathToFileURL(join(folder, "profile")).href}`;
    const convert = [apart, "--headless", "--convert-to", "csv", "--outdir", folder, theirs];
    const [whole, recalculated] = await together([() => run({ command: process.execPath, args: script }, [1]), () => run({ command: OFFICE, args: convert })]);
    const verdicts = readFileSync(join(folder, "native.csv"), "utf8").match(/,(?:within|over|under)$/gm)?.length;
    if (verdicts !== FORMULAS / 2) throw new Error(`LibreOffice came to ${verdicts} verdicts`);
    return { lines: [ratioLine(WHAT, whole!, recalculated!, { aim: 1, profile: WHAT })], profiles: [profileOf(WHAT, folder, script, [1])] };
  });
}
