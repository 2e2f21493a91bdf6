import type { CheckResult } from "../check/finding.ts";
import { tally, tallyText } from "../check/finding-words.ts";
import { grouped, rowsText } from "../core/number-text.ts";
import { VERSION } from "../core/version.ts";
import { buildSheetPart, headPart } from "./build-sheet.ts";
import { CAUTIONS } from "./cautions.ts";
import type { ReportInput } from "./content.ts";
import { html, type Markup, scrolled } from "./markup.ts";
import { figuresPart, findingsPart, gaugesPart, HALF_WIDTH, identityPart, limitsPart, outcomePart, resultsPart, rulePart } from "./sections.ts";
import { STYLE } from "./style.ts";

interface ReportOptions {
  /** The day of the report, as it is to stand on it: `2026-11-25`. */
  date: string;
  /** Of many inputs: what they come to together, where not each of them has a section of its own. */
  whole?: Whole;
  /** Of a workbook: what was found, how verdicts are reached, gauges and limits in full. Several inputs, and readings from files, are always shown so. */
  withDetails?: boolean;
}

interface Whole {
  summary: Markup;
  sums: Pick<CheckResult, "rowsIn" | "checked" | "refused"> & { inputs: number };
  /** What is to be said of the inputs without a section. */
  leftOut: Markup;
}

/**
 * One printable page without scripts that stands on its own: everything typed is escaped, and nothing
 * is asked for from elsewhere. Of one workbook it is the build sheet that a customer keeps. Several inputs get a
 * summary first and then a section each.
 */
export function renderReport(inputs: readonly ReportInput[], { date, whole, withDetails = false }: ReportOptions): string {
  const [only, ...others] = inputs;
  if (only && others.length === 0 && !whole && only.content.measured.length > 0) return buildSheet(only, date, withDetails);
  const count = whole?.sums.inputs ?? inputs.length;
  const names = count > inputs.length ? `${count} inputs` : inputs.map(({ name }) => name).join(", ");
  const sections = inputs.map((input, i) => section(input, i + 1, count > 1));
  const general = html`<section>${rulePart(inputs)}</section>
<section>${cautions()}</section>
<section><h2>About this report</h2>${about(inputs, whole?.sums ?? totalOf(inputs), date)}</section>
`;
  const body = html`<header><h1>Measurement report</h1><p>${count === 1 ? "Checked" : `${grouped(count)} inputs, checked`} on ${date}</p></header>
<main>${count === 1 ? html`${sections}${general}` : html`${summary(inputs, whole)}${general}${sections}`}</main>`;
  return pageOf(`Measurement report: ${names}`, body);
}

function buildSheet(input: ReportInput, date: string, withDetails: boolean): string {
  const { shop } = input.content;
  const details = html`<section class="input apart"><h2>Behind these figures</h2>
${notesPart(input)}
${findingsPart(input)}
${resultsPart(input)}
${rulePart([input], "h3")}
${limitsPart(input)}
${gaugesPart(input)}</section>`;
  const body = html`${headPart(shop, date)}
<main class="sheet"><section>${buildSheetPart(input)}
${figuresPart(input, sectionOf(0), HALF_WIDTH, "h2")}</section>
<section class="cautions">${cautions()}</section>
<section class="small">${about([input], undefined, date)}</section>
${withDetails && details}</main>`;
  return pageOf(`Engine build sheet: ${input.name}`, body);
}

/** A page without scripts that asks for nothing from elsewhere. */
export const pageOf = (title: string, body: Markup): string => `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${html`${title}`}</title>
<style>${STYLE}</style>
</head>
<body>
${body}
</body>
</html>
`;

/** Where the section of an input stands. */
export const sectionOf = (index: number): string => `input-${index + 1}`;

function summary(inputs: readonly ReportInput[], whole: Whole | undefined): Markup {
  const rows = inputs.map(
    ({ name, result, unread, all }, i) =>
      html`<tr><td class="what"><a href="#${sectionOf(i)}">${name}</a></td><td class="number">${grouped(result.rowsIn)}</td><td class="number">${grouped(result.checked)}</td><td class="number">${grouped(result.refused)}</td><td>${tallyText(all?.words ?? tally(result.findings)) || "none"}${unread !== undefined && html` <strong>Not read in full.</strong>`}</td></tr>
`,
  );
  const heading = whole && html`<h3>Inputs</h3>`;
  return html`<section><h2>Summary</h2>${whole?.summary}${heading}${scrolled("Summary", html`<table><thead><tr><th scope="col">Input</th><th scope="col" class="number">Rows in</th><th scope="col" class="number">Checked</th><th scope="col" class="number">Refused</th><th scope="col">Findings</th></tr></thead><tbody>${rows}</tbody></table>`)}${whole?.leftOut}</section>`;
}

const cautions = (): Markup => html`<h2>Cautions</h2><ul>${CAUTIONS.map(({ title, text }) => html`<li><b>${title}.</b> ${text}</li>`)}</ul>`;

const notesPart = ({ notes }: ReportInput): Markup => html`${notes.length > 0 && html`<ul class="quiet">${notes.map((note) => html`<li>${note}</li>`)}</ul>`}`;

function section(input: ReportInput, index: number, isApart: boolean): Markup {
  return html`<section class="input${isApart ? " apart" : ""}" id="${sectionOf(index - 1)}"><h2>${input.name}</h2>
${outcomePart(input)}
${notesPart(input)}
${identityPart(input)}
${findingsPart(input)}
${resultsPart(input)}
${figuresPart(input, sectionOf(index - 1))}
${limitsPart(input)}
${gaugesPart(input)}</section>
`;
}

function about(inputs: readonly ReportInput[], sums: Pick<CheckResult, "rowsIn" | "checked" | "refused"> | undefined, date: string): Markup {
  const hashes = inputs.flatMap(({ name, fingerprint }) => {
    if (!fingerprint) return [];
    const of = fingerprint.of === "file" ? html`the file ${name}` : html`the values and formulas of ${name}`;
    return [html`<li>SHA-256 of ${of}: <span class="hash">${fingerprint.sha256}</span></li>`];
  });
  return html`<p>Made by Crosshatch ${VERSION} on ${date}.${sums && ` Checked in all: ${rowsText(sums)}.`}</p>
${hashes.length > 0 && html`<ul class="small">${hashes}</ul><p class="small quiet">The same input gives the same hash, and the least change to it another.</p>`}
<div class="signed"><div>Measured by</div><div>Checked by</div><div>Date</div></div>`;
}

const totalOf = (inputs: readonly ReportInput[]) => ({
  rowsIn: inputs.reduce((sum, { result }) => sum + result.rowsIn, 0),
  checked: inputs.reduce((sum, { result }) => sum + result.checked, 0),
  refused: inputs.reduce((sum, { result }) => sum + result.refused, 0),
});
