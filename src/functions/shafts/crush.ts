import { placeIn } from "../../core/broadcast-elements.ts";
import { decimal, isBelow } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { refuse } from "../../core/fault.ts";
import { grid } from "../../core/inputs.ts";

/** Two shells have as many ends. */
const ENDS = 4;

/** Press fit of a pair of shells in their housing from what stands proud of the parting face. Source: geometry of the circle. */
export const crush = define({
  name: "CRUSH",
  group: "shafts",
  role: "measures",
  summary: "Crush of a pair of bearing shells: the press fit on the diameter from what their ends stand proud",
  definition: "sum of standing ÷ π",
  source: "geometry of the circle: what is pressed out of the length round it is π × what is pressed out of the diameter",
  params: {
    standing: grid("length", "what each shell end stands proud, or the one gap under a cap with its other side tight").unbounded(),
  },
  returns: value("press fit on the diameter, in the unit of standing; blank until all ends are filled in"),
  examples: [
    { formula: "=HATCH.CRUSH({0.04,0.05,0.03,0.04})", gives: 0.05093 },
    { formula: "=HATCH.CRUSH(0.1)", gives: 0.031831 },
  ],
  notes: [
    "Push one end of a shell flush and measure the other, with the force that the maker names; or tighten one side of the cap and measure the gap at the other.",
    "How much a bearing needs is in the maker's service manual. Never file a cap or a shell to change it.",
    "An end of 0 counts as measured; an empty cell reaches some sheets' functions as 0.",
  ],
  compute: ({ standing: { rows, columns, values } }) => {
    if (values.length > ENDS) return refuse("standing", values.length, `ends are too many: a pair of shells has ${ENDS}`);
    const low = values.findIndex((end) => end !== null && isBelow(end, 0));
    if (low >= 0)
      return refuse("standing", values[low], "an end cannot count as sunk: push that end flush and measure the other").placed(
        "",
        placeIn(rows, columns, Math.floor(low / columns), low % columns),
      );
    return values.includes(null) ? "" : decimal((values as number[]).reduce((sum, end) => sum + end, 0) / Math.PI);
  },
});
