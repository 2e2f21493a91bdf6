import { decimal, isBelow } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { refuse, unlike } from "../../core/fault.ts";
import { force, length, number } from "../../core/inputs.ts";

/** No valve spring works at less than half the length, or at twice the length, at which it was tested. */
export const LENGTHS_APART = 2;

export const SPRING_NOTES = [
  "A compressed valve spring can fly out: use a proper compressor and eye protection.",
  "The rate counts between the lengths at which it was found (HATCH.SPRINGRATE); near coil bind (HATCH.COILBIND) a spring is stiffer.",
];

/** Force of a spring at another length. Source: Hooke's law, EN 13906-1. */
export const springForce = define({
  name: "SPRINGFORCE",
  group: "valves",
  role: "measures",
  summary: "Force of a valve spring at a height, from its force at a known length and its rate",
  definition: "force + rate × (length − height)",
  source: "Hooke's law; EN 13906-1, spring rate R = ΔF ÷ Δs (from memory)",
  params: {
    force: force("force at the known length; 0 at the free length").atLeast(0),
    length: length("known length, at which that force was measured"),
    rate: number("spring rate, in the unit of force per unit of length").above(0),
    height: length("height at which the force is wanted, such as the fitted one or that at full lift"),
  },
  returns: value("force at that height, in the unit of force"),
  examples: [
    { formula: "=HATCH.SPRINGFORCE(250, 40, 30, 31)", gives: 520 },
    { formula: "=HATCH.SPRINGFORCE(0, 50, 10, {50;45;40})", gives: [[0], [50], [100]] },
  ],
  notes: [...SPRING_NOTES],
  compute: ({ force: known, length: at, rate, height }) => {
    const apart = unlike("height", height, "length", at, LENGTHS_APART);
    if (apart) return apart;
    const result = decimal(known + rate * (at - height));
    return isBelow(result, 0) ? refuse("height", height, `it is longer than free: the spring has no force from ${decimal(at + known / rate)} on`) : result;
  },
});
