import { randomUUID } from "node:crypto";
import { closeSync, existsSync, openSync, renameSync, statSync, unlinkSync, writeSync } from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { Refusal } from "../exit-codes.ts";
import { refusalOf } from "../put.ts";

const HEADINGS = ["file", "line or cell", "reason", "as written"];
const PIECE = 1 << 16;

/** A file that lists what was refused: one line each, with the reason and the text that could not be judged. */
export class RefusedFile {
  readonly #file: number;
  readonly #writtenTo: string;
  #text = `${HEADINGS.join(",")}\n`;

  /** What is there is replaced, with `force` only, once the list is complete. */
  constructor(
    readonly path: string,
    inputs: readonly string[],
    readonly force = false,
  ) {
    if (inputs.some((input) => resolve(input) === resolve(path)))
      throw new Refusal(`${path} is one of the files to be checked: give another name for what is refused`);
    if (existsSync(path) && statSync(path).isDirectory()) throw new Refusal(`${path} is a folder: name the file to be written in it`);
    this.#writtenTo = force ? join(dirname(path), `.${basename(path)}.${randomUUID()}`) : path;
    try {
      this.#file = openSync(this.#writtenTo, "wx");
    } catch (error) {
      throw refusalOf(path, error as NodeJS.ErrnoException);
    }
  }

  add(file: string, place: string | number, reason: string, text: string): void {
    this.#text += `${[file, place, reason, text].map(field).join(",")}\n`;
    if (this.#text.length > PIECE) this.#write();
  }

  /** Puts the list in its place. */
  close(): void {
    this.#write();
    closeSync(this.#file);
    if (this.force) renameSync(this.#writtenTo, this.path);
  }

  /** The run came to nothing: what was there before stays. */
  abandon(): void {
    closeSync(this.#file);
    if (this.force) unlinkSync(this.#writtenTo);
  }

  #write(): void {
    const bytes = Buffer.from(this.#text);
    try {
      for (let done = 0; done < bytes.length; ) done += writeSync(this.#file, bytes, done);
    } catch (error) {
      throw refusalOf(this.path, error as NodeJS.ErrnoException);
    }
    this.#text = "";
  }
}

/** Text that a spreadsheet would take for a formula gets an apostrophe; numbers stay numbers. */
function field(content: string | number): string {
  if (typeof content === "number") return String(content);
  const harmless = /^[=+\-@\t\r]/.test(content) ? `'${content}` : content;
  return /[",;\t\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}
