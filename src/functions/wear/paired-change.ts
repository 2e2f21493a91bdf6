import { placeIn } from "../../core/broadcast-elements.ts";
import type { Result } from "../../core/cell.ts";
import { decimal, isAbove } from "../../core/decimal.ts";
import { define, row } from "../../core/define.ts";
import { Fault, refuse } from "../../core/fault.ts";
import { grid, length, ratio, text } from "../../core/inputs.ts";
import { type NumberGrid, textFault } from "../../core/param.ts";
import { doubtOfMean, tested } from "../../math/gauge-rule.ts";
import { allEqual, mean } from "../../math/statistics.ts";
import { COVERAGE_FACTOR, slipFault, uncertaintyOfChange } from "./change-params.ts";
import { differenceWords } from "./difference-words.ts";

const COLUMNS = ["mean change", "lower", "upper", "t or z", "degrees of freedom", "p", "by", "verdict"] as const;
/** What is typed where the gauge has no part that all readings of one session share. */
const NONE = "none";

/** Mean change of the same places measured twice, by the gauge rule. Sources: Student, Biometrika 6 (1908) 1 (pairs); JCGM 100:2008 (the gauge's part). */
export const pairedChange = define({
  name: "PAIREDCHANGE",
  group: "wear",
  role: "assists",
  summary: "Whether the same places really differ before and after: mean change, its interval and p, with the gauge's part",
  definition:
    "d = mean of (after − before); d ± q × √(w²/n + c²); w = u while the scatter s ≤ u, by the normal law, otherwise s by Student's t; U one reading's, common its part shared in a measuring: u² = 2 × (U² − common²)/4, c² = 2 × common²/4; not split: u = 0, c² = 2 × U²/4",
  source: "Student, Biometrika 6 (1908) 1; JCGM 100:2008 (GUM), G.4.1; same within: Schuirmann, J. Pharmacokinetics and Biopharmaceutics 15 (1987) 657",
  params: {
    before: grid("number", "the sizes before, each place in a cell of its own"),
    after: grid("number", "the sizes of the same places after, in the shape of before; a blank in either leaves out the pair"),
    uncertainty: length("expanded uncertainty U (k = 2) of one reading; blank for the scatter of the changes alone").optional(),
    matters: length("smallest difference that matters; blank when only a difference is looked for").optional().chosen(),
    confidence: ratio("share of cases that the interval is to cover").above(0.5).below(1).default(0.95),
    common: text('part of U that all readings of one measuring share; "none" for no such part; blank when it is not known').optional(),
  },
  returns: row(COLUMNS, "a row of labels and a row of values; degrees of freedom blank for the normal law; differs, same within, or cannot tell"),
  examples: [
    {
      formula: "=HATCH.PAIREDCHANGE({73.012;73.01;73.015;73.011;73.013;73.012}, {73.021;73.026;73.024;73.018;73.031;73.022})",
      gives: [[...COLUMNS], [0.0115, 0.006866, 0.016134, 6.37905, 5, 0.0014, "scatter", "differs"]],
    },
    {
      formula: '=HATCH.PAIREDCHANGE({73.01;73.012;73.011}, {73.011;73.012;73.013}, 0.004, 0.005, , "none")',
      gives: [[...COLUMNS], [0.001, -0.0022, 0.0042, 0.6124, "", 0.5403, "gauge", "same within 0.005"]],
    },
    {
      formula: "=HATCH.PAIREDCHANGE({73.01;73.012;73.011}, {73.011;73.012;73.013}, 0.004)",
      gives: [[...COLUMNS], [0.001, -0.0047, 0.0067, 0.3464, 1250, 0.7291, "scatter", "cannot tell: up to 0.0058 may hide"]],
    },
  ],
  notes: [
    "For the same places or cylinders measured twice. Cylinders of two engines, or of two ways of treatment, are groups: HATCH.COMPAREGROUPS.",
    "Without common all of U may be shared by a measuring, as a wrong setting is, and no number of places makes that smaller.",
    'common is a part of U, so at most U. 0 counts as not typed, as an empty cell may arrive as 0: write "none" where nothing is shared.',
    "Of two or three pairs the scatter is poorly known: where it is really two or three times the gauge's, 13 (of 3: 7) in 100 wrongly differ.",
    "A difference need not matter: give the smallest that does.",
    "Sizes that differ fivefold, and are known to a hundredth of themselves, are refused: a decimal point or a unit is wrong.",
  ],
  compute: ({ before, after, uncertainty, matters, confidence, common }) => {
    const changes = changesOf(before, after, uncertainty);
    if (changes instanceof Fault) return changes;
    if (changes === undefined) return COLUMNS.map(() => "");
    const parts = partsOf(uncertainty, common);
    if (parts instanceof Fault) return parts;
    const change = mean(changes);
    if (uncertainty === undefined && allEqual(changes))
      return [change, "", "", "", "", "", "", "cannot tell: all changes are equal, and no uncertainty says what that is worth"];
    const doubt = doubtOfMean(changes, parts.own, parts.common);
    const { lower, upper, statistic, p } = tested(change, doubt, confidence);
    const degreesOfFreedom: Result = Number.isFinite(doubt.degreesOfFreedom) ? doubt.degreesOfFreedom : "";
    return [change, lower, upper, statistic, degreesOfFreedom, p, doubt.by, differenceWords(change, doubt, p <= 1 - confidence, confidence, matters)];
  },
});

/** The changes of all pairs, as decimals; undefined while a column that is still being filled holds too few. */
function changesOf(before: NumberGrid, after: NumberGrid, uncertainty: number | undefined): number[] | Fault | undefined {
  if (before.rows !== after.rows || before.columns !== after.columns)
    return new Fault("shape", "after", `${after.rows}×${after.columns}`, `before of ${before.rows}×${before.columns}`);
  const changes: number[] = [];
  for (const [i, from] of before.values.entries()) {
    const to = after.values[i]!;
    if (from === null || to === null) continue;
    const slip = uncertainty === undefined ? undefined : slipFault(from, to, uncertainty);
    if (slip) return slip.placed("", placeIn(before.rows, before.columns, Math.floor(i / before.columns), i % before.columns));
    changes.push(decimal(to - from));
  }
  const fewest = uncertainty === undefined ? 2 : 1;
  if (changes.length >= fewest) return changes;
  if (changes.length < before.values.length) return undefined;
  return refuse("before", before.values[0], "one pair shows no scatter, at least 2 are needed without an uncertainty");
}

/** Standard uncertainties of one change: its own part, and the part that all changes share. */
function partsOf(uncertainty: number | undefined, typed: string | undefined): { own: number; common: number } | Fault {
  if (uncertainty === undefined) return { own: 0, common: 0 };
  const ofChange = (U: number) => uncertaintyOfChange(U, U) / COVERAGE_FACTOR;
  // Not split, all of it may be shared: the way that makes it count most in a mean.
  if (typed === undefined) return { own: 0, common: ofChange(uncertainty) };
  if (typed.trim().toLowerCase() === NONE) return { own: ofChange(uncertainty), common: 0 };
  const common = Number(typed);
  if (!(common > 0)) return Number.isNaN(common) ? textFault(typed, "common", WANT_COMMON) : new Fault("too-small", "common", common, WANT_COMMON);
  if (isAbove(common, uncertainty)) return refuse("common", common, `it is a part of uncertainty ${uncertainty}, which it cannot exceed`);
  return { own: ofChange(Math.sqrt(Math.max(uncertainty ** 2 - common ** 2, 0))), common: ofChange(common) };
}

const WANT_COMMON = `a length above 0, or the word ${NONE}`;
