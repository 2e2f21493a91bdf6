import { type Cell, isBlank } from "../core/cell.ts";
import { AXIS_LETTERS, OTHER_UNITS } from "./characteristics.ts";
import { plain } from "./headings.ts";
import { type HeadingField, longestPhrase, type Meaning, meaningsOf, type Role } from "./phrases.ts";
import { unitOf } from "./units.ts";

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
  unit?: string;
  /** The heading of a line of headings: `Cylinder` above 1, 2, 3. */
  names?: HeadingField;
  /** An average or a remark: no reading. */
  isWorkedOut?: boolean;
  /** Words that are not known. */
  rest: string[];
}

interface Token {
  /** As typed, and in small letters. */
  raw: string;
  text: string;
  /** Punctuation stands before it. */
  isApart: boolean;
}

const TOKEN = /\d+(?:\.\d+)?(?:°|st\b|nd\b|rd\b|th\b)?|[\p{L}³⌀]+|%/gu;
const APART = /[,:;()[\]–—|=]/;
const IN_BRACKETS = /[([]([^)\]]*)[)\]]/g;
/** Engines have no more cylinders than sheets name by a bare number. */
const LARGEST_ORDINAL = 32;
const LONGEST_ENGINE_NAME = 3;

/** What a heading says, as far as its line tells such things. */
export function parseHeading(cell: Cell, tells: readonly HeadingField[]): ParsedHeading {
  const says: ParsedHeading = { places: [], rest: [] };
  if (typeof cell === "number") return saidByNumber(cell, tells, says);
  if (typeof cell !== "string" || isBlank(cell)) return says;
  const unit = tellsUnit(tells) ? unitInBrackets(cell) : undefined;
  if (unit !== undefined) says.unit = unit;
  const tokens = tokensOf(unit === undefined ? cell : cell.replace(IN_BRACKETS, (whole, inside: string) => (knownUnit(inside) ? " " : whole)));
  for (let i = 0; i < tokens.length; ) i += take(tokens, i, tells, says);
  return completed(cell, tells, says);
}

/** A depth in millimetres says nothing about the readings taken there. */
const tellsUnit = (tells: readonly HeadingField[]): boolean => tells.includes("unit") || tells.includes("role") || tells.includes("characteristic");

