import { isAbove } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { Fault, swapped } from "../../core/fault.ts";
import { length } from "../../core/inputs.ts";
import { nearestStep, noStep, sizeParams, sizesOf } from "./shim-step.ts";

/**
 * The shim that brings a valve's clearance within its limits, nearest the middle. Source: service
 * practice: new shim = installed + (measured − wanted), then the next size made.
 */
export const shimSize = define({
  name: "SHIMSIZE",
  group: "valves",
  role: "decides",
  summary: "The shim that brings a valve's clearance into its limits, nearest the middle",
  definition:
    "the multiple of step from smallest to largest nearest to installed + clearance − (least + most) ÷ 2, if least ≤ installed + clearance − shim ≤ most",
  source: "service practice: new shim = installed + (measured − wanted); steps of 0.05 and 0.025 mm: common practice",
  params: {
    installed: length("shim now in place, measured"),
    clearance: length("valve clearance measured with it; 0 for a valve without any").atLeast(0),
    least: length("least clearance that the maker allows").chosen(),
    most: length("largest clearance that the maker allows").chosen(),
    ...sizeParams,
  },
  returns: value("shim to fit, in the unit of the rest, or text starting none:"),
  examples: [
    { formula: "=HATCH.SHIMSIZE(1.55, 0.30, 0.18, 0.26)", gives: 1.65 },
    { formula: "=HATCH.SHIMSIZE({2.45;2.5;2.6}, {0.12;0.22;0.31}, 0.15, 0.25)", gives: [[2.35], [2.5], [2.7]] },
    { formula: "=HATCH.SHIMSIZE(0.1, 0.012, 0.007, 0.009, 0.01)", gives: "none: no multiple of 0.01 lands in the limits" },
    { formula: "=HATCH.SHIMSIZE(2.5, 0.1, 0.15, 0.25, 0.05, 2.5, 3.5)", gives: "none: no multiple of 0.05 from 2.5 up to 3.5 lands in the limits" },
  ],
  notes: [
    "It names the step nearest the middle also for a valve inside its limits, which may keep its shim: HATCH.SHIMPLAN leaves those alone.",
    "Of two shims as near to the middle the thinner is taken: clearance closes up as seats and valves wear in.",
    "A valve without clearance may be held open by any amount: with 0 this is the thickest shim that can be right. Fit it and measure again.",
    'Some sheets hand an empty cell over as a clearance of 0: write =IF(C4="","",HATCH.SHIMSIZE(B4, C4, …)).',
    "Without smallest and largest it names sizes that nobody may make.",
    "For shims over the bucket and under it alike: a thicker shim makes the clearance smaller by as much.",
    "Measure cold unless the maker's service manual says otherwise, and check again once the shim is in.",
  ],
  compute: ({ installed, clearance, least, most, step, smallest, largest }) => {
    if (isAbove(least, most)) return swapped("least", least, "most", most);
    const sizes = sizesOf({ step, smallest, largest }, [installed]);
    return sizes instanceof Fault ? sizes : (nearestStep(installed, clearance, least, most, sizes)?.size ?? noStep(sizes));
  },
});
