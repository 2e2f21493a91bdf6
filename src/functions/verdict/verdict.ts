import { define, value } from "../../core/define.ts";
import { swapped } from "../../core/fault.ts";
import { judge } from "../../core/verdict.ts";
import { judgingParams } from "./limit-params.ts";

/**
 * The verdict on a value against limits typed by the shop. Source: ISO 14253-1 default decision
 * rule when an uncertainty is given; without one a value on a limit is within it.
 */
export const verdict = define({
  name: "VERDICT",
  group: "verdict",
  summary: "Judges a value against typed limits: within, near limit, not proven, over or under",
  definition: "over: value > upper + U; under: value < lower − U; within: lower + U ≤ value ≤ upper − U; otherwise not proven",
  source: "ISO 14253-1 default decision rule; near: common practice",
  params: judgingParams,
  returns: value("the verdict in words; blank while there is no limit to judge by"),
  examples: [
    { formula: "=HATCH.VERDICT(73.04-73.00, , 0.04)", gives: "within" },
    { formula: "=HATCH.VERDICT(0.041, 0.02, 0.04)", gives: "over" },
    { formula: "=HATCH.VERDICT({0.019;0.021;0.039;0.045}, 0.02, 0.04, 0.002)", gives: [["not proven"], ["not proven"], ["not proven"], ["over"]] },
    { formula: "=HATCH.VERDICT(0.038, 0.02, 0.04, , 0.003)", gives: "near limit" },
  ],
  compute: ({ value: reading, lower, upper, uncertainty, near }) => {
    if (lower !== undefined && upper !== undefined && lower > upper) return swapped("lower", lower, "upper", upper);
    return judge(reading, { lower, upper }, uncertainty, near)?.verdict ?? "";
  },
});
