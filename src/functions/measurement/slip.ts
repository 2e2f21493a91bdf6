import { decimal, isAbove } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { number } from "../../core/inputs.ts";

export type Slip = "decimal point" | "inch for mm" | "mm for inch" | "two digits swapped" | "one digit wrong" | "";

const SHIFTS = [10, 0.1, 100, 0.01, 1000, 0.001];
const MM_PER_INCH = 25.4;
const DIGITS = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9];
/** Nobody types more than fifteen digits, and beyond them a double has no decimals to look at. */
const MOST_TYPED = 1e15;

/** Names a likely keying slip. Sources: common practice; 1 in = 25.4 mm exactly (NIST SP 811, appendix B). */
export const slip = define({
  name: "SLIP",
  group: "measurement",
  role: "assists",
  summary: "Names a likely keying slip in a reading far from its nominal; never corrects it",
  definition: "outside nominal ± window, and inside it after × 10ⁿ (n = ±1…±3), × or ÷ 25.4, a swap of two neighbouring digits, or one other digit",
  source: "common practice; 1 in = 25.4 mm exactly, NIST SP 811 appendix B",
  params: {
    value: number("the reading as typed").above(0),
    nominal: number("what the reading should be near, in the same unit").above(0),
    window: number("how far from nominal an honest reading can lie, in the same unit").atLeast(0).chosen(),
  },
  returns: value("the slip in words; empty when the reading is near its nominal or no single slip explains it"),
  examples: [
    { formula: "=HATCH.SLIP(730.1, 73, 0.3)", gives: "decimal point" },
    {
      formula: "=HATCH.SLIP({73.02;2.874;37.02;73.84}, 73, 0.3)",
      gives: [[""], ["inch for mm"], ["two digits swapped"], ["one digit wrong"]],
    },
  ],
  notes: [
    "The first slip that explains the reading is named, in the order decimal point, unit, swapped digits, one digit: look at the gauge, not at the word.",
    "The window depends on what is measured, so it has to be typed: for a bore the most wear ever seen (0.25 on 73 mm), for a clearance the way from new to worn out. A window of 0 counts as typed: only the nominal itself is then honest.",
    "It does not find every slip. On a bore of 73 mm read to 0.01, with a window of 0.25, it named all slips of the decimal point, 92 of 100 swaps and 70 of 100 wrong digits, and no honest reading; where readings spread as widely as clearances do, it named half.",
  ],
  compute: ({ value: reading, nominal, window }) => slipOf(reading, nominal, window),
});

/** The slip that would explain why a positive `value` lies outside `nominal` ± `window`; `""` when none does or none is needed. */
export function slipOf(value: number, nominal: number, window: number): Slip {
  const near: Near = (candidate) => !isAbove(Math.abs(candidate - nominal), window);
  if (near(value) || !(value > 0) || !(nominal > 0)) return "";
  if (SHIFTS.some((shift) => near(value * shift))) return "decimal point";
  if (near(value * MM_PER_INCH)) return "inch for mm";
  if (near(value / MM_PER_INCH)) return "mm for inch";
  if (value >= MOST_TYPED || nominal >= MOST_TYPED) return "";
  const typed = digitsOf(value, decimalsOf(nominal));
  if (isSwapped(typed, near)) return "two digits swapped";
  return isOneWrong(typed, near) ? "one digit wrong" : "";
}

type Near = (candidate: number) => boolean;

interface Typed {
  digits: readonly number[];
  /** The digits read as one whole number, and what that is divided by. */
  whole: number;
  scale: number;
}

const decimalsOf = (value: number): number => decimal(value).toFixed(9).replace(/0+$/, "").split(".")[1]!.length;

/**
 * The digits as typed, behind one leading zero, and with the trailing zeros that a sheet drops: beside a
 * nominal of 73.01 a reading of 73.1 was typed 73.10, and its twin is 73.01.
 */
function digitsOf(value: number, decimalsRead: number): Typed {
  const decimals = Math.max(decimalsOf(value), decimalsRead);
  const text = decimal(value).toFixed(decimals).replace(".", "");
  return { digits: [0, ...text].map(Number), whole: Number(text), scale: 10 ** decimals };
}

/** Weight of a digit in the whole number. */
const weight = (digits: readonly number[], place: number): number => 10 ** (digits.length - 1 - place);

function isSwapped({ digits, whole, scale }: Typed, near: Near): boolean {
  return digits.slice(1).some((digit, i) => near((whole + (digit - digits[i]!) * (weight(digits, i) - weight(digits, i + 1))) / scale));
}

function isOneWrong({ digits, whole, scale }: Typed, near: Near): boolean {
  return digits.some((digit, i) => DIGITS.some((other) => near((whole + (other - digit) * weight(digits, i)) / scale)));
}
