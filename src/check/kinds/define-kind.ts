import { VERDICTS, type Verdict } from "../../core/verdict.ts";
import type { CellAddress } from "../../workbook/address.ts";
import type { MarkTone } from "../../workbook/port.ts";

/** What a field holds. A day is text as `2026-03-21`; a count is a whole number. */
export type FieldType = "number" | "count" | "text" | "number or text" | "day" | "choice" | "list";

/** The unit of all numbers that are about a reading itself. */
const OF_VALUE = "unit of the reading";

/** One field of a finding, as it stands in the data and in JSON. */
export class Field<T = unknown> {
  declare readonly holds: T;

  constructor(
    readonly type: FieldType,
    readonly meaning: string,
    /** In words; of a count what is counted, one of them. */
    readonly unit = "",
    readonly words: readonly string[] = [],
    readonly isNullable = false,
    /** The name under which lists show it beside the numbers; not shown without one. */
    readonly shownAs = "",
  ) {}

  orNull(): Field<T | null> {
    return new Field<T | null>(this.type, this.meaning, this.unit, this.words, true, this.shownAs);
  }

  shown(name: string): Field<T> {
    return new Field<T>(this.type, this.meaning, this.unit, this.words, this.isNullable, name);
  }
}

export const size = (meaning: string, unit = OF_VALUE): Field<number> => new Field("number", meaning, unit);
export const countField = (meaning: string, unit: string): Field<number> => new Field("count", meaning, unit);
export const textField = (meaning: string): Field<string> => new Field("text", meaning);
export const day = (meaning: string): Field<string> => new Field("day", meaning);
export const listField = (meaning: string): Field<readonly string[]> => new Field("list", meaning);
export const choiceField = <const T extends string>(words: readonly T[], meaning: string): Field<T> => new Field<T>("choice", meaning, "", words);

export type Fields = Readonly<Record<string, Field>>;

/** The fields of a kind as data. */
export type Details<F extends Fields = Fields> = { readonly [name in keyof F]: F[name]["holds"] };

/** Fields that every finding has. Each means the same whatever was found; what means something else has a name of its own. */
export const COMMON_FIELDS = {
  label: textField("what the finding is about, in the words of the sheet or file"),
  value: new Field<number | string>(
    "number or text",
    "the reading, as it stands in the cell or line; null where it is blank or no single reading is meant",
    OF_VALUE,
  ).orNull(),
  lower: size("the lower limit that judges the reading; null for none").orNull(),
  upper: size("the upper limit that judges the reading; null for none").orNull(),
  margin: size("distance from the reading to the nearest limit, negative outside; null where nothing was judged").orNull(),
  verdict: choiceField(VERDICTS, "what the reading was judged to be; null where nothing was judged").orNull(),
  sentence: textField("the finding in one plain sentence with its numbers"),
} as const;

/** What a finding is about, before it is known what was found. */
export interface FindingSubject {
  /** The cell a person should look at: that of the reading where one is known, else that of the verdict. */
  cell: CellAddress;
  label: string;
  /** Line of the file, for CSV input. */
  line?: number;
  value: number | string | null;
  lower: number | null;
  upper: number | null;
  margin: number | null;
  verdict: Verdict | null;
}

export interface KindSpec<N extends string = string, F extends Fields = Fields> {
  readonly name: N;
  /** Several of them, where the name is a noun: `3 likely slips`. */
  readonly plural: string;
  /** Place among the kinds, worst first: the least stands first. */
  readonly order: number;
  /** What it tells, for the list of what Check finds. */
  readonly meaning: string;
  /** How its cell is marked, and its word in lists. */
  readonly mark: MarkTone;
  /** Bold where it is printed: the part or the row cannot pass as it is. */
  readonly isGrave: boolean;
  /** Verdicts mean nothing before it is cleared up, however many are "within": the build sheet says it first. */
  readonly voidsVerdicts: boolean;
  /** What it has beside the common fields. */
  readonly fields: F;
  /** Whether `value` is the reading that was found; else it is about many, or about a formula. */
  readonly isOfReading: boolean;
  /** Something mistyped, which can be the cause of what else is found; it then stands before that, and its field `causes` lists it. */
  readonly isCause: boolean;
  /** It follows from what a reading is, so that a slip can be its cause. */
  readonly followsFromReading: boolean;
  /**
   * What several of them can come of, as a sentence without a full stop on the one line that stands for them all; those
   * with the same one go together. `null` where each stands by itself.
   */
  cause(subject: FindingSubject, details: Details<F>): string | null;
  /** The word that stands first in a list. */
  word(subject: Pick<FindingSubject, "verdict">): string;
  /** How bad, among its kind: more is worse. */
  severity(subject: FindingSubject): number;
  /** Without a full stop. */
  sentence(subject: FindingSubject, details: Details<F>): string;
}

type Optional = "plural" | "isGrave" | "voidsVerdicts" | "isOfReading" | "isCause" | "followsFromReading" | "cause" | "word" | "severity";

/** A kind of finding as its file declares it; what is left out is as for most. */
export function defineKind<const N extends string, F extends Fields>(
  kind: Omit<KindSpec<N, F>, Optional> & Partial<Pick<KindSpec<N, F>, Optional>>,
): KindSpec<N, F> {
  const { name } = kind;
  return {
    plural: name,
    isGrave: false,
    voidsVerdicts: false,
    isOfReading: true,
    isCause: false,
    followsFromReading: false,
    cause: () => null,
    word: () => name,
    severity: () => 0,
    ...kind,
  };
}
