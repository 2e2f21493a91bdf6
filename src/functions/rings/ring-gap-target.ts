import { decimal } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { length, ratio } from "../../core/inputs.ts";

/**
 * Ring end gap to aim for, as a share of the bore. The default of .004 in for each inch of bore is
 * common practice; a ring maker's published least is .0035.
 */
export const ringGapTarget = define({
  name: "RINGGAPTARGET",
  group: "rings",
  role: "decides",
  summary: "Ring end gap to aim for: so much for each unit of bore",
  definition: "bore × perBore",
  source: "common practice (.004 in for each inch of bore)",
  params: {
    bore: length("bore in which the ring will run"),
    perBore: ratio("gap for each unit of bore: .004 in per inch is 0.004 mm per mm").atLeast(0.001).atMost(0.02).default(0.004).chosen(),
  },
  returns: value("gap, in the unit of the bore"),
  examples: [
    { formula: "=HATCH.RINGGAPTARGET(4)", gives: 0.016 },
    { formula: "=HATCH.RINGGAPTARGET({73;73.25;73.5}, 0.0045)", gives: [[0.3285], [0.329625], [0.33075]] },
  ],
  notes: ["A gap too small closes when hot and can break the ring or seize the piston: the ring maker's figure comes first."],
  compute: ({ bore, perBore }) => decimal(bore * perBore),
});
