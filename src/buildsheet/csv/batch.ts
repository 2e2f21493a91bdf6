import { FINDING_KINDS, type FindingKind } from "../../check/finding.ts";
import type { Named } from "./names.ts";
import type { Scanner } from "./scanner.ts";

const ROOM = 4096;

/** The readings of a stretch of a file, in their order, that are still to be seen beside their like. */
export class Batch {
  length = 0;
  values = new Float64Array(ROOM);
  /** Of each reading its line, and where its record stands in the bytes. */
  lines = new Int32Array(ROOM);
  froms = new Int32Array(ROOM);
  tos = new Int32Array(ROOM);
  /** What its limits have told of it already: one more than the place of that kind of finding, 0 for nothing. */
  told = new Uint8Array(ROOM);
  /** Runs of readings that follow one another in the bytes and are named alike: the name of each, and the reading after its last one. */
  runs = 0;
  names: Named[] = [];
  nameOfRun = new Int32Array(ROOM);
  endOfRun = new Int32Array(ROOM);
  readonly #known = new Map<string, number>();
  #named: Named | undefined;
  #next = -1;

  add(record: Scanner, value: number, named: Named, told?: FindingKind): void {
    const i = this.length++;
    if (i === this.values.length) this.#grow();
    this.values[i] = value;
    this.lines[i] = record.line;
    this.froms[i] = record.from;
    this.tos[i] = record.to;
    this.told[i] = told === undefined ? 0 : 1 + FINDING_KINDS.indexOf(told);
    if (named !== this.#named || record.from !== this.#next) this.nameOfRun[this.runs++] = this.#placeOf(named);
    this.endOfRun[this.runs - 1] = i + 1;
    this.#named = named;
    this.#next = record.next;
  }

  clear(): void {
    this.length = 0;
    this.runs = 0;
    this.names = [];
    this.#known.clear();
    this.#named = undefined;
  }

  #placeOf(named: Named): number {
    const key = `${named.unit ?? ""}|${named.group}`;
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    this.#known.set(key, this.names.length);
    return this.names.push(named) - 1;
  }

  #grow(): void {
    const grown = <T extends Float64Array | Int32Array | Uint8Array>(old: T, fresh: T): T => {
      fresh.set(old);
      return fresh;
    };
    const size = 2 * this.values.length;
    this.values = grown(this.values, new Float64Array(size));
    this.lines = grown(this.lines, new Int32Array(size));
    this.froms = grown(this.froms, new Int32Array(size));
    this.tos = grown(this.tos, new Int32Array(size));
    this.told = grown(this.told, new Uint8Array(size));
    this.nameOfRun = grown(this.nameOfRun, new Int32Array(size));
    this.endOfRun = grown(this.endOfRun, new Int32Array(size));
  }
}

export const kindTold = ({ told }: Batch, i: number): FindingKind | undefined => (told[i] === 0 ? undefined : FINDING_KINDS[told[i]! - 1]);
