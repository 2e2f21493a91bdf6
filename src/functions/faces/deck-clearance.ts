import { decimal, isAbove } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { refuse, unlike } from "../../core/fault.ts";
import { length } from "../../core/inputs.ts";

/** How far a piston stands below the deck at top dead centre, worked out from the parts. Source: geometry of the slider-crank at top dead centre. */
export const deckClearance = define({
  name: "DECKCLEARANCE",
  group: "faces",
  role: "measures",
  summary: "Deck clearance from the sizes of the parts: how far the piston stands below the deck at top dead centre",
  definition: "blockHeight − stroke ÷ 2 − rod − pistonHeight",
  source: "geometry of the slider-crank at top dead centre",
  params: {
    blockHeight: length("from the centre line of the crankshaft to the deck"),
    stroke: length("stroke of the crankshaft").chosen(),
    rod: length("connecting rod, centre to centre"),
    pistonHeight: length("compression height of the piston: centre of the pin to the crown"),
  },
  returns: value("deck clearance, in the unit of all four; below 0 the piston stands proud"),
  examples: [
    { formula: "=HATCH.DECKCLEARANCE(205, 74, 129, 38.8)", gives: 0.2 },
    { formula: "=HATCH.DECKCLEARANCE({205;204.6}, 74, {129;129.1}, 38.8)", gives: [[0.2], [-0.3]] },
  ],
  notes: [
    "It says what to expect when a deck is skimmed or a part is changed. What is measured with an indicator over the pin axis counts; clearances are in that.",
    "More than half the pistonHeight either way is refused: one of the four is in another unit.",
    "HATCH.SQUISH adds the gasket, HATCH.DISCVOLUME makes it a volume.",
  ],
  compute: ({ blockHeight, stroke, rod, pistonHeight }) => {
    const stack = decimal(stroke / 2 + rod + pistonHeight);
    const apart = unlike("blockHeight", blockHeight, "half the stroke with rod and pistonHeight,", stack);
    if (apart) return apart;
    const clearance = decimal(blockHeight - stack);
    return isAbove(Math.abs(clearance), pistonHeight / 2)
      ? refuse("blockHeight", blockHeight, `it leaves ${clearance}, more than half the pistonHeight ${decimal(pistonHeight)}: are all four in one unit?`)
      : clearance;
  },
});
