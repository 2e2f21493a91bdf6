import { decimal } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { list } from "../../core/inputs.ts";
import { ZERO_PRESSURE_NOTE } from "./compression-rule.ts";

/** Highest less lowest reading of a compression test. Source: TM 10-3930-618-20. */
export const compressionSpread = define({
  name: "COMPRESSIONSPREAD",
  group: "tests",
  role: "measures",
  summary: "Spread of a compression test: the highest reading less the lowest",
  definition: "max of pressures − min of pressures",
  source: "TM 10-3930-618-20, compression test: the spread between cylinders is what is limited",
  params: { pressures: list("pressure", "the reading of each cylinder of one engine; 0 for one that shows nothing").atLeast(0) },
  returns: value("spread, in the unit of the readings; blank until two cylinders are measured"),
  draws: { kind: "compression", pressures: "pressures", resultIs: "difference" },
  derives: [{ characteristic: "compression spread", from: ["compression pressure"], per: "engine" }],
  examples: [
    { formula: "=HATCH.COMPRESSIONSPREAD({150,148,152,118})", gives: 34 },
    { formula: "=HATCH.COMPRESSIONSPREAD({12.1;11.8;12.4})", gives: 0.6 },
  ],
  notes: [
    "Ignition off and fuel shut off; all plugs out, throttle open, battery full, engine warm where the maker says so.",
    "Stand clear of plug holes, belts and propeller while the engine is cranked.",
    ZERO_PRESSURE_NOTE,
  ],
  compute: ({ pressures }) => (pressures.length < 2 ? "" : decimal(pressures.reduce((a, b) => Math.max(a, b)) - pressures.reduce((a, b) => Math.min(a, b)))),
});
