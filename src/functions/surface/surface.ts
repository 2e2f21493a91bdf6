import { decimal, isAbove } from "../../core/decimal.ts";
import { define, row } from "../../core/define.ts";
import { Fault, refuse } from "../../core/fault.ts";
import { grid, length } from "../../core/inputs.ts";
import { mean } from "../../math/statistics.ts";
import {
  amplitudes,
  type CoreRoughness,
  coreRoughness,
  type EvaluatedProfile,
  equalParts,
  levelled,
  meanLine,
  meanLineOverValleys,
  wholeCutoffs,
} from "../../math/surface-texture.ts";

const COLUMNS = ["Ra", "Rq", "Rz", "Rk", "Rpk", "Rvk", "Mr1", "Mr2", "sections"] as const;
/** ISO 21920 evaluates over five sections. */
const SECTIONS = 5;
/** Points to a cut-off below which peaks are missed and the filter is no filter. */
const POINTS = 20;

/**
 * Roughness of a surface from a stylus profile. Sources: ISO 16610-21 (Gaussian mean line), ISO 21920-2 (Ra, Rq, Rz), ISO 13565-1 and -2
 * (the line over the valleys, and the core of the material ratio curve).
 */
export const surface = define({
  name: "SURFACE",
  group: "surface",
  role: "describes",
  summary: "Roughness of a honed or ground surface from a stylus profile: Ra, Rq, Rz and the Rk family",
  definition:
    "roughness = levelled profile − Gaussian mean line; Ra mean |z|, Rq √mean z², Rz mean over sections of max − min; Rk, Rpk, Rvk, Mr1, Mr2 from the material ratio curve about the line over the valleys",
  source: "ISO 16610-21 (read); ISO 21920-2, ISO 13565-1, ISO 13565-2 (from memory)",
  params: {
    profile: grid("number", "heights along one line at equal steps, one row or one column, any zero point"),
    spacing: length("step between two heights, in the unit of the cut-off").chosen(),
    cutoff: length("cut-off wavelength, 0.8 mm for most engine surfaces; 0 for a profile that is filtered already").atLeast(0).default(0.8).chosen(),
  },
  returns: row(COLUMNS, "a row of labels and one of values in the unit of the heights; Mr1 and Mr2 in per cent; blank while a height is missing"),
  draws: { kind: "surface", profile: "profile", spacing: "spacing", cutoff: "cutoff" },
  // Each height is weighed with those up to a cut-off away, twice.
  steps: ({ profile }) => profile ** 2 / 8,
  examples: [
    {
      formula: "=HATCH.SURFACE({0,4,5,3,0,1,1,4,4,-1,-2,-4,0,0,-1,-3,-6,-2,2,6,3,-2,1,1,4,1,-3,-3,-5,-2,3,1,-4,-2,-1,4,3,4,0,1,3}, 0.04)",
      gives: [[...COLUMNS], [2.287487, 2.76001, 11.132168, 8.360085, 3.054745, 1.126012, 9.715297, 94.534081, "1: fewer than 5"]],
    },
    {
      formula: "=HATCH.SURFACE({0,4,5,3,0,1,1,4,4,-1,-2,-4,0,0,-1,-3,-6,-2,2,6,3,-2,1,1,4,1,-3,-3,-5,-2,3,1,-4,-2,-1,4,3,4,0,1,3}, 0.0015, 0.03)",
      gives: [[...COLUMNS], [2.287487, 2.76001, 11.132168, 8.360085, 3.054745, 1.126012, 9.715297, 94.534081, "1: fewer than 5"]],
    },
  ],
  notes: [
    "The Rk family is taken about the line of ISO 13565-1, which valleys do not pull down; ISO 21920 now takes the robust filter of ISO 16610-31. Name which one a figure was made with. Mr1 and Mr2 are Rmrk1 and Rmrk2 there.",
    "sections counts the whole cut-offs used; fewer than five say so, and such figures are not those of the standard.",
    "Half a cut-off is dropped at each end, so five sections need six cut-offs: 4.8 mm at 0.8.",
    "0.8 is in mm: with a spacing in inches type the cut-off in inches, .03.",
    "A stylus trace stands for one line of 5 mm: take several round the bore.",
  ],
  compute: ({ profile: { rows, columns, values }, spacing, cutoff }) => {
    if (rows > 1 && columns > 1) return refuse("profile", `${rows}×${columns} cells`, "one row or one column is wanted, one height after the other");
    const used = withoutTail(values);
    if (used.includes(null)) return COLUMNS.map(() => "");
    const texture = textureOf(used as number[], spacing, cutoff);
    if (texture instanceof Fault) return texture;
    const { ra, rq, rz, core, roughness, isFew } = texture;
    const { sections } = roughness;
    const figures = [ra, rq, rz, core.rk, core.rpk, core.rvk, 100 * core.mr1, 100 * core.mr2].map(decimal);
    return [...figures, isFew ? `${sections}: fewer than ${SECTIONS}` : sections];
  },
});

/** A range picked too long ends in empty cells. */
export const withoutTail = (values: readonly (number | null)[]): (number | null)[] => values.slice(0, values.findLastIndex((height) => height !== null) + 1);

/** A profile as it is evaluated. */
export interface Texture {
  /** What Ra, Rq and Rz are taken from. */
  roughness: EvaluatedProfile;
  ra: number;
  rq: number;
  rz: number;
  /** Heights about the line over the valleys, from which the Rk family is taken. */
  heights: readonly number[];
  core: CoreRoughness;
  isFew: boolean;
}

/** What a profile comes to, or why it comes to nothing. */
export function textureOf(heights: readonly number[], spacing: number, cutoff: number): Texture | Fault {
  if (heights.length < SECTIONS * POINTS && cutoff === 0)
    return refuse("profile", heights.length, `heights are too few for ${SECTIONS} sections, at least ${SECTIONS * POINTS} are needed`);
  if (cutoff > 0 && isAbove(spacing, cutoff / POINTS))
    return refuse("spacing", spacing, `it must be at most a twentieth of the cut-off ${decimal(cutoff)}: are both in one unit?`);
  const evaluated = cutoff === 0 ? unfiltered(heights) : filteredBy(heights, spacing, cutoff);
  if (evaluated === undefined)
    return refuse(
      "profile",
      heights.length,
      `heights are too few: at this spacing one cut-off with half of one at each end is ${Math.ceil((2 * cutoff) / spacing) + 1}`,
    );
  const { roughness, core } = evaluated;
  return { roughness, ...amplitudes(roughness), heights: core.heights, core: coreRoughness(core.heights), isFew: roughness.sections < SECTIONS };
}

function unfiltered(heights: readonly number[]) {
  const middle = mean(heights);
  const roughness = equalParts(
    heights.map((height) => height - middle),
    SECTIONS,
  );
  return { roughness, core: roughness };
}

function filteredBy(heights: readonly number[], spacing: number, cutoff: number) {
  if (heights.length <= 2 * POINTS) return undefined;
  const profile = levelled(heights);
  const without = (line: readonly number[]) =>
    wholeCutoffs(
      profile.map((height, i) => height - line[i]!),
      spacing,
      cutoff,
    );
  const first = meanLine(profile, spacing, cutoff);
  const roughness = without(first);
  return roughness && { roughness, core: without(meanLineOverValleys(profile, first, spacing, cutoff))! };
}
