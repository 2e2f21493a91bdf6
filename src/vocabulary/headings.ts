import { unitWords } from "../core/words.ts";
import { remembered } from "./remembered.ts";
import { knownUnit, unitIn, withoutUnits } from "./units.ts";

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
const COMPARISON_WORDS = {
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
const MASTER_WORDS = {
  start: ["master at start", "master at the start", "ring at start", "standard at start"],
  end: ["master at end", "master at the end", "ring at end", "standard at end"],
} as const;

/** When in its session a master was read, said among other words. */
export const IN_SESSION = { start: /\b(?:start|begin|beginning|first)\b/i, end: /\b(?:end|last|finish)\b/i } as const;

/** In the same row: the gauge's own, beside that of the part. */
const GAUGE_TEMPERATURE_WORDS = ["gauge temperature", "temperature of the gauge"] as const;

/** In what use is counted; the first where a sheet does not say. */
export const USE_UNITS = ["hours", "miles", "km"] as const;
export type UseUnit = (typeof USE_UNITS)[number];

/** What stands in a column of the direction in which a part can only wear. */
const WEAR_DIRECTIONS = {
  larger: ["grows", "up", "wider", "opens"],
  smaller: ["shrinks", "down", "less", "closes"],
} as const;
export type WearDirection = keyof typeof WEAR_DIRECTIONS;

/** What stands in a column of campaigns. */
const CAMPAIGN_WORDS = {
  before: ["before", "build", "built", "as built", "at build"],
  after: ["after", "strip-down", "strip down", "stripped", "stripped down", "as stripped", "at strip-down", "at strip down"],
} as const;
export type Campaign = keyof typeof CAMPAIGN_WORDS;

/** A single limit that does not say its side. Only who asks a person may take it for an upper one, as for wear. */
export const ONE_SIDED_LIMIT = ["limit", "wear limit", "service limit"] as const;

/** Where a limit comes from. */
export const SOURCE_WORDS = ["source", "from", "reference", "manual", "where from", "origin"] as const;

/** Columns of two readings of the same thing. `First` and `Second` alone may be rings. */
const REPEAT_WORDS = { first: ["first reading"], second: ["second reading", "repeat reading"] } as const;

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
const STATISTIC_WORDS = ["standard deviation", "std dev", "average", "avg", "mean", "total", "sum", "range", "largest", "smallest"] as const;

/** What somebody writes in words beside numbers. */
const REMARK_WORDS = ["remarks", "notes"] as const;

/** The same, and what a sheet says of readings. */
export const DERIVED_WORDS = [...STATISTIC_WORDS, ...REMARK_WORDS, ...JUDGING_WORDS] as const;

/** The size from which deviations are counted (ISO 286-1 calls it nominal, once basic). */
export const NOMINAL_WORDS = ["nominal", "nominal size", "nominal dimension", "basic size"] as const;

/** Readings that say how far a size is from its nominal. */
export const DEVIATION_WORDS = ["deviation", "deviations", "dev", "deviation from nominal", "dev from nominal", "from nominal"] as const;

/** Sizes that a shop goes by: what it may be, and what it was when it was new. */
export const TARGET_WORDS = ["limits", "standard", "std", "nominal", "new", "target", "spec", "allowed", "tolerance"] as const;

const BRACKETS = /[([][^)\]]*[)\]]/g;

/** `Lower-limit (mm)` as `lower limit`: text without what does not tell it from other text. */
export const foldedHeading = (heading: string): string =>
  heading
    .replace(BRACKETS, " ")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();

/** Words by what they stand for, in the spelling of `plain`. */
export const byWord = <Name extends string>(words: Readonly<Record<Name, readonly string[]>>): ReadonlyMap<string, Name> =>
  new Map((Object.keys(words) as Name[]).flatMap((name) => words[name].map((word) => [foldedHeading(word), name] as const)));

const FIELDS = byWord(Object.fromEntries(READING_FIELDS.map((field) => [field, [field, ...FIELD_WORDS[field]]])) as Record<ReadingField, string[]>);
const GAUGE_FIELDS = byWord<GaugeField>(GAUGE_WORDS);

