import { unitWords } from "../core/words.ts";
import {
  CAMPAIGN_WORDS,
  type Campaign,
  COMPARISON_WORDS,
  FIELD_WORDS,
  GAUGE_TEMPERATURE_WORDS,
  GAUGE_WORDS,
  type GaugeField,
  JUDGING_WORDS,
  MASTER_WORDS,
  ONE_SIDED_LIMIT,
  READING_FIELDS,
  REMARK_WORDS,
  REPEAT_WORDS,
  type ReadingField,
  SOURCE_WORDS,
  STATISTIC_WORDS,
  TARGET_WORDS,
  USE_UNITS,
  type UseUnit,
  WEAR_DIRECTIONS,
  type WearDirection,
} from "./heading-words.ts";
import { remembered } from "./remembered.ts";
import { knownUnit, unitIn, withoutUnits } from "./units.ts";

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
