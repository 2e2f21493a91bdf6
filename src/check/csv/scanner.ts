import { type DecimalSign, plainNumber, scaled } from "./fields.ts";

/** In place of a number, where nothing is written: none that is read here is infinite. */
export const EMPTY = Number.POSITIVE_INFINITY;

/** Bytes of one record. A longer one is hardly a reading. */
const LONGEST_RECORD = 1_000_000;

const QUOTE = 0x22;
const LF = 0x0a;
const CR = 0x0d;
/** In place of a sign, where there are no more. */
const END = -1;

const NOTHING = new Uint8Array(0);
const decoder = new TextDecoder("utf-8", { ignoreBOM: true });

/** Bytes from here to there as text. */
export const decoded = (bytes: Uint8Array, from: number, to: number): string => decoder.decode(bytes.subarray(from, to));

/** How a field stands in the bytes: as it is, or in quotes that have to be taken out of it. */
const BARE = 0;
const QUOTED = 1;

/**
 * Takes lines of delimited text apart where they stand in the bytes, and makes text only of what is
 * asked for: most readings are numbers that never become text. Quotes are read as loosely as shops
 * write them: inside a field they are a sign like any other.
 */
export class Scanner {
  bytes: Uint8Array = NOTHING;
  #room: Uint8Array = NOTHING;
  /** Fields of the record, from `starts[i]` to `ends[i]` in the bytes. */
  starts = new Int32Array(64);
  ends = new Int32Array(64);
  #styles = new Uint8Array(64);
  /** Not 0 for each field that holds numbers, which are read as they are passed. */
  #isNumber = new Uint8Array(64);
  /** Of each field that holds numbers: one as most are written, `EMPTY` for an empty field, `NaN` for all else, which is not to say that it is none. */
  numbers = new Float64Array(64);
  fields = 0;
  /** Number of the line on which the record begins. */
  line: number;
  #nextLine: number;
  /** The record as it stands, from here to there in the bytes, without its line end. */
  from = 0;
  to = 0;
  #next = 0;
  #isLast = false;
  readonly #delimiter: Uint8Array;
  /** Not 0 for each byte at which a field may end. */
  readonly #stops = new Uint8Array(256);

