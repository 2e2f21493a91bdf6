import { decimal } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { refuse } from "../../core/fault.ts";
import { volume } from "../../core/inputs.ts";

/**
 * Static compression ratio: the volume above the piston at bottom dead centre over that at top dead
 * centre. Source: FAA-H-8083-32, compression ratio.
 */
export const compressionRatio = define({
  name: "COMPRESSIONRATIO",
  group: "volumes",
  role: "measures",
  summary: "Static compression ratio from measured volumes",
  definition: "(swept + clearance volume) ÷ clearance volume; clearance volume = chamber + gasket + deck + piston",
  source: "FAA-H-8083-32 powerplant handbook, compression ratio",
  params: {
    swept: volume("swept volume of one cylinder"),
    chamber: volume("combustion chamber in the head, measured by burette"),
    gasket: volume("compressed head gasket").atLeast(0).default(0),
    deck: volume("deck space; negative for a piston that stands proud").unbounded().default(0),
    piston: volume("piston crown: dish positive, dome negative").unbounded().default(0),
  },
  returns: value("compression ratio, as the 10 in 10:1"),
  examples: [
    { formula: "=HATCH.COMPRESSIONRATIO(120, 20)", gives: 7 },
    { formula: "=HATCH.COMPRESSIONRATIO(249.2, 24.1, 3.1)", gives: 10.16 },
    { formula: "=HATCH.COMPRESSIONRATIO(309.7, {24.1;24.6}, 5.3, 2.1, {3.2;-1.5})", gives: [[9.925], [11.154]] },
  ],
  notes: [
    "All volumes in one unit, of one cylinder.",
    "With a flat head and the bowl in the piston, type the bowl as the chamber and 0 as the piston.",
    "Measured volumes settle the ratio; a ratio printed for an engine does not describe the one on the bench.",
  ],
  compute: ({ swept, chamber, gasket, deck, piston }) => {
    const clearance = decimal(chamber + gasket + deck + piston);
    if (!(clearance > 0)) return refuse("chamber", chamber, `with gasket, deck and piston it leaves a clearance volume of ${clearance}, which must be above 0`);
    return decimal((swept + clearance) / clearance);
  },
});
