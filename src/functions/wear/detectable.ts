import { define, value } from "../../core/define.ts";
import { count, length, ratio } from "../../core/inputs.ts";
import { normalQuantile, smallestSeen } from "../../math/power.ts";
import { COVERAGE_FACTOR, uncertaintyOfChange } from "./change-params.ts";

const LEVEL = 0.05;

/** Measurings of a change as they are planned; every U is expanded, k = 2. */
export interface PlannedChange {
  uBefore: number;
  uAfter: number;
  repeats: number;
  places: number;
  power: number;
  rows: number;
  common: number;
}

/** The smallest change that the plan sees, and whether at one place or only on the average over all of them. */
export function smallestChangeSeen({ uBefore, uAfter, repeats, places, power, rows, common }: PlannedChange): { change: number; by: "place" | "mean" } {
  const u = uncertaintyOfChange(uBefore, uAfter) / COVERAGE_FACTOR / Math.sqrt(repeats);
  const c = uncertaintyOfChange(common, common) / COVERAGE_FACTOR;
  const level = LEVEL / rows;
  const one = (Math.max(COVERAGE_FACTOR, normalQuantile(1 - level / 2)) + normalQuantile(power)) * Math.hypot(u, c);
  if (places === 1) return { change: one, by: "place" };
  const design = { weight: 1 / places, degreesOfFreedom: places - 1, u, scatter: u, common: c, level, floor: COVERAGE_FACTOR * c };
  const mean = smallestSeen(design, power, one);
  return mean === undefined ? { change: one, by: "place" } : { change: mean, by: "mean" };
}

/**
 * What a measuring can see, before anybody measures: the smallest true change found with a given chance. The rule by
 * which it is found is that of PAIREDCHANGE and of Compare; the chance over the scatters that may be seen is J. Neyman's,
 * J. R. Statist. Soc. Suppl. 2 (1935) 107.
 */
export const detectable = define({
  name: "DETECTABLE",
  group: "wear",
  role: "assists",
  summary: "The smallest true change that a planned measuring finds, with a given chance of finding it",
  definition:
    "one place: (max(2, z(1 − 0.025/rows)) + z(power)) × √((uBefore² + uAfter²)/4/repeats + 2 × common²/4); several places: the mean change that PAIREDCHANGE finds at 0.05/rows with that chance, at most one place's",
  source: "power of a test: J. Neyman, J. R. Statist. Soc. Suppl. 2 (1935) 107; uncertainties: JCGM 100:2008 (GUM), 5.1.2; the gauge rule as in PAIREDCHANGE",
  params: {
    uBefore: length("expanded uncertainty U (k = 2) of one reading before, without the part given as common"),
    uAfter: length("the same of one reading after; blank when the same gauge is used").optional(),
    repeats: count("readings of each place in each measuring, whose mean counts").default(1),
    places: count("places whose mean change is looked at").default(1),
    power: ratio("chance of finding it").atLeast(0.5).below(1).default(0.9),
    rows: count("rows that are looked at together: 64 places, or 4 means").default(1),
    common: length("part of U that all readings of one measuring share and that does not cancel").atLeast(0).default(0),
  },
  returns: value("smallest true change found with that chance, in the unit of U"),
  // The chance is summed over the scatters that may be seen, once for every halving.
  steps: () => 20_000,
  examples: [
    { formula: "=HATCH.DETECTABLE(0.004)", gives: 0.009282 },
    { formula: "=HATCH.DETECTABLE(0.004, , {1;3}, 6)", gives: [[0.004697], [0.002712]] },
    { formula: "=HATCH.DETECTABLE(0.004, , 1, {1,2,3,12}, 0.8, 64)", gives: [[0.011882, 0.011882, 0.011882, 0.004507]] },
  ],
  notes: [
    "A smaller change may be found too, only less often; that none was found does not say that there is none. HATCH.SAMEWITHIN and PAIREDCHANGE say so.",
    "Of two or three places a mean seldom sees more than a single place does, because their scatter is poorly known: then it is one place's.",
    "What is common to a measuring, such as a wrong setting, no number of repeats or places makes smaller. A master read each time does.",
    "Places count as scattering by their gauge alone. Where they wear differently, their own spread hides more: HATCH.PAIREDCHANGE goes by it.",
  ],
  compute: ({ uBefore, uAfter = uBefore, ...plan }) => smallestChangeSeen({ uBefore, uAfter, ...plan }).change,
});
