import { decimal, isAbove, isBelow } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { refuse } from "../../core/fault.ts";
import { force, length, number } from "../../core/inputs.ts";
import { LENGTHS_APART, SPRING_NOTES } from "./spring-force.ts";

/** The height at which a spring has a wanted force: SPRINGFORCE the other way about. Source: Hooke's law, EN 13906-1. */
export const springHeight = define({
  name: "SPRINGHEIGHT",
  group: "valves",
  role: "decides",
  summary: "Height at which a valve spring has the force wanted: what to shim it to",
  definition: "length + (force − wanted) ÷ rate",
  source: "Hooke's law; EN 13906-1, spring rate R = ΔF ÷ Δs (from memory)",
  params: {
    force: force("force at the known length; 0 at the free length").atLeast(0),
    length: length("known length, at which that force was measured"),
    rate: number("spring rate, in the unit of force per unit of length").above(0),
    wanted: force("force wanted; 0 gives the free length").atLeast(0).chosen(),
  },
  returns: value("height, in the unit of the length"),
  examples: [
    { formula: "=HATCH.SPRINGHEIGHT(250, 40, 30, 310)", gives: 38 },
    { formula: "=HATCH.SPRINGHEIGHT({250;235}, 40, 30, 265)", gives: [[39.5], [39]] },
  ],
  notes: [
    "The shim is the height measured without it less this height: HATCH.INSTALLEDHEIGHT.",
    "Look at coil bind afterwards: a shim takes as much from the room at full lift.",
    ...SPRING_NOTES,
  ],
  compute: ({ force: known, length: at, rate, wanted }) => {
    const height = decimal(at + (known - wanted) / rate);
    return isBelow(height, at / LENGTHS_APART) || isAbove(height, at * LENGTHS_APART)
      ? refuse("wanted", wanted, `it asks for a height of ${height} beside the length ${decimal(at)}: are force and rate in one unit?`)
      : height;
  },
});
