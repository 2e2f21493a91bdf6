import { fieldsLike } from "../parts/stored-choices.ts";
import type { Choices, Side } from "./sides.ts";

export const FIRST: Choices = {
  before: { from: "file", file: null },
  after: { from: "workbook" },
  uncertainty: "",
  hours: "",
  engineBefore: "",
  engineAfter: "",
};

/** What a workbook keeps of a comparison. A file cannot be kept, so it is chosen again. */
export function choicesFrom(given: unknown): Choices | undefined {
  const choices = fieldsLike(FIRST, given);
  return choices && { ...choices, before: sideFrom(choices.before), after: sideFrom(choices.after) };
}

function sideFrom({ from, sheet }: { from?: unknown; sheet?: unknown }): Side {
  if (from === "sheet" && typeof sheet === "string") return { from, sheet };
  return from === "workbook" ? { from } : { from: "file", file: null };
}
