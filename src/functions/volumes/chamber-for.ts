import { decimal, isAbove } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { refuse } from "../../core/fault.ts";
import { ratio, volume } from "../../core/inputs.ts";

/** Chamber volume that gives a wanted compression ratio: the definition of the ratio solved for the chamber. */
export const chamberFor = define({
  name: "CHAMBERFOR",
  group: "volumes",
  role: "decides",
  summary: "Combustion chamber volume that gives the compression ratio wanted",
  definition: "swept ÷ (ratio − 1) − gasket − deck − piston",
  source: "definition of the compression ratio, (swept + clearance volume) ÷ clearance volume, solved for the chamber",
  params: {
    ratio: ratio("compression ratio wanted").above(1).chosen(),
    swept: volume("swept volume of one cylinder"),
    gasket: volume("volume of the compressed head gasket").atLeast(0).default(0),
    deck: volume("deck space; negative for a piston that stands proud").unbounded().default(0),
    piston: volume("piston crown: dish positive, dome negative").unbounded().default(0),
  },
  returns: value("volume of the combustion chamber, in the unit of the swept volume"),
  examples: [
    { formula: "=HATCH.CHAMBERFOR(7, 120)", gives: 20 },
    { formula: "=HATCH.CHAMBERFOR({9;9.5;10}, 249.2, 3.1, 1.2, -0.5)", gives: [[27.35], [25.517647], [23.888889]] },
  ],
  notes: ["Measure every volume by burette at the valves and plug that will be fitted; a calculated chamber is only a start."],
  compute: ({ ratio: wanted, swept, gasket, deck, piston }) => {
    const chamber = decimal(swept / (wanted - 1) - gasket - deck - piston);
    return isAbove(chamber, 0) ? chamber : refuse("ratio", wanted, "gasket, deck and piston alone leave no room for a chamber at this ratio");
  },
});
