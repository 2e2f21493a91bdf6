import { fromSteps, toSteps } from "../../core/decimal.ts";
import { Fault, refuse } from "../../core/fault.ts";
import { grid, length } from "../../core/inputs.ts";
import type { NumberGrid } from "../../core/param.ts";
import { type Doubt, doubtOfOne } from "../../math/gauge-rule.ts";
import { type FittedLine, lineThrough } from "../../math/regression.ts";
import { allEqual } from "../../math/statistics.ts";
import { COVERAGE_FACTOR } from "./change-params.ts";

/** The params of a size followed over use, in their order. */
export const sizeOverUseParams = {
  use: grid("number", "use at each measuring, such as hours in service or miles"),
  size: grid("number", "the size measured at that use, 0 included; a use or size left blank leaves out the pair"),
};

export const uncertaintyParam = length("expanded uncertainty U (k = 2) of one size; blank when only the step of the sizes is known").optional();

/** What both functions have to say of the width of their results. */
export const WIDTH_NOTES = [
  "While the sizes scatter about the line no more than U says, the normal law with u = U/2 gives the width; above it Student's t with the scatter.",
  "Without U, u is the step of the sizes ÷ √12, the least that any gauge is off by: give U. The step is the largest 1, 2 or 5 × 10ⁿ that divides all.",
  "Three measurings are few: where they really scatter two or three times as much as U says, 95 % is nearer to 87 %.",
];

/** Without an uncertainty the scatter needs something to stand out from. */
const FEWEST = 3;
/** With one, two measurings make a line whose doubt the gauge alone says. */
const FEWEST_WITH_GAUGE = 2;
/** Says which of the three gives a result its width. */
export type WidthBy = Doubt["by"] | "resolution only: the real band is wider";

export interface SizeOverUse {
  line: FittedLine;
  use: readonly number[];
  size: readonly number[];
  /** The doubt of one size about the line. */
  doubt: Doubt;
  by: WidthBy;
}

/** The line through use and size; undefined while a column that is still being filled holds too few pairs. */
export function sizeOverUseOf(use: NumberGrid, size: NumberGrid, uncertainty: number | undefined): SizeOverUse | Fault | undefined {
  if (use.values.length !== size.values.length || (use.rows !== size.rows && use.rows !== 1 && use.columns !== 1)) {
    return new Fault("shape", "use", `${use.rows}×${use.columns}`, `size of ${size.rows}×${size.columns}`);
  }
  const pairs = use.values.flatMap((x, i) => (x === null || size.values[i] === null ? [] : [[x, size.values[i]!] as const]));
  const fewest = uncertainty === undefined ? FEWEST : FEWEST_WITH_GAUGE;
  if (pairs.length < fewest) {
    if (pairs.length < use.values.length) return undefined;
    const given = pairs.length === 1 ? "one measuring is" : "two measurings are";
    const needed = uncertainty === undefined ? "at least 3 are needed to tell wear from scatter, or 2 with their uncertainty" : "at least 2 are needed";
    return refuse("use", pairs[0]![0], `${given} given, ${needed}`);
  }
  const x = pairs.map(([at]) => at);
  const y = pairs.map(([, reading]) => reading);
  if (uncertainty === undefined && allEqual(y)) return refuse("size", y[0], "all sizes are equal, only their uncertainty can say how much wear may hide");
  const line = lineThrough(x, y);
  if (!line) return refuse("use", x[0], "all uses are equal, there is no use to set the wear against");
  const u = uncertainty === undefined ? stepOf(y) / Math.sqrt(12) : uncertainty / COVERAGE_FACTOR;
  const doubt = doubtOfOne(line.residual, line.degreesOfFreedom, u);
  const by = uncertainty === undefined && doubt.by === "gauge" ? "resolution only: the real band is wider" : doubt.by;
  return { line, use: x, size: y, doubt, by };
}

const LARGEST_POWER = 15;

/** The step in which sizes were typed: the largest of 1, 2 and 5 × 10ⁿ that divides all of them. Sizes of which none is 0 alone. */
export function stepOf(sizes: readonly number[]): number {
  const steps = sizes.map((size) => Math.abs(toSteps(size)));
  for (let power = LARGEST_POWER; power >= 0; power--) {
    for (const digit of [5, 2, 1]) {
      const step = digit * 10 ** power;
      if (steps.every((size) => size % step === 0)) return fromSteps(step);
    }
  }
  return fromSteps(1);
}
