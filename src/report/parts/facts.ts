import { countsText } from "../../check/counts-text.ts";
import { tally, tallyText } from "../../check/finding-words.ts";
import { counted } from "../../core/number-text.ts";

import type { CopiedTable, IdentityEntry, LimitRow, ReportInput } from "../content.ts";
import { html, type Markup, scrolled } from "../markup.ts";

/** What came of the check, in one line. */
export function outcomePart({ name, result, unread, all }: ReportInput): Markup {
  const { findings, rowsIn, inputs } = result;
  const unreadable = unread === undefined ? html`` : html`<p class="result">Not read in full: ${name} ${unread}.</p>`;
  if (rowsIn + findings.length + inputs === 0) return unread === undefined ? html`<p class="result">There was nothing to check.</p>` : unreadable;
  const what =
    findings.length === 0 ? "Nothing was found." : `${counted(all?.count ?? findings.length, "finding")}: ${tallyText(all?.words ?? tally(findings))}.`;
  return html`${unreadable}<p class="result">${what}</p><p class="quiet">${countsText(result)}.</p>`;
}

export function identityPart({ content: { identity } }: ReportInput): Markup {
  if (identity.length === 0) return html``;
  return html`<h3>Engine</h3><dl class="entries">${identity.map(entry)}</dl>`;
}

const entry = ({ name, text }: IdentityEntry): Markup => html`<div><dt>${name}</dt><dd>${text}</dd></div>`;

export function gaugesPart({ content: { gauges }, judged: { rows } }: ReportInput): Markup {
  const filled = gauges.filter((table) => table.rows.length > 0);
  if (filled.length > 0) return html`<h3>Gauges</h3>${filled.map(copied)}`;
  if (rows.length === 0) return html``;
  return html`<h3>Gauges</h3><p>The input names no gauges. Which ones were used, and until when their calibration holds, has to be asked of the shop.</p>`;
}

const copied = ({ headings, rows }: CopiedTable): Markup =>
  html`${scrolled("Gauges", html`<table><thead><tr>${headings.map((heading) => html`<th scope="col">${heading}</th>`)}</tr></thead><tbody>${rows.map((row) => html`<tr>${row.map((cell) => html`<td>${cell}</td>`)}</tr>`)}</tbody></table>`)}`;

export function limitsPart({ content: { limits }, judged: { rows } }: ReportInput): Markup {
  if (limits.length === 0) {
    if (rows.length === 0) return html``;
    return html`<h3>Limits</h3><p>The limits stand beside the results. They were typed by the shop; the input does not say from which source.</p>`;
  }
  const withNear = limits.some(({ near }) => near !== "");
  const head = html`<tr><th scope="col">Characteristic</th><th scope="col" class="number">Lower</th><th scope="col" class="number">Upper</th><th scope="col">Unit</th>${withNear && html`<th scope="col" class="number">Near</th>`}<th scope="col">Source</th></tr>`;
  return html`<h3>Limits and their source</h3>
${scrolled("Limits and their source", html`<table><caption>Typed by the shop; none is built into the program.</caption><thead>${head}</thead><tbody>${limits.map((limit) => limitRow(limit, withNear))}</tbody></table>`)}`;
}

const limitRow = ({ characteristic, lower, upper, unit, near, source }: LimitRow, withNear: boolean): Markup =>
  html`<tr><td class="what">${characteristic}</td><td class="number">${lower}</td><td class="number">${upper}</td><td>${unit}</td>${withNear && html`<td class="number">${near}</td>`}<td class="what">${source || "not given"}</td></tr>
`;

/** By which rule readings were judged, as far as it was used. */
export function rulePart(inputs: readonly ReportInput[]): Markup {
  const rows = inputs.flatMap(({ judged }) => judged.rows);
  const withDoubt = rows.some(({ uncertainty }) => uncertainty > 0);
  const without = rows.some(({ uncertainty }) => uncertainty === 0);
  const sentences = [
    "A value on its limit is within it. Values are compared as the decimals that were typed, to nine places.",
    withDoubt &&
      "Where an uncertainty U (expanded, 95 %) is given, the default rule of ISO 14253-1 holds: within is proven only inside the limits drawn in by U, over and under only outside the limits let out by U, and in between nothing is proven.",
    without &&
      `${withDoubt ? "Where none is given," : "No uncertainty is given for these readings, so"} a value is taken as it was read: close to a limit the part may lie on either side of it, as far as the gauge can err.`,
    rows.some(({ near }) => near > 0) && "Near limit: within, but no further from a limit than the distance that the shop has set.",
  ].filter((sentence) => sentence !== false);
  return html`<h2>How verdicts are reached</h2><ul>${sentences.map((sentence) => html`<li>${sentence}</li>`)}</ul>`;
}
