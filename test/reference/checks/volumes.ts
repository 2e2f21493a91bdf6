import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import { type Check, checksOf } from "./check.ts";

const FAA = "FAA AMT General handbook, piston displacement: 5.5 × 5.4 in is 128.29 in³, eight cylinders 1026.32 in³, rounded on the way";
const FAA_RATIO = "FAA-H-8083-32: 140 in³ with the piston down, 20 in³ with it up, is 7:1";
const CLUB = "a car club's newsletter, heads measured by burette: 44.2 in³ swept, piston 2.86 in³ above the block, gasket 0.92 in³, and the ratio of each head";
const MAGAZINE = "an engine builders' magazine: 43.731 in³ swept, piston 0.305, deck 0.41469, gasket 0.251328 and chamber 3.906 in³ are 9.97:1";
const FORUM = "a worked example among owners: 92 × 82 mm, four cylinders, 2180 cm³; 545 with a deck of 3.378 and a chamber of 48 cm³ is 11.6:1";
const CRANK = "kinematics of the slider-crank, worked out apart from this project: throw 25, rod 100";
const TRIANGLE = "geometry: with a throw of 3 and a rod of 5 square to the axis the pin stands 4 from the crank's centre";
const GEOMETRY =
  "UCI Machine Learning Repository, Automobile data set (J. Schlimmer, 1987): printed displacement of the engine, as far as the rounding of bore and stroke lets it be known";
const ADIABATIC = "reversible adiabatic compression, exponent 1.4: 8 to the power 1.4 is 18.3792; 10 to it, times 100 kPa, 2511.89 kPa absolute";

interface Engine {
  cylinders: number;
  bore_in: number;
  stroke_in: number;
  displacement_cuin: number;
  agrees: number;
}

const HALF_HUNDREDTH = 0.005;
const HALF_CUBIC_INCH = 0.5;

/** The engines whose printed figures fit together; the others are wrong in the data set itself. */
function engines(): Check[] {
  const text = readFileSync(new URL("../engine-geometry-1985.csv", import.meta.url), "utf8");
  const rows = parse(text, { columns: true, cast: (cell, { header }) => (header ? cell : Number(cell)) }) as Engine[];
  const sound = rows
    .filter(({ agrees }) => agrees === 1)
    .map(({ cylinders, bore_in: bore, stroke_in: stroke, displacement_cuin: printed }) => {
      const rounding = printed * ((2 * HALF_HUNDREDTH) / bore + HALF_HUNDREDTH / stroke);
      return [`=HATCH.SWEPTVOLUME(${bore}, ${stroke}, ${cylinders}, "in")`, printed, { within: Number((HALF_CUBIC_INCH + rounding).toFixed(3)) }] as const;
    });
  // Some geometries stand there more than once, with another compression ratio.
  return checksOf("SWEPTVOLUME", GEOMETRY, "read", [...new Map(sound.map((row) => [row[0], row])).values()]);
}

