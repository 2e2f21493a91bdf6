import { type Fault, refuse } from "../../core/fault.ts";
import { lengthFactor } from "../../math/units.ts";

/** Lengths in words as people write them, read into numbers; whatever can be read in two ways is a fault. */

const FRACTIONS: Record<string, string> = { "½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8" };

/** Trade words and signs that the units library does not have, by its names. */
const TRADE_UNITS: Record<string, string> = { '"': "in", "''": "in", "'": "ft", ins: "in", thou: "mil", micron: "um", microns: "um" };

const NOTHING_READ = "no length is read here, type a number and its unit, such as 73.02 mm or 2 7/8 in";

const FRACTION = String.raw`\d+\s*\/\s*\d+`;
const PIECE = new RegExp(String.raw`^(${FRACTION}|[\d.,]+(?:(?:\s+|\s*-\s*)${FRACTION})?)\s*([a-z]+\.?|"|'{1,2})?\s*`);
const FEET = lengthFactor("ft", "mm");
const INCH = lengthFactor("in", "mm");

/** The length that `text` says, in `unit`, a name of the units library. */
export function readLength(text: string, unit: string): number | Fault {
  const plain = plainText(text);
  const sign = plain.startsWith("-") ? -1 : 1;
  let rest = plain.replace(/^[-+]\s*/, "");
  const pieces: { value: number; factor: number }[] = [];
  while (rest !== "") {
    const [whole, number, word] = PIECE.exec(rest) ?? [];
    if (whole === undefined || number === undefined) return refuse("text", text, NOTHING_READ);
    const value = readNumber(number, text);
    if (typeof value !== "number") return value;
    const factor = factorOf(word, unit, text);
    if (typeof factor !== "number") return factor;
    pieces.push({ value, factor });
    rest = rest.slice(whole.length);
  }
  if (pieces.length > 1 && !isFeetAndInches(pieces)) return refuse("text", text, "this is more than one length, only feet and then inches go together");
  return sign * pieces.reduce((sum, { value, factor }) => sum + value * factor, 0);
}

function plainText(text: string): string {
  return text
    .replace(/[½¼¾⅛⅜⅝⅞]/g, (sign) => ` ${FRACTIONS[sign]}`)
    .replace(/[″“”]/g, '"')
    .replace(/[′‘’]/g, "'")
    .replace(/[−–]/g, "-")
    .replace(/[µμ]/g, "u")
    .replace(/\s+/g, " ")
    .trim()
    .toLowerCase();
}

function factorOf(word: string | undefined, unit: string, text: string): number | Fault {
  if (word === undefined) return refuse("text", text, "the unit is missing, add one such as mm or in");
  const name = word.replace(/\.$/, "").replace(/metre/, "meter");
  return lengthFactor(TRADE_UNITS[name] ?? name, unit) ?? refuse("text", text, `${word} is no unit of length, use mm, cm, m, um, in, thou or ft`);
}

const isFeetAndInches = (pieces: readonly { factor: number }[]): boolean =>
  pieces.length === 2 && Math.abs(pieces[0]!.factor / pieces[1]!.factor - FEET! / INCH!) < 1e-9;

function readNumber(number: string, text: string): number | Fault {
  const [, whole, top, bottom] = /^([\d.,]+)??[\s-]*(?:(\d+)\s*\/\s*(\d+))?$/.exec(number)!;
  const units = whole === undefined ? 0 : readDecimal(whole, text);
  if (typeof units !== "number" || top === undefined) return units;
  if (whole !== undefined && /[.,]/.test(whole)) return refuse("text", text, "a decimal and a fraction do not go together");
  if (Number(bottom) === 0) return refuse("text", text, "a fraction cannot have 0 below its line");
  if (Number(top) >= Number(bottom)) return refuse("text", text, `${top}/${bottom} is not less than one, is a blank missing as in 2 7/8?`);
  return units + Number(top) / Number(bottom);
}

/** A comma is read as the decimal sign only where it cannot mark thousands: 73,02 and 0,025, but not 73,025. */
function readDecimal(number: string, text: string): number | Fault {
  const marks = number.replace(/\d/g, "");
  if (!/\d/.test(number)) return refuse("text", text, NOTHING_READ);
  if (marks.length > 1) return refuse("text", text, "it has more than one comma or point, type it with the decimal sign only");
  if (/^[1-9]\d{0,2},\d{3}$/.test(number)) {
    return refuse("text", text, `the comma may be a decimal sign or mark thousands, type ${number.replace(",", ".")} or ${number.replace(",", "")}`);
  }
  return Number(number.replace(",", "."));
}
