import { type Finding, type JudgedRow, specOf } from "../../check/finding.ts";
import { wordOf } from "../../check/finding-words.ts";
import { counted } from "../../core/number-text.ts";

import type { Verdict } from "../../core/verdict.ts";
import { numberText } from "../../drawings/text.ts";
import type { ReportInput } from "../content.ts";
import { html, type Markup, scrolled } from "../markup.ts";
import { decimalsFor, limitText, placeOf } from "../words.ts";

/** More than this is not printed: nobody reads it on paper, and it is said how many are left out. */
export const MOST_PRINTED = 1000;

type Weight = "bad" | "doubt" | "";
const word = (text: string, weight: Weight): Markup => html`<td class="word ${weight}">${text}</td>`;
const weightOf = (verdict: Verdict): Weight => (verdict === "within" ? "" : verdict === "over" || verdict === "under" ? "bad" : "doubt");

/** What somebody should see, worst first. */
export function findingsPart({ result: { findings }, all }: ReportInput): Markup {
  if (findings.length === 0) return html``;
  const rows = findings.slice(0, MOST_PRINTED).map((finding) => findingRow(finding));
  return html`<h3>Findings, worst first</h3>
${scrolled("Findings, worst first", html`<table><thead><tr><th scope="col">Finding</th><th scope="col">What</th><th scope="col">Where</th><th scope="col">In words</th></tr></thead><tbody>${rows}</tbody></table>`)}
${leftOut(all?.count ?? findings.length, "finding")}`;
}

const findingRow = (finding: Finding): Markup =>
  html`<tr>${word(wordOf(finding), specOf(finding.kind).isGrave ? "bad" : "doubt")}<td class="what">${finding.label}</td><td class="place">${placeOf(finding)}</td><td>${finding.sentence}</td></tr>
`;

function leftOut(count: number, one: string): Markup {
  if (count <= MOST_PRINTED) return html``;
  return html`<p class="quiet">${counted(count - MOST_PRINTED, `more ${one} is`, `more ${one}s are`)} not printed here; crosshatch check --json lists all.</p>`;
}

/** Every reading with the verdict on it, sheet by sheet. */
export function resultsPart({ judged: { rows, counts } }: ReportInput): Markup {
  const total = Object.values(counts).reduce((a, b) => a + b, 0);
  if (total === 0) return html``;
  const printed = rows.slice(0, MOST_PRINTED);
  const withDoubt = printed.some(({ uncertainty }) => uncertainty > 0);
  const head = html`<tr><th scope="col">What</th><th scope="col">Where</th><th scope="col" class="number">Value</th>${withDoubt && html`<th scope="col" class="number">U</th>`}<th scope="col">Limits</th><th scope="col" class="number">Margin</th><th scope="col">Verdict</th></tr>`;
  return html`<h3>Results</h3>
${scrolled("Results", html`<table><caption>${talliesOf(counts)}. Margin: distance to the nearest limit, negative outside.</caption><thead>${head}</thead><tbody>${printed.map((row) => resultRow(row, withDoubt))}</tbody></table>`)}
${leftOut(Math.max(total, printed.length), "result")}`;
}

function resultRow(row: JudgedRow, withDoubt: boolean): Markup {
  const { label, value, uncertainty, lower, upper, margin, verdict } = row;
  const decimals = typeof value === "number" ? decimalsFor(value, [lower, upper]) : undefined;
  return html`<tr><td class="what">${label}</td><td class="place">${placeOf(row)}</td><td class="number">${typeof value === "number" ? numberText(value, decimals) : value}</td>${withDoubt && html`<td class="number">${uncertainty > 0 ? numberText(uncertainty) : ""}</td>`}<td class="limits">${limitText(lower, upper)}</td><td class="number">${margin === null ? "" : numberText(margin, decimals)}</td>${word(verdict, weightOf(verdict))}</tr>
`;
}

/** `22 within, 1 near limit, 3 over` */
export const talliesOf = (counts: Readonly<Record<Verdict, number>>): string =>
  Object.entries(counts)
    .filter(([, count]) => count > 0)
    .map(([verdict, count]) => `${count} ${verdict}`)
    .join(", ");
