import type { Model } from "@odoo/o-spreadsheet";
import { REFUSED_TITLE } from "../sheet/looks.ts";
import { xmlText } from "../sheet/xlsx/xml-text.ts";

const RULE = /<dataValidation\b[^>]*?\bsqref="([^"]*)"[^>]*>/g;
const CELL_RULE = /<cfRule\b[^>]*\btype="cellIs"[^>]*>[\s\S]*?<\/cfRule>/g;

/**
 * A sheet's part with its rules as other programs take them. Of what may be typed the engine writes an
 * empty style of error, which the format does not have (ECMA-376 part 1, 18.18.17), and no sentence;
 * of fills by value it writes text as if it were a formula, formulas with their `=`, and gives all the same
 * priority.
 */
export function withRules(model: Model, sheetId: string, xml: string): string {
  const sentences = sentencesOf(model, sheetId);
  const texts = comparedTexts(model, sheetId);
  let priority = 0;
  return xml
    .replace(RULE, (rule, area: string) => withSentence(rule.replace(' errorStyle=""', ""), sentences.get(area)))
    .replace(CELL_RULE, (rule) =>
      rule.replace(/<formula>([^<]*)<\/formula>/g, (formula, text: string) => (texts.has(text) ? quoted(text) : formula.replace(">=", ">"))),
    )
    .replace(/(<cfRule\b[^>]*? priority=)"\d+"/g, (_, start: string) => `${start}"${++priority}"`);
}

const withSentence = (rule: string, sentence: string | undefined): string =>
  sentence === undefined ? rule : rule.replace("<dataValidation", `<dataValidation errorTitle="${REFUSED_TITLE}" error="${xmlText(sentence)}"`);

const quoted = (text: string): string => `<formula>"${text.replaceAll('"', '""')}"</formula>`;

/** What is said where something may not be typed, by area. */
function sentencesOf({ getters }: Model, sheetId: string): Map<string, string> {
  const sentences = new Map<string, string>();
  for (const rule of getters.getDataValidationRules(sheetId)) {
    const area = rule.ranges.map((range) => getters.getRangeString(range, sheetId, { useBoundedReference: true })).join(" ");
    const { sentence } = rule as { sentence?: string };
    if (sentence !== undefined) sentences.set(area, sentence);
  }
  return sentences;
}

/** Text between tags, where a quote stands for itself. */
const inElement = (text: string): string => xmlText(text).replaceAll("&quot;", '"');

/** Texts, as XML has them, with which cells are compared for their fill. */
function comparedTexts({ getters }: Model, sheetId: string): Set<string> {
  const values = getters.getConditionalFormats(sheetId).flatMap(({ rule }) => (rule.type === "CellIsRule" ? rule.values : []));
  return new Set(values.filter((value) => value !== "" && !value.startsWith("=") && !Number.isFinite(Number(value))).map(inElement));
}
