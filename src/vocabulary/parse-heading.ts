import { type Cell, isBlank } from "../core/cell.ts";
import { Parser, type Token } from "./heading-parser.ts";
import { foldedHeading } from "./headings.ts";
import { isNoReading } from "./identity.ts";
import type { HeadingField, Role } from "./phrases.ts";
import { AXIS_LETTERS } from "./place-words.ts";
import { unitIn, withoutUnits } from "./units.ts";

/** A word for a place, and what kind of place it is. */
export interface PositionWord {
  word: string;
  kind: "height" | "axis" | "place";
}

/** What one heading says about the numbers beside it. */
export interface ParsedHeading {
  engine?: string;
  cylinder?: string;
  characteristic?: string;
  places: PositionWord[];
  role?: Role;
  /** The limit does not say which side it is. */
  isOneSided?: boolean;
  /** The readings say how far a size is from its nominal. */
  isDeviation?: boolean;
  unit?: string;
  /** The heading of a line of headings: `Cylinder` above 1, 2, 3. */
  names?: HeadingField;
  /** An average, a day, a gauge, a remark: the numbers are no readings. */
  isNoReading?: boolean;
  /** Words that are not known. */
  rest: string[];
}

const TOKEN = /\d+(?:\.\d+)?(?:°|st\b|nd\b|rd\b|th\b)?|[\p{L}³⌀]+|%/giu;
const APART = /[,:;()[\]–—|=]/;

/** What a heading says, as far as its line tells such things. */
export function parseHeading(cell: Cell, fields: readonly HeadingField[]): ParsedHeading {
  const heading: ParsedHeading = { places: [], rest: [] };
  if (typeof cell === "number") return parsedNumber(cell, fields, heading);
  if (typeof cell !== "string" || isBlank(cell)) return heading;
  if (/^\s*\d{1,2}\s*$/.test(cell)) return parsedNumber(Number(cell), fields, heading);
  // A depth in millimetres says nothing about the readings taken there, and an engine may be called what it likes.
  const isOfReadings = fields.includes("unit") || fields.includes("role") || fields.includes("characteristic");
  const unit = isOfReadings ? unitIn(cell) : undefined;
  if (unit !== undefined) heading.unit = unit;
  const tokens = tokensOf(unit === undefined ? cell : withoutUnits(cell));
  if (isOfReadings && isNoReading(cell)) return { ...heading, isNoReading: true, rest: tokens.map(({ raw }) => raw) };
  new Parser(tokens, fields, heading).parse();
  return completed(cell, fields, heading);
}

function parsedNumber(number: number, fields: readonly HeadingField[], heading: ParsedHeading): ParsedHeading {
  const text = String(number);
  if (fields.includes("cylinder")) heading.cylinder = text;
  else if (fields.includes("engine")) heading.engine = text;
  else if (fields.includes("height")) heading.places.push({ word: text, kind: "height" });
  else if (fields.includes("axis")) heading.places.push({ word: text, kind: "axis" });
  else if (fields.includes("position")) heading.places.push({ word: text, kind: "place" });
  return heading;
}

function tokensOf(text: string): Token[] {
  const tokens: Token[] = [];
  let end = 0;
  for (const match of text.matchAll(TOKEN)) {
    const [raw] = match;
    tokens.push({ raw, text: raw.toLowerCase(), isApart: tokens.length > 0 && APART.test(text.slice(end, match.index)) });
    end = match.index + raw.length;
  }
  return tokens;
}

/** Where the line tells one thing only, limits apart, words that are not known are its name. */
function completed(text: string, fields: readonly HeadingField[], heading: ParsedHeading): ParsedHeading {
  const [only, ...others] = fields.filter((field) => field !== "role");
  const own = text.trim();
  if (heading.role !== undefined || heading.isNoReading) return heading;
  const isAlone = others.length === 0;
  if (isAlone && only === "engine" && heading.engine === undefined) heading.engine = own;
  else if (isAlone && only === "cylinder" && heading.cylinder === undefined) heading.cylinder = own;
  else if (only === "characteristic" && heading.characteristic === undefined && heading.rest.length > 0) heading.characteristic = foldedHeading(own);
  else if (heading.rest.length > 0 && fields.every((field) => field === "height" || field === "axis" || field === "position")) {
    const letter = only === "axis" ? AXIS_LETTERS[foldedHeading(own)] : undefined;
    heading.places = [{ word: letter ?? foldedHeading(own), kind: only === "height" || only === "axis" ? only : "place" }];
  } else return heading;
  return { ...heading, rest: [] };
}

/** `top thrust`: heights first, then axes, then what else there is. */
export function positionText(places: readonly PositionWord[]): string {
  const of = (kind: PositionWord["kind"]) => places.filter((one) => one.kind === kind).map(({ word }) => word);
  return [...of("height"), ...of("axis"), ...of("place")].join(" ");
}
