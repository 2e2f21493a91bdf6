/** The same with a capital letter at its start. */
export const capitalised = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** A clause as a sentence: with a capital letter and a full stop. */
export const asSentence = (clause: string): string => `${capitalised(clause)}.`;

/** A unit, in its one spelling, as a sentence says it: `inches`, so that nobody reads "in in". */
export const unitWords = (unit: string): string => (unit === "in" ? "inches" : unit);
