import type { Result } from "../../core/cell.ts";
import { decimal } from "../../core/decimal.ts";
import { define, table } from "../../core/define.ts";
import { Fault, unlike } from "../../core/fault.ts";
import { cells, mass } from "../../core/inputs.ts";
import { checkText } from "../../core/sentences.ts";

/** What each part must lose to be as light as the lightest of its set. Source: common practice. */
export const massMatch = define({
  name: "MASSMATCH",
  group: "balance",
  role: "decides",
  summary: "What to take off each piston, pin or rod end so that all weigh what the lightest does",
  definition: "max(0, mass − least of masses − tolerance), for each",
  source: "common practice",
  params: {
    masses: cells("mass", "masses of the parts of one set, in one unit"),
    tolerance: mass("how much heavier than the lightest a part may stay").atLeast(0).default(0).chosen(),
  },
  returns: table("what to take off each part, in the unit and the shape of the masses"),
  examples: [
    { formula: "=HATCH.MASSMATCH({412;409.5;410.2})", gives: [[2.5], [0], [0.7]] },
    { formula: "=HATCH.MASSMATCH({412,409.5,410.2}, 1)", gives: [[1.5, 0, 0]] },
  ],
  notes: [
    "Rods are matched end by end: both big ends, then both small ends (HATCH.RODENDS), or the total hides a difference.",
    "It counts the parts weighed so far: what to take off can grow until the last one is filled in.",
    "Take metal only where the maker shows it, never off a crown, a pin boss or a rod's beam, and weigh again. A part that is far too heavy is another part.",
    "Masses further than a fifth from the middle one are refused in their own cells.",
  ],
  compute: ({ masses: { columns, values }, tolerance }) => {
    const weighed = values.filter((cell) => typeof cell === "number").sort((a, b) => a - b);
    const middle = weighed[weighed.length >> 1]!;
    const parts = values.map((cell) => (typeof cell === "number" ? (unlike("masses", cell, "the middle one", middle) ?? cell) : cell));
    const lightest = Math.min(...parts.filter((cell) => typeof cell === "number"));
    const off = parts.map((cell): Result => {
      if (cell instanceof Fault) return checkText(cell);
      return cell === null ? "" : Math.max(0, decimal(cell - lightest - tolerance));
    });
    return Array.from({ length: values.length / columns }, (_, r) => off.slice(r * columns, (r + 1) * columns));
  },
});
