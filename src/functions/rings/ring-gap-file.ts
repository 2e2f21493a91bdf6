import { decimal } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { length } from "../../core/param.ts";

/** How much a ring's ends must lose before its gap is the target; 0 when it is open enough. */
export const ringGapFile = define({
  name: "RINGGAPFILE",
  group: "rings",
  role: "decides",
  summary: "How much to file off a ring's ends to reach the gap; 0 when it is open enough",
  definition: "max(target − measured, 0)",
  source: "common practice",
  params: {
    measured: length("end gap measured with the ring square in its bore; 0 for ends that touch").atLeast(0),
    target: length("end gap wanted").chosen(),
  },
  returns: value("how much to take off both ends together, in the unit of the gaps"),
  examples: [
    { formula: "=HATCH.RINGGAPFILE(0.22, 0.29)", gives: 0.07 },
    { formula: "=HATCH.RINGGAPFILE({0.22;0.29;0.35}, 0.29)", gives: [[0.07], [0], [0]] },
  ],
  notes: [
    "0 also where the gap is wider than wanted: judge that with HATCH.VERDICT and an upper limit, filing cannot close it.",
    "Ends that touch, 0, may be short of room by any amount: file what is said, then measure again. Some sheets hand an empty cell over as 0.",
  ],
  compute: ({ measured, target }) => Math.max(decimal(target - measured), 0),
});
