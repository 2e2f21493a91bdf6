import { closeSync } from "node:fs";
import { findingOf, type Subject } from "../../buildsheet/check/report.ts";
import { FINDING_KINDS, type Finding } from "../../buildsheet/finding.ts";
import { jsonLine } from "../text.ts";
import { Heap } from "./heap.ts";
import { byRank, Packed, type PackedData } from "./packed.ts";
import { FromFile, FromMemory, namelessFile, putAway, type Source } from "./sorted-pieces.ts";

/** Findings of one input, worst first, however they are kept. */
export interface Found extends Iterable<Finding> {
  readonly length: number;
}

/** Bytes of findings held in memory; more go to a temporary file. */
const HELD = 1 << 22;
/** Bytes that are held while the pieces are read, all together. */
const READ = 1 << 23;

/** The file of readings that findings are of: what stands for the sheet in their cells, and the column of its values. */
export interface Place {
  sheet: string;
  column: number;
}

/**
 * Takes any number of findings of a file of readings and gives them back worst first, ties in the order
 * of lines. What does not fit into memory is sorted piece by piece into a temporary file, whose pieces
 * are merged as they are read. The file has no name while it is in use, so that nothing is left of it
 * whatever ends the program.
 */
export class WorstFirst implements Found {
  readonly #held = new Packed();
  #file: number | undefined;
  #size = 0;
  /** Where each sorted piece stands in the file. */
  readonly #pieces: { from: number; to: number }[] = [];
  #place: Place = { sheet: "", column: 0 };
  length = 0;

  constructor(readonly most = HELD) {}

  add(finding: Finding): void {
    this.#place = finding.cell;
    this.#held.add(finding);
    this.length++;
    if (this.#held.size >= this.most) this.#putAway();
  }

  /** Findings that another thread has packed. */
  addAll(packed: PackedData, lineBefore: number, place: Place): void {
    this.#place = place;
    this.#held.addAll(packed, lineBefore);
    this.length += packed.length;
    if (this.#held.size >= this.most) this.#putAway();
  }

  *[Symbol.iterator](): Generator<Finding> {
    const { sheet, column } = this.#place;
    for (const { kind, line, body } of this.#merged()) {
      const { label, value, lower, upper, margin, verdict, sentence } = JSON.parse(`{${body}`) as Subject & { sentence: string };
      const cell = { sheet, row: line - 1, column };
      yield findingOf(FINDING_KINDS[kind]!, { cell, label, line, value, lower, upper, margin, verdict }, sentence);
    }
  }

  /** Each as a line of JSON that names the file. */
  *jsonLines(file: string): Generator<string> {
    const named = jsonLine({ file }).slice(0, -1);
    for (const { kind, line, body } of this.#merged()) yield `${named},"kind":"${FINDING_KINDS[kind]}","line":${line},${body}`;
  }

  close(): void {
    if (this.#file !== undefined) closeSync(this.#file);
    this.#file = undefined;
    this.#held.clear();
    this.#pieces.length = 0;
  }

  *#merged(): Generator<Source> {
    const room = Math.floor(READ / Math.max(1, this.#pieces.length));
    const heap = new Heap<Source>(byRank);
    const draw = (source: Source): void => {
      if (source.next()) heap.add(source);
    };
    for (const { from, to } of this.#pieces) draw(new FromFile(this.#file!, from, to, room));
    draw(new FromMemory(this.#held));
    for (let first = heap.take(); first; first = heap.take()) {
      yield first;
      draw(first);
    }
  }

  #putAway(): void {
    this.#file ??= namelessFile();
    const to = putAway(this.#held, this.#file, this.#size);
    this.#pieces.push({ from: this.#size, to });
    this.#size = to;
    this.#held.clear();
  }
}
