import { decimal } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { choice, text } from "../../core/param.ts";
import { readLength } from "./length-text.ts";

const UNITS = { mm: "mm", in: "in", cm: "cm", m: "m", um: "um", thou: "mil", ft: "ft" } as const;

/** A length typed as words, as a number in the unit wanted. Source: NIST SP 811, appendix B (1 in = 25.4 mm exactly, 1 ft = 12 in). */
export const lengthOf = define({
  name: "LENGTH",
  group: "measurement",
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
    "A number without a unit is never guessed at.",
  ],
  compute: ({ text: typed, unit }) => {
    const read = readLength(typed, UNITS[unit]);
    return typeof read === "number" ? decimal(read) : read;
  },
});