  /** Columns of numbers are given where those are asked for. */
  constructor(
    delimiter: string,
    firstLine: number,
    numbers: readonly number[] = [],
    readonly decimal: DecimalSign = ".",
  ) {
    while (numbers.some((column) => column >= this.starts.length)) this.#grow();
    for (const column of numbers) this.#isNumber[column] = 1;
    this.#delimiter = new TextEncoder().encode(delimiter);
    for (const sign of [LF, CR, this.#delimiter[0]!]) this.#stops[sign] = 1;
    this.line = this.#nextLine = firstLine;
  }

  /** The chunk is copied, behind what is left of those before: one room serves all of them. */
  feed(chunk: Uint8Array): void {
    const left = this.waiting;
    const size = left + chunk.length;
    const isFull = size > this.#room.length;
    if (isFull) this.#room = new Uint8Array(size + (size >> 1));
    // A long record that comes in small pieces stands there already.
    if (isFull || this.#next > 0) this.#room.set(this.bytes.subarray(this.#next));
    this.#room.set(chunk, left);
    this.bytes = this.#room.subarray(0, size);
    this.#next = 0;
  }

  /** Nothing more comes: what is left is the last record. */
  end(): void {
    this.#isLast = true;
  }

  /** True when the record does not end in all that can belong to it. */
  get isOpen(): boolean {
    return this.waiting > (this.#isLast ? 0 : LONGEST_RECORD);
  }

  /** How many bytes there are that belong to no record yet. */
  get waiting(): number {
    return this.bytes.length - this.#next;
  }

  /** Where the record after this one begins in the bytes, and the line on which it begins. */
  get next(): number {
    return this.#next;
  }

  get nextLine(): number {
    return this.#nextLine;
  }

  /** What is wrong with the record that does not end, the same however many bytes have come by now; it completes "this file …". */
  brokenOff(): string {
    const why = this.#isQuoteOpen()
      ? `in line ${this.#nextLine} a quote is opened and never closed`
      : `the record that begins in line ${this.#nextLine} is longer than a million characters`;
    return `breaks off: ${why}, so nothing from there on can be read`;
  }

  /** Goes to the next record that is wholly there; false when there is none yet. */
  advance(): boolean {
    const { bytes } = this;
    const size = bytes.length;
    const stops = this.#stops;
    const width = this.#delimiter.length;
    let { starts, ends } = this;
    let styles = this.#styles;
    let isNumber = this.#isNumber;
    let breaks = 0;
    let start = this.#next;
    let i = start;
    let fields = 0;
    if (i >= size) return false;
    for (;;) {
      let style = BARE;
      let end = -1;
      if (i < size && bytes[i] === QUOTE) {
        const close = this.#closing(i);
        if (close < 0) return false;
        breaks += this.#breaks;
        const after = close + 1;
        const isClosed = after >= size ? this.#isLast : bytes[after] === LF || bytes[after] === CR || this.#isDelimiter(after);
        if (!isClosed && after >= size) return false;
        if (isClosed && !this.#hasDoubled) {
          start = i + 1;
          end = close;
        } else style = QUOTED;
        if (isNumber[fields] === 1) this.numbers[fields] = style === QUOTED ? Number.NaN : this.#quotedNumber(start, end);
        i = after;
      } else if (isNumber[fields] === 1) i = this.#readNumber(fields, i);
      while (i < size && stops[bytes[i]!] === 0) i++;
      while (width > 1 && i < size && !this.#isStop(i)) i++;
      const sign: number = i < size ? bytes[i]! : END;
      if (i >= size ? !this.#isLast : sign === CR && i + 1 >= size && !this.#isLast) return false;
      if (fields === starts.length) {
        this.#grow();
        ({ starts, ends } = this);
        styles = this.#styles;
        isNumber = this.#isNumber;
      }
      starts[fields] = start;
      ends[fields] = end < 0 ? i : end;
      styles[fields++] = style;
      if (sign === LF) return this.#found(fields, i, i + 1, breaks);
      if (sign === CR) return this.#found(fields, i, bytes[i + 1] === LF ? i + 2 : i + 1, breaks);
      if (sign === END) return this.#found(fields, i, i, breaks);
      i += width;
      start = i;
    }
  }

  /** True when the bytes of a field are its text. */
  isBare(field: number): boolean {
    return this.#styles[field] === BARE;
  }

  /** A field as text, without its quotes. */
  text(field: number): string {
    const text = decoded(this.bytes, this.starts[field]!, this.ends[field]!);
    if (this.#styles[field] === BARE) return text;
    const [, inside, after] = IN_QUOTES.exec(text)!;
    const content = inside!.replaceAll('""', '"');
    // What goes on behind the closing quote was never meant to be quoted.
    return after === "" ? content : `"${content}"${after}`;
  }

  texts(): string[] {
    return Array.from({ length: this.fields }, (_, field) => this.text(field));
  }

  /** The record as it stands in the file, without its line end. */
  raw(): string {
    return decoded(this.bytes, this.from, this.to);
  }

  #breaks = 0;
  #hasDoubled = false;

  #found(fields: number, to: number, next: number, breaks: number): boolean {
    if (to - this.#next > LONGEST_RECORD) return false;
    this.fields = fields;
    this.from = this.#next;
    this.to = to;
    this.#next = next;
    this.line = this.#nextLine;
    this.#nextLine += 1 + breaks;
    return true;
  }

  /** True when a quote of the record that does not end is never closed. */
  #isQuoteOpen(): boolean {
    const end = Math.min(this.bytes.length, this.#next + LONGEST_RECORD);
    for (let i = this.#next; i < end; i += this.#delimiter.length) {
      if (this.bytes[i] === QUOTE) {
        const close = this.#closing(i);
        if (close < 0 || close >= end) return true;
        i = close + 1;
      }
      while (i < end && !this.#isDelimiter(i)) i++;
    }
    return false;
  }

  /** Where the quote opened at `open` is closed, or −1; notes line breaks and doubled quotes on the way. */
  #closing(open: number): number {
    const { bytes } = this;
    this.#breaks = 0;
    this.#hasDoubled = false;
    for (let i = open + 1; i < bytes.length; i++) {
      const sign = bytes[i];
      if (sign === LF) {
        if (bytes[i - 1] !== CR) this.#breaks++;
      } else if (sign === CR) this.#breaks++;
      else if (sign === QUOTE) {
        if (bytes[i + 1] !== QUOTE) return i;
        this.#hasDoubled = true;
        i++;
      }
    }
    return -1;
  }

  /** Takes in the number that begins at `from`, and gives where it ends; what it cannot take is left for others to look at. */
  #readNumber(field: number, from: number): number {
    const { bytes } = this;
    const size = bytes.length;
    const stops = this.#stops;
    const mark = this.decimal === "." ? 0x2e : 0x2c;
    const isNegative = from < size && bytes[from] === 0x2d;
    let i = isNegative ? from + 1 : from;
    let digits = 0;
    let beforeMark = -1;
    let whole = 0;
    for (; i < size; i++) {
      const sign = bytes[i]!;
      const digit = sign - 0x30;
      if (digit >= 0 && digit <= 9) {
        whole = whole * 10 + digit;
        digits++;
      } else if (stops[sign] === 0 && sign === mark && beforeMark < 0) beforeMark = digits;
      else break;
    }
    if (i < size && (stops[bytes[i]!] === 0 || (this.#delimiter.length > 1 && !this.#isStop(i)))) this.numbers[field] = Number.NaN;
    else if (i === from) this.numbers[field] = EMPTY;
    else {
      const read = scaled(whole, digits, beforeMark < 0 ? 0 : digits - beforeMark);
      this.numbers[field] = isNegative ? -read : read;
    }
    return i;
  }

  #quotedNumber(from: number, to: number): number {
    return from === to ? EMPTY : plainNumber(this.bytes, from, to, this.decimal);
  }

  #isStop(at: number): boolean {
    return this.bytes[at] === LF || this.bytes[at] === CR || this.#isDelimiter(at);
  }

  #isDelimiter(at: number): boolean {
    const delimiter = this.#delimiter;
    for (let i = 0; i < delimiter.length; i++) if (this.bytes[at + i] !== delimiter[i]) return false;
    return true;
  }

  #grow(): void {
    const grown = <T extends Int32Array | Uint8Array | Float64Array>(old: T, fresh: T): T => {
      fresh.set(old);
      return fresh;
    };
    const size = this.starts.length * 2;
    this.starts = grown(this.starts, new Int32Array(size));
    this.ends = grown(this.ends, new Int32Array(size));
    this.#styles = grown(this.#styles, new Uint8Array(size));
    this.#isNumber = grown(this.#isNumber, new Uint8Array(size));
    this.numbers = grown(this.numbers, new Float64Array(size));
  }
}

const IN_QUOTES = /^"((?:[^"]|"")*)"([\s\S]*)$/;
