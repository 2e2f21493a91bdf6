import { randomUUID } from "node:crypto";
import { closeSync, openSync, readSync, rmSync, unlinkSync, writeSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { badness } from "../../buildsheet/check/report.ts";
import type { Finding } from "../../buildsheet/finding.ts";
import { Heap } from "./heap.ts";

/** Findings of one input, worst first, however they are kept. */
export interface Found extends Iterable<Finding> {
  readonly length: number;
}

/** Findings held in memory; more go to a temporary file. */
const HELD = 4000;
const PIECE = 1 << 16;

/** What findings are sorted by: kind, how far outside, line. */
type Rank = readonly [kind: number, severity: number, line: number];
/** A finding as its JSON, which takes less room than the finding itself. */
interface Ranked {
  rank: Rank;
  text: string;
}

const byRank = ({ rank: a }: { rank: Rank }, { rank: b }: { rank: Rank }): number => a[0] - b[0] || b[1] - a[1] || a[2] - b[2];

/**
 * Takes any number of findings of a file of readings and gives them back worst first, ties in the order
 * of lines. What does not fit into memory is sorted piece by piece into a temporary file, whose pieces
 * are merged as they are read. The file has no name while it is in use, so that nothing is left of it
 * whatever ends the program.
 */
export class WorstFirst implements Found {
  #held: Ranked[] = [];
  #file: number | undefined;
  #size = 0;
  /** Where each sorted piece stands in the file. */
  readonly #pieces: { from: number; to: number }[] = [];
  length = 0;

  constructor(readonly most = HELD) {}

  add(finding: Finding): void {
    const { kind, severity } = badness(finding);
    this.#held.push({ rank: [kind, severity, finding.line ?? 0], text: JSON.stringify(finding) });
    this.length++;
    if (this.#held.length >= this.most) this.#putAway();
  }

  *[Symbol.iterator](): Generator<Finding> {
    this.#held.sort(byRank);
    const sources = [...this.#pieces.map((piece) => this.#read(piece)), this.#held.values()];
    const heap = new Heap<{ next: Ranked; source: Iterator<Ranked> }>((a, b) => byRank(a.next, b.next));
    const draw = (source: Iterator<Ranked>): void => {
      const { done, value } = source.next();
      if (!done) heap.add({ next: value, source });
    };
    for (const source of sources) draw(source);
    for (let first = heap.take(); first; first = heap.take()) {
      yield JSON.parse(first.next.text) as Finding;
      draw(first.source);
    }
  }

  close(): void {
    if (this.#file !== undefined) closeSync(this.#file);
    this.#file = undefined;
    this.#held = [];
    this.#pieces.length = 0;
  }

  #putAway(): void {
    this.#file ??= namelessFile();
    const from = this.#size;
    let text = "";
    for (const ranked of this.#held.sort(byRank)) {
      text += `${ranked.rank.join(" ")} ${ranked.text}\n`;
      if (text.length < PIECE) continue;
      this.#size += writeAll(this.#file, text, this.#size);
      text = "";
    }
    this.#size += writeAll(this.#file, text, this.#size);
    this.#pieces.push({ from, to: this.#size });
    this.#held = [];
  }

  *#read({ from, to }: { from: number; to: number }): Generator<Ranked> {
    // Each piece has its own room to be read into; many pieces get less each.
    const bytes = Buffer.alloc(Math.max(4096, Math.min(PIECE, Math.floor((1 << 24) / this.#pieces.length))));
    let rest: Buffer = Buffer.alloc(0);
    for (let at = from; at < to; ) {
      const count = readSync(this.#file!, bytes, 0, Math.min(bytes.length, to - at), at);
      if (count === 0) throw new Error("the temporary file of findings has been cut");
      at += count;
      const all = Buffer.concat([rest, bytes.subarray(0, count)]);
      let start = 0;
      for (let end = all.indexOf(10); end >= 0; end = all.indexOf(10, start)) {
        yield rankedFrom(all.toString("utf8", start, end));
        start = end + 1;
      }
      rest = all.subarray(start);
    }
  }
}

function rankedFrom(line: string): Ranked {
  const text = line.indexOf("{");
  const [kind, severity, number] = line.slice(0, text).split(" ").map(Number);
  return { rank: [kind!, severity!, number!], text: line.slice(text) };
}

/** All of it, from `at` on; how many bytes that were. */
function writeAll(file: number, text: string, at: number): number {
  const bytes = Buffer.from(text);
  for (let done = 0; done < bytes.length; ) done += writeSync(file, bytes, done, bytes.length - done, at + done);
  return bytes.length;
}

function namelessFile(): number {
  const path = join(tmpdir(), `crosshatch-${randomUUID()}`);
  const file = openSync(path, "wx+", 0o600);
  try {
    unlinkSync(path);
  } catch {
    // Where a file in use cannot lose its name it goes with the program.
    process.once("exit", () => rmSync(path, { force: true }));
  }
  return file;
}
