/**
 * The words by which sheets are recognised: English of the trade and its abbreviations. To teach
 * another word, add it to its line; everything that reads headings reads them from here. Words are
 * compared without regard to capitals, hyphens, dots and brackets.
 */

/** What the numbers of a characteristic are: it decides what they are compared with, and what a slip can be. */
export type Kind = "length" | "volume" | "pressure" | "ratio" | "percent";

interface Characteristic {
  kind: Kind;
  words: readonly string[];
  /** A size that others are worked out from; it has no limits of its own. */
  isSetting?: boolean;
}

/** What is measured, by the name that findings use. */
export const CHARACTERISTICS: Readonly<Record<string, Characteristic>> = {
  bore: {
    kind: "length",
    words: ["bores", "bore diameter", "bore dia", "bore size", "bore reading", "bore readings", "cylinder bore", "cylinder bores", "cyl bore"],
  },
  "standard bore": { kind: "length", words: ["std bore", "nominal bore", "original bore", "standard size", "std size"], isSetting: true },
  taper: { kind: "length", words: ["bore taper", "cylinder taper", "max taper"] },
  "out-of-round": { kind: "length", words: ["out of roundness", "ovality", "oor", "bore ovality", "max out of round", "max ovality"] },
  "bore wear": { kind: "length", words: ["wear", "cylinder wear", "max wear", "max bore wear"] },
  "piston skirt": {
    kind: "length",
    words: ["piston skirts", "skirt", "skirts", "skirt diameter", "skirt dia", "piston", "pistons", "piston dia", "piston diameter", "piston size"],
  },
  "piston clearance": {
    kind: "length",
    words: [
      "piston to wall",
      "piston to wall clearance",
      "piston to bore",
      "piston to bore clearance",
      "piston wall clearance",
      "wall clearance",
      "skirt clearance",
      "ptw",
    ],
  },
  "pin bore": { kind: "length", words: ["pin bores", "pin hole", "gudgeon pin bore", "wrist pin bore", "small end bore"] },
  "piston pin": { kind: "length", words: ["piston pins", "gudgeon pin", "gudgeon pins", "wrist pin", "wrist pins"] },
  "pin clearance": { kind: "length", words: ["piston pin clearance", "gudgeon pin clearance", "wrist pin clearance"] },
  "ring end gap": {
    kind: "length",
    words: ["ring end gaps", "ring gap", "ring gaps", "end gap", "end gaps", "gap", "gaps", "butt gap", "closed gap", "piston ring gap"],
  },
  "ring side clearance": { kind: "length", words: ["side clearance", "ring clearance", "ring groove clearance", "ring to groove", "groove clearance"] },
  "ring groove": { kind: "length", words: ["ring grooves", "groove", "groove width"] },
  "ring width": { kind: "length", words: ["ring thickness", "ring height", "ring axial width"] },
  "valve clearance": {
    kind: "length",
    words: ["valve clearances", "valve lash", "lash", "valve gap", "tappet clearance", "tappet clearances", "tappet gap", "tappets"],
  },
  "stem clearance": { kind: "length", words: ["valve stem clearance", "stem to guide", "stem to guide clearance", "guide clearance"] },
  "valve guide": { kind: "length", words: ["guide", "guides", "valve guides", "guide bore"] },
  "valve stem": { kind: "length", words: ["stem", "stems", "valve stems", "stem diameter"] },
  crankpin: { kind: "length", words: ["crankpins", "crank pin", "crank pins", "big end journal", "rod journal"] },
  "main journal": { kind: "length", words: ["main journals", "mains", "journal", "journals"] },
  "bearing clearance": { kind: "length", words: ["oil clearance", "big end clearance", "main bearing clearance", "rod bearing clearance"] },
  "end float": { kind: "length", words: ["end play", "crankshaft end float", "crank end float", "crankshaft end play"] },
  "deck height": { kind: "length", words: ["deck", "deck clearance", "piston protrusion"] },
  squish: { kind: "length", words: ["squish clearance", "squish band", "bump clearance"] },
  stroke: { kind: "length", words: ["crank stroke"], isSetting: true },
  "chamber volume": { kind: "volume", words: ["chamber", "chambers", "combustion chamber", "head volume"] },
  "compression ratio": { kind: "ratio", words: ["ratio", "cr", "static ratio"] },
  "compression pressure": {
    kind: "pressure",
    words: ["compression", "compressions", "compression test", "comp", "comp pressure", "cranking pressure", "dry compression", "dry"],
  },
  "wet compression": { kind: "pressure", words: ["wet", "compression wet", "wet test"] },
  "compression spread": { kind: "pressure", words: ["spread", "compression difference", "difference between cylinders"] },
  "leak-down": { kind: "percent", words: ["leakdown", "leakage", "leak down test", "cylinder leakage"] },
};