/** What a comparison reads of a row: a gauge and its day too, by which it knows who was measured in one session. */
export const COMPARISON_FIELDS = [...READING_FIELDS, ...(Object.keys(COMPARISON_WORDS) as (keyof typeof COMPARISON_WORDS)[]), "gauge", "day"] as const;
export type ComparisonField = (typeof COMPARISON_FIELDS)[number];
const COMPARED = new Map<string, ComparisonField>([
  ...byWord<"gauge" | "day">({ gauge: GAUGE_WORDS.gauge, day: ["day", ...GAUGE_WORDS.used] }),
  ...byWord(
    Object.fromEntries(Object.entries(COMPARISON_WORDS).map(([field, words]) => [field, [field, ...words]])) as unknown as Record<
      keyof typeof COMPARISON_WORDS,
      readonly string[]
    >,
  ),
  ...FIELDS,
]);
/** Everything that a column may be called which a comparison reads, in the spelling of `plain`. */
export const wordsOfComparison = (field: ComparisonField): string[] => [...COMPARED].flatMap(([word, of]) => (of === field ? [word] : []));
const MASTERS = byWord<keyof typeof MASTER_WORDS>(MASTER_WORDS);
/** When of a measuring a column's readings of the master were taken. */
export const masterReadingOf = (heading: string): keyof typeof MASTER_WORDS | undefined => MASTERS.get(nameOf(heading));
const GAUGE_TEMPERATURES = new Set<string>(GAUGE_TEMPERATURE_WORDS);
export const isGaugeTemperature = (heading: string): boolean => GAUGE_TEMPERATURES.has(nameOf(heading));
/** A heading of the part of U that all readings of a session share. */
export const isCommonPart = (heading: string): boolean => COMPARED.get(nameOf(heading)) === "common";
const CAMPAIGNS = byWord<Campaign>(CAMPAIGN_WORDS);
const DIRECTIONS = byWord<WearDirection>({ larger: ["larger", ...WEAR_DIRECTIONS.larger], smaller: ["smaller", ...WEAR_DIRECTIONS.smaller] });
const REPEATS = byWord<keyof typeof REPEAT_WORDS>(REPEAT_WORDS);
/** Whether a column holds the first readings or those that repeat them. */
export const repeatFieldOf = (heading: string): keyof typeof REPEAT_WORDS | undefined => REPEATS.get(nameOf(heading));
/** What a second person measured, said among other words: `Bores, second readings`. */
export const SECOND_READINGS = /\bsecond readings?\b/i;
const JUDGING = new Set<string>(JUDGING_WORDS);
const SOURCES = new Set<string>(SOURCE_WORDS);

/** `Value, mm` and `Value (mm)` are both a value. Every row of a sheet is asked whether it is one of headings. */
const nameOf = remembered((heading) => foldedHeading(withoutUnits(heading)));

/** The field that a heading names. */
export const fieldOf = (heading: string): ReadingField | undefined => FIELDS.get(nameOf(heading));

/** Before or after, by the word in a column of campaigns. */
export const campaignOf = (text: string): Campaign | undefined => CAMPAIGNS.get(foldedHeading(text));

/** The direction of wear, by the word in a column of directions. */
export const wearDirectionOf = (text: string): WearDirection | undefined => DIRECTIONS.get(foldedHeading(text));

/** In what a heading or an entry's name counts use. */
export function useUnitOf(heading: string): UseUnit | undefined {
  const field = COMPARED.get(nameOf(heading));
  return USE_UNITS.find((unit) => unit === field);
}

const LONGEST_GAUGE_WORD = Math.max(...[...GAUGE_FIELDS.keys()].map((word) => word.length)) + 10;
const GAUGE_START = new RegExp(`^[^a-z]*[${[...new Set([...GAUGE_FIELDS.keys()].map((word) => word[0]!))].join("")}]`, "i");

/** What of a gauge a heading or an entry's name stands for. Most text is neither: it is known by its first letter or its length, before it is looked at closely. */
export function gaugeFieldOf(text: string): GaugeField | undefined {
  return text.length > LONGEST_GAUGE_WORD || !GAUGE_START.test(text) ? undefined : GAUGE_FIELDS.get(foldedHeading(text));
}

/** A heading of verdicts and the like. */
export const isJudging = (heading: string): boolean => JUDGING.has(foldedHeading(heading));

const REMARKS = new Set<string>([...REMARK_WORDS, "remark", "note"]);

/** A heading of remarks. */
export const isRemark = (heading: string): boolean => REMARKS.has(foldedHeading(heading));

/** A heading of where limits come from. */
export const isSource = (heading: string): boolean => SOURCES.has(foldedHeading(heading));

/** `No.` or `Number`: it counts, and does not say what. */
export const isNumberWord = (heading: string): boolean => /^\P{L}*(?:no|nr|num|number)\P{L}*$/iu.test(heading);

const NOT_MEASURED = new RegExp(
  `\\b(?:${["lower", ...FIELD_WORDS.lower, "upper", ...FIELD_WORDS.upper, ...ONE_SIDED_LIMIT, ...TARGET_WORDS, ...STATISTIC_WORDS].join("|")})\\b`,
  "i",
);

/** True for the name of a row of limits, of standard sizes or of averages, as they stand below readings. */
export const namesLimitOrStatistic = (text: string): boolean => NOT_MEASURED.test(text);

const ONE_SIDED = new Set<string>(ONE_SIDED_LIMIT);

/** A heading of limits that does not say of which side. */
export const isOneSidedLimit = (heading: string): boolean => ONE_SIDED.has(nameOf(heading));

/** Where each recognised column stands. */
export interface Columns {
  at: Partial<Record<ComparisonField, number>>;
  /** The unit that the heading of the value gives, as in `value (mm)`. */
  unit: string | undefined;
  /** What other headings say in which unit their numbers are that stand beside a reading, as in `upper (in)`. */
  besideUnits: readonly { field: ComparisonField; unit: string }[];
  /** The heading of a limit that does not say its side. */
  oneSided: string | undefined;
}

