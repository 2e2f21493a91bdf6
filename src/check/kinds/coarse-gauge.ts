import { decimal } from "../../core/decimal.ts";
import { counted, readingText, uncertaintyText } from "../../core/number-text.ts";
import { countField, defineKind, size } from "./define-kind.ts";
import { toleranceText } from "./judged-reading.ts";

/** A gauge whose uncertainty takes more than a third of the tolerance that it is to prove; told once for all readings alike, at the first of them. */
export const coarseGaugeKind = defineKind({
  name: "coarse gauge",
  plural: "coarse gauges",
  order: 90,
  meaning: "a gauge whose uncertainty is more than a third of the tolerance that it judges",
  mark: "doubt",
  fields: {
    uncertainty: size("the expanded uncertainty U of the readings").shown("U"),
    tolerance: size("the room between the two limits"),
    largestUncertainty: size("the largest U that would do: a third of the tolerance, rounded down; 0 where no gauge can prove it").shown("U at most"),
    readings: countField("how many readings that U and these limits judge; null in a file of readings, which is read but once", "reading").orNull(),
  },
  cause: ({ cell }, { uncertainty }) =>
    `U ${uncertaintyText(uncertainty)} is more than a third of several tolerances on the sheet ${cell.sheet}: measure with a finer gauge`,
  sentence({ lower, upper }, { uncertainty, largestUncertainty, readings }) {
    const more = readings === null ? ", here and in rows like it" : readings > 1 ? `, here and for ${counted(readings - 1, "more reading")}` : "";
    const advice = largestUncertainty > 0 ? `measure with a gauge whose U is at most ${readingText(largestUncertainty)}` : "no gauge can prove this";
    return `the uncertainty ${aboveText(uncertainty, largestUncertainty)} is more than a third of ${toleranceText(lower!, upper!)}${more}: ${advice}`;
  },
});

/** Rounded as an uncertainty is, but never down to what would do. */
const aboveText = (uncertainty: number, most: number): string =>
  decimal(Number(uncertaintyText(uncertainty))) > most ? uncertaintyText(uncertainty) : readingText(uncertainty);
