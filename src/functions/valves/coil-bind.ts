import { decimal, isAbove } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { swapped, unlike } from "../../core/fault.ts";
import { length } from "../../core/inputs.ts";

/** No spring is fitted at this many times its solid length. */
const SHORTEST = 5;

/** What is left between the coils at full lift. Source: common practice. */
export const coilBind = define({
  name: "COILBIND",
  group: "valves",
  role: "measures",
  summary: "Clearance of a valve spring to coil bind at full lift",
  definition: "fitted − lift − solid",
  source: "common practice",
  params: {
    fitted: length("fitted length of the spring, valve closed"),
    lift: length("valve lift at the spring"),
    solid: length("length of the spring with its coils closed up"),
  },
  returns: value("clearance to coil bind, in the unit of the lengths; below 0 the spring binds before full lift"),
  examples: [
    { formula: "=HATCH.COILBIND(40, 9.2, 28.5)", gives: 2.3 },
    { formula: "=HATCH.COILBIND({40;39.6}, {9.2;10.4}, {28.5;29.4})", gives: [[2.3], [-0.2]] },
  ],
  notes: [
    "A spring that binds breaks valve gear: how much must be left is in the maker's service manual.",
    "A compressed valve spring can fly out: use a proper compressor and eye protection.",
    "Look also at the distance from spring cap to guide seal at full lift; this figure does not know it.",
  ],
  compute: ({ fitted, lift, solid }) =>
    unlike("solid", solid, "fitted", fitted, SHORTEST) ?? (isAbove(solid, fitted) ? swapped("solid", solid, "fitted", fitted) : decimal(fitted - lift - solid)),
});
