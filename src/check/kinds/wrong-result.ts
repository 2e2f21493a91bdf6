import { readingText } from "../../core/number-text.ts";
import { choiceField, defineKind, Field, textField } from "./define-kind.ts";

const shownText = (value: number | string | null, beside: number | string | null): string => {
  if (value === null) return "nothing";
  return typeof value === "number" ? readingText(value, typeof beside === "number" ? [beside] : []) : value;
};

/** A cell of ours that shows something other than its formula gives from the cells as they stand. Everything else that is told goes by what the formula gives. */
export const wrongResultKind = defineKind({
  name: "wrong result",
  plural: "wrong results",
  order: 15,
  meaning:
    "a cell with one of our functions that shows something other than its formula gives from the cells as they stand, for example where the program has handed a blank cell over as 0",
  mark: "fault",
  isGrave: true,
  isOfReading: false,
  fields: {
    gives: new Field<number | string>("number or text", "what the formula gives; null for a blank", "unit of the result").orNull(),
    why: choiceField(["a blank taken for 0", "another wrong result", "an error among its cells", "not calculated since"], "why, as far as that can be told"),
    because: textField("the cell that is blank, wrong itself or holds the error; null where there is none").orNull(),
  },
  cause: (_, { why }) => `cells show something other than their formulas give: ${why}`,
  sentence({ value }, { gives, why, because }) {
    const shows = `shows ${shownText(value, gives)} where the formula gives ${shownText(gives, value)} from its cells`;
    switch (why) {
      case "a blank taken for 0":
        return `${shows}: the program has handed the blank cell ${because} over as 0. Write IF(${because}="","",${because}) in its place, or fill it in`;
      case "another wrong result":
        return `${shows}: it rests on ${because}, which shows something other than its own formula gives`;
      case "an error among its cells":
        return `${shows}: ${because} holds an error, so the program shows an error in place of the whole result`;
      default:
        return `${shows}: it has not been calculated since they changed, or it was calculated by another version of these functions. Recalculate the workbook (Ctrl+Alt+F9 in Excel, Ctrl+Shift+F9 in LibreOffice)`;
    }
  },
});
