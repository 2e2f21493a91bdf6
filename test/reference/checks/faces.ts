import { faceFromScipy, fromScipy, SCIPY } from "../scipy-values.ts";
import { block, type Check, checksOf, list } from "./check.ts";

const TWIST = "ISO 12781-1, from memory: four corners of a square, two opposite ones 1 higher: both reference planes lie in the middle";
const STRAIGHT =
  "geometry: of three points in a row the middle one is 1 off the line through the others: the zone is 1 wide, least squares leave −1/3, 2/3, −1/3";
const FLAT = "geometry: a tilted plane is flat";
const BY_PLANES = `${SCIPY}: least squares by lstsq, minimum zone by linprog`;
const SPAN = "by hand: straightness of the worst three neighbours of a line, where the middle one stands off by half the step";
const BY_FOURIER = `${SCIPY}: first harmonic by numpy.fft`;
const DRIVESHAFT = "TM 10-3930-664-24 p. 3-41: 0, .003, −.002 and .003 in come to .005 in; eccentricity and form taken apart by hand";
const BEND = "TM 10-3930-653-14&P, fig. 4-62: the bend is half the run-out; the readings are ours";
const FACES_BY_NUMPY = ["head", "deck", "manifold", "rail"];

/** Flatness, deck clearance and run-out. */
export const FACES: readonly Check[] = [
  ...checksOf("DECKCLEARANCE", "block height less half the stroke, rod and compression height, subtracted by hand", "computed", [
    ["=HATCH.DECKCLEARANCE(205, 74, 129, 38.8)", 0.2],
    ["=HATCH.DECKCLEARANCE(9.025, 3.48, 5.7, 1.56)", 0.025],
    ["=HATCH.DECKCLEARANCE(9, 3.48, 5.7, 1.585)", -0.025],
  ]),
  ...checksOf("FLATNESS", TWIST, "computed", [
    ["=HATCH.FLATNESS({0,1;1,0})", 1],
    ['=HATCH.FLATNESS({0,1;1,0}, "MZ")', 1],
  ]),
  ...checksOf("FLATNESS", STRAIGHT, "computed", [
    ["=HATCH.FLATNESS({0,1,0})", 1],
    ['=HATCH.FLATNESS({0;1;0}, "MZ")', 1],
  ]),
  ...checksOf("FLATNESS", FLAT, "computed", [
    ["=HATCH.FLATNESS({0,1,2;3,4,5;6,7,8})", 0],
    ['=HATCH.FLATNESS({0.01,0.03,0.05,0.07}, "MZ")', 0],
  ]),
  ...checksOf(
    "FLATNESS",
    BY_PLANES,
    "computed",
    FACES_BY_NUMPY.flatMap((name) => {
      const [leastSquares, zone] = fromScipy(`${name}-flatness`) as [number, number];
      return [
        [`=HATCH.FLATNESS(${block(faceFromScipy(name))})`, leastSquares, { within: 1e-9 }],
        [`=HATCH.FLATNESS(${block(faceFromScipy(name))}, "MZ")`, zone, { within: 1e-9 }],
      ] as const;
    }),
  ),
  ...checksOf("FLATNESSWITHIN", SPAN, "computed", [
    ["=HATCH.FLATNESSWITHIN({0,0,0.02,0.02,0.02}, 1, 3)", 0.01],
    ['=HATCH.FLATNESSWITHIN({0;0;0.02;0.02;0.02}, 3, 1, "MZ")', 0.01],
  ]),
  ...checksOf(
    "FLATNESSWITHIN",
    BY_PLANES,
    "computed",
    ["head", "deck"].flatMap((name) => {
      const [leastSquares, zone] = fromScipy(`${name}-within`) as [number, number];
      return [
        [`=HATCH.FLATNESSWITHIN(${block(faceFromScipy(name))}, 3, 3)`, leastSquares, { within: 1e-9 }],
        [`=HATCH.FLATNESSWITHIN(${block(faceFromScipy(name))}, 3, 3, "MZ")`, zone, { within: 1e-9 }],
      ] as const;
    }),
  ),
  ...checksOf("RUNOUT", DRIVESHAFT, "read", [
    ["=HATCH.RUNOUT({0,0.003,-0.002,0.003})", 0.005, { at: [2, 1] }],
    ["=HATCH.RUNOUT({0,0.003,-0.002,0.003})", 0.001, { at: [2, 2] }],
    ["=HATCH.RUNOUT({0,0.003,-0.002,0.003})", 0.004, { at: [2, 4] }],
  ]),
  ...checksOf("RUNOUT", BEND, "read", [
    ["=HATCH.RUNOUT({0.02,0.01,0,0.01})", 0.02, { at: [2, 1] }],
    ["=HATCH.RUNOUT({0.02,0.01,0,0.01})", 0.01, { at: [2, 2] }],
    ["=HATCH.RUNOUT({0.02,0.01,0,0.01})", 0, { at: [2, 3] }],
  ]),
  ...checksOf(
    "RUNOUT",
    BY_FOURIER,
    "computed",
    ["seat", "shaft", "flange"].flatMap((name) =>
      fromScipy(`${name}-runout`).map((value, at) => [`=HATCH.RUNOUT(${list(fromScipy(name))})`, value, { at: [2, at + 1], within: 1e-8 }] as const),
    ),
  ),
];
