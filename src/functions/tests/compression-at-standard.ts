import { decimal, isAbove, isBelow } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { Fault, refuse } from "../../core/fault.ts";
import { choice, length, pressure, temperature } from "../../core/inputs.ts";

const UNITS = ["kPa", "bar", "psi"] as const;
/** The standard atmosphere at sea level, ISO 2533: 101.325 kPa, in each unit. */
const STANDARD: Record<(typeof UNITS)[number], number> = { kPa: 101.325, bar: 1.01325, psi: 14.695948775 };
const METRES_PER_FOOT = 0.3048;
/** ISO 2533: 288.15 K at sea level, 6.5 K cooler for each kilometre up to 11 km, and the exponent g ÷ (R × 6.5 K/km). */
const [SEA_LEVEL_KELVINS, KELVINS_PER_METRE, EXPONENT] = [288.15, 0.0065, 5.25588];
const [LOWEST, HIGHEST] = [-500, 11_000];
/** Air pressures from 11,000 m up to 500 m below the sea, and a little more, by the standard one. */
const [LEAST_SHARE, MOST_SHARE] = [0.2, 1.1];
const [COLDEST, WARMEST] = [-90, 60];

/**
 * Compression pressures as they would be at sea level. Gauge pressures go with the air that is drawn in: (g + p) × s ÷ p − s is
 * g × s ÷ p. Source: ISO 2533 for the air; TM 5-3895-359-14&P for the rule with the temperature.
 */
export const compressionAtStandard = define({
  name: "COMPRESSIONATSTANDARD",
  group: "tests",
  role: "measures",
  summary: "Compression pressures brought to standard sea-level air, from the air pressure or the altitude",
  definition:
    "pressure × standard ÷ ambient, ambient = 101.325 kPa × (1 − 0.0065 × altitude ÷ 288.15)^5.25588 where altitude is given; with temperature also × T ÷ 288.15",
  source: "ISO 2533 (standard atmosphere); with the temperature: density rule of TM 5-3895-359-14&P",
  params: {
    pressures: pressure("compression pressures read, above the air's").atLeast(0),
    ambient: pressure("absolute air pressure where the test was made, in the unit; not the weather report's").optional(),
    altitude: length("in place of it: altitude in m, with psi in ft").unbounded().optional().chosen(),
    temperature: temperature("temperature of the air, °C, with psi °F; only for the density rule of some manuals").optional().chosen(),
    unit: choice("unit of the pressures", UNITS).default("kPa"),
  },
  returns: value("pressure at standard air, in the unit"),
  examples: [
    { formula: "=HATCH.COMPRESSIONATSTANDARD({1150;1120}, 92)", gives: [[1266.5625], [1233.521739]] },
    { formula: '=HATCH.COMPRESSIONATSTANDARD(150, , 5000, , "psi")', gives: 180.278 },
  ],
  notes: [
    "Compare an engine with its own readings of another day or place; within one test the spread stays what it is.",
    "The weather report's pressure is brought to sea level already: type a barometer's own, or the altitude.",
    "Without temperature nothing is taken for it: the pressure that compression makes does not depend on how warm the air was. Some manuals correct by density; with temperature so does this.",
    "Leave out what you do not have: an empty cell reaches some sheets' functions as 0, which is an altitude and a temperature.",
    "Fuel off and ignition disabled before cranking; stay clear of open plug or injector holes and of moving and hot parts.",
  ],
  compute: ({ pressures, ambient, altitude, temperature: read, unit }) => {
    if (ambient !== undefined && altitude !== undefined)
      return refuse("altitude", altitude, `beside ambient ${ambient} it is one too many: give one of the two`);
    if (ambient === undefined && altitude === undefined)
      return new Fault("missing", "ambient", undefined, "the absolute air pressure, or the altitude in its place");
    const air = ambient ?? pressureAt(altitude!, unit);
    if (air instanceof Fault) return air;
    if (isBelow(air, LEAST_SHARE * STANDARD[unit]) || isAbove(air, MOST_SHARE * STANDARD[unit]))
      return refuse("ambient", air, `no air has that pressure in ${unit}, at sea level it is ${STANDARD[unit]}`);
    const warmth = read === undefined ? 1 : warmthOf(read, unit);
    return warmth instanceof Fault ? warmth : decimal(((pressures * STANDARD[unit]) / air) * warmth);
  },
});

function pressureAt(altitude: number, unit: (typeof UNITS)[number]): number | Fault {
  const metres = unit === "psi" ? altitude * METRES_PER_FOOT : altitude;
  if (isBelow(metres, LOWEST) || isAbove(metres, HIGHEST)) return refuse("altitude", altitude, `the rule holds from ${LOWEST} to ${HIGHEST} m`);
  return STANDARD[unit] * (1 - (KELVINS_PER_METRE * metres) / SEA_LEVEL_KELVINS) ** EXPONENT;
}

/** The air's temperature by that of the standard; above 1 where warm air has left less in the cylinder. */
function warmthOf(read: number, unit: (typeof UNITS)[number]): number | Fault {
  const celsius = unit === "psi" ? (read - 32) / 1.8 : read;
  if (isBelow(celsius, COLDEST) || isAbove(celsius, WARMEST))
    return refuse("temperature", read, `air is no colder than ${COLDEST} °C and no warmer than ${WARMEST} °C`);
  return (celsius + 273.15) / SEA_LEVEL_KELVINS;
}
