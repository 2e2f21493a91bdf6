/** A reading that somebody typed as words: a fraction of an inch, or how far a size is from its nominal. */
export type ReadingText =
  | {
      fraction: number;
      /** The sign for inches stands behind it. */
      isInch: boolean;
    }
  | { deviation: number };

/** Down to 64ths, as rules and drawings in inches have them. */
const FRACTION = /^(?:(\d+)(?:\s+|\s*-\s*))?(\d{1,2})\s*\/\s*(2|4|8|16|32|64)\s*("|''|in\.?)?$/;
/** With a sign and a decimal sign: `+1` may name anything. */
const DEVIATION = /^([+-])\s*(\d*[.,]\d+)$/;
const THOUSANDS = /^[1-9]\d{0,2},\d{3}$/;

/** `3 7/16`, `7/16"`, `+0.0015`, `-.002`; nothing for any other text, also where a comma may mark thousands. */
export function readingInText(text: string): ReadingText | undefined {
  const plain = text.replace(/[−–]/g, "-").replace(/[″“”]/g, '"').replace(/\s+/g, " ").trim().toLowerCase();
  const [, whole, top, bottom, inch] = FRACTION.exec(plain) ?? [];
  if (top !== undefined)
    return Number(top) < Number(bottom) ? { fraction: Number(whole ?? 0) + Number(top) / Number(bottom), isInch: inch !== undefined } : undefined;
  const [, sign, size] = DEVIATION.exec(plain) ?? [];
  if (size === undefined || THOUSANDS.test(size)) return undefined;
  return { deviation: Number(size.replace(",", ".")) * (sign === "-" ? -1 : 1) };
}

/** A text that stands where readings stand, whatever heads it: a bare fraction such as `3/16` may be a day. */
export function isReadingText(cell: unknown): cell is string {
  const read = typeof cell === "string" ? readingInText(cell) : undefined;
  return read !== undefined && ("deviation" in read || read.isInch || read.fraction > 1);
}
