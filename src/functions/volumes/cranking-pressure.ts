import { decimal } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { choice, number, pressure, ratio } from "../../core/inputs.ts";

/** The standard atmosphere, 101.325 kPa exactly, in each unit (1 psi = 6.894757 kPa). */
const ATMOSPHERE = { kPa: 101.325, bar: 1.01325, psi: 14.69595 } as const;

/** Ideal cranking compression, as a gauge would show it: reversible compression of a perfect gas. */
export const crankingPressure = define({
  name: "CRANKINGPRESSURE",
  group: "volumes",
  role: "measures",
  summary: "Ideal cranking compression by gauge, from the ratio; a real gauge shows less",
  definition: "ambient × (ratio^exponent − 1)",
  source: "reversible adiabatic compression of a perfect gas, p × V^exponent constant; 1.4 for air; standard atmosphere 101.325 kPa",
  params: {
    ratio: ratio("compression ratio, best the trapped one").above(1).chosen(),
    ambient: pressure("pressure of the air outside, absolute, in the unit; blank for the standard atmosphere").optional().chosen(),
    exponent: number("exponent of the compression: 1.4 without loss of heat, nearer 1.3 when cranked slowly").atLeast(1).atMost(1.67).default(1.4).chosen(),
    unit: choice("unit of the pressures", ["kPa", "bar", "psi"]).default("kPa"),
  },
  returns: value("gauge pressure of the ideal compression, in the unit"),
  examples: [
    { formula: "=HATCH.CRANKINGPRESSURE(10, 100)", gives: 2411.8864 },
    { formula: '=HATCH.CRANKINGPRESSURE({7;8;9}, , 1.3, "bar")', gives: [[11.7026], [14.1131], [16.6159]] },
  ],
  notes: [
    "An ideal, not a limit: leakage, heat lost to the walls, late valve closing and the gauge's hose all take away from it.",
    "Judge a compression test by the maker's figures and by how the cylinders differ, not by this number.",
  ],
  compute: ({ ratio: times, ambient, exponent, unit }) => decimal((ambient ?? ATMOSPHERE[unit]) * (times ** exponent - 1)),
});
