/** Columns of readings in long form: one reading a row. */
export const READING_FIELDS = [
  ...(["engine", "cylinder", "characteristic", "position", "height", "axis"] as const),
  ...(["value", "lower", "upper", "unit", "uncertainty", "near", "hours"] as const),
] as const;
export type ReadingField = (typeof READING_FIELDS)[number];

/**
 * The words by which headings are recognised: English of the trade and its abbreviations. To teach
 * another word, add it to its line: everything that reads headings reads them from this folder. Words
 * are compared without regard to capitals, hyphens, dots and brackets. The field's own name always
 * counts, and goes before these.
 */
export const FIELD_WORDS: Readonly<Record<ReadingField, readonly string[]>> = {
  engine: [...["engine no", "engine number", "engine id", "engine name", "eng", "eng no"], ...["motor", "motor no", "motor number", "motor id", "motor name"]],
  cylinder: ["cyl", "cyl no", "cylinder no", "cylinder number"],
  characteristic: ["feature", "dimension", "item", "part", "parameter", "quantity", "what"],
  position: ["pos", "place", "location", "where", "point"],
  height: ["heights", "depth", "level", "height from top"],
  axis: ["axes", "direction"],
  value: ["reading", "readings", "measured", "measured value", "measurement", "actual", "result"],
  lower: ["lower limit", "low", "low limit", "min", "minimum", "least", "lsl", "lower bound", "min allowed", "minimum allowed", "not under"],
  upper: ["upper limit", "high", "high limit", "max", "maximum", "most", "usl", "upper bound", "max allowed", "maximum allowed", "not over"],
  unit: ["units", "unit of measure", "uom"],
  uncertainty: ["u", "expanded uncertainty", "measurement uncertainty", "gauge uncertainty", "uncertainty u", "u of the gauge", "gauge u"],
  near: ["near limit", "near band"],
  hours: ["hours run", "hours in service", "engine hours", "running hours", "service hours", "run hours", "hrs"],
};

/** Columns that only a comparison asks for, and what else they are called. */
export const COMPARISON_WORDS = {
  /** The part of U that all readings of one measuring session share. */
  common: ["common part", "common part of u", "common u", "u common", "shared part", "shared part of u"],
  matters: ["smallest difference that matters", "difference that matters", "what matters", "least that matters"],
  /** Whether a reading was taken before or after: both in one column, one reading a row. */
  campaign: ["before or after", "build or strip-down"],
  /** The same as two columns, two readings a row. */
  before: ["as built", "at build", "build"],
  after: ["re-checked", "strip-down", "strip down", "as stripped", "at strip-down", "at strip down"],
  /** The way of treatment of the engine that a reading is of. */
  group: ["treatment", "way of treatment", "treated"],
  /** Of the part, in °C, and what it is made of. */
  temperature: ["temp", "part temperature", "temperature of the part"],
  material: ["part material", "material of the part", "expansion coefficient"],
  wearDirection: ["direction of wear", "wear direction", "wears"],
  /** What stands for hours of a vehicle. */
  miles: ["mileage", "miles run"],
  km: ["kilometres", "kilometers", "km run"],
} as const;

/** Columns of what a gauge shows on its master, in a row for each measuring. */
export const MASTER_WORDS = {
  start: ["master at start", "master at the start", "ring at start", "standard at start"],
  end: ["master at end", "master at the end", "ring at end", "standard at end"],
} as const;

/** When in its session a master was read, said among other words. */
export const IN_SESSION = { start: /\b(?:start|begin|beginning|first)\b/i, end: /\b(?:end|last|finish)\b/i } as const;

/** In the same row: the gauge's own, beside that of the part. */
export const GAUGE_TEMPERATURE_WORDS = ["gauge temperature", "temperature of the gauge"] as const;

/** In what use is counted; the first where a sheet does not say. */
export const USE_UNITS = ["hours", "miles", "km"] as const;
export type UseUnit = (typeof USE_UNITS)[number];

