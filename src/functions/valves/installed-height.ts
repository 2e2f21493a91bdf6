import { decimal, isAbove } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { refuse } from "../../core/fault.ts";
import { length } from "../../core/inputs.ts";

/** Fitted height of a valve spring with its shims, the seat cut as planned. Source: common practice. */
export const installedHeight = define({
  name: "INSTALLEDHEIGHT",
  group: "valves",
  role: "measures",
  summary: "Installed height of a valve spring from the height measured, shims under it and how far the valve sinks",
  definition: "measured + sunk − shims",
  source: "common practice",
  params: {
    measured: length("height from the spring seat to the underside of the retainer, valve shut, without the shims"),
    shims: length("shims under the spring, all together").atLeast(0).default(0),
    sunk: length("how much further the valve comes through the head after seat or face are cut").atLeast(0).default(0),
  },
  returns: value("installed height of the spring, in the unit of the heights"),
  examples: [
    { formula: "=HATCH.INSTALLEDHEIGHT(40.6, 0.8, 0.3)", gives: 40.1 },
    { formula: "=HATCH.INSTALLEDHEIGHT({40.6;40.2}, {0.8;0.5})", gives: [[39.8], [39.7]] },
  ],
  notes: [
    "The shim wanted is this height, without shims, less the height wanted: HATCH.SPRINGHEIGHT gives that for a force.",
    "Measure with the retainer and locks that will be fitted: a valve's stem grows through the head as its seat is cut.",
    "A compressed valve spring can fly out: use a proper compressor and eye protection.",
  ],
  compute: ({ measured, shims, sunk }) => {
    if (isAbove(shims, measured / 2)) return refuse("shims", shims, `they are more than half the height ${decimal(measured)}: are both in one unit?`);
    if (isAbove(sunk, measured / 2)) return refuse("sunk", sunk, `it is more than half the height ${decimal(measured)}: are both in one unit?`);
    return decimal(measured + sunk - shims);
  },
});
