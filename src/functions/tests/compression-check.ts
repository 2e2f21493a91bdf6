import type { Result } from "../../core/cell.ts";
import { define, table } from "../../core/define.ts";
import { Fault } from "../../core/fault.ts";
import { cells, choice, number } from "../../core/inputs.ts";
import { checkText, show } from "../../core/sentences.ts";
import { judge } from "../../core/verdict.ts";
import { boundBy, inShape, RULES, ruleFault, short, ZERO_PRESSURE_NOTE } from "./compression-rule.ts";

/**
 * Judges each cylinder of a compression test by one rule and says which. Sources: share of the
 * highest, service practice; below the average, TM 1-1500-204-23-1; difference, TM 10-3930-618-20.
 */
export const compressionCheck = define({
  name: "COMPRESSIONCHECK",
  group: "tests",
  role: "describes",
  summary: "Verdict on each cylinder of a compression test by one rule, which the verdict names",
  definition: "lowest allowed: limit × highest (share), (1 − limit) × average (average), highest − limit (difference)",
  source: "share: service practice; average: TM 1-1500-204-23-1; difference: TM 10-3930-618-20",
  params: {
    pressures: cells("pressure", "the reading of each cylinder of one engine; 0 for one that shows nothing").atLeast(0),
    rule: choice("share: of the highest; average: so far below the average; difference: so far below the highest", RULES),
    limit: number("share of the highest (0.75), share below the average (0.2), or difference in the unit of the readings").above(0).chosen(),
  },
  returns: table("for each reading the verdict and its rule, in the shape of the readings; blank until two cylinders are measured"),
  draws: { kind: "compression", pressures: "pressures", rule: "rule", limit: "limit", judges: true },
  examples: [
    {
      formula: '=HATCH.COMPRESSIONCHECK({150;118}, "difference", 10)',
      gives: [
        ["within: 150, difference rule asks at least 140 (highest 150 less 10)"],
        ["under: 118, difference rule asks at least 140 (highest 150 less 10)"],
      ],
    },
    {
      formula: '=HATCH.COMPRESSIONCHECK({150,118}, "share", 0.75)',
      gives: [
        ["within: 150, share rule asks at least 112.5 (0.75 of the highest, 150)", "within: 118, share rule asks at least 112.5 (0.75 of the highest, 150)"],
      ],
    },
  ],
  notes: [
    "The rules do not agree: 150, 148, 152 and 118 psi pass 75 % of the highest and 20 % below the average, and fail a difference of 10. The maker's rule decides.",
    "A reading on the limit is within it.",
    "Ignition off and fuel shut off; stand clear of plug holes, belts and propeller while the engine is cranked.",
    "A share below 0.5, an average rule above 0.5 and a difference above half of the highest pass everything, and are refused.",
    ZERO_PRESSURE_NOTE,
  ],
  compute: ({ pressures, rule, limit }) => {
    const read = pressures.values.filter((cell): cell is number => typeof cell === "number");
    const ill = read.length < 2 ? undefined : ruleFault(rule, limit, "limit", read, "pressures");
    if (ill) return ill;
    const bound = read.length < 2 ? undefined : boundBy(rule, limit, read);
    const verdictOn = (cell: number | null | Fault): Result => {
      if (cell instanceof Fault) return checkText(cell);
      if (cell === null || !bound) return "";
      return `${judge(cell, { lower: bound.lower })!.verdict}: ${show(cell)}, ${rule} rule asks at least ${short(bound.lower)} (${bound.why})`;
    };
    return inShape(pressures, verdictOn);
  },
});
