import type { Model } from "@odoo/o-spreadsheet";
import { REFUSED_TITLE } from "../workbook/styles.ts";
import { fromStoredFormula } from "../xlsx/formula-text.ts";
import type { TypingRule } from "../xlsx/model.ts";
import { xmlElement, xmlText } from "../xlsx/write/xml.ts";
import { escapedXml } from "../xlsx/xml.ts";

/** What may be typed into cells, as the grid has it; it carries what it does not know along. */
export interface EngineRule {
  id: string;
  ranges: string[];
  isBlocking: boolean;
  criterion: { type: string; values: string[] };
  /** What is said to whoever types something else. */
  sentence?: string;
  /** The rule of the file that it was made from, and what was made of it. */
  from?: TypingRule & { made: string };
}

/**
 * The rules of a sheet: those that the grid's reader has understood, and all others as a formula that comes to the
 * same. Each with its sentence and with the file's own rule, which is written again where nobody has changed it.
 */
export function typingRules(understood: readonly EngineRule[], file: ReadonlyMap<string, TypingRule> = new Map()): EngineRule[] {
  return [...file].flatMap(([areas, rule], i) => {
    const known = understood.find(({ ranges }) => ranges.join(" ") === areas) ?? asFormula(areas, rule, `typing${i}`);
    if (!known) return [];
    const { error, errorStyle = "stop", showErrorMessage } = rule.attributes;
    // The grid asks a formula about what the cell held before: it marks what does not fit, but cannot refuse it.
    const isBlocking = known.isBlocking && known.criterion.type !== "customFormula" && errorStyle === "stop" && isTrue(showErrorMessage);
    const made = { ...known, isBlocking };
    return [{ ...made, ...(error ? { sentence: error } : {}), from: { ...rule, made: signOf(made) } }];
  });
}

const isTrue = (text: string | undefined): boolean => text === "1" || text === "true";

const signOf = ({ isBlocking, criterion: { type, values } }: Pick<EngineRule, "isBlocking" | "criterion">): string =>
  JSON.stringify([isBlocking, type, values]);

/** What a cell is compared with, by the operators of ECMA-376 part 1, 18.18.22. */
const OPERATORS: Readonly<Record<string, (value: string, first: string, second: string) => string>> = {
  between: (value, first, second) => `${value}>=${first},${value}<=${second}`,
  notBetween: (value, first, second) => `OR(${value}<${first},${value}>${second})`,
  equal: (value, first) => `${value}=${first}`,
  notEqual: (value, first) => `${value}<>${first}`,
  greaterThan: (value, first) => `${value}>${first}`,
  greaterThanOrEqual: (value, first) => `${value}>=${first}`,
  lessThan: (value, first) => `${value}<${first}`,
  lessThanOrEqual: (value, first) => `${value}<=${first}`,
};

/** Kinds that the grid's reader passes over (ECMA-376 part 1, 18.18.21). A rule without a kind only says something when its cell is chosen. */
const KINDS: Readonly<Record<string, (cell: string) => { value: string; also: string[] }>> = {
  whole: (cell) => ({ value: cell, also: [`ISNUMBER(${cell})`, `${cell}=INT(${cell})`] }),
  time: (cell) => ({ value: cell, also: [`ISNUMBER(${cell})`] }),
  date: (cell) => ({ value: cell, also: [`ISNUMBER(${cell})`] }),
  textLength: (cell) => ({ value: `LEN(${cell})`, also: [] }),
};

/** The same as a formula, of the first cell of its areas. */
function asFormula(areas: string, { attributes, formulas }: TypingRule, id: string): EngineRule | undefined {
  const { type = "none", operator = "between" } = attributes;
  const ranges = areas.split(" ");
  const rule = (formula: string) => ({ id, ranges, isBlocking: false, criterion: { type: "customFormula", values: [formula] } });
  if (type === "none") return rule("=TRUE");
  const kind = KINDS[type]?.(ranges[0]!.split(":")[0]!.replaceAll("$", ""));
  const compare = OPERATORS[operator];
  const [first, second = "0"] = formulas.map((formula) => fromStoredFormula(formula));
  if (!kind || !compare || !first) return undefined;
  return rule(`=AND(${[...kind.also, compare(kind.value, first, second)].join(",")})`);
}

const RULE = /<dataValidation\b[^>]*?\bsqref="([^"]*)"[^>]*>[\s\S]*?<\/dataValidation>/g;

/**
 * A sheet's part with its rules for typing as they came, and those of the grid as other programs take them: it writes an
 * empty style of error, which the format does not have (ECMA-376 part 1, 18.18.17), and no sentence.
 */
export function withTyping({ getters }: Model, sheetId: string, xml: string): string {
  const rules = new Map(
    getters
      .getDataValidationRules(sheetId)
      .map((rule) => [
        rule.ranges.map((range) => getters.getRangeString(range, sheetId, { useBoundedReference: true })).join(" "),
        rule as unknown as Omit<EngineRule, "ranges">,
      ]),
  );
  return xml.replace(RULE, (written, area: string) => {
    const rule = rules.get(area);
    if (rule?.from && rule.from.made === signOf(rule)) return asItCame(area, rule.from);
    const tidy = written.replace(' errorStyle=""', "");
    return rule?.sentence === undefined
      ? tidy
      : tidy.replace("<dataValidation", () => `<dataValidation errorTitle="${REFUSED_TITLE}" error="${escapedXml(rule.sentence!)}"`);
  });
}

const asItCame = (sqref: string, { attributes, formulas }: TypingRule): string =>
  xmlElement(
    "dataValidation",
    { ...attributes, sqref },
    formulas.map((formula, i) => xmlElement(`formula${i + 1}`, {}, xmlText(formula))).join("") || undefined,
  );
