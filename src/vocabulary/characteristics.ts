import { MOVING_PARTS } from "./moving-parts.ts";
import type { QuantityKind } from "./units.ts";

export interface Characteristic {
  kind: QuantityKind;
  words: readonly string[];
  /** A size that others are worked out from; it has no limits of its own. */
  isSetting?: boolean;
  /** By its nature at least 0, so that a lower limit of 0 excludes nothing. Differences of two sizes are not: they say as well that parts do not fit. */
  isNeverNegative?: boolean;
  /** What wear does to it, where it does only one thing. */
  wears?: "larger" | "smaller";
  /** Words for where it is measured that make it another thing: readings of a top and of a second ring are not alike. */
  parts?: readonly string[];
  /** Those of its words that other parts have too: a gap may be one of rings or of a spark plug. */
  general?: readonly string[];
}

const RINGS = ["top", "second", "oil"];
const VALVES = ["inlet", "exhaust"];

/** What is measured, by the name that findings use. Directions of wear, and what is never negative, follow from what the parts do to one another. */
export const CHARACTERISTICS: Readonly<Record<string, Characteristic>> = {
  bore: {
    kind: "length",
    isNeverNegative: true,
    wears: "larger",
    words: ["bores", "bore diameter", "bore dia", "bore size", "bore reading", "bore readings", "cylinder bore", "cylinder bores", "cyl bore"],
    general: ["bore", "bores", "bore diameter", "bore dia", "bore size"],
  },
  "standard bore": {
    kind: "length",
    isNeverNegative: true,
    words: ["std bore", "nominal bore", "original bore", "standard size", "std size"],
    isSetting: true,
  },
  taper: { kind: "length", isNeverNegative: true, wears: "larger", words: ["bore taper", "cylinder taper", "max taper"], general: ["taper", "max taper"] },
  "out-of-round": {
    kind: "length",
    isNeverNegative: true,
    wears: "larger",
    words: ["out of roundness", "ovality", "oor", "bore ovality", "max out of round", "max ovality"],
    general: ["out-of-round", "out of roundness", "ovality", "oor", "max out of round", "max ovality"],
  },
  "bore wear": {
    kind: "length",
    wears: "larger",
    words: ["wear", "cylinder wear", "max wear", "max bore wear", "cylinder bore wear"],
    general: ["wear", "max wear"],
  },
  "piston skirt": {
    kind: "length",
    isNeverNegative: true,
    wears: "smaller",
    words: ["piston skirts", "skirt", "skirts", "skirt diameter", "skirt dia", "piston", "pistons", "piston dia", "piston diameter", "piston size"],
  },
  "piston clearance": {
    kind: "length",
    wears: "larger",
    words: [
      ...["piston to wall", "piston to wall clearance", "piston to bore", "piston to bore clearance", "piston bore clearance"],
      ...["piston wall clearance", "wall clearance", "skirt clearance", "ptw"],
    ],
  },
  "pin bore": {
    kind: "length",
    isNeverNegative: true,
    wears: "larger",
    words: ["pin bores", "pin hole", "gudgeon pin bore", "wrist pin bore"],
  },
  "piston pin": { kind: "length", isNeverNegative: true, wears: "smaller", words: ["piston pins", "gudgeon pin", "gudgeon pins", "wrist pin", "wrist pins"] },
  "pin clearance": { kind: "length", wears: "larger", words: ["piston pin clearance", "gudgeon pin clearance", "wrist pin clearance"] },
  "ring end gap": {
    kind: "length",
    isNeverNegative: true,
    wears: "larger",
    parts: RINGS,
    words: [
      ...["ring end gaps", "ring gap", "ring gaps", "end gap", "end gaps", "gap", "gaps", "butt gap", "closed gap"],
      ...["piston ring gap", "piston ring end gap", "piston ring end gaps"],
    ],
    general: ["end gap", "end gaps", "gap", "gaps", "closed gap"],
  },
  "ring side clearance": {
    kind: "length",
    wears: "larger",
    parts: RINGS,
    words: [...["side clearance", "ring clearance", "ring groove clearance", "ring to groove", "groove clearance"], "piston ring side clearance"],
    general: ["side clearance", "groove clearance"],
  },
  "ring groove": {
    kind: "length",
    isNeverNegative: true,
    wears: "larger",
    parts: RINGS,
    words: ["ring grooves", "groove", "groove width"],
    general: ["groove", "groove width"],
  },
  "ring width": { kind: "length", isNeverNegative: true, wears: "smaller", parts: RINGS, words: ["ring thickness", "ring height", "ring axial width"] },
  // Seats and valves sink into one another, cams and tappets wear apart: it may go either way.
  "valve clearance": {
    kind: "length",
    isNeverNegative: true,
    parts: VALVES,
    words: ["valve clearances", "valve lash", "lash", "valve gap", "tappet clearance", "tappet clearances", "tappet gap", "tappets"],
  },
  "stem clearance": {
    kind: "length",
    wears: "larger",
    parts: VALVES,
    words: ["valve stem clearance", "stem to guide", "stem to guide clearance", "guide clearance"],
  },
  "valve guide": { kind: "length", isNeverNegative: true, wears: "larger", parts: VALVES, words: ["guide", "guides", "valve guides", "guide bore"] },
  "valve stem": { kind: "length", isNeverNegative: true, wears: "smaller", parts: VALVES, words: ["stem", "stems", "valve stems", "stem diameter"] },
  crankpin: { kind: "length", isNeverNegative: true, wears: "smaller", words: ["crankpins", "crank pin", "crank pins", "big end journal", "rod journal"] },
  "main journal": {
    kind: "length",
    isNeverNegative: true,
    wears: "smaller",
    words: ["main journals", "mains", "journal", "journals"],
    general: ["journal", "journals"],
  },
  "crankpin wear": { kind: "length", wears: "larger", words: ["crank pin wear", "rod journal wear", "big end journal wear"] },
  "main journal wear": { kind: "length", wears: "larger", words: ["journal wear"], general: ["journal wear"] },
  "bearing clearance": { kind: "length", wears: "larger", words: ["oil clearance"] },
  "main bearing clearance": { kind: "length", wears: "larger", words: ["main clearance", "mains clearance", "main bearing oil clearance"] },
  "big end clearance": { kind: "length", wears: "larger", words: ["rod bearing clearance", "big end bearing clearance", "rod bearing oil clearance"] },
  "rod side clearance": {
    kind: "length",
    isNeverNegative: true,
    wears: "larger",
    words: [
      ...["connecting rod side clearance", "con rod side clearance", "conrod side clearance", "big end side clearance"],
      ...["rod side play", "rod side float", "big end side play", "big end side float"],
    ],
  },
  "end float": {
    kind: "length",
    isNeverNegative: true,
    wears: "larger",
    words: ["end play", "crankshaft end float", "crank end float", "crankshaft end play", "crank end play"],
    general: ["end float", "end play"],
  },
  "deck height": { kind: "length", words: ["deck", "deck clearance", "piston protrusion"] },
  squish: { kind: "length", words: ["squish clearance", "squish band", "bump clearance"] },
  stroke: { kind: "length", isNeverNegative: true, words: ["crank stroke"], isSetting: true },
  "chamber volume": { kind: "volume", isNeverNegative: true, words: ["chamber", "chambers", "combustion chamber", "head volume"] },
  "piston volume": { kind: "volume", words: ["piston crown", "crown volume", "piston dish", "piston dome"], isSetting: true },
  "compression ratio": { kind: "ratio", isNeverNegative: true, words: ["ratio", "cr", "static ratio"] },
  "compression pressure": {
    kind: "pressure",
    isNeverNegative: true,
    wears: "smaller",
    words: ["compression", "compressions", "compression test", "comp", "comp pressure", "cranking pressure", "dry compression", "dry"],
  },
  "wet compression": { kind: "pressure", isNeverNegative: true, wears: "smaller", words: ["wet", "compression wet", "wet test"] },
  "compression spread": {
    kind: "pressure",
    isNeverNegative: true,
    wears: "larger",
    words: ["spread", "compression difference", "difference between cylinders"],
  },
  "compression at standard air": {
    kind: "pressure",
    isNeverNegative: true,
    wears: "smaller",
    words: ["compression at sea level", "compression at standard", "at standard air", "corrected compression"],
  },
  "leak-down spread": { kind: "percent", isNeverNegative: true, wears: "larger", words: ["leakdown spread", "leakage spread"] },
  "leak-down": {
    kind: "percent",
    isNeverNegative: true,
    wears: "larger",
    words: ["leakdown", "leakage", "leak down test", "cylinder leakage"],
  },
  "pressure held": {
    kind: "pressure",
    isNeverNegative: true,
    wears: "smaller",
    words: ["held", "held pressure", "leak down held", "leakdown held"],
  },
  "supply pressure": {
    kind: "pressure",
    isNeverNegative: true,
    isSetting: true,
    words: ["leak down supply", "leakdown supply"],
  },
  ...MOVING_PARTS,
};

