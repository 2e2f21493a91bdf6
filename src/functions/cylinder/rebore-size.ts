import { define, value } from "../../core/define.ts";
import { unlike } from "../../core/fault.ts";
import { axes, choice, length, list, readings } from "../../core/inputs.ts";
import { drawnAsBore, largestOf } from "./bore-readings.ts";
import { CENTRINGS, NO_ALLOWANCE_NOTE, neededSize, noneCleansUp, oversizeFault, smallestOversize } from "./oversize.ts";

/**
 * The smallest listed oversize that cleans the bore up. Source: TM 55-1905-219-14-10 p. 5-368 (the
 * bore decides the oversize, the sizes come from a list); the two centrings: common practice.
 */
export const reboreSize = define({
  name: "REBORESIZE",
  group: "cylinder",
  role: "decides",
  summary: "The smallest listed oversize that cleans the bore up, or the words none: sleeve",
  definition:
    "least oversize with standard + oversize ≥ needed, or > needed without allowance; needed = max of readings + allowance (worn), or standard + 2 × (max of readings − standard) + allowance (true)",
  source: "TM 55-1905-219-14-10 p. 5-368 (oversizes chosen by the worn bore); centring and allowance: common practice",
  params: {
    readings: readings(),
    standard: length("standard bore, to which the oversizes are added").chosen(),
    oversizes: list("length", "oversizes that can be had: what each adds to the standard bore, in any order").chosen(),
    allowance: length("least stock to leave for honing, on the diameter").atLeast(0).default(0).chosen(),
    centring: choice("worn: bored on the worn hole; true: bored on the original centre line", CENTRINGS).default("worn"),
    axes: axes(),
  },
  returns: value("the oversize, in the unit of the readings, or the text none: sleeve"),
  draws: { ...drawnAsBore, standard: "standard" },
  examples: [
    { formula: "=HATCH.REBORESIZE({73.11,73.10;73.06,73.05}, 73, {0.25,0.5,0.75,1})", gives: 0.25 },
    { formula: '=HATCH.REBORESIZE({73.14,73.10;73.06,73.05}, 73, {0.25,0.5,0.75,1}, , "true")', gives: 0.5 },
    { formula: "=HATCH.REBORESIZE({73.22,73.2;73.24,73.2;74.1,73.9}, 73, {0.25,0.5,0.75,1}, 0.03, , 2)", gives: [[0.25], [0.5], ["none: sleeve"]] },
  ],
  notes: [
    "A block is bored to one oversize throughout unless its maker says otherwise: take the largest, or use HATCH.REBOREPLAN.",
    "Metric steps of 0.25 mm are common practice; which oversizes a block bears, its maker's service manual says.",
    NO_ALLOWANCE_NOTE,
    "An oversize above a twentieth of the standard bore is refused as one in another unit.",
    "A blank or 0 in the list of oversizes is left out.",
  ],
  compute: ({ readings: bore, standard, oversizes, allowance, centring }) => {
    const { reading } = largestOf(bore);
    const fault = unlike("readings", reading, "standard", standard) ?? oversizeFault(oversizes, standard);
    if (fault) return fault;
    const needed = neededSize(reading, standard, allowance, centring);
    return smallestOversize(needed, standard, oversizes, allowance) ?? noneCleansUp(oversizes, standard);
  },
});
