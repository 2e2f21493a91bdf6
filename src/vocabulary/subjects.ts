import { CHARACTERISTICS } from "./characteristics.ts";
import { foldedHeading } from "./headings.ts";
import { type ParsedHeading, type PositionWord, parseHeading } from "./parse-heading.ts";
import type { HeadingField } from "./phrases.ts";
import { POSITION_WORDS } from "./place-words.ts";
import { remembered } from "./remembered.ts";

const OWNERS: readonly HeadingField[] = ["engine", "cylinder"];

/** The engine or the cylinder that a text names: `2` of `Cyl. no. 2`, `A` of `Engine A`, `port` of `Port engine`. Nothing where it says more. */
export const ownerIn = remembered((text): Pick<ParsedHeading, "engine" | "cylinder"> => {
  const { engine, cylinder, rest } = parseHeading(text, OWNERS);
  if (rest.length > 0) return {};
  return { ...(engine === undefined ? {} : { engine }), ...(cylinder === undefined ? {} : { cylinder }) };
});

const keyFor = (field: "engine" | "cylinder") => remembered((text): string => foldedHeading(ownerIn(text)[field] ?? text));
const KEYS = { engine: keyFor("engine"), cylinder: keyFor("cylinder") };

/** The same for every text that names the same engine or cylinder: `A`, `Engine A` and `Motor a`. */
export const ownerKey = (field: "engine" | "cylinder", text: string): string => KEYS[field](text);

const SUBJECTS: readonly HeadingField[] = ["characteristic", "height", "axis", "position"];

/** What was measured and where. */
export interface Measured {
  characteristic: string;
  places: readonly PositionWord[];
}

/** What a text says of what was measured, in the words that are known; a characteristic that is not known is called as it is. */
const characteristicIn = remembered((text): Measured => {
  const { characteristic, places, rest, role, isNoReading: isOther } = parseHeading(text, SUBJECTS);
  const isKnown = characteristic !== undefined && Object.hasOwn(CHARACTERISTICS, characteristic) && rest.length === 0 && role === undefined && !isOther;
  return isKnown ? { characteristic, places } : { characteristic: foldedHeading(text), places: [] };
});

/** The characteristic that a text names by a word that is known, whatever else the text says. */
export function characteristicNamed(text: string): string | undefined {
  const { characteristic } = characteristicIn(text);
  return Object.hasOwn(CHARACTERISTICS, characteristic) ? characteristic : undefined;
}

/** What the vocabulary knows of the characteristic that a text names, whatever else the text says; nothing where it names none that is known. */
export function knownCharacteristic(text: string): (typeof CHARACTERISTICS)[string] | undefined {
  const name = characteristicNamed(text);
  return name === undefined ? undefined : CHARACTERISTICS[name];
}

/** True of what cannot be below 0, so that a lower limit of 0 excludes nothing. */
export const isNeverNegative = (text: string): boolean => knownCharacteristic(text)?.isNeverNegative === true;

const positionIn = remembered((text) => parseHeading(text, ["position"]).places);

/** What was measured and where, by the words of a sheet or a file for it. */
export function measuredBy(characteristic: string, position: string): Measured {
  const { characteristic: name, places } = characteristicIn(characteristic);
  return { characteristic: name, places: [...places, ...positionIn(position)] };
}

/** Rings and valves by the words that stand for nothing else: `top` is a height of a bore as well. */
const PARTS = Object.entries(POSITION_WORDS).flatMap(([word, { kind }]) => (kind === "place" ? [word] : []));

/** `top ring end gap`, `inlet valve clearance`: rings of different grooves and valves of different sides are not alike, under whatever name. */
export function ownCharacteristic({ characteristic, places }: Measured): string {
  const parts = Object.hasOwn(CHARACTERISTICS, characteristic) ? CHARACTERISTICS[characteristic]!.parts : PARTS;
  const part = parts?.find((word) => places.some((place) => place.word === word));
  return part === undefined ? characteristic : `${part} ${characteristic}`;
}

/** What wear does to a characteristic, where it does only one thing. */
export const wearOf = (characteristic: string): "larger" | "smaller" | undefined =>
  Object.hasOwn(CHARACTERISTICS, characteristic) ? CHARACTERISTICS[characteristic]!.wears : undefined;