/** What stands in a column of the direction in which a part can only wear. */
export const WEAR_DIRECTIONS = {
  larger: ["grows", "up", "wider", "opens"],
  smaller: ["shrinks", "down", "less", "closes"],
} as const;
export type WearDirection = keyof typeof WEAR_DIRECTIONS;

/** What stands in a column of campaigns. */
export const CAMPAIGN_WORDS = {
  before: ["before", "build", "built", "as built", "at build"],
  after: ["after", "strip-down", "strip down", "stripped", "stripped down", "as stripped", "at strip-down", "at strip down"],
} as const;
export type Campaign = keyof typeof CAMPAIGN_WORDS;

/** A single limit that does not say its side. Only who asks a person may take it for an upper one, as for wear. */
export const ONE_SIDED_LIMIT = ["limit", "wear limit", "service limit"] as const;

/** Where a limit comes from. */
export const SOURCE_WORDS = ["source", "from", "reference", "manual", "where from", "origin"] as const;

/** Columns of two readings of the same thing. `First` and `Second` alone may be rings. */
export const REPEAT_WORDS = { first: ["first reading"], second: ["second reading", "repeat reading"] } as const;

/** Columns and entries about gauges. Their uncertainty and unit are headed like those of readings. */
export const GAUGE_WORDS = {
  /** Which one. */
  gauge: [
    ...["gauge", "gauge id", "gauge no", "gauge number", "gauge used"],
    ...["gage", "gage id", "gage no", "gage number", "gage used"],
    ...["instrument", "instrument id", "instrument no", "instrument number", "instrument used", "measuring instrument"],
    ...["measured with", "micrometer", "tool"],
  ],
  /** The last day on which its calibration holds. */
  due: [
    ...["due", "due date", "calibration due", "calibration due date", "cal due"],
    ...["calibrated until", "calibration valid until", "valid until", "next calibration", "recalibrate by", "calibration expires"],
  ],
  /** The day on which it was used. */
  used: ["measured on", "used on", "read on", "date", "date measured", "date of measurement", "measurement date", "date used", "date of use"],
  uncertainty: ["uncertainty", ...FIELD_WORDS.uncertainty],
  unit: ["unit", ...FIELD_WORDS.unit],
  resolution: ["resolution"],
  /** What its last calibration came to. */
  calibration: ["calibration", "calibrated", "certificate"],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export type GaugeField = keyof typeof GAUGE_WORDS;

/** Results beside readings: they say nothing about what is judged. */
export const JUDGING_WORDS = ["verdict", "margin", "explain", "explanation", "judgement", "in words", "ok", "pass"] as const;

/** Rows and columns that a sheet works out from the readings beside them. */
export const STATISTIC_WORDS = ["standard deviation", "std dev", "average", "avg", "mean", "total", "sum", "range", "largest", "smallest"] as const;

/** What somebody writes in words beside numbers. */
export const REMARK_WORDS = ["remarks", "notes"] as const;

/** The same, and what a sheet says of readings. */
export const DERIVED_WORDS = [...STATISTIC_WORDS, ...REMARK_WORDS, ...JUDGING_WORDS] as const;

/** The size from which deviations are counted (ISO 286-1 calls it nominal, once basic). */
export const NOMINAL_WORDS = ["nominal", "nominal size", "nominal dimension", "basic size"] as const;

/** Readings that say how far a size is from its nominal. */
export const DEVIATION_WORDS = ["deviation", "deviations", "dev", "deviation from nominal", "dev from nominal", "from nominal"] as const;

/** Sizes that a shop goes by: what it may be, and what it was when it was new. */
export const TARGET_WORDS = ["limits", "standard", "std", "nominal", "new", "target", "spec", "allowed", "tolerance"] as const;
/** What a second person measured, said among other words: `Bores, second readings`. */
export const SECOND_READINGS = /\bsecond readings?\b/i;
