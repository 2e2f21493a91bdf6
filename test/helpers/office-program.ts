import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

const PROGRAM = ["/usr/bin/soffice", "/usr/bin/libreoffice", "/Applications/LibreOffice.app/Contents/MacOS/soffice"].find((path) => existsSync(path));

/**
 * Whether a general office program takes the file, where there is one: its pages as PDF, in bytes. The settings that it makes when it
 * is first started serve all test files of a worker, which ask one after the other.
 */
export function pdfBytes(workbook: Uint8Array): number | undefined {
  if (!PROGRAM) return undefined;
  const folder = mkdtempSync(join(tmpdir(), "crosshatch-pdf-"));
  const settings = join(process.env.CROSSHATCH_TEST_RUN ?? folder, `office-${process.env.JEST_WORKER_ID ?? 0}`);
  try {
    const file = join(folder, "book.xlsx");
    writeFileSync(file, workbook);
    const args = [`-env:UserInstallation=${pathToFileURL(settings).href}`, "--headless", "--convert-to", "pdf", "--outdir", folder, file];
    execFileSync(PROGRAM, args, { stdio: "pipe" });
    return statSync(join(folder, "book.pdf")).size;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
