import { decimal } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { unlike } from "../../core/fault.ts";
import { axes, length } from "../../core/inputs.ts";
import { smallestOf } from "../cylinder/bore-readings.ts";
import { journalReadings } from "./undersize.ts";

/** Wear of a journal, on the diameter: its standard size less the smallest reading. Source: the smallest reading counts, common practice. */
export const shaftWear = define({
  name: "SHAFTWEAR",
  group: "shafts",
  role: "measures",
  summary: "Wear of a journal, pin or stem: the standard size less the smallest reading",
  definition: "standard − min of readings",
  source: "the smallest reading counts: common practice, as the largest does in a bore (US Navy Engineman training manual p. 3-5)",
  params: {
    readings: journalReadings(),
    standard: length("standard size, or the size it was last ground to").chosen(),
    axes: axes(),
  },
  returns: value("wear on the diameter, in the unit of the readings; negative above the standard size"),
  examples: [
    { formula: "=HATCH.SHAFTWEAR({49.98,49.96;49.98,49.97}, 50)", gives: 0.04 },
    { formula: "=HATCH.SHAFTWEAR({49.98,49.96;44.99,44.985}, {50;45}, 2)", gives: [[0.04], [0.015]] },
  ],
  notes: [
    "HATCH.OUTOFROUND and HATCH.TAPER of the same readings say how the wear lies.",
    "Readings further than a fifth from the standard are refused: a decimal point or a unit is wrong.",
  ],
  compute: ({ readings: journal, standard }) => {
    const smallest = smallestOf(journal);
    return unlike("readings", smallest, "standard", standard) ?? decimal(standard - smallest);
  },
});
