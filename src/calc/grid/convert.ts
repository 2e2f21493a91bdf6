import { declared, type GridParts, type OwnFunction, Reader, SheetFault } from "./own-function.ts";

const INCH = 0.0254;
const FOOT = 0.3048;
const POUND = 0.45359237;
const GRAVITY = 9.80665;
const POUND_FORCE = POUND * GRAVITY;
const LITRE = 0.001;
/** U.S. survey foot, by which land is measured. */
const SURVEY_FOOT = 1200 / 3937;
const LIGHT_YEAR = 9_460_730_472_580_800;

/**
 * Units by kind, in SI units, with the constants by which they are defined: the yard and the pound (1959), the gallons,
 * standard gravity and atmosphere, the thermochemical and the International Table calorie. Names after `|` mean the same.
 * Millimetre of mercury, parsec, electron volt and atomic mass unit are Excel's, by the values that it keeps in public test workbooks (vinci1it2000/formulas, test.xlsx;
 * ironcalc/IronCalc, CONVERT.xlsx), as are the units that take a prefix: by definition they are 133.322387415 Pa, 3.08567758149137E16 m,
 * 1.602176634E-19 J and, as measured, 1.66053906660E-27 kg.
 * Source, from memory: NIST SP 811 (2008), appendix B.8; BIPM SI brochure (2019); the names from Excel's description of CONVERT.
 */
const UNITS: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  length: {
    m: 1,
    in: INCH,
    ft: FOOT,
    yd: 0.9144,
    ell: 45 * INCH,
    mi: 1609.344,
    Nmi: 1852,
    survey_mi: 5280 * SURVEY_FOOT,
    ang: 1e-10,
    "Picapt|Pica": INCH / 72,
    pica: INCH / 6,
    ly: LIGHT_YEAR,
    "parsec|pc": 3.0856775812815532e16,
  },
  mass: {
    g: 0.001,
    lbm: POUND,
    ozm: POUND / 16,
    grain: POUND / 7000,
    stone: 14 * POUND,
    "cwt|shweight": 100 * POUND,
    "uk_cwt|lcwt|hweight": 112 * POUND,
    ton: 2000 * POUND,
    "uk_ton|LTON|brton": 2240 * POUND,
    sg: POUND_FORCE / FOOT,
    u: 1.660538782e-27,
  },
  time: { "sec|s": 1, "min|mn": 60, hr: 3600, "day|d": 86_400, yr: 31_557_600 },
  pressure: { "Pa|p": 1, bar: 1e5, "atm|at": 101_325, mmHg: 133.322, Torr: 101_325 / 760, psi: POUND_FORCE / INCH ** 2 },
  force: { N: 1, "dyn|dy": 1e-5, lbf: POUND_FORCE, pond: GRAVITY / 1000 },
  energy: {
    J: 1,
    e: 1e-7,
    c: 4.184,
    cal: 4.1868,
    "eV|ev": 1.602176487e-19,
    "HPh|hh": 550 * FOOT * POUND_FORCE * 3600,
    "Wh|wh": 3600,
    flb: FOOT * POUND_FORCE,
    "BTU|btu": 1055.05585262,
  },
  power: { "W|w": 1, "HP|h": 550 * FOOT * POUND_FORCE, PS: 75 * GRAVITY },
  magnetism: { T: 1, ga: 1e-4 },
  temperature: { "K|kel": 1, "C|cel": 1, "F|fah": 5 / 9, Rank: 5 / 9, Reau: 1.25 },
  volume: {
    "l|L|lt": LITRE,
    tsp: (231 * INCH ** 3) / 768,
    tspm: 5e-6,
    tbs: (231 * INCH ** 3) / 256,
    oz: (231 * INCH ** 3) / 128,
    cup: (231 * INCH ** 3) / 16,
    "pt|us_pt": (231 * INCH ** 3) / 8,
    uk_pt: (4.54609 * LITRE) / 8,
    qt: (231 * INCH ** 3) / 4,
    uk_qt: (4.54609 * LITRE) / 4,
    gal: 231 * INCH ** 3,
    uk_gal: 4.54609 * LITRE,
    barrel: 42 * 231 * INCH ** 3,
    bushel: 2150.42 * INCH ** 3,
    "GRT|regton": 100 * FOOT ** 3,
    MTON: 40 * FOOT ** 3,
    ...raised(3),
  },
  area: { ar: 100, Morgen: 2500, ha: 10_000, uk_acre: 4046.8564224, us_acre: 43_560 * SURVEY_FOOT ** 2, ...raised(2) },
  information: { bit: 1, byte: 8 },
  speed: { "m/s|m/sec": 1, "m/hr|m/h": 1 / 3600, mph: 0.44704, kn: 1852 / 3600, admkn: (6080 * FOOT) / 3600 },
};

