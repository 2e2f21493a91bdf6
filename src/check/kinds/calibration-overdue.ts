import { counted } from "../../core/number-text.ts";
import { countField, day, defineKind, textField } from "./define-kind.ts";

/** A gauge past its calibration date on the day it was used; what day it is now does not count. */
export const calibrationOverdueKind = defineKind({
  name: "calibration overdue",
  order: 80,
  meaning: "a gauge that was past its calibration date on the day it was used",
  mark: "doubt",
  isOfReading: false,
  fields: {
    gauge: textField("the gauge, as the sheet names it"),
    usedOn: day("the day on which it was used").shown("used on"),
    due: day("the last day on which its calibration held"),
    daysPast: countField("how long past that date it was used", "day").shown("overdue by"),
    uses: countField("how many rows or entries of the sheet say so", "place"),
  },
  sentence(_, { gauge, usedOn, due, daysPast, uses }) {
    const more = uses > 1 ? `, here and in ${counted(uses - 1, "more place")} on the sheet` : "";
    return `${gauge} was used on ${usedOn}, ${counted(daysPast, "day")} past its calibration date ${due}${more}: have it calibrated, and measure again with a gauge that is in date`;
  },
});
