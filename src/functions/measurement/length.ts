import { decimal } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { type Fault, refuse } from "../../core/fault.ts";
import { choice, text } from "../../core/inputs.ts";
import { lengthFactor } from "../../math/units.ts";

const UNITS = { mm: "mm", in: "in", cm: "cm", m: "m", um: "um", thou: "mil", ft: "ft" } as const;

/** A length typed as words, as a number in the unit wanted. Source: NIST SP 811, appendix B (1 in = 25.4 mm exactly, 1 ft = 12 in). */
export const lengthOf = define({
  name: "LENGTH",
  group: "measurement",
  role: "assists",
  summary: "Reads a length typed with its unit, fractions included, as a number in the unit wanted",
  definition: "the number typed × its unit ÷ the unit wanted; feet and inches are added",
  source: "NIST SP 811, appendix B: 1 in = 25.4 mm exactly, 1 ft = 12 in, 1 thou = 0.001 in",
  params: {
    text: text("a length with its unit, such as 2 7/8 in, 73.02 mm or 6 ft 2 in"),
    unit: choice("unit wanted", Object.keys(UNITS) as (keyof typeof UNITS)[]),
  },
  returns: value("the length as a number, in the unit wanted"),
  examples: [
    { formula: '=HATCH.LENGTH("2 7/8 in", "mm")', gives: 73.025 },
    { formula: '=HATCH.LENGTH({"73,02 mm";"7302 um";"2.875 in";"6 ft 2 in"}, "mm")', gives: [[73.02], [7.302], [73.025], [1879.6]] },
    { formula: '=HATCH.LENGTH("0.05 mm", "thou")', gives: 1.968503937 },
  ],
  notes: [
    "A comma counts as the decimal sign where it cannot mark thousands: 73,02 mm is read, 73,025 mm is asked back.",
    "The signs for feet (') and inches (\") are read as well, and a thou is a thousandth of an inch.",
    "A number without a unit is never guessed at. Nor is a mil, which is a thou to some and a millimetre to others.",
  ],
  compute: ({ text: typed, unit }) => {
    const read = readLength(typed, UNITS[unit]);
    return typeof read === "number" ? decimal(read) : read;
  },
});

const FRACTIONS: Record<string, string> = { "½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8" };

/** The units that engines are measured in, as people write them, by their names in the units library, which knows rods and furlongs too. */
const WRITTEN: readonly (readonly [unit: string, words: string])[] = [
  ["mm", "mm millimeter millimeters"],
  ["cm", "cm centimeter centimeters"],
  ["m", "m meter meters"],
  ["um", "um micron microns micrometer micrometers"],
  ["in", "in ins inch inches \" ''"],
  ["mil", "thou thous"],
  ["ft", "ft foot feet '"],
];
const UNIT_OF = new Map(WRITTEN.flatMap(([unit, words]) => words.split(" ").map((word) => [word, unit] as const)));

/** Words that one shop takes for this and the next for that. */
const AMBIGUOUS: Record<string, string> = {
  mil: "a thousandth of an inch or a millimetre, type thou or mm",
  mils: "thousandths of an inch or millimetres, type thou or mm",
  tenth: "a ten-thousandth of an inch or a tenth of a millimetre, type 0.0001 in or 0.1 mm",
  tenths: "ten-thousandths of an inch or tenths of a millimetre, type them in in or mm",
};

const NOTHING_READ = "no length is read here, type a number and its unit, such as 73.02 mm or 2 7/8 in";

const FRACTION = String.raw`\d+\s*\/\s*\d+`;
const PIECE = new RegExp(String.raw`^(${FRACTION}|[\d.,]+(?:(?:\s+|\s*-\s*)${FRACTION})?)\s*([a-z]+\.?|"|'{1,2})?\s*`);
const FEET = lengthFactor("ft", "mm");
const INCH = lengthFactor("in", "mm");

/** The length that `text` says as people write it, in `unit`, a name of the units library; whatever can be read in two ways is a fault. */
function readLength(text: string, unit: string): number | Fault {
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
  const meanings = AMBIGUOUS[name];
  if (meanings !== undefined) return refuse("text", text, `${word} may mean ${meanings}`);
  const known = UNIT_OF.get(name);
  if (known === undefined) return refuse("text", text, `${word} is no unit that engines are measured in, use mm, cm, m, um, in, thou or ft`);
  return lengthFactor(known, unit)!;
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