/** Lengths that stand for areas and volumes too. */
function raised(power: number): Record<string, number> {
  const lengths = { m: 1, in: INCH, ft: FOOT, yd: 0.9144, mi: 1609.344, Nmi: 1852, ang: 1e-10, Pica: INCH / 72, Picapt: INCH / 72, ly: LIGHT_YEAR };
  return Object.fromEntries(Object.entries(lengths).map(([name, size]) => [`${name}^${power}|${name}${power}`, size ** power]));
}

/** What stands for 0 K, in the unit's own degrees. */
const ZERO: Readonly<Record<string, number>> = { C: 273.15, cel: 273.15, F: 459.67, fah: 459.67, Reau: 218.52 };

/** Units that take a prefix, with the power to which it is raised. */
const METRIC = new Map<string, number>([
  ...`m g s sec Pa p N dyn dy J e c cal eV ev Wh wh W w T ga K kel l L lt ang u pc parsec bar bit byte mmHg pond ar m/s m/sec m/h m/hr
    atm at ly mph uk_pt`
    .split(/\s+/)
    .map((name) => [name, 1] as const),
  ["ang^2", 2],
  ["ang2", 2],
  ["ang^3", 3],
  ["ang3", 3],
  ["m^2", 2],
  ["m2", 2],
  ["m^3", 3],
  ["m3", 3],
]);
const PREFIXES: Readonly<Record<string, number>> = {
  Y: 1e24,
  Z: 1e21,
  E: 1e18,
  P: 1e15,
  T: 1e12,
  G: 1e9,
  M: 1e6,
  k: 1e3,
  h: 100,
  da: 10,
  e: 10,
  d: 0.1,
  c: 0.01,
  m: 1e-3,
  u: 1e-6,
  n: 1e-9,
  p: 1e-12,
  f: 1e-15,
  a: 1e-18,
  z: 1e-21,
  y: 1e-24,
};
const BINARY: Readonly<Record<string, number>> = { ki: 2 ** 10, Mi: 2 ** 20, Gi: 2 ** 30, Ti: 2 ** 40, Pi: 2 ** 50, Ei: 2 ** 60, Zi: 2 ** 70, Yi: 2 ** 80 };

interface Unit {
  kind: string;
  size: number;
  zero: number;
}

const BY_NAME = new Map<string, Unit>(
  Object.entries(UNITS).flatMap(([kind, units]) =>
    Object.entries(units).flatMap(([names, size]) => names.split("|").map((name): [string, Unit] => [name, { kind, size, zero: ZERO[name] ?? 0 }])),
  ),
);

function unitNamed(name: string): Unit {
  const plain = BY_NAME.get(name);
  if (plain) return plain;
  for (const [prefix, times] of [...Object.entries(PREFIXES), ...Object.entries(BINARY)]) {
    const rest = name.slice(prefix.length);
    const power = name.startsWith(prefix) ? METRIC.get(rest) : undefined;
    const unit = BY_NAME.get(rest);
    if (!power || !unit || (prefix in BINARY && unit.kind !== "information")) continue;
    return { ...unit, size: unit.size * times ** power };
  }
  throw new SheetFault("#N/A", `CONVERT does not know the unit ${JSON.stringify(name)}: names of units tell capitals from small letters.`);
}

/** CONVERT by the definitions of units, in the digits that a sheet keeps. */
export function convertFunctions(grid: GridParts): Record<string, OwnFunction> {
  const reader = new Reader(grid.helpers);
  return {
    CONVERT: declared(grid.helpers, "A quantity in another unit", ["value (number)", "from_unit (string)", "to_unit (string)"], function (given, from, to) {
      const value = reader.number(given, this);
      const [a, b] = [unitNamed(reader.text(from)), unitNamed(reader.text(to))];
      if (a.kind !== b.kind) throw new SheetFault("#N/A", `${reader.text(from)} is a unit of ${a.kind}, ${reader.text(to)} one of ${b.kind}.`);
      const converted = a.kind === "temperature" ? ((value + a.zero) * a.size) / b.size - b.zero : (value * a.size) / b.size;
      return Number(converted.toPrecision(15));
    }),
  };
}
