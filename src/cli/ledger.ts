import { closeSync, createReadStream, existsSync, openSync, readSync, statSync, writeSync } from "node:fs";
import { dirname, relative, resolve, sep } from "node:path";
import type { CheckResult } from "../check/finding.ts";
import { VERSION } from "../core/version.ts";
import { type Facts, fewerFacts } from "../report/summary-facts.ts";
import { Refusal } from "./exit-codes.ts";
import { refusalOf } from "./safe-file.ts";
import type { Found } from "./worst-first.ts";

/** What a file came to when it was last checked, without the findings themselves; they stand beside it, of very many the worst. */
export interface LedgerEntry extends Pick<CheckResult, "rowsIn" | "checked" | "refused" | "inputs"> {
  file: string;
  /** SHA-256 of its content. */
  hash: string;
  /** What it was checked by: another version or another way of writing numbers may find something else. */
  version: string;
  locale: string;
  findings: number;
  /** What a summary tells of it; older ledgers hold none. */
  facts?: Facts | undefined;
}

/** The counts stand before the findings, so that they are read without them. */
const LIST = ',"list":[';
/** Text inside strings has its quotes escaped, so a line that was cut off never ends like this. */
const END = '],"whole":true}';
const PIECE = 1 << 16;
const LF = 10;

/**
 * A file to which every checked file adds one line with its findings, once it has been checked whole.
 * Nothing in it is ever changed, so a run can be killed at any moment: the line that it was writing is
 * not whole, counts as not there, and that file is checked by the next run.
 */
export class Ledger {
  readonly #entries = new Map<string, LedgerEntry>();
  readonly #folder: string;
  #file: number | undefined;
  /** Lines that are not whole, by number. */
  readonly damaged: number[] = [];

  private constructor(
    readonly path: string,
    readonly locale: string,
  ) {
    this.#folder = dirname(resolve(path));
  }

  static async open(path: string, locale: string): Promise<Ledger> {
    const ledger = new Ledger(path, locale);
    try {
      refuseOther(path);
      if (existsSync(path)) await ledger.#readAll();
      ledger.#file = openSync(path, "a+");
      ledger.#endLine();
    } catch (error) {
      throw refusalOf(path, error as NodeJS.ErrnoException);
    }
    return ledger;
  }

  /** The last entry of a file, if what was checked then was checked as it would be now. */
  entryOf(path: string): LedgerEntry | undefined {
    const entry = this.#entries.get(this.#nameOf(path));
    return entry?.version === VERSION && entry.locale === this.locale ? entry : undefined;
  }

  add(path: string, hash: string, { rowsIn, checked, refused, inputs }: Omit<CheckResult, "findings">, found: Found, facts?: Facts): void {
    const counts = { rowsIn, checked, refused, inputs, findings: found.length };
    const bare: LedgerEntry = { file: this.#nameOf(path), hash, version: VERSION, locale: this.locale, ...counts };
    const full: LedgerEntry = { ...bare, facts: facts && fewerFacts(facts) };
    // What stands before the findings is read in one piece.
    const entry = Buffer.byteLength(JSON.stringify(full)) + LIST.length < PIECE ? full : bare;
    let text = `${JSON.stringify(entry).slice(0, -1)}${LIST}`;
    let separator = "";
    for (const finding of found) {
      text += `${separator}${JSON.stringify(finding)}`;
      separator = ",";
      if (text.length < PIECE) continue;
      this.#write(text);
      text = "";
    }
    this.#write(`${text}${END}\n`);
    this.#entries.set(entry.file, entry);
  }

  close(): void {
    if (this.#file !== undefined) closeSync(this.#file);
  }

  /** Files are named as seen from the ledger, so that an archive can be moved together with it. */
  #nameOf = (path: string): string => relative(this.#folder, resolve(path)).split(sep).join("/");

  #write(text: string): void {
    const bytes = Buffer.from(text);
    try {
      for (let done = 0; done < bytes.length; ) done += writeSync(this.#file!, bytes, done);
    } catch (error) {
      throw refusalOf(this.path, error as NodeJS.ErrnoException);
    }
  }

  /** A line that was cut off is ended, so that the next one stands for itself. */
  #endLine(): void {
    const { size } = statSync(this.path);
    const last = Buffer.alloc(1);
    if (size > 0 && readSync(this.#file!, last, 0, 1, size - 1) === 1 && last[0] !== LF) this.#write("\n");
  }

  async #readAll(): Promise<void> {
    const { factsFrom } = await import("../report/stored-facts.ts");
    let number = 0;
    for await (const { head, tail } of endsOfLines(this.path)) {
      number++;
      if (head === "") continue;
      const entry = entryFrom(head, tail, factsFrom);
      if (entry) this.#entries.set(entry.file, entry);
      else this.damaged.push(number);
    }
  }
}

/** How every line of a ledger begins. */
const BEGINNING = '{"file":"';

/** Nothing is added to a file that is no ledger: a workbook would be spoilt by it. The first line of a ledger may have been cut off. */
function refuseOther(path: string): void {
  const there = statSync(path, { throwIfNoEntry: false });
  if (!there || (there.isFile() && there.size === 0)) return;
  if (!there.isFile()) throw new Refusal(`${path} is no ordinary file, which a ledger is: give another name`);
  const file = openSync(path, "r");
  const first = Buffer.alloc(BEGINNING.length);
  const text = first.toString("latin1", 0, readSync(file, first, 0, first.length, 0));
  closeSync(file);
  if (!BEGINNING.startsWith(text)) throw new Refusal(`${path} is no ledger of crosshatch, and nothing is added to it: give another name`);
}

function entryFrom(head: string, tail: string, factsFrom: (written: unknown) => Facts | undefined): LedgerEntry | undefined {
  const list = head.indexOf(LIST);
  if (list < 0 || !tail.endsWith(END)) return undefined;
  try {
    const entry = JSON.parse(`${head.slice(0, list)}}`) as LedgerEntry;
    if (typeof entry.file !== "string" || typeof entry.hash !== "string") return undefined;
    return entry.facts === undefined ? entry : { ...entry, facts: factsFrom(entry.facts) };
  } catch {
    return undefined;
  }
}

/** Beginning and end of each line; what lies between can be longer than memory. */
async function* endsOfLines(path: string): AsyncGenerator<{ head: string; tail: string }> {
  let head: Buffer = Buffer.alloc(0);
  let tail: Buffer = Buffer.alloc(0);
  const more = (bytes: Buffer): void => {
    if (head.length < PIECE) head = Buffer.concat([head, bytes.subarray(0, PIECE - head.length)]);
    tail = Buffer.concat([tail, bytes.subarray(-END.length)]).subarray(-END.length);
  };
  for await (const chunk of createReadStream(path) as AsyncIterable<Buffer>) {
    let from = 0;
    for (let end = chunk.indexOf(LF); end >= 0; end = chunk.indexOf(LF, from)) {
      more(chunk.subarray(from, end));
      yield { head: head.toString(), tail: tail.toString() };
      head = tail = Buffer.alloc(0);
      from = end + 1;
    }
    more(chunk.subarray(from));
  }
  // Without a line end the last line was cut off.
  if (head.length > 0) yield { head: head.toString(), tail: "" };
}
