/**
 * Built into functions.js of the extension: runs in Node beside the office program, takes requests from
 * standard input and answers each on standard output, in order. Ends when the office program does, which
 * closes the pipe.
 */
import { readFileSync, readSync, writeFileSync, writeSync } from "node:fs";
import { CHECK_PREFIX } from "../core/sentences.ts";
import { VERSION } from "../core/version.ts";
import { excelForm } from "../xlsx/patch/excel-form.ts";
import { answerFrame, answerTo, type Request, requestIn } from "./frames.ts";

const [INPUT, OUTPUT] = [0, 1];

let buffer = Buffer.allocUnsafe(1 << 16);
let filled = 0;

/** Waits until so many bytes are there; false at the end of the input. */
function fill(wanted: number): boolean {
  if (wanted > buffer.length) {
    const larger = Buffer.allocUnsafe(2 * wanted);
    buffer.copy(larger, 0, 0, filled);
    buffer = larger;
  }
  while (filled < wanted) {
    const read = readInput();
    if (read === 0) return false;
    filled += read;
  }
  return true;
}

function readInput(): number {
  try {
    return readSync(INPUT, buffer, filled, buffer.length - filled, null);
  } catch (error) {
    // Windows says the end of a pipe as an error.
    if ((error as NodeJS.ErrnoException).code === "EOF") return 0;
    throw error;
  }
}

function write(frame: Buffer): void {
  for (let at = 0; at < frame.length; ) at += writeSync(OUTPUT, frame, at);
}

/** What is asked for in small letters: a file as the office program has saved it, in the form in which Excel stores our functions. */
const TASKS: Readonly<Record<string, (...args: string[]) => string | number>> = {
  excel(from, to) {
    const { bytes, formulas } = excelForm(readFileSync(from!));
    writeFileSync(to!, bytes);
    return formulas;
  },
};

const rowsFor = (request: Request) => (TASKS[request.name] ? [[TASKS[request.name]!(...(request.args as string[]))]] : answerTo(request));

function answer(frame: Buffer): Buffer {
  const request = requestIn(frame);
  try {
    return answerFrame(rowsFor(request));
  } catch (error) {
    return answerFrame([[`${CHECK_PREFIX}a fault in Crosshatch, ${request.name}: ${error instanceof Error ? error.message : error}`]]);
  }
}

write(answerFrame([[process.versions.node, VERSION]]));
while (fill(4)) {
  const end = 4 + buffer.readUInt32LE(0);
  if (!fill(end)) break;
  write(answer(buffer.subarray(4, end)));
  buffer.copyWithin(0, end, filled);
  filled -= end;
}
