import { choiceField, defineKind, textField } from "./define-kind.ts";

/** A reading not taken yet where something waits for it. Such a row counts as checked. */
export const missingReadingKind = defineKind({
  name: "missing reading",
  plural: "missing readings",
  order: 60,
  meaning: "a reading not taken yet that a limit or a result waits for",
  mark: "fault",
  fields: {
    blank: choiceField(
      ["one reading", "one of a range", "a whole range", "one of a row"],
      "what is blank: a single reading; one reading of a range (a bore, say) that has others; all of such a range; a reading whose partners in the row are there",
    ),
    range: textField("the range that is blank as a whole; null for any other blank, and where it is no single range").orNull(),
  },
  cause: ({ cell }) => `readings on the sheet ${cell.sheet} are still blank`,
  sentence(_, { blank, range }) {
    switch (blank) {
      case "one reading":
        return "the reading is still blank";
      case "one of a range":
        return "the reading is still blank, so nothing is worked out from its range";
      case "a whole range":
        return range === null ? "no readings yet" : `no readings yet in ${range}`;
      case "one of a row":
        return "the reading is still blank, while others that go with it are there";
    }
  },
});
