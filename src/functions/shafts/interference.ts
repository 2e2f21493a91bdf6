import { decimal, isBelow } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { refuse, unlike } from "../../core/fault.ts";
import { length } from "../../core/inputs.ts";

/** Interference of a press fit, on the diameter: pin in its rod, guide in its head, gear on its shaft. Source: ISO 286-1 (interference). */
export const interference = define({
  name: "INTERFERENCE",
  group: "shafts",
  role: "measures",
  summary: "Interference of a press fit, on the diameter: pin, guide, seat, gear or liner",
  definition: "shaft − hole",
  source: "ISO 286-1, interference (from memory)",
  params: {
    shaft: length("outside diameter: pin, guide, seat ring, liner or shaft"),
    hole: length("inside diameter of what it is pressed into"),
  },
  returns: value("interference on the diameter, in the unit of both"),
  examples: [
    { formula: "=HATCH.INTERFERENCE(12.035, 12)", gives: 0.035 },
    { formula: "=HATCH.INTERFERENCE({22.01;32.08}, {21.99;32})", gives: [[0.02], [0.08]] },
  ],
  notes: [
    "Sizes at one temperature. In another metal the fit changes with heat: HATCH.HOTCLEARANCE gives it, below 0 where it is still tight.",
    "For a running fit HATCH.CLEARANCE gives the clearance.",
    "Pressing can break a part and throw pieces: eye protection, and a press with its guard shut.",
  ],
  compute: ({ shaft, hole }) => {
    const apart = unlike("shaft", shaft, "hole", hole);
    if (apart) return apart;
    return isBelow(shaft, hole)
      ? refuse("shaft", shaft, `it is smaller than hole ${decimal(hole)}: are they swapped? A running fit is one for HATCH.CLEARANCE`)
      : decimal(shaft - hole);
  },
});
