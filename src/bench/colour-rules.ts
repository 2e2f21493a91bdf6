import type { EngineData } from "./open-cells.ts";

const RULES = /<(\w+:)?conditionalFormatting\b([^>]*)>([\s\S]*?)<\/\1conditionalFormatting>/g;
const ONE = /<(\w+:)?cfRule\b[^>]*?(?:\/>|>[\s\S]*?<\/\1cfRule>)/g;
const PRIORITY = /\bpriority="(\d+)"/;
const UNKNOWN = /<(?:\w+:)?cfRule\b[^>]*\btype="(?:aboveAverage|containsErrors|notContainsErrors|timePeriod)"/;
/** Those of newer programs, which refer to cells in another way, are left where they stand. */
const NEWER = "x14:";

/**
 * A sheet's part with each colour rule in an element of its own, the most important first: the grid's reader takes
 * one rule of each element, in the order in which they stand (ECMA-376 part 1, 18.3.1.10 and 18.3.1.18).
 */
export function withSingleRules(xml: string): string {
  const single: { priority: number; element: string }[] = [];
  const rest = xml.replace(RULES, (whole, prefix: string | undefined, attributes: string, inside: string) => {
    if (prefix === NEWER) return whole;
    for (const [rule] of inside.matchAll(ONE)) {
      const element = `<${prefix ?? ""}conditionalFormatting${attributes}>${rule}</${prefix ?? ""}conditionalFormatting>`;
      single.push({ priority: Number(PRIORITY.exec(rule)?.[1] ?? single.length), element });
    }
    return single.length > 0 ? MARK : "";
  });
  const ordered = single.sort((a, b) => a.priority - b.priority).map(({ element }) => element);
  return rest.replace(MARK, () => ordered.join("")).replaceAll(MARK, "");
}

/** Holds the place of what has been taken out; no XML has such a sign. */
const MARK = "\u0000";

/** The grid compares a cell with a text as it is, where the file has it in quotes, as formulas do. */
export function withTextsAsTheyAre(data: EngineData): void {
  for (const { conditionalFormats } of data.sheets as { conditionalFormats?: { rule: { values?: string[] } }[] }[]) {
    for (const { rule } of conditionalFormats ?? []) {
      if (rule.values) rule.values = rule.values.map((value) => (/^"(?:[^"]|"")*"$/.test(value) ? value.slice(1, -1).replaceAll('""', '"') : value));
    }
  }
}

/** Whether there are rules that the grid does not have. */
export const hasUnknownRules = (xml: string): boolean => UNKNOWN.test(xml);
