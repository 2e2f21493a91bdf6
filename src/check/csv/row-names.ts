import { groupFrom } from "../../vocabulary/headings.ts";
import { isNeverNegative } from "../../vocabulary/subjects.ts";
import { unitOf } from "../../vocabulary/units.ts";
import type { HeaderColumns } from "./header.ts";
import type { Scanner } from "./scanner.ts";

/** Which readings a row is like, and the unit it is in. */
export interface Named {
  group: string;
  unit: string | undefined;
  /** What is read cannot be below 0. */
  isNeverNegative: boolean;
}

/** Reads the names of rows: most are those of the row before. */
export class Names {
  readonly #engines: Texts;
  readonly #characteristics: Texts;
  readonly #units: Texts;
  #engine = "";
  #characteristic = "";
  #group = groupFrom({});
  #isNeverNegative = false;
  #written = "";
  #last: Named;
  /** Given by the heading for all rows that say nothing else. */
  readonly #fallback: string | undefined;

  constructor({ at, unit }: HeaderColumns) {
    this.#engines = new Texts(at.engine);
    this.#characteristics = new Texts(at.characteristic);
    this.#units = new Texts(at.unit);
    this.#fallback = unit;
    this.#last = { group: this.#group, unit, isNeverNegative: false };
  }

  of(record: Scanner): Named {
    const engine = this.#engines.of(record);
    const characteristic = this.#characteristics.of(record);
    const written = this.#units.of(record);
    const isSameGroup = engine === this.#engine && characteristic === this.#characteristic;
    if (isSameGroup && written === this.#written) return this.#last;
    if (!isSameGroup) {
      this.#group = groupFrom({ engine, characteristic });
      this.#isNeverNegative = isNeverNegative(characteristic);
    }
    this.#engine = engine;
    this.#characteristic = characteristic;
    this.#written = written;
    this.#last = { group: this.#group, unit: unitOf(written) ?? this.#fallback, isNeverNegative: this.#isNeverNegative };
    return this.#last;
  }
}

/** A power of two: texts of a column that are remembered. */
const PLACES = 256;
/** Bytes of the longest text that is. */
const LONGEST = 32;

/** Texts of one column, which come again and again: they are known by their bytes, and decoded when they are new. */
class Texts {
  readonly #texts: string[] = new Array(PLACES).fill("");
  readonly #lengths = new Uint8Array(PLACES);
  readonly #bytes = new Uint8Array(PLACES * LONGEST);
  #last = 0;

  constructor(readonly column: number | undefined) {}

  of(record: Scanner): string {
    const { column } = this;
    if (column === undefined || column >= record.fields) return "";
    const { bytes } = record;
    const from = record.starts[column]!;
    const to = record.ends[column]!;
    if (to - from > LONGEST || !record.isBare(column)) return record.text(column);
    if (this.#isAt(this.#last, bytes, from, to)) return this.#texts[this.#last]!;
    let hash = 0;
    for (let i = from; i < to; i++) hash = (Math.imul(hash, 31) + bytes[i]!) | 0;
    const place = (hash ^ (hash >>> 8)) & (PLACES - 1);
    if (!this.#isAt(place, bytes, from, to)) this.#put(place, record.text(column), bytes, from, to);
    this.#last = place;
    return this.#texts[place]!;
  }

  #isAt(place: number, bytes: Uint8Array, from: number, to: number): boolean {
    const size = to - from;
    if (size !== this.#lengths[place]) return false;
    const known = this.#bytes;
    const start = place * LONGEST;
    for (let i = 0; i < size; i++) if (known[start + i] !== bytes[from + i]) return false;
    return true;
  }

  #put(place: number, text: string, bytes: Uint8Array, from: number, to: number): void {
    this.#texts[place] = text;
    this.#lengths[place] = to - from;
    const start = place * LONGEST - from;
    for (let i = from; i < to; i++) this.#bytes[start + i] = bytes[i]!;
  }
}
