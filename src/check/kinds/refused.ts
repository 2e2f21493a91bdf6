import { defineKind, textField } from "./define-kind.ts";

/** Input that could not be judged at all. It never hides: every row is either checked or refused, and each refused row is one such finding. */
export const refusedKind = defineKind({
  name: "refused",
  order: 30,
  meaning: "input that cannot be judged: text in place of a number, an error in a cell, limits the wrong way round",
  mark: "fault",
  isGrave: true,
  followsFromReading: true,
  fields: { why: textField("why it cannot be taken, and what is wanted") },
  cause: (_, { why }) => why,
  sentence: (_, { why }) => why,
});
