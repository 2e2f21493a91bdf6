import type { Characteristic } from "./characteristics.ts";

const VALVES = ["inlet", "exhaust"];

/** `head flatness`, `head warp`: every word for how far a face is from flat, behind each name of the part. */
const facesOf = (parts: readonly string[]): string[] =>
  parts.flatMap((part) => ["flatness", "face flatness", "warp", "distortion"].map((word) => `${part} ${word}`));

/** `camshaft run-out`, `camshaft runout`. */
const runOutsOf = (parts: readonly string[]): string[] => parts.flatMap((part) => [`${part} run-out`, `${part} runout`]);

const massesOf = (parts: readonly string[]): string[] => parts.flatMap((part) => [`${part} mass`, `${part} weight`]);

const without = (name: string, words: readonly string[]): string[] => words.filter((word) => word !== name);

/** What goes into its place with a press fit. */
export const PRESSED_PARTS = ["guide", "seat insert", "pin", "liner"] as const;

/** What wears into the oil from rings and bores, bearings, pistons and bushes; the last comes with dust. */
export const OIL_ELEMENTS = ["iron", "chromium", "aluminium", "copper", "lead", "tin", "silicon"] as const;

/** Rods, housings, camshaft, head and what is weighed, as `CHARACTERISTICS` has them. */
export const MOVING_PARTS: Readonly<Record<string, Characteristic>> = {
  "main bearing housing": {
    kind: "length",
    isNeverNegative: true,
    words: ["main bearing housings", "main housing", "main housing bore", "main bearing bore", "main bearing bores", "main bore", "main tunnel"],
  },
  "big end housing": {
    kind: "length",
    isNeverNegative: true,
    words: ["big end housings", "big end bore", "big end bores", "big end housing bore", "rod housing", "rod housing bore", "rod big end bore"],
  },
  "big end housing out-of-round": {
    kind: "length",
    isNeverNegative: true,
    wears: "larger",
    words: ["big end out-of-round", "big end ovality", "big end housing ovality", "rod housing out-of-round"],
  },
  "small end bore": {
    kind: "length",
    isNeverNegative: true,
    wears: "larger",
    words: ["small end bores", "small end bush", "small end bush bore", "rod small end bore"],
  },
  "small end clearance": { kind: "length", wears: "larger", words: ["small end bush clearance", "pin to small end", "pin to small end clearance"] },
  // A rod is bent by an accident, not by wear.
  "rod bend": { kind: "length", isNeverNegative: true, words: ["connecting rod bend", "con rod bend", "conrod bend"] },
  "rod twist": { kind: "length", isNeverNegative: true, words: ["connecting rod twist", "con rod twist", "conrod twist"] },
  "rod mass": { kind: "mass", isNeverNegative: true, words: ["rod weight", ...massesOf(["connecting rod", "con rod", "conrod"])] },
  "big end mass": { kind: "mass", isNeverNegative: true, words: ["big end weight", ...massesOf(["rod big end"])] },
  "small end mass": { kind: "mass", isNeverNegative: true, words: ["small end weight", ...massesOf(["rod small end"])] },
  "piston mass": { kind: "mass", isNeverNegative: true, words: ["piston weight", ...massesOf(["piston assembly"])] },
  // What somebody bends or straightens: it may go either way.
  "crankshaft run-out": { kind: "length", isNeverNegative: true, words: without("crankshaft run-out", runOutsOf(["crankshaft", "crank"])) },
  "camshaft run-out": { kind: "length", isNeverNegative: true, words: without("camshaft run-out", runOutsOf(["camshaft", "cam", "cam shaft"])) },
  "run-out": {
    kind: "length",
    isNeverNegative: true,
    words: ["runout", "total run-out", "total runout", "total indicator reading", "tir"],
    general: ["run-out", "runout", "total run-out", "total runout", "total indicator reading", "tir"],
  },
  "lobe height": {
    kind: "length",
    isNeverNegative: true,
    wears: "smaller",
    parts: VALVES,
    words: ["lobe heights", "cam height", "cam heights", "cam lobe height"],
  },
  "base circle": { kind: "length", isNeverNegative: true, wears: "smaller", parts: VALVES, words: ["base circles", "cam base circle", "base circle diameter"] },
  "lobe lift": { kind: "length", isNeverNegative: true, wears: "smaller", parts: VALVES, words: ["lobe lifts", "cam lift", "cam lobe lift"] },
  "lobe wear": { kind: "length", wears: "larger", parts: VALVES, words: ["cam wear", "cam lobe wear", "lift lost"] },
  "camshaft bearing": {
    kind: "length",
    isNeverNegative: true,
    wears: "larger",
    words: ["camshaft bearings", "camshaft bearing bore", "cam bearing", "cam bearing bore"],
  },
  "camshaft journal": { kind: "length", isNeverNegative: true, wears: "smaller", words: ["camshaft journals", "cam journal", "cam journals"] },
  "camshaft bearing clearance": { kind: "length", wears: "larger", words: ["camshaft clearance", "cam bearing clearance", "cam journal clearance"] },
  "camshaft end float": { kind: "length", isNeverNegative: true, wears: "larger", words: ["camshaft end play", "cam end float", "cam end play"] },
  // Seats are beaten wide; installed heights may go either way, with seats that are cut and shims.
  "seat width": { kind: "length", isNeverNegative: true, wears: "larger", parts: VALVES, words: ["seat widths", "valve seat width", "valve seat widths"] },
  "seat run-out": { kind: "length", isNeverNegative: true, wears: "larger", parts: VALVES, words: without("seat run-out", runOutsOf(["seat", "valve seat"])) },
  "guide taper": { kind: "length", isNeverNegative: true, wears: "larger", parts: VALVES, words: ["valve guide taper"] },
  "stem taper": { kind: "length", isNeverNegative: true, wears: "larger", parts: VALVES, words: ["valve stem taper"] },
  "installed height": {
    kind: "length",
    isNeverNegative: true,
    parts: VALVES,
    words: [
      "installed heights",
      "installed spring height",
      "spring installed height",
      "valve spring installed height",
      "fitted height",
      "spring fitted height",
    ],
  },
  "spring free length": { kind: "length", isNeverNegative: true, wears: "smaller", parts: VALVES, words: ["free length", "valve spring free length"] },
  "spring force": {
    kind: "force",
    isNeverNegative: true,
    wears: "smaller",
    parts: VALVES,
    words: ["valve spring force", "spring load", "valve spring load", "spring pressure", "valve spring pressure"],
  },
  "valve to piston": {
    kind: "length",
    parts: VALVES,
    words: ["valve to piston clearance", "piston to valve", "piston to valve clearance", "valve piston clearance"],
  },
  "head flatness": { kind: "length", isNeverNegative: true, wears: "larger", words: without("head flatness", facesOf(["head", "cylinder head"])) },
  "head flatness over a span": { kind: "length", isNeverNegative: true, wears: "larger", words: ["head flatness in any span"] },
  "deck flatness": { kind: "length", isNeverNegative: true, wears: "larger", words: without("deck flatness", facesOf(["deck", "block"])) },
  "deck flatness over a span": { kind: "length", isNeverNegative: true, wears: "larger", words: ["deck flatness in any span"] },
  flatness: {
    kind: "length",
    isNeverNegative: true,
    wears: "larger",
    words: ["warp", "warpage", "distortion"],
    general: ["flatness", "warp", "warpage", "distortion"],
  },
  // A skim takes off a face what wear does not.
  "head height": { kind: "length", isNeverNegative: true, words: ["head thickness", "cylinder head height", "cylinder head thickness"] },
  "block height": { kind: "length", isNeverNegative: true, words: ["cylinder block height", "block deck height"] },
  "main bore alignment": {
    kind: "length",
    isNeverNegative: true,
    words: ["main bearing alignment", "main bore straightness", "main bearing bore alignment", "main tunnel alignment"],
  },
  // Sizes that others are worked out from.
  "main bore height": { kind: "length", isSetting: true, words: ["height of the bore", "height of the main bore", "main bore heights"] },
  "face height": {
    kind: "length",
    isSetting: true,
    words: ["head", "deck"].flatMap((face) => ["left", "middle", "right"].map((side) => `${face} ${side}`)),
  },
  "piston height": { kind: "length", isNeverNegative: true, isSetting: true, words: ["piston compression height", "compression height"] },
  "valve gap at the top": { kind: "length", isSetting: true, parts: VALVES, words: ["gap at the top", "gap at top dead centre"] },
  // Shells that have been run sit less tight.
  crush: { kind: "length", isNeverNegative: true, wears: "smaller", words: ["bearing crush", "shell crush", "nip", "bearing nip", "shell nip"] },
  "main bearing crush": { kind: "length", isNeverNegative: true, wears: "smaller", words: ["main crush", "main bearing nip"] },
  "big end crush": { kind: "length", isNeverNegative: true, wears: "smaller", words: ["big end bearing crush", "rod bearing crush", "big end nip"] },
  // Running-in takes off the peaks; the other figures of a surface may go either way.
  ...Object.fromEntries(
    ["Ra", "Rz", "Rk", "Rvk"].map(
      (figure) => [figure.toLowerCase(), { kind: "length", isNeverNegative: true, words: [`bore ${figure}`, `surface ${figure}`] }] as const,
    ),
  ),
  rpk: { kind: "length", isNeverNegative: true, wears: "smaller", words: ["bore Rpk", "surface Rpk"] },
  "peak material ratio": { kind: "percent", isNeverNegative: true, words: ["material ratio of the peaks"] },
  "valley material ratio": { kind: "percent", isNeverNegative: true, words: ["material ratio of the valleys"] },
  "cross-hatch angle": { kind: "angle", isNeverNegative: true, words: ["cross hatch angle", "crosshatch angle", "cross-hatch", "hone angle", "honing angle"] },
  "coil bind": { kind: "length", parts: VALVES, words: ["coil bind clearance", "clearance to coil bind", "coil clearance"] },
  "oil use": { kind: "flow", isNeverNegative: true, wears: "larger", words: ["oil consumption", "oil used"] },
  "blow-by": { kind: "flow", isNeverNegative: true, wears: "larger", words: ["blowby", "crankcase blow-by", "blow-by rate"] },
  ...Object.fromEntries(
    PRESSED_PARTS.map((part) => [`${part} interference`, { kind: "length", words: [`${part} press fit`, `interference of the ${part}`] }] as const),
  ),
  // A chain that stretches makes valves late, its adjustment early again.
  "valve opens": { kind: "angle", parts: VALVES, words: ["valve opening", "valve opening angle"] },
  "valve closes": { kind: "angle", parts: VALVES, words: ["valve closing", "valve closing angle"] },
  ...Object.fromEntries(
    OIL_ELEMENTS.map(
      (element) => [`${element} in the oil`, { kind: "content", isNeverNegative: true, words: [`oil ${element}`, `${element} content`] }] as const,
    ),
  ),
};
