import { readingText } from "../../core/number-text.ts";
import { countField, defineKind, listField, textField } from "./define-kind.ts";

/** A reading that nothing judges, because no limit has been typed for it. */
export const missingLimitKind = defineKind({
  name: "missing limit",
  plural: "missing limits",
  order: 70,
  meaning: "a reading, or all readings of a characteristic, without any limit to be judged by",
  mark: "fault",
  fields: {
    readings: countField("how many readings have none", "reading"),
    characteristic: textField("what they are readings of; null where that is not said").orNull(),
    results: listField("what is worked out from them and has no limit either"),
  },
  cause: () => "no limit is typed for these: type it from the maker's service manual",
  sentence({ value }, { readings, characteristic, results }) {
    const through = results.length > 0 ? `; ${new Intl.ListFormat("en-GB").format(results)} ${results.length > 1 ? "have" : "has"} none either` : "";
    if (readings === 1) return `${readingText(Number(value))} has no limit to be judged by${through}`;
    return `${readings} readings${characteristic === null ? "" : ` of ${characteristic}`} have no limit to be judged by${through}`;
  },
});
