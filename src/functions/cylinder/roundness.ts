import { decimal } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { refuse } from "../../core/fault.ts";
import { choice, grid } from "../../core/inputs.ts";
import { CIRCLES, roundnessOf } from "../../math/reference-circles.ts";

const FEWEST = 4;

/** Roundness of one cross-section from radial readings. Sources: ISO 12181-1 (the four reference circles), ISO 12181-2 (how many readings). */
export const roundness = define({
  name: "ROUNDNESS",
  group: "cylinder",
  role: "measures",
  summary: "Roundness of one cross-section from radial readings all round, by a reference circle",
  definition: "largest − smallest distance from the centre of the circle: LS least squares, MZ narrowest ring, MC smallest around, MI largest inside",
  source: "ISO 12181-1 (least squares, minimum zone, minimum circumscribed and maximum inscribed reference circles)",
  params: {
    deviations: grid("number", "radial readings at equal steps all round, one row or column, at least 4; any zero point"),
    method: choice("reference circle: LS, MZ, MC (for a shaft) or MI (for a bore)", CIRCLES).default("LS"),
  },
  returns: value("roundness on the radius, in the unit of the readings; blank until all are filled in"),
  draws: { kind: "roundness", deviations: "deviations" },
  examples: [
    { formula: "=HATCH.ROUNDNESS({3,6,2,-4,-1,5,7,1,-6,-2,4,0})", gives: 12.4003 },
    { formula: '=HATCH.ROUNDNESS({3;6;2;-4;-1;5;7;1;-6;-2;4;0}, "MZ")', gives: 11.4226 },
    { formula: '=HATCH.ROUNDNESS({0.01,-0.01,0.01,-0.01,0.01,-0.01}, "MI")', gives: 0.02 },
  ],
  notes: [
    "Two axes cannot see three lobes: such a bore has the same diameter in every direction, so HATCH.OUTOFROUND says 0 and the bore is not round.",
    "Two lobes of height a show as 4a between two diameters and as 2a here: roundness is on the radius, out-of-round on the diameter.",
    "MZ is never more than another circle gives. Readings must go all round in equal steps; a blank one leaves the result blank.",
    "Two opposite readings hold MC with its centre midway between them. MI slides out from between two as far as the others let it, as a true circle does.",
    "So MI of few readings shows more than the bore has, of an oval one up to twice as much with 4: take 12 or more.",
    "A part set up off centre is put right, exactly as long as it is off by little beside its radius.",
  ],
  compute: ({ deviations, method }) => {
    const { rows, columns, values } = deviations;
    if (rows > 1 && columns > 1)
      return refuse("deviations", `${rows}×${columns} cells`, "one row or one column is wanted, one reading after the other round the circle");
    if (values.length < FEWEST) return refuse("deviations", values.length, "readings are too few, at least 4 are needed");
    return values.includes(null) ? "" : decimal(roundnessOf(values as readonly number[], method));
  },
});
