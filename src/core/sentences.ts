import { isCellError } from "./cell.ts";
import { decimal } from "./decimal.ts";
import type { Fault } from "./fault.ts";

/** Text cells hold this in a batch where a fault would otherwise turn the whole block into an error. */
export const CHECK_PREFIX = "check: ";

const LONGEST_QUOTE = 40;

/** A value as a sentence shows it: numbers as typed decimals, text in quotes and never longer than a line. */
export function show(value: unknown): string {
  if (typeof value === "number") return String(decimal(value) || value);
  if (typeof value === "string") {
    const flat = value.replace(/\s+/g, " ");
    return `"${flat.length > LONGEST_QUOTE ? `${flat.slice(0, LONGEST_QUOTE)}…` : flat}"`;
  }
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (isCellError(value)) return value.error;
  return value === null || value === undefined ? "nothing" : "of several cells";
}

/** The sentence of a fault without the function's name: `skirt 73.06 is larger than bore 73.02: are they swapped?` */
export function faultBody(fault: Fault): string {
  const { param, got, want } = fault;
  switch (fault.code) {
    case "missing":
      return `${param} is not given: it must be ${want}`;
    case "surplus":
      return `takes ${want}, ${got} ${got === 1 ? "is" : "are"} given`;
    case "empty":
      return `${param} is an empty range: it must be ${want}`;
    case "shape":
      return `${param} is ${got} cells, which does not fit ${want}: ranges must be of one size, or one row, one column or one cell`;
    case "number-as-text":
      return `${param} holds ${show(got)} as text: type it again as a number`;
    case "decimal-comma":
      return `${param} holds the text ${show(got)}: a decimal comma is not read, type it with this sheet's decimal sign`;
    case "text":
      return `${param} holds the text ${show(got)}: it must be ${want}`;
    case "truth":
      return `${param} holds ${show(got)}: it must be ${want}`;
    case "cell-error":
      return isCellError(got) && got.error === "#BUSY!"
        ? `${param} is still being calculated`
        : `${param} holds the error ${show(got)}: correct that cell first`;
    case "upstream":
      return String(got);
    case "not-finite":
      return `${param} is not a finite number: it must be ${want}`;
    case "too-small":
      return `${param} ${show(got)} is too small: it must be ${want}`;
    case "too-large":
      return `${param} ${show(got)} is too large: it must be ${want}`;
    case "not-whole":
      return `${param} ${show(got)} is not a whole number: it must be ${want}`;
    case "not-a-choice":
      return `${param} ${show(got)} is not known: it must be ${want}`;
    case "swapped": {
      const { other, bound, unless } = want as { other: string; bound: number; unless?: string };
      return `${param} ${show(got)} is larger than ${other} ${show(bound)}: are they swapped?${unless ? ` ${unless}` : ""}`;
    }
    case "units": {
      const { other, bound } = want as { other: string; bound: number };
      return `${param} ${show(got)} is ${beside(got as number, bound)} ${other} ${show(bound)}: ${likelySlip(got as number, bound)}`;
    }
    case "too-few":
      return `${param} has ${got}: ${want}`;
    case "axes":
      return `axes ${show(got)} does not divide the ${want}: each row must hold every height of one bore`;
    case "unfit":
      return `${param} ${show(got)}: ${want}`;
  }
}

const apart = (a: number, b: number): number => Math.max(Math.abs(a), Math.abs(b)) / Math.min(Math.abs(a), Math.abs(b));

/** How many times larger a size is that was typed with the decimal point elsewhere, or in another unit. */
const TIMES = { point: [10, 100, 1000], unit: [25.4, 2.54] };
const isAbout = (times: number, meant: number): boolean => times >= 0.8 * meant && times <= 1.25 * meant;

/** How a size that is too far from another stands to it: `about a tenth of`. */
function beside(got: number, bound: number): string {
  const times = apart(got, bound);
  const meant = [...TIMES.point, ...TIMES.unit].find((known) => isAbout(times, known)) ?? Number(times.toPrecision(2));
  const isLarger = Math.abs(got) > Math.abs(bound);
  if (meant < 2) return `more than a fifth ${isLarger ? "above" : "below"}`;
  return isLarger ? `about ${meant} times` : `about 1/${meant} of`;
}

/** What has likely gone wrong where two sizes of one thing are so far apart. */
function likelySlip(got: number, bound: number): string {
  const times = apart(got, bound);
  if (TIMES.point.some((meant) => isAbout(times, meant))) return "is a decimal point wrong?";
  if (isAbout(times, 25.4)) return "is one in inches, the other in millimetres?";
  if (isAbout(times, 2.54)) return "is one in inches, the other in centimetres?";
  return "is a digit, the decimal point or the unit wrong?";
}

/** The whole sentence, for an error's tooltip, the terminal and reports. */
export function sentence(fault: Fault): string {
  const body = faultBody(fault);
  const where = fault.at && fault.code !== "upstream" ? ` (${fault.at})` : "";
  return `${fault.fn ? `${fault.fn}: ` : ""}${body}${where}`;
}

/** What an element of a batch shows in its cell in place of a number. */
export function checkText(fault: Fault): string {
  const where = fault.at && fault.code !== "upstream" ? ` (${fault.at})` : "";
  return `${CHECK_PREFIX}${faultBody(fault)}${where}`;
}
