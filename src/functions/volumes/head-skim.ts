import { decimal, isAbove } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { type Fault, refuse, swapped } from "../../core/fault.ts";
import { area, choice, volume } from "../../core/inputs.ts";

/** What one length unit of the result is of the unit that volume ÷ area comes out in: cm³ ÷ cm² is cm, in³ ÷ in² is in. */
const PER_DEPTH = { mm: 10, in: 1 } as const;

/** How much to take off a head's face for a smaller chamber: volume to lose ÷ area of the chamber's mouth. */
export const headSkim = define({
  name: "HEADSKIM",
  group: "volumes",
  role: "decides",
  summary: "How much to skim or mill off the head's face to bring the chamber to the volume wanted",
  definition: "mm: (chamber − wanted) ÷ faceArea × 10; in: (chamber − wanted) ÷ faceArea",
  source: "geometry: a slice of the chamber holds its area × its depth; cc-and-plate practice of the trade",
  params: {
    chamber: volume("chamber as measured by burette, in cm³ (unit mm) or in³ (unit in)"),
    wanted: volume("chamber wanted, in the unit of the chamber").chosen(),
    faceArea: area("area of the chamber's mouth at the head's face, in cm² (unit mm) or in² (unit in)").chosen(),
    unit: choice("unit of the result: mm takes cm³ and cm², in takes in³ and in²", ["mm", "in"]).default("mm"),
  },
  returns: value("depth to take off, in mm or inches"),
  examples: [
    { formula: "=HATCH.HEADSKIM(27.4, 25.5, 38)", gives: 0.5 },
    { formula: '=HATCH.HEADSKIM({1.7;1.68}, 1.65, 5, "in")', gives: [[0.01], [0.006]] },
  ],
  notes: [
    "Volumes and area are of one kind: cm³ with cm², in³ with in². A chamber that would be a sheet or a shaft is refused, other mixtures are not seen.",
    "True while the chamber's wall is square to the face; where it slopes, skim less than this, measure again and go on.",
    "A skimmed head brings valves nearer the piston and changes cam timing: check both, and the maker's least head thickness.",
  ],
  compute: ({ chamber, wanted, faceArea, unit }) =>
    isAbove(wanted, chamber)
      ? swapped("wanted", wanted, "chamber", chamber)
      : (mixedUnits(chamber, faceArea, unit) ?? decimal(((chamber - wanted) / faceArea) * PER_DEPTH[unit])),
});

/** A chamber is no deeper on average than half of what it is wide, as a dome is a third, and never as shallow as a sheet. */
const DEEPEST = 0.5;
const SHALLOWEST = 0.001;

/** A chamber of a depth that none has: its volume and the area of its mouth were typed in units of two kinds. */
function mixedUnits(chamber: number, faceArea: number, unit: keyof typeof PER_DEPTH): Fault | undefined {
  const [depth, width] = [chamber / faceArea, Math.sqrt((4 / Math.PI) * faceArea)];
  if (depth >= SHALLOWEST * width && depth <= DEEPEST * width) return undefined;
  const [length, square] = unit === "mm" ? ["mm", "cm² and the volumes in cm³"] : ["in", "in² and the volumes in in³"];
  const deep = Number((depth * PER_DEPTH[unit]).toPrecision(2));
  return refuse("faceArea", faceArea, `a chamber of ${decimal(chamber)} over it would be ${deep} ${length} deep, is the area in ${square}?`);
}