/** Swept and other volumes, compression ratios, piston travel. */
export const VOLUMES: readonly Check[] = [
  ...checksOf("CHAMBERFOR", FAA_RATIO, "from memory", [["=HATCH.CHAMBERFOR(7, 120)", 20]]),
  // The printed ratio is rounded to 0.005: ± 43.731 ÷ 8.97² × 0.005 in³, and ± 44.2 ÷ 2.77² × 0.005 in³ below.
  ...checksOf("CHAMBERFOR", MAGAZINE, "read", [["=HATCH.CHAMBERFOR(9.97, 43.731, 0.251328, 0.41469, 0.305)", 3.906, { within: 0.0028 }]]),
  ...checksOf("CHAMBERFOR", CLUB, "read", [["=HATCH.CHAMBERFOR(3.77, 44.2, 0.92, , -2.86)", 17.9, { within: 0.029 }]]),
  ...checksOf("COMPRESSIONRATIO", FAA_RATIO, "from memory", [["=HATCH.COMPRESSIONRATIO(140-20, 20)", 7]]),
  ...checksOf("COMPRESSIONRATIO", CLUB, "read", [
    ["=HATCH.COMPRESSIONRATIO(44.2, 17.9, 0.92, , -2.86)", 3.77, { within: 5e-3 }],
    ["=HATCH.COMPRESSIONRATIO(44.2, 15.6, 0.92, , -2.86)", 4.24, { within: 5e-3 }],
    ["=HATCH.COMPRESSIONRATIO(44.2, 16.6, 0.92, , -2.86)", 4.02, { within: 5e-3 }],
    ["=HATCH.COMPRESSIONRATIO(44.2, 13.7, 0.92, , -2.86)", 4.76, { within: 5e-3 }],
    ["=HATCH.COMPRESSIONRATIO(44.2, 12.8, 0.92, , -2.86)", 5.07, { within: 5e-3 }],
    ["=HATCH.COMPRESSIONRATIO(44.2, 12.2, 0.92, , -2.86)", 5.31, { within: 5e-3 }],
  ]),
  ...checksOf("COMPRESSIONRATIO", MAGAZINE, "read", [["=HATCH.COMPRESSIONRATIO(43.731, 3.906, 0.251328, 0.41469, 0.305)", 9.97, { within: 5e-3 }]]),
  ...checksOf("COMPRESSIONRATIO", FORUM, "read", [["=HATCH.COMPRESSIONRATIO(545, 48, , 3.378)", 11.6, { within: 0.05 }]]),
  ...checksOf(
    "CRANKINGPRESSURE",
    "OpenStax University Physics 2, example 3.7: 240 cm³ of mixture at 1.00 × 10⁵ N/m² pressed to 40 cm³ has 1.23 × 10⁶ N/m²",
    "read",
    [['=100+HATCH.CRANKINGPRESSURE(240/40, 100, 1.4, "kPa")', 1230, { within: 5, prints: 3 }]],
  ),
  ...checksOf("CRANKINGPRESSURE", "an encyclopedia's article on the compression ratio: 7.5 to the power 1.3 at 14.7 psi shows 187.1 psi on a gauge", "read", [
    ['=HATCH.CRANKINGPRESSURE(7.5, 14.7, 1.3, "psi")', 187.1, { within: 0.05 }],
  ]),
  ...checksOf("CRANKINGPRESSURE", ADIABATIC, "computed", [
    ["=1+HATCH.CRANKINGPRESSURE(8, 1)", 18.3792, { within: 5e-5 }],
    ["=100+HATCH.CRANKINGPRESSURE(10, 100)", 2511.89, { within: 5e-3 }],
  ]),
  ...checksOf("DISCVOLUME", FAA, "read", [['=HATCH.DISCVOLUME(5.5, 5.4, "in")', 128.29, { within: 0.05 }]]),
  ...checksOf("DISCVOLUME", "π/4 × 75² × 1.2 mm³, multiplied out", "computed", [["=HATCH.DISCVOLUME(75, 1.2)", 5.3014376, { within: 5e-8 }]]),
  ...checksOf("HEADSKIM", "geometry: 1 cm³ over 20 cm² is 0.05 cm; 0.05 in³ over 5 in² is .010 in", "computed", [
    ["=HATCH.HEADSKIM(26, 25, 20)", 0.5],
    ['=HATCH.HEADSKIM(1.7, 1.65, 5, "in")', 0.01],
  ]),
  ...checksOf("HEADSKIM", "a balancing shop's rule: 1 ÷ (diameter² × 12.87) in for each cm³; for 4 in .00486 in, face 12.566 in²", "computed", [
    ['=HATCH.HEADSKIM(1+1/16.387, 1, 12.566, "in")', 0.00486, { within: 5e-6 }],
  ]),
  ...checksOf("PISTONTRAVEL", CRANK, "computed", [
    ["=HATCH.PISTONTRAVEL(0, 50, 100)", 0],
    ["=HATCH.PISTONTRAVEL(30, 50, 100)", 4.133691, { within: 5e-7 }],
    ["=HATCH.PISTONTRAVEL(60, 50, 100)", 14.871879, { within: 5e-7 }],
    ["=HATCH.PISTONTRAVEL(90, 50, 100)", 28.175416, { within: 5e-7 }],
    ["=HATCH.PISTONTRAVEL(180, 50, 100)", 50],
  ]),
  ...checksOf("PISTONTRAVEL", TRIANGLE, "computed", [["=HATCH.PISTONTRAVEL(90, 6, 5)", 4]]),
  ...checksOf("SQUISH", "a newsletter on engines: pistons .020 in down and a gasket of .041 in leave .061 in; decked to 0, .041 in", "read", [
    ["=HATCH.SQUISH(0.02, 0.041)", 0.061],
    ["=HATCH.SQUISH(0, 0.041)", 0.041],
  ]),
  ...checksOf("SWEPTVOLUME", FAA, "read", [
    ['=HATCH.SWEPTVOLUME(5.5, 5.4, 1, "in")', 128.29, { within: 0.05 }],
    ['=HATCH.SWEPTVOLUME(5.5, 5.4, 8, "in")', 1026.32, { within: 0.05 }],
  ]),
  ...checksOf("SWEPTVOLUME", "NACA TR 250: single-cylinder engine, 5 in bore and 7 in stroke, multiplied out", "computed", [
    ['=HATCH.SWEPTVOLUME(5, 7, 1, "in")', 137.4447, { within: 5e-5 }],
  ]),
  ...checksOf("SWEPTVOLUME", "fuel-rating engine, 82.5 × 114.3 mm or 3.25 × 4.5 in, multiplied out", "computed", [
    ["=HATCH.SWEPTVOLUME(82.5, 114.3)", 611, { within: 5e-3, prints: 5 }],
    ['=HATCH.SWEPTVOLUME(3.25, 4.5, 1, "in")', 37.331, { within: 5e-4 }],
  ]),
  ...checksOf("SWEPTVOLUME", FORUM, "read", [["=HATCH.SWEPTVOLUME(92, 82, 4)", 2180, { within: 0.5, prints: 4 }]]),
  ...engines(),
  ...checksOf("TRAPPEDRATIO", `${CRANK}; 120° before top dead centre 39.871879 of 50 are left`, "computed", [
    ["=HATCH.TRAPPEDRATIO(9, 50, 100, 60)", 7.379501, { within: 5e-7 }],
  ]),
  ...checksOf("TRAPPEDRATIO", `${TRIANGLE}, so that 4 of the stroke of 6 are left at 90°`, "computed", [["=HATCH.TRAPPEDRATIO(10, 6, 5, 90)", 7]]),
];
