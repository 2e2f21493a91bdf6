import { Fault, refuse } from "../../core/fault.ts";
import { grid, type NumberGrid } from "../../core/param.ts";
import { type FittedLine, lineThrough } from "../../math/regression.ts";
import { allEqual } from "../../math/statistics.ts";

/** The params of a size followed over use, in their order. */
export const sizeOverUseParams = {
  use: grid("number", "use at each measuring, such as hours in service or miles"),
  size: grid("length", "the size measured at that use; a use or size left blank leaves out the pair"),
};

const FEWEST = 3;

export interface SizeOverUse {
  line: FittedLine;
  use: readonly number[];
}

/** The line through use and size; undefined while a column that is still being filled holds too few pairs. */
export function sizeOverUseOf(use: NumberGrid, size: NumberGrid): SizeOverUse | Fault | undefined {
  if (use.values.length !== size.values.length || (use.rows !== size.rows && use.rows !== 1 && use.columns !== 1)) {
    return new Fault("shape", "use", `${use.rows}×${use.columns}`, `size of ${size.rows}×${size.columns}`);
  }
  const pairs = use.values.flatMap((x, i) => (x === null || size.values[i] === null ? [] : [[x, size.values[i]!] as const]));
  if (pairs.length < FEWEST) {
    if (pairs.length < use.values.length) return undefined;
    return refuse(
      "use",
      pairs[0]![0],
      `${pairs.length === 1 ? "one measuring is" : "two measurings are"} given, at least 3 are needed to tell wear from scatter`,
    );
  }
  const x = pairs.map(([at]) => at);
  const y = pairs.map(([, reading]) => reading);
  if (allEqual(y)) return refuse("size", y[0], "all sizes are equal, this gauge has seen no wear yet");
  const line = lineThrough(x, y);
  return line ? { line, use: x } : refuse("use", x[0], "all uses are equal, there is no use to set the wear against");
}
