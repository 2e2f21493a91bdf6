import type { ParsedHeading } from "./parse-heading.ts";
import { type HeadingField, longestPhrase, type Meaning, meaningsOf } from "./phrases.ts";

export interface Token {
  /** As typed, and in small letters. */
  raw: string;
  text: string;
  /** Punctuation stands before it. */
  isApart: boolean;
}
/** Engines have no more cylinders than sheets name by a bare number. */
const LARGEST_ORDINAL = 32;
const LONGEST_ENGINE_NAME = 3;

/** Words of one heading, phrase by phrase. */
export class Parser {
  /** Where the phrase ends that names the characteristic. */
  #named = -1;
  /** It is of a part that is not known: what else it says is not of one that is. */
  #isOther = false;
  readonly #hasOtherPart: boolean;

  constructor(
    readonly tokens: readonly Token[],
    readonly fields: readonly HeadingField[],
    readonly heading: ParsedHeading,
  ) {
    this.#hasOtherPart = this.#findsOtherPart();
  }

  parse(): void {
    for (let at = 0; at < this.tokens.length; ) at += this.#take(at);
  }

  /** The longest known phrase that starts at a token and means something that is asked for. */
  #phraseAt(at: number, isAsked: (meaning: Meaning) => boolean): { meaning: Meaning; length: number } | undefined {
    for (let length = Math.min(longestPhrase, this.tokens.length - at); length > 0; length--) {
      const phrase = this.tokens.slice(at, at + length);
      if (phrase.some(({ isApart }, i) => i > 0 && isApart)) continue;
      const meaning = meaningsOf(phrase.map(({ text }) => text).join(" ")).find(isAsked);
      if (meaning) return { meaning, length };
    }
    return undefined;
  }

  /** The rod of `Rod gap`, not that of `Rod journal`, which is known as a whole, nor the pump of `Bore, pump side`, which says where. */
  #findsOtherPart(): boolean {
    for (let at = 0; at < this.tokens.length; ) {
      const found = this.#phraseAt(at, () => true);
      const next = at + (found?.length ?? 1);
      const isPlace = /^(?:side|end)$/.test(this.tokens[next]?.text ?? "") && this.#phraseAt(next, () => true) === undefined;
      if (found?.meaning.is === "other part" && !isPlace) return true;
      at = next;
    }
    return false;
  }

  /** Takes a phrase, or one unknown word; says how many words that were. */
  #take(at: number): number {
    const { heading, fields } = this;
    const found = this.#phraseAt(at, (meaning) => this.#isAsked(meaning));
    if (found) return found.length + this.#note(found.meaning, at, at + found.length);
    const { raw, text } = this.tokens[at]!;
    if (/^\d.*°$/.test(text) && (fields.includes("axis") || fields.includes("position"))) heading.places.push({ word: text, kind: "axis" });
    // The second inlet valve: a number behind a place belongs to it.
    else if (/^\d+$/.test(text) && heading.places.length > 0 && fields.includes("position")) heading.places.push({ word: text, kind: "place" });
    else heading.rest.push(raw);
    return 1;
  }

  #isAsked(meaning: Meaning): boolean {
    const { heading, fields } = this;
    switch (meaning.is) {
      case "height":
        // Upper and lower are heights where the line tells no limits.
        return (fields.includes("height") || fields.includes("position")) && !(["upper", "lower"].includes(meaning.word) && fields.includes("role"));
      case "axis":
        return fields.includes("axis") || fields.includes("position");
      case "characteristic":
        return fields.includes("characteristic") && (heading.characteristic === undefined || meaning.isGeneral);
      case "names":
        // A field's name introduces what it names, and is no news where something else has been said.
        return fields.includes(meaning.field) || meaning.field === "engine" || meaning.field === "cylinder";
      case "nothing":
      case "derived":
        return true;
      case "other part":
      case "document":
        return false;
      default:
        return fields.includes(meaning.is);
    }
  }

  /** Notes what the phrase from `at` to `next` means; says how many of the words behind it belong to it. */
  #note(meaning: Meaning, at: number, next: number): number {
    const { heading } = this;
    switch (meaning.is) {
      case "characteristic":
        return this.#noteCharacteristic(meaning, at, next);
      case "height":
      case "axis":
        heading.places.push({ word: meaning.word, kind: meaning.is });
        return 0;
      case "position":
        heading.places.push({ word: meaning.word, kind: "place" });
        return 0;
      case "role":
        heading.role = meaning.role;
        if (meaning.isOneSided) heading.isOneSided = true;
        if (meaning.isDeviation) heading.isDeviation = true;
        return 0;
      case "engine":
        heading.engine ??= meaning.name;
        return 0;
      case "names":
        return this.#introduce(meaning.field, next);
      case "derived":
        heading.isNoReading = true;
        return 0;
      default:
        return 0;
    }
  }

  #noteCharacteristic({ name, isGeneral }: Meaning & { is: "characteristic" }, at: number, next: number): number {
    const { heading, tokens, fields } = this;
    const words = tokens.slice(at, next);
    // `Crankpin taper` is neither a crankpin nor the taper of a bore; `Bores, taper` are both.
    const isQualified = this.#named === at && !words[0]!.isApart && heading.characteristic !== name;
    if (isQualified || (isGeneral && this.#hasOtherPart)) {
      delete heading.characteristic;
      this.#isOther = true;
    }
    if (this.#isOther || heading.characteristic !== undefined) {
      heading.rest.push(...words.map(({ raw }) => raw));
      return 0;
    }
    heading.characteristic = name;
    this.#named = next;
    const isPart = name === "bore" || name === "piston skirt";
    return isPart && fields.includes("cylinder") ? this.#takeCylinder(next) : 0;
  }

  #introduce(field: HeadingField, next: number): number {
    if (field === "cylinder") {
      const taken = this.#takeCylinder(next, true);
      if (taken > 0) return taken;
    }
    if (field === "engine") {
      const name: string[] = [];
      let taken = 0;
      for (const { raw, text, isApart } of this.tokens.slice(next)) {
        const [meaning] = meaningsOf(text);
        if ((isApart && name.length > 0) || name.length === LONGEST_ENGINE_NAME || (meaning && meaning.is !== "nothing")) break;
        if (!meaning) name.push(raw);
        taken++;
      }
      if (name.length > 0) {
        this.heading.engine = name.join(" ");
        return taken;
      }
    }
    this.heading.names ??= field;
    return 0;
  }

  /** `1` or, behind the word itself, also `A` or `no 1`. */
  #takeCylinder(next: number, isNamed = false): number {
    const { heading, tokens } = this;
    let taken = 0;
    while (isNamed && ["no", "nr", "number"].includes(tokens[next + taken]?.text ?? "")) taken++;
    const token = tokens[next + taken];
    if (!token || heading.cylinder !== undefined) return 0;
    const isNumber = /^\d+$/.test(token.text) && Number(token.text) >= 1 && Number(token.text) <= LARGEST_ORDINAL;
    if (!isNumber && !(isNamed && /^\p{L}$/u.test(token.text))) return 0;
    heading.cylinder = token.raw;
    return taken + 1;
  }
}
