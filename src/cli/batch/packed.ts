import { badness } from "../../buildsheet/check/report.ts";
import type { Finding } from "../../buildsheet/finding.ts";
import { jsonLine } from "../text.ts";

/** What findings are sorted by: kind, how far outside, line. */
export interface Rank {
  kind: number;
  severity: number;
  line: number;
}

export const byRank = (a: Rank, b: Rank): number => a.kind - b.kind || b.severity - a.severity || a.line - b.line;

/** Plain data, so that it can be handed from one thread to another. */
export interface PackedData {
  length: number;
  kinds: Uint8Array;
  severities: Float64Array;
  lines: Float64Array;
  /** The body of each ends here in the bytes, where that of the next begins. */
  ends: Int32Array;
  bytes: Buffer;
}

const FINDINGS = 256;
const BYTES = 1 << 16;

/** Findings of one file of readings as numbers and bytes, which take little room and are quickly made into lines of JSON. */
export class Packed implements PackedData {
  length = 0;
  kinds = new Uint8Array(FINDINGS);
  severities = new Float64Array(FINDINGS);
  lines = new Float64Array(FINDINGS);
  ends = new Int32Array(FINDINGS);
  bytes = Buffer.allocUnsafeSlow(BYTES);

  /** Bytes of all bodies. */
  get size(): number {
    return this.length === 0 ? 0 : this.ends[this.length - 1]!;
  }

  add(finding: Finding): void {
    const { kind, severity } = badness(finding);
    const body = bodyOf(finding);
    const from = this.size;
    this.#makeRoom(1, 3 * body.length);
    this.#rank(kind, severity, finding.line!, from + this.bytes.write(body, from));
  }

  /** Findings of another thread, whose lines are counted from the one after `lineBefore`. */
  addAll({ length, kinds, severities, lines, ends, bytes }: PackedData, lineBefore: number): void {
    if (length === 0) return;
    const from = this.size;
    this.#makeRoom(length, ends[length - 1]!);
    this.bytes.set(bytes.subarray(0, ends[length - 1]), from);
    for (let i = 0; i < length; i++) this.#rank(kinds[i]!, severities[i]!, lineBefore + lines[i]!, from + ends[i]!);
  }

  /** The places of the findings, worst first. */
  sorted(): Uint32Array {
    const { kinds, severities, lines } = this;
    const places = new Uint32Array(this.length).map((_, i) => i);
    return places.sort((a, b) => kinds[a]! - kinds[b]! || severities[b]! - severities[a]! || lines[a]! - lines[b]!);
  }

  from(i: number): number {
    return i === 0 ? 0 : this.ends[i - 1]!;
  }

  clear(): void {
    this.length = 0;
  }

  #rank(kind: number, severity: number, line: number, end: number): void {
    const i = this.length++;
    this.kinds[i] = kind;
    this.severities[i] = severity;
    this.lines[i] = line;
    this.ends[i] = end;
  }

  #makeRoom(findings: number, bytes: number): void {
    if (this.length + findings > this.kinds.length) {
      const size = Math.max(2 * this.kinds.length, this.length + findings);
      this.kinds = grown(this.kinds, new Uint8Array(size));
      this.severities = grown(this.severities, new Float64Array(size));
      this.lines = grown(this.lines, new Float64Array(size));
      this.ends = grown(this.ends, new Int32Array(size));
    }
    const wanted = this.size + bytes;
    if (wanted > this.bytes.length) this.bytes = grown(this.bytes, Buffer.allocUnsafeSlow(Math.max(2 * this.bytes.length, wanted)));
  }
}

function grown<T extends Uint8Array | Float64Array | Int32Array>(old: T, fresh: T): T {
  fresh.set(old);
  return fresh;
}

/** What stands behind file, kind and line in the finding's line of JSON. */
function bodyOf({ label, value, lower, upper, margin, verdict, sentence }: Finding): string {
  const judged = verdict === null ? "null" : `"${verdict}"`;
  return `"label":${quoted(label)},"value":${typeof value === "string" ? quoted(value) : numbered(value)},"lower":${numbered(lower)},"upper":${numbered(upper)},"margin":${numbered(margin)},"verdict":${judged},"sentence":${quoted(sentence)}}`;
}

/** Letters that stand in JSON as they are; most text has no others. */
const HARMLESS = /^[\x20\x21\x23-\x5b\x5d-\x7e]*$/;

const quoted = (text: string): string => (HARMLESS.test(text) ? `"${text}"` : jsonLine(text));
const numbered = (value: number | null): string => (value !== null && Number.isFinite(value) ? String(value) : "null");
