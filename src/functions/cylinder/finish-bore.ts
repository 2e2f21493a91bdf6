import { decimal } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { length } from "../../core/inputs.ts";

/** The size to hone a bore to for one measured piston: skirt + clearance, on the diameter. Source: common practice. */
export const finishBore = define({
  name: "FINISHBORE",
  group: "cylinder",
  role: "decides",
  summary: "The size to hone a bore to, from the measured piston and the clearance wanted",
  definition: "piston + clearance",
  source: "common practice: each bore is finished to its own measured piston",
  params: {
    piston: length("piston skirt, measured at 90° to the pin"),
    clearance: length("piston-to-wall clearance wanted, on the diameter").chosen(),
  },
  returns: value("finished bore, in the unit of the piston"),
  examples: [
    { formula: "=HATCH.FINISHBORE(73.46, 0.04)", gives: 73.5 },
    { formula: "=HATCH.FINISHBORE({73.46;73.47;73.465}, 0.04)", gives: [[73.5], [73.51], [73.505]] },
  ],
  notes: [
    "Number each piston for its bore once it is finished to it.",
    "Measure the honed bore cold and clean: it is warm from honing, and reads large.",
    "Honing dust is hard and fine: wear eye protection, wash the bores with hot soapy water and oil them.",
  ],
  compute: ({ piston, clearance }) => decimal(piston + clearance),
});
