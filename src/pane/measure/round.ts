import { likelySlipText, robustStatistics, suspicionOn } from "../../check/likely-slip.ts";
import { decimal } from "../../core/decimal.ts";
import { kindOfUnit } from "../../vocabulary/units.ts";
import type { Place } from "./places.ts";

/** How what is typed stands for a size. */
export interface EntryWay {
  /** Steps that are typed: the sheet's unit, or a thousandth of it. */
  scale: 1 | 0.001;
  /** A size to which deviations are added; without one sizes are typed whole. */
  nominal: number | null;
}

/** A round of measuring: which place is on, what has been read, what is asked. As data, so that every step can be tried alone. */
export interface Round {
  places: readonly Place[];
  /** What each place holds, as far as it may be shown and compared. */
  readings: readonly (number | null)[];
  /** The place that is on; as many as there are places when all are through. */
  at: number;
  /** Nothing that was read before this round is shown or compared with. */
  isBlind: boolean;
  /** Where a blind round found something, which it neither shows nor overwrites unasked. */
  covered: readonly boolean[];
  way: EntryWay;
  /** A size that waits for a yes, and why it is asked about. */
  asked: { value: number; sentence: string } | null;
  /** What is wrong with what was typed. */
  trouble: string;
  /** The last reading that was taken, by its place. */
  last: number | null;
}

const AS_THE_SHEET: EntryWay = { scale: 1, nominal: null };

/** Starts at the first place that is still blank. */
export function startRound(places: readonly Place[], held: readonly (number | null)[], isBlind = false, way: EntryWay = AS_THE_SHEET): Round {
  const first = held.indexOf(null);
  return {
    places,
    readings: isBlind ? held.map(() => null) : held,
    at: Math.max(first, 0),
    isBlind,
    covered: held.map((value) => isBlind && value !== null),
    way,
    asked: null,
    trouble: "",
    last: null,
  };
}

/** Another change of the sheet may have filled or cleared places: what stands there counts. */
export function seen(round: Round, held: readonly (number | null)[]): Round {
  if (round.isBlind) return { ...round, covered: held.map((value, i) => value !== null && round.readings[i] === null) };
  return { ...round, readings: held };
}

const SIGNS = /^([+\-−–]?)\s*(\d*(?:[.,]\d*)?)$/;

/** A typed entry as a size, or what is wrong with it; `isAsked` where a comma may part thousands. */
export function readEntry(text: string, { scale, nominal }: EntryWay): { value: number; isAsked: boolean } | { sentence: string } {
  const [, sign = "", digits = ""] = SIGNS.exec(text.trim()) ?? [];
  if (!/\d/.test(digits)) return { sentence: text.trim() === "" ? "nothing was typed" : `"${text.trim().slice(0, 20)}" is no number` };
  const typed = Number(digits.replace(",", ".")) * (sign === "" || sign === "+" ? 1 : -1);
  const isDeviation = nominal !== null && (sign !== "" || scale !== 1 || typed === 0);
  if (sign === "+" && nominal === null) return { sentence: "a deviation needs a nominal size first" };
  return { value: decimal(isDeviation ? nominal + typed * scale : typed * scale), isAsked: /^\d{1,3},\d{3}$/.test(digits) };
}

/** Why a size at the place that is on is asked about before it is written; nothing for an ordinary one. */
function questionOn(round: Round, value: number): string | undefined {
  const place = round.places[round.at]!;
  const like = round.readings.filter((reading, i) => reading !== null && i !== round.at && round.places[i]!.like === place.like) as number[];
  const alike = robustStatistics(like);
  const slip = alike && suspicionOn(value, alike, kindOfUnit(place.unit), true);
  if (slip) return likelySlipText(slip, value);
  const there = round.readings[round.at] ?? null;
  if (there !== null && decimal(there) !== value) return `${decimal(there)} stands here: write ${value} in its place?`;
  if (round.covered[round.at]) return `a reading stands here already: write ${value} in its place?`;
  return undefined;
}

/** What Enter does: the round after it, and the size that is to be written, if any. */
export function entered(round: Round, text: string): { round: Round; write?: number } {
  const place = round.places[round.at];
  if (!place) return { round };
  // Enter on an empty field says yes to what is asked, and goes on where nothing is.
  if (text.trim() === "") return round.asked ? accepted(round) : { round: next(round) };
  const read = readEntry(text, round.way);
  if ("sentence" in read) return { round: { ...round, asked: null, trouble: read.sentence } };
  const { value } = read;
  if (value < place.least || (value === 0 && !place.allowsZero)) {
    return { round: { ...round, asked: null, trouble: `${value} cannot be here: it must be a number ${place.allowsZero ? "of at least" : "above"} 0` } };
  }
  const sentence = read.isAsked ? `is ${text.trim()} meant as ${value}?` : questionOn(round, value);
  if (sentence !== undefined) return { round: { ...round, asked: { value, sentence }, trouble: "" } };
  return taken(round, value);
}

/** Yes to what was asked. */
export function accepted(round: Round): { round: Round; write?: number } {
  return round.asked ? taken(round, round.asked.value) : { round };
}

/** No: the place waits for another reading. */
export const declined = (round: Round): Round => ({ ...round, asked: null, trouble: "" });

function taken(round: Round, value: number): { round: Round; write: number } {
  const readings = round.readings.map((reading, i) => (i === round.at ? value : reading));
  const covered = round.covered.map((is, i) => is && i !== round.at);
  return { round: { ...next({ ...round, readings, covered }), last: round.at }, write: value };
}

/** The write did not go through: the place is on again, as it was before; what was read meanwhile stays read. */
export const refused = (now: Round, before: Round, sentence: string): Round => ({
  ...now,
  readings: now.readings.map((reading, i) => (i === before.at ? (before.readings[i] ?? null) : reading)),
  covered: now.covered.map((is, i) => (i === before.at ? before.covered[i]! : is)),
  ...{ at: before.at, last: before.last, asked: null, trouble: sentence },
});

export const next = (round: Round): Round => moved(round, round.at + 1);
export const back = (round: Round): Round => moved(round, round.at - 1);

const moved = (round: Round, to: number): Round => ({ ...round, at: Math.min(Math.max(to, 0), round.places.length), asked: null, trouble: "" });

/** `cylinder 1, top thrust: 73 point 0 2 5`: digit by digit behind the point, as a person reads a gauge aloud. */
export function spoken(place: Place, value: number): string {
  const [whole, parts] = String(decimal(Math.abs(value))).split(".");
  return `${place.name}: ${value < 0 ? "minus " : ""}${whole}${parts ? ` point ${[...parts].join(" ")}` : ""}`;
}
