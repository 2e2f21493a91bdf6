import { decimal } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { unlike } from "../../core/fault.ts";
import { length } from "../../core/inputs.ts";

/**
 * A ring's end gap in another bore than it was measured in: the ring keeps its length, the bore's
 * girth changes by π times its diameter. Source: geometry of the circle.
 */
export const ringGapAtBore = define({
  name: "RINGGAPATBORE",
  group: "rings",
  role: "measures",
  summary: "A ring's end gap in the bore it will run in, from the gap measured in another bore",
  definition: "gap + π × (boreRun − boreMeasuredIn)",
  source: "geometry: the girth of a bore grows by π times its diameter",
  params: {
    gap: length("end gap as measured; 0 for ends that touch").atLeast(0),
    boreMeasuredIn: length("bore in which the gap was measured"),
    boreRun: length("bore in which the ring will run"),
  },
  returns: value("end gap in the other bore, in the unit of all three; 0 or less means that the ends meet"),
  examples: [
    { formula: "=HATCH.RINGGAPATBORE(0.016, 4.000, 4.001)", gives: 0.01914 },
    { formula: "=HATCH.RINGGAPATBORE(0.3, 73, {73;73.02;72.9})", gives: [[0.3], [0.3628], [-0.0142]] },
  ],
  notes: ["A rule of thumb of three times the difference falls short by a twentieth of it; this is the exact π."],
  compute: ({ gap, boreMeasuredIn, boreRun }) =>
    unlike("boreRun", boreRun, "boreMeasuredIn", boreMeasuredIn) ?? decimal(gap + Math.PI * decimal(boreRun - boreMeasuredIn)),
});
