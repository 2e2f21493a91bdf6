import { unitOf } from "../check/units.ts";
import { groupFrom } from "../headers.ts";
import type { Head } from "./head.ts";
import type { Scanner } from "./scanner.ts";

/** Which readings a row is like, and the unit it is in. */
export interface Named {
  group: string;
  unit: string | undefined;
}

/** Reads the names of rows: most are those of the row before. */
export class Names {
  readonly #engines: Texts;
  readonly #characteristics: Texts;
  readonly #units: Texts;
  #engine = "";
  #characteristic = "";
  #group = groupFrom({});
  #written = "";
  #last: Named;
  /** Given by the heading for all rows that say nothing else. */
  readonly #fallback: string | undefined;

  constructor({ at, unit }: Pick<Head, "at" | "unit">) {
    this.#engines = new Texts(at.engine);
    this.#characteristics = new Texts(at.characteristic);
    this.#units = new Texts(at.unit);
    this.#fallback = unit;
    this.#last = { group: this.#group, unit };
  }

  of(record: Scanner): Named {
    const engine = this.#engines.of(record);
    const characteristic = this.#characteristics.of(record);
    const written = this.#units.of(record);
    const isSameGroup = engine === this.#engine && characteristic === this.#characteristic;
    if (isSameGroup && written === this.#written) return this.#last;
    if (!isSameGroup) this.#group = groupFrom({ engine, characteristic });
    this.#engine = engine;
    this.#characteristic = characteristic;
    this.#written = written;
    this.#last = { group: this.#group, unit: unitOf(written) ?? this.#fallback };
    return this.#last;
  }
}

/** A power of two: texts of a column that are remembered. */
const PLACES = 256;

interface Known {
  bytes: readonly number[];
  text: string;
}

/** Texts of one column, which come again and again: they are known by their bytes, and decoded when they are new. */
class Texts {
  readonly #known: (Known | undefined)[] = new Array(PLACES).fill(undefined);
  #last: Known = { bytes: [], text: "" };

  constructor(readonly column: number | undefined) {}

  of(record: Scanner): string {
    const { column } = this;
    if (column === undefined || column >= record.fields) return "";
    if (!record.isBare(column)) return record.text(column);
    const { bytes } = record;
    const from = record.starts[column]!;
    const to = record.ends[column]!;
    if (isSame(this.#last.bytes, bytes, from, to)) return this.#last.text;
    let hash = 0;
    for (let i = from; i < to; i++) hash = (Math.imul(hash, 31) + bytes[i]!) | 0;
    const place = (hash ^ (hash >>> 8)) & (PLACES - 1);
    let known = this.#known[place];
    if (!known || !isSame(known.bytes, bytes, from, to)) {
      known = { bytes: numbersOf(bytes, from, to), text: record.text(column) };
      this.#known[place] = known;
    }
    this.#last = known;
    return known.text;
  }
}

function isSame(known: readonly number[], bytes: Uint8Array, from: number, to: number): boolean {
  if (to - from !== known.length) return false;
  for (let i = 0; i < known.length; i++) if (known[i] !== bytes[from + i]) return false;
  return true;
}

/** So short a list is cheaper to make than a block of bytes of its own. */
function numbersOf(bytes: Uint8Array, from: number, to: number): number[] {
  const numbers: number[] = [];
  for (let i = from; i < to; i++) numbers.push(bytes[i]!);
  return numbers;
}
