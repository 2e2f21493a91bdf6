import { mkdirSync } from "node:fs";
import { basename, dirname, extname, join, resolve, sep } from "node:path";
import { type CheckResult, specOf } from "../check/finding.ts";
import { marksOf, wordOf } from "../check/finding-words.ts";
import { VERSION } from "../core/version.ts";
import type { FileHost } from "../hosts/file.ts";
import { UnreadableFile } from "../xlsx/file-limits.ts";
import type { FindingsPage } from "../xlsx/patch/findings-sheet.ts";
import { markedCopy } from "../xlsx/patch/marked-copy.ts";
import { found, sums } from "./check-output.ts";
import type { Copied, CopyTask } from "./checked.ts";
import { Refusal } from "./exit-codes.ts";
import { fileIdentity, kindOf } from "./inputs.ts";
import { complain, countText } from "./output.ts";
import { put, refusalOf } from "./safe-file.ts";

export interface MarkedFlags {
  force?: boolean;
  ledger?: string;
}

/** Where the marked copy of each workbook goes; says before anything is checked what would keep one from being written. */
export function openCopies(folder: string, files: readonly string[], { force = false, ledger }: MarkedFlags): ReadonlyMap<string, CopyTask> {
  const isOds = (file: string): boolean => extname(file).toLowerCase() === ".ods";
  const books = files.filter((file) => kindOf(file) === ".xlsx" && !isOds(file));
  const ods = files.filter(isOds);
  if (ods.length > 0 && books.length === 0)
    throw new Refusal(`--marked writes no copy of ${ods[0]}: save it as .xlsx in LibreOffice (File > Save As), and mark that`);
  if (books.length === 0) throw new Refusal("--marked is for workbooks (.xlsx), and none is among the files: only those have cells to mark");
  for (const file of ods) complain(`--marked writes no copy of ${file}: save it as .xlsx in LibreOffice (File > Save As), and mark that`);
  const others = files.length - books.length - ods.length;
  if (others > 0) complain(`--marked is for workbooks (.xlsx): ${countText(others, "file gets", "files get")} no copy`);
  const copies = new Map([...copyNames(books)].map(([file, name]) => [file, { to: join(folder, name), force }]));
  refuseInputs(books, copies);
  // With a ledger the copies of earlier runs are there, and are not written again.
  if (!force && ledger === undefined) refuseThere([...copies.values()]);
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    throw code === "EEXIST" || code === "ENOTDIR"
      ? new Refusal(`${folder} is no folder: name one for the marked copies`)
      : refusalOf(folder, error as NodeJS.ErrnoException);
  }
  return copies;
}

/** A copy has the name of its workbook; where several have the same, the names of their folders are added until none has. */
export function copyNames(files: readonly string[]): Map<string, string> {
  const once = [...new Map(files.map((file) => [resolve(file), file])).values()];
  const names = new Map<string, string>();
  for (const group of grouped(once, basename)) {
    const deepest = Math.max(...group.map((file) => foldersOf(file).length));
    let depth = group.length > 1 ? 1 : 0;
    while (depth < deepest && grouped(group, (file) => nameAt(file, depth)).length < group.length) depth++;
    for (const file of group) names.set(file, nameAt(file, depth));
  }
  // What is left differs in capitals, or in how an accent is put together.
  const taken = new Set([...names.values()].map(plainName));
  for (const [, ...others] of grouped(once, (file) => names.get(file)!)) {
    for (const file of others) {
      const [kind, own] = [extname(file), names.get(file)!];
      let number = 2;
      const numbered = () => `${own.slice(0, own.length - kind.length)} [${number}]${kind}`;
      while (taken.has(plainName(numbered()))) number++;
      names.set(file, numbered());
      taken.add(plainName(numbered()));
    }
  }
  return names;
}

/** `build.xlsx`, and with a depth of 2 `build (2024 port).xlsx`. */
function nameAt(file: string, depth: number): string {
  const kind = extname(file);
  const folders = depth === 0 ? "" : ` (${foldersOf(file).slice(-depth).join(" ")})`;
  return `${basename(file, kind)}${folders}${kind}`;
}

const foldersOf = (file: string): string[] =>
  dirname(resolve(file))
    .split(sep)
    .map((name) => name.replaceAll(":", ""))
    .filter(Boolean);

/** Capitals and small letters are the same to many disks, and a letter with an accent however it is put together. */
const plainName = (name: string): string => name.normalize().toLowerCase();

function grouped(files: readonly string[], nameOf: (file: string) => string): string[][] {
  const groups = new Map<string, string[]>();
  for (const file of files) {
    const key = plainName(nameOf(file));
    groups.set(key, [...(groups.get(key) ?? []), file]);
  }
  return [...groups.values()];
}

/** Whatever is asked for, an original is never overwritten: not by its own copy, nor by that of another. */
function refuseInputs(books: readonly string[], copies: ReadonlyMap<string, CopyTask>): void {
  const originals = new Set(books.map(fileIdentity).filter(Boolean));
  for (const { to } of copies.values()) {
    const there = fileIdentity(to);
    if (there && originals.has(there)) throw new Refusal(`${to} is one of the files to be checked: give another folder for the marked copies`);
  }
}

function refuseThere(copies: readonly CopyTask[]): void {
  const [first, ...others] = copies.filter(({ to }) => fileIdentity(to));
  if (!first) return;
  if (others.length === 0) throw new Refusal(`${first.to} is already there and left as it is: give another folder, or --force to overwrite it`);
  const all = `${first.to} and ${countText(others.length, "other")} are already there`;
  throw new Refusal(`${all} and left as they are: give another folder, or --force to overwrite them`);
}

/** What a check of a workbook came to. */
interface CheckedBook {
  result: CheckResult;
  notes: readonly string[];
}

/** Writes the copy of a workbook that has been checked; what keeps it from being written does not spoil the check. */
export function writeCopy(bytes: Uint8Array, contents: ReturnType<FileHost["contents"]>, checked: CheckedBook, { to, force }: CopyTask): Copied {
  try {
    const { bytes: copy, ...counts } = markedCopy(bytes, { ...contents, marks: marksOf(checked.result.findings), page: pageOf(checked) });
    put(to, copy, force);
    return { to, ...counts };
  } catch (error) {
    if (error instanceof Refusal) return { fault: error.message };
    if (error instanceof UnreadableFile) return { fault: `${to} is not written: the workbook ${error.reason}` };
    throw error;
  }
}

function pageOf({ result, notes }: CheckedBook): FindingsPage {
  const { findings } = result;
  return {
    lines: findings.map((finding) => ({
      cell: finding.cell,
      tone: specOf(finding.kind).mark,
      word: wordOf(finding),
      label: finding.label,
      sentence: finding.sentence,
    })),
    remarks: [
      `${sums(result)}, ${found(findings.length)}. Checked by Crosshatch ${VERSION}, which wrote the values of formulas and the marks into this copy; the original is as it was.`,
      "Limits are those that stand in this workbook. The maker's service manual and a qualified technician decide.",
      ...notes.map((note) => `Note: ${note}`),
    ],
  };
}
