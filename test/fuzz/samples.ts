import { readFileSync } from "node:fs";
import { join } from "node:path";
import { unzipSync } from "fflate";
import { checkWorkbook } from "../../src/check/check-workbook.ts";
import type { CheckResult } from "../../src/check/finding.ts";
import { fileHost } from "../../src/hosts/file.ts";
import { storedLayout } from "../../src/layout/mapping.ts";
import { root } from "../../src/tools/paths.ts";
import type { WorkbookSnapshot } from "../../src/workbook/port.ts";
import type { WorkbookFile } from "../../src/xlsx/model.ts";
import { readXlsx } from "../../src/xlsx/read/read.ts";

/** A sample workbook with all that an oracle compares with. */
export interface BookSample {
  name: string;
  bytes: Uint8Array;
  parts: Record<string, Uint8Array>;
  book: WorkbookFile;
}

export interface CheckedSample {
  snapshot: WorkbookSnapshot;
  result: CheckResult;
}

const sample = (path: string): Uint8Array => readFileSync(join(root, "samples", path));

function bookSample(path: string): BookSample {
  const bytes = sample(path);
  return { name: path, bytes, parts: unzipSync(bytes), book: readXlsx(bytes) };
}

/** The larger ones come up less often: what they hold is also in the others. */
export const BOOKS: readonly BookSample[] = [
  "layouts/cylinders-across.xlsx",
  "layouts/one-row-a-reading.xlsx",
  "layouts/cylinders-across.xlsx",
  "layouts/one-row-a-cylinder.xlsx",
  "build-sheet.xlsx",
  "build-sheet.xlsx",
  "build-sheet.xlsx",
  "layouts/one-row-a-reading.xlsx",
  "layouts/one-row-a-cylinder.xlsx",
  "build-sheet.xlsx",
  "self-check.xlsx",
].map(bookSample);

export const READINGS: readonly Buffer[] = ["readings.csv", "compare/build.csv", "compare/strip-down.csv"].map((path) => Buffer.from(sample(path)));

/** A book as Check sees it. */
export async function calculated(book: WorkbookFile): Promise<CheckedSample> {
  const host = fileHost(book, "fuzz.xlsx");
  const snapshot = await host.read();
  const { mapping } = await storedLayout(host);
  return { snapshot, result: checkWorkbook(snapshot, mapping) };
}

const known = new Map<string, Promise<CheckedSample>>();

/** What the untouched sample comes to; worked out once. */
export function untouched({ name, book }: BookSample): Promise<CheckedSample> {
  const found = known.get(name) ?? calculated(copyOf(book));
  known.set(name, found);
  return found;
}

export const copyOf = (book: WorkbookFile): WorkbookFile => structuredClone(book);