function saidByNumber(number: number, tells: readonly HeadingField[], says: ParsedHeading): ParsedHeading {
  const text = String(number);
  if (tells.includes("cylinder")) says.cylinder = text;
  else if (tells.includes("engine")) says.engine = text;
  else if (tells.includes("height")) says.places.push({ word: text, kind: "height" });
  else if (tells.includes("axis")) says.places.push({ word: text, kind: "axis" });
  else if (tells.includes("position")) says.places.push({ word: text, kind: "place" });
  return says;
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

const knownUnit = (text: string): string | undefined => {
  const typed = text.trim().toLowerCase();
  const unit = unitOf(typed);
  if (Object.hasOwn(OTHER_UNITS, typed)) return OTHER_UNITS[typed];
  return unit !== typed || /^(?:mm|in|thou|µm|cm)$/.test(typed) ? unit : undefined;
};

function unitInBrackets(text: string): string | undefined {
  for (const [, inside] of [...text.matchAll(IN_BRACKETS)].reverse()) {
    const unit = knownUnit(inside!);
    if (unit !== undefined) return unit;
  }
  return undefined;
}

/** Takes the longest known phrase that starts at `from`, or one unknown word; says how many words that were. */
function take(tokens: readonly Token[], from: number, tells: readonly HeadingField[], says: ParsedHeading): number {
  for (let length = Math.min(longestPhrase, tokens.length - from); length > 0; length--) {
    const phrase = tokens.slice(from, from + length);
    if (phrase.some(({ isApart }, i) => i > 0 && isApart)) continue;
    const meaning = meaningsOf(phrase.map(({ text }) => text).join(" ")).find((one) => isTold(one, tells, says));
    if (meaning) return length + mean(meaning, tokens, from + length, tells, says);
  }
  const { raw, text } = tokens[from]!;
  if (/^\d.*°$/.test(text) && (tells.includes("axis") || tells.includes("position"))) says.places.push({ word: text, kind: "axis" });
  // The second inlet valve: a number behind a place belongs to it.
  else if (/^\d+$/.test(text) && says.places.length > 0 && tells.includes("position")) says.places.push({ word: text, kind: "place" });
  else says.rest.push(raw);
  return 1;
}

function isTold(meaning: Meaning, tells: readonly HeadingField[], says: ParsedHeading): boolean {
  switch (meaning.tells) {
    case "height":
      // Upper and lower are heights where the line tells no limits.
      return (tells.includes("height") || tells.includes("position")) && !(["upper", "lower"].includes(meaning.word) && tells.includes("role"));
    case "axis":
      return tells.includes("axis") || tells.includes("position");
    case "characteristic":
      return tells.includes("characteristic") && says.characteristic === undefined;
    case "names":
      // A field's name introduces what it names, and is no news where something else has been said.
      return tells.includes(meaning.field) || meaning.field === "engine" || meaning.field === "cylinder";
    case "nothing":
    case "worked out":
      return true;
    case "unit":
      return tellsUnit(tells);
    default:
      return tells.includes(meaning.tells);
  }
}

/** Notes what the phrase means; says how many of the words behind it belong to it. */
function mean(meaning: Meaning, tokens: readonly Token[], next: number, tells: readonly HeadingField[], says: ParsedHeading): number {
  switch (meaning.tells) {
    case "characteristic": {
      says.characteristic = meaning.name;
      const isPart = meaning.name === "bore" || meaning.name === "piston skirt";
      return isPart && tells.includes("cylinder") ? takeCylinder(tokens, next, says) : 0;
    }
    case "height":
    case "axis":
      says.places.push({ word: meaning.word, kind: meaning.tells });
      return 0;
    case "position":
      says.places.push({ word: meaning.word, kind: "place" });
      return 0;
    case "role":
      says.role = meaning.role;
      if (meaning.isOneSided) says.isOneSided = true;
      return 0;
    case "engine":
      says.engine ??= meaning.name;
      return 0;
    case "unit":
      says.unit ??= meaning.unit;
      return 0;
    case "names":
      return introduce(meaning.field, tokens, next, says);
    case "worked out":
      says.isWorkedOut = true;
      return 0;
    case "nothing":
      return 0;
  }
}

function introduce(field: HeadingField, tokens: readonly Token[], next: number, says: ParsedHeading): number {
  if (field === "cylinder") {
    const taken = takeCylinder(tokens, next, says, true);
    if (taken > 0) return taken;
  }
  if (field === "engine") {
    const name: string[] = [];
    let taken = 0;
    for (const { raw, text, isApart } of tokens.slice(next)) {
      const [meaning] = meaningsOf(text);
      if ((isApart && name.length > 0) || name.length === LONGEST_ENGINE_NAME || (meaning && meaning.tells !== "nothing")) break;
      if (!meaning) name.push(raw);
      taken++;
    }
    if (name.length > 0) {
      says.engine = name.join(" ");
      return taken;
    }
  }
  says.names ??= field;
  return 0;
}

/** `1` or, behind the word itself, also `A` or `no 1`. */
function takeCylinder(tokens: readonly Token[], next: number, says: ParsedHeading, isNamed = false): number {
  let taken = 0;
  while (isNamed && ["no", "nr", "number"].includes(tokens[next + taken]?.text ?? "")) taken++;
  const token = tokens[next + taken];
  if (!token || says.cylinder !== undefined) return 0;
  const isNumber = /^\d+$/.test(token.text) && Number(token.text) >= 1 && Number(token.text) <= LARGEST_ORDINAL;
  if (!isNumber && !(isNamed && /^\p{L}$/u.test(token.text))) return 0;
  says.cylinder = token.raw;
  return taken + 1;
}

/** Where the line tells one thing only, limits apart, words that are not known are its name. */
function completed(text: string, tells: readonly HeadingField[], says: ParsedHeading): ParsedHeading {
  const [only, ...others] = tells.filter((tell) => tell !== "role");
  const own = text.trim();
  if (says.role !== undefined || says.isWorkedOut) return says;
  const isAlone = others.length === 0;
  if (isAlone && only === "engine" && says.engine === undefined) says.engine = own;
  else if (isAlone && only === "cylinder" && says.cylinder === undefined) says.cylinder = own;
  else if (only === "characteristic" && says.characteristic === undefined && says.rest.length > 0) says.characteristic = plain(own);
  else if (says.rest.length > 0 && tells.every((tell) => tell === "height" || tell === "axis" || tell === "position")) {
    const letter = only === "axis" ? AXIS_LETTERS[plain(own)] : undefined;
    says.places = [{ word: letter ?? plain(own), kind: only === "height" || only === "axis" ? only : "place" }];
  } else return says;
  return { ...says, rest: [] };
}
