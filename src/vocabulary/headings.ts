import { unitOf } from "./units.ts";

/** Columns of readings in long form: one reading a row. */
export const READING_FIELDS = ["engine", "cylinder", "characteristic", "position", "value", "lower", "upper", "unit", "uncertainty", "near", "hours"] as const;
export type ReadingField = (typeof READING_FIELDS)[number];

/** Columns of readings in long form, one reading a row. The field's own name always counts, and goes before these. */
export const FIELD_WORDS: Readonly<Record<ReadingField, readonly string[]>> = {
  engine: ["engine no", "engine number", "engine id", "eng", "motor"],
  cylinder: ["cyl", "cyl no", "cylinder no", "cylinder number"],
  characteristic: ["feature", "dimension", "item", "part", "parameter", "quantity", "what"],
  position: ["pos", "place", "location", "where", "point"],
  value: ["reading", "readings", "measured", "measured value", "measurement", "actual", "result"],
  lower: ["lower limit", "low", "low limit", "min", "minimum", "least", "lsl", "lower bound"],
  upper: ["upper limit", "high", "high limit", "max", "maximum", "most", "usl", "upper bound"],
  unit: ["units", "unit of measure", "uom"],
  uncertainty: ["u", "expanded uncertainty", "measurement uncertainty", "gauge uncertainty", "uncertainty u"],
  near: ["near limit", "near band"],
  hours: ["hours run", "hours in service", "engine hours", "running hours", "service hours", "run hours", "hrs"],
};

/** Columns and entries about gauges: which one, until when its calibration holds, on which day it was used. */
export const GAUGE_WORDS = {
  gauge: [
    "gauge",
    "gauge id",
    "gauge no",
    "gauge number",
    "gauge used",
    "gage",
    "gage id",
    "instrument",
    "instrument id",
    "instrument no",
    "instrument used",
    "measuring instrument",
    "measured with",
    "micrometer",
  ],
  due: [
    "due",
    "due date",
    "calibration due",
    "calibration due date",
    "cal due",
    "calibrated until",
    "calibration valid until",
    "valid until",
    "next calibration",
    "recalibrate by",
    "calibration expires",
  ],
  used: ["measured on", "used on", "read on", "date", "date measured", "date of measurement", "measurement date", "date used", "date of use"],
  uncertainty: ["u", "u of the gauge", "gauge u", "uncertainty", "expanded uncertainty", "gauge uncertainty"],
  unit: ["unit", "units"],
} as const;

const BY_NAME = new Map(READING_FIELDS.flatMap((field) => [field, ...FIELD_WORDS[field]].map((name) => [name, field] as const)));

/** Where each recognised column stands. */
export interface Columns {
  at: Partial<Record<ReadingField, number>>;
  /** The unit that the heading of the value gives, as in `value (mm)`. */
  unit: string | undefined;
}

const IN_BRACKETS = /[([]([^)\]]*)[)\]]/g;

/** `Lower limit (mm)` as `lower limit`: text without what does not tell it from other text. */
export const plain = (heading: string): string =>
  heading
    .replace(IN_BRACKETS, " ")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();

/** The field that a heading names. */
export const fieldOf = (heading: string): ReadingField | undefined => BY_NAME.get(plain(heading));

/** Reads a row of headings. Two columns that could both be one field are left out, unless one has its very name. */
export function readHeadings(headings: readonly string[]): Columns {
  const at: Columns["at"] = {};
  const named = new Set<ReadingField>();
  const doubtful = new Set<ReadingField>();
  for (const [column, heading] of headings.entries()) {
    const name = plain(heading);
    const field = BY_NAME.get(name);
    if (!field) continue;
    const own = name === field;
    if (at[field] === undefined || (own && !named.has(field))) {
      if (own) doubtful.delete(field);
      at[field] = column;
      if (own) named.add(field);
    } else if (own || !named.has(field)) doubtful.add(field);
  }
  for (const field of doubtful) delete at[field];
  return { at, unit: at.value === undefined ? undefined : unitIn(headings[at.value]!) };
}

function unitIn(heading: string): string | undefined {
  const [, inside] = [...heading.matchAll(IN_BRACKETS)].at(-1) ?? [];
  return inside === undefined ? undefined : unitOf(inside);
}

/** Readings can be judged when it is known where they and at least one of their limits stand. */
export const canBeJudged = ({ at }: Columns): boolean => at.value !== undefined && (at.lower !== undefined || at.upper !== undefined);

/** Readings can be compared when it is known where they stand and what they are of. */
export const canBeCompared = ({ at }: Columns): boolean => at.value !== undefined && (at.characteristic !== undefined || at.position !== undefined);

/** `engine A, cylinder 2, bore, top thrust` */
export function labelFrom(cells: Partial<Record<ReadingField, string>>): string {
  const { engine = "", cylinder = "", characteristic = "", position = "" } = cells;
  return [numbered("engine", engine), numbered("cylinder", cylinder), characteristic.trim(), position.trim()].filter(Boolean).join(", ");
}

/** The word goes before a bare number or letter, not before text that names itself. */
function numbered(word: string, text: string): string {
  const typed = text.trim();
  return typed === "" || typed.toLowerCase().startsWith(word.slice(0, 3)) ? typed : `${word} ${typed}`;
}

/** Readings of one characteristic of one engine are alike. */
export const groupFrom = ({ engine = "", characteristic = "" }: Partial<Record<ReadingField, string>>): string =>
  `${engine.trim().toLowerCase()}|${characteristic.trim().toLowerCase()}`;