/** Parts with gaps, clearances, bores and wear of their own: beside one of them a general word is not what it is elsewhere. */
export const OTHER_PARTS = [
  ...["rod", "rods", "con rod", "conrod", "connecting rod", "big end", "small end", "crankshaft", "main", "bearing", "bearings", "shell", "shells"],
  ...["cam", "cams", "camshaft", "lobe", "lobes", "rocker", "rockers", "rocker shaft", "pushrod", "pump", "oil pump", "rotor", "distributor"],
  ...["plug", "plugs", "spark plug", "spark plugs", "points", "contact breaker", "injector", "carburettor", "housing", "gasket", "head gasket"],
  ...["flywheel", "pulley", "damper", "clutch", "shaft", "manifold", "face", "flange"],
] as const;

/** Names that a boat gives its engines. */
export const ENGINE_NAMES: Readonly<Record<string, readonly string[]>> = { port: [], starboard: ["stbd", "stb"] };

/** Words of titles and files: behind the word engine they are not its name. */
export const DOCUMENT_WORDS = [
  ...["build", "rebuild", "overhaul", "strip", "strip down", "stripdown", "sheet", "sheets", "build sheet", "report", "record", "records", "log"],
  ...["data", "details", "particulars", "measurements", "inspection", "card", "form", "test", "tests", "check", "checks", "summary", "specification"],
  ...["type", "model", "serial", "hours", "owner"],
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
  "piston ring",
  "piston rings",
  "valve",
  "valves",
  "valve no",
  "size",
  "dia",
  "diameter",
  "ø",
  "⌀",
] as const;
