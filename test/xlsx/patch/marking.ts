import { strFromU8, unzipSync } from "fflate";

import { checkWorkbook } from "../../../src/check/check-workbook.ts";
import { type CheckResult, specOf } from "../../../src/check/finding.ts";
import { marksOf, wordOf } from "../../../src/check/finding-words.ts";
import { fileHost } from "../../../src/hosts/file.ts";
import { type MarkedCopy, markedCopy } from "../../../src/xlsx/patch/marked-copy.ts";
import { readXlsx } from "../../../src/xlsx/read/read.ts";

export interface Marked extends MarkedCopy {
  result: CheckResult;
  notes: readonly string[];
}

/** Checks a workbook and writes what was found into a copy, as the command line does. */
export async function mark(bytes: Uint8Array): Promise<Marked> {
  const host = fileHost(readXlsx(bytes), "book.xlsx");
  const result = checkWorkbook(await host.read());
  const lines = result.findings.map((finding) => ({ ...finding, tone: specOf(finding.kind).mark, word: wordOf(finding) }));
  return {
    ...markedCopy(bytes, { ...host.contents(), marks: marksOf(result.findings), page: { lines, remarks: [`${lines.length} found`] } }),
    result,
    notes: host.notes(),
  };
}

export const partsOf = (bytes: Uint8Array): Record<string, Uint8Array> => unzipSync(bytes);
export const partText = (bytes: Uint8Array, name: string): string => strFromU8(unzipSync(bytes)[name] ?? new Uint8Array());

/** The raw record of each part of an archive, in the order in which they stand (PKWARE APPNOTE 4.3.7). */
export function records(bytes: Uint8Array): { name: string; method: number; time: number; packed: string }[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const found = [];
  for (let at = 0; view.getUint32(at, true) === 0x04034b50; ) {
    const name = 30 + view.getUint16(at + 26, true);
    const start = at + name + view.getUint16(at + 28, true);
    const end = start + view.getUint32(at + 18, true);
    const packed = Buffer.from(bytes.subarray(start, end)).toString("base64");
    found.push({ name: strFromU8(bytes.subarray(at + 30, at + name)), method: view.getUint16(at + 8, true), time: view.getUint32(at + 10, true), packed });
    at = end;
  }
  return found;
}

/** The elements of the cells in a sheet's part, by what they are called. */
export const cellsOf = (xml: string): Map<string, string> =>
  new Map([...xml.matchAll(/<c r="([A-Z]+\d+)"(?:[^>]*\/>|[\s\S]*?<\/c>)/g)].map(([whole, name]) => [name!, whole]));

/** A sheet's part without the cells named. */
export const without = (xml: string, names: readonly string[]): string =>
  names.reduce((rest, name) => rest.replace(new RegExp(`<c r="${name}"(?:[^>]*/>|[\\s\\S]*?</c>)`), ""), xml);