/** Reads a row of headings. Two columns that could both be one field are left out, unless one has its very name. */
export function readHeadings(headings: readonly string[]): Columns {
  const at: Columns["at"] = {};
  const named = new Set<ComparisonField>();
  const doubtful = new Set<ComparisonField>();
  for (const [column, heading] of headings.entries()) {
    const name = nameOf(heading);
    const field = COMPARED.get(name);
    if (!field) continue;
    const own = name === field;
    if (at[field] === undefined || (own && !named.has(field))) {
      if (own) doubtful.delete(field);
      at[field] = column;
      if (own) named.add(field);
    } else if (own || !named.has(field)) doubtful.add(field);
  }
  for (const field of doubtful) delete at[field];
  const unitAt = (column: number | undefined): string | undefined => (column === undefined ? undefined : unitIn(headings[column]!));
  const besideUnits = BESIDE_READINGS.flatMap((field) => {
    const unit = unitAt(at[field]);
    return unit === undefined ? [] : [{ field, unit }];
  });
  return { at, unit: unitAt(at.value ?? at.before), besideUnits, oneSided: headings.find(isOneSidedLimit) };
}

/** Columns of numbers that are in the unit of the reading in their row. */
const BESIDE_READINGS = ["after", "lower", "upper", "uncertainty", "common", "near", "matters"] as const satisfies readonly ComparisonField[];

/** Why numbers of a row do not go together whose reading is in one unit and another number, by its heading, in another: nothing is converted. */
export function unitMisfit({ besideUnits }: Columns, unit: string | undefined): string | undefined {
  const [first] = besideUnits;
  const reading = unit === undefined ? undefined : knownUnit(unit);
  // What an unknown unit is nobody can say; without any, the headings still have to agree with one another.
  if (first === undefined || (unit !== undefined && reading === undefined)) return undefined;
  const other = besideUnits.find((beside) => beside.unit !== (reading ?? first.unit));
  if (other === undefined) return undefined;
  const [against, is] = reading === undefined ? [`that of ${first.field}`, first.unit] : ["the reading is in", reading];
  return `the heading of ${other.field} says ${unitWords(other.unit)} and ${against} ${unitWords(is)}: write both in one unit`;
}

/** Readings can be judged when it is known where they and at least one of their limits stand. */
export const canBeJudged = ({ at }: Columns): boolean => at.value !== undefined && (at.lower !== undefined || at.upper !== undefined);

/** A row of two columns of readings holds both sides of a comparison. */
export const holdsBothSides = ({ at }: Columns): boolean => at.value === undefined && at.before !== undefined && at.after !== undefined;

/** Readings can be compared when it is known where they stand and what they are of. */
export const canBeCompared = (columns: Columns): boolean =>
  (columns.at.value !== undefined || holdsBothSides(columns)) &&
  ["characteristic", "position", "height", "axis"].some((field) => columns.at[field as ReadingField] !== undefined);

type Named = Partial<Record<ReadingField, string>>;

/** `top thrust`: what the columns of a row say of where on the part it was measured. */
export const positionFrom = ({ height = "", axis = "", position = "" }: Named): string =>
  [height, axis, position]
    .map((text) => text.trim())
    .filter(Boolean)
    .join(" ");

/** `engine A, cylinder 2, bore, top thrust` */
export function labelFrom(cells: Named): string {
  const { engine = "", cylinder = "", characteristic = "" } = cells;
  return [numbered("engine", engine), numbered("cylinder", cylinder), characteristic.trim(), positionFrom(cells)].filter(Boolean).join(", ");
}

/** `eng`, `motor`, `cyl`: what a text begins with that names an engine or a cylinder. */
const OWNER_WORDS = {
  engine: new Set(["engine", ...FIELD_WORDS.engine].map((word) => word.split(" ")[0]!)),
  cylinder: new Set(["cylinder", ...FIELD_WORDS.cylinder].map((word) => word.split(" ")[0]!)),
};

/** True for `Cyl. 2` and `Port engine`: text that says itself that it names a cylinder or an engine. */
export function saysOwner(field: "engine" | "cylinder", text: string): boolean {
  const words = text.toLowerCase().match(/\p{L}+/gu) ?? [];
  return OWNER_WORDS[field].has(words[0] ?? "") || OWNER_WORDS[field].has(words.at(-1) ?? "");
}

/** The word goes before a bare number or letter, not before text that names itself. */
function numbered(field: "engine" | "cylinder", text: string): string {
  const typed = text.trim();
  return typed === "" || saysOwner(field, typed) ? typed : `${field} ${typed}`;
}

/** Readings of one characteristic of one engine are alike. */
export const groupFrom = ({ engine = "", characteristic = "" }: Named): string => `${engine.trim().toLowerCase()}|${characteristic.trim().toLowerCase()}`;