/** Where on a part a reading is taken: heights and axes of a bore, which ring, which valve. */
export const POSITION_WORDS: Readonly<Record<string, { kind: "height" | "axis" | "place"; words: readonly string[] }>> = {
  top: { kind: "height", words: ["tdc"] },
  "upper middle": { kind: "height", words: ["upper mid"] },
  upper: { kind: "height", words: [] },
  middle: { kind: "height", words: ["mid", "centre", "center", "middle of stroke"] },
  "lower middle": { kind: "height", words: ["lower mid"] },
  lower: { kind: "height", words: [] },
  bottom: { kind: "height", words: ["bot", "btm", "bdc"] },
  thrust: { kind: "axis", words: ["across", "transverse", "thrust side", "thrust axis", "across crank", "thr"] },
  pin: { kind: "axis", words: ["along", "longitudinal", "axial", "pin axis", "along crank", "fore and aft", "fore aft"] },
  inlet: { kind: "place", words: ["intake", "inl", "int"] },
  exhaust: { kind: "place", words: ["exh", "ex"] },
  second: { kind: "place", words: ["2nd"] },
  oil: { kind: "place", words: ["oil ring", "scraper", "oil control"] },
};

/** Headings of a line of heights or axes. */
export const LINE_WORDS = {
  height: ["heights", "depth", "level", "height from top"],
  axis: ["axes", "direction"],
} as const;

/** Letters that stand for an axis, in a line that tells nothing else. */
export const AXIS_LETTERS: Readonly<Record<string, string>> = { t: "thrust", p: "pin" };

/** Names that a boat gives its engines. */
export const ENGINE_NAMES: Readonly<Record<string, readonly string[]>> = { port: [], starboard: ["stbd", "stb"] };

/** A single limit that does not say its side: upper, as for wear. */
export const ONE_SIDED_LIMIT = ["limit", "wear limit", "service limit", "max allowed", "maximum allowed", "not over"] as const;

/** Rows and columns that a sheet works out from the readings beside them. */
export const WORKED_OUT_WORDS = [
  "average",
  "avg",
  "mean",
  "total",
  "sum",
  "range",
  "largest",
  "smallest",
  "verdict",
  "margin",
  "ok",
  "pass",
  "remarks",
  "notes",
  "source",
] as const;

/** Words that tell nothing apart. */
export const EMPTY_WORDS = [
  "no",
  "nr",
  "number",
  "of",
  "the",
  "and",
  "at",
  "to",
  "for",
  "ring",
  "rings",
  "valve",
  "valves",
  "valve no",
  "size",
  "dia",
  "diameter",
  "ø",
  "⌀",
] as const;

/** Units as headings and titles give them, in one spelling each; lengths stand with the units of the check. */
export const OTHER_UNITS: Readonly<Record<string, string>> = {
  bar: "bar",
  psi: "psi",
  kpa: "kPa",
  cc: "cc",
  ml: "ml",
  "cm³": "cc",
  cm3: "cc",
  "%": "%",
  "per cent": "%",
};
