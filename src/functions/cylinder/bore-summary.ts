import { define, row } from "../../core/define.ts";
import { axes, readings } from "../../core/inputs.ts";
import { drawnAsBore, largestOf, meanOf, outOfRoundOf, smallestOf, taperOf } from "./bore-readings.ts";

const COLUMNS = ["smallest", "largest", "mean", "taper", "out-of-round", "largest at height", "largest at axis"] as const;

/**
 * What a bore's readings come to, in one row. Heights count from the top, axes from the left; of
 * equal largest readings the first from the top is named. Sources: as TAPER and OUTOFROUND.
 */
export const boreSummary = define({
  name: "BORESUMMARY",
  group: "cylinder",
  role: "describes",
  summary: "A bore's smallest, largest and mean reading, taper, out-of-round, and where the largest is",
  definition: "min, max and mean of readings; TAPER; OUTOFROUND; height (from the top) and axis (from the left) of the first max",
  source: "FAA-H-8083-32 powerplant handbook, cylinder inspection; US Navy Engineman training manual p. 3-5",
  params: { readings: readings(), axes: axes() },
  returns: row(COLUMNS, "a row of labels, then one row for each bore, in the unit of the readings"),
  draws: drawnAsBore,
  examples: [
    { formula: "=HATCH.BORESUMMARY({73.01,73.02;73.00,73.01})", gives: [[...COLUMNS], [73, 73.02, 73.01, 0.01, 0.01, 1, 2]] },
    {
      formula: "=HATCH.BORESUMMARY({73.03,73.01;73.00,73.00;73.02,73.04}, 1)",
      gives: [[...COLUMNS], [73.01, 73.03, 73.02, 0.02, "", 1, 1], [73, 73, 73, 0, "", 1, 1], [73.02, 73.04, 73.03, 0.02, "", 2, 1]],
    },
  ],
  notes: [
    "Wear that is largest near the top of ring travel is the usual pattern; largest anywhere else asks why.",
    "One height gives no taper and one axis no out-of-round: that column then stays blank.",
  ],
  compute: ({ readings: bore }) => {
    const { reading, height, axis } = largestOf(bore);
    return [smallestOf(bore), reading, meanOf(bore), bore.heights > 1 ? taperOf(bore) : "", bore.axes > 1 ? outOfRoundOf(bore) : "", height + 1, axis + 1];
  },
});
