import { decimal } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { count, grid, mass, ratio } from "../../core/inputs.ts";
import type { NumberGrid } from "../../core/param.ts";
import { sum } from "../../math/statistics.ts";

/** The bobweight that stands on a crankpin for its rods and pistons while the crankshaft is balanced. Source: common practice. */
export const bobWeight = define({
  name: "BOBWEIGHT",
  group: "balance",
  role: "decides",
  summary: "Bobweight of a crankpin for balancing, from the rotating and reciprocating masses of one rod",
  definition: "rods × (Σ rotating + factor × Σ reciprocating) + oil",
  source: "common practice; a factor of one half for 90° V8 engines: an engine machine shop's manual",
  params: {
    rotating: grid("mass", "rotating masses of one rod: big end, shells; 0 for what there is none of").atLeast(0),
    reciprocating: grid("mass", "reciprocating masses of one rod: small end, piston, pin, rings, locks").atLeast(0),
    rods: count("rods on the crankpin").default(2),
    factor: ratio("share of the reciprocating masses that is balanced, 0 to 1").atLeast(0).atMost(1).default(0.5).chosen(),
    oil: mass("oil held in the crankpin, for all rods together").atLeast(0).default(0),
  },
  returns: value("mass of the bobweight, in the unit of the masses; blank until all are filled in"),
  examples: [
    { formula: "=HATCH.BOBWEIGHT({430,46}, {182,498,120,34,2}, , , 4)", gives: 1792 },
    { formula: "=HATCH.BOBWEIGHT({430;46}, {182;498;120;34;2}, 1, {0.5;0.55})", gives: [[894], [935.8]] },
  ],
  notes: [
    "One half is for V engines of 90° with two rods on a pin. Which factor another engine needs, and whether it takes bobweights at all, its maker says: in-line engines with even throws take none.",
    "Match the masses first (HATCH.MASSMATCH): the bobweight is that of one rod times the rods.",
    "A crankshaft spinning on a balancer can throw a bobweight: guards shut, nobody in line. Balancing and drilling are work for a shop that does it daily.",
  ],
  compute: ({ rotating, reciprocating, rods, factor, oil }) => {
    const [turns, moves] = [total(rotating), total(reciprocating)];
    return turns === undefined || moves === undefined ? "" : decimal(rods * (turns + factor * moves) + oil);
  },
});

/** A mass not weighed yet would make a bobweight too light, so there is no sum without it. */
const total = ({ values }: NumberGrid): number | undefined => (values.includes(null) ? undefined : sum(values as number[]));
