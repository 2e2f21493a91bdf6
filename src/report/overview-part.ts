import { counted, grouped, rowsText } from "../core/number-text.ts";
import { isDrawing } from "../drawings/svg.ts";
import { drawTrend } from "../drawings/trend.ts";
import { html, Markup, scrolled } from "./markup.ts";
import type { Course, EngineSum, KindSum, Overview } from "./overview.ts";

/** Rows of a table that a summary prints. */
const MOST_ROWS = 20;

/** Trends that are drawn, and readings that make one. */
const MOST_TRENDS = 12;

const FEWEST_POINTS = 2;

const HALF = 330;

/** What was found over many inputs: which engines, what, and how it went over the years. `linkTo` gives the place of an input's own section. */
export function overviewPart(overview: Overview, linkTo: (name: string) => string | undefined): Markup {
  const { sums } = overview;
  const unchanged = sums.unchanged > 0 ? `, of them ${counted(sums.unchanged, "input")} unchanged and taken from the ledger` : "";
  return html`<p class="result">${counted(sums.inputs, "input")}: ${sums.findings === 0 ? "nothing was found" : counted(sums.findings, "finding")}${sums.unread > 0 && html`; ${grouped(sums.unread)} not read in full`}.</p>
<p class="quiet">${rowsText(sums)}${unchanged}.</p>
${remarks(overview)}
${enginesPart(overview.engines, linkTo)}
${kindsPart(overview.kinds)}
${trendsPart(overview)}`;
}

/** What is to be said of inputs without a section: that they have none, and which of them could not be read. */
export function leftOutPart(count: number, unread: readonly { name: string; why: string }[]): Markup {
  if (count <= 0) return html``;
  return html`<p class="quiet">The inputs with the worst findings have a section each; ${counted(count, "other has none", "others have none")}. For one of them: crosshatch check FILE --report page.html. All findings of all of them: crosshatch check --json.</p>
${unread.length > 0 && html`<ul class="quiet">${unread.map(({ name, why }) => html`<li>Not read in full: ${name} ${why}.</li>`)}</ul>`}`;
}

function remarks({ unknown, more }: Overview): Markup {
  return html`${unknown > 0 && html`<p class="quiet">Of ${counted(unknown, "input")} only the counts are known: the ledger was written before it held more. Their engines, findings and readings stand in none of the lists below; a run with a new ledger brings them in.</p>`}${more > 0 && html`<p class="quiet">${counted(more, "finding or reading", "findings and readings")} of inputs that name very many engines or characteristics are counted above and stand in none of the lists below.</p>`}`;
}

function enginesPart(engines: readonly EngineSum[], linkTo: (name: string) => string | undefined): Markup {
  if (engines.length === 0) return html``;
  const rows = engines.slice(0, MOST_ROWS).map(({ engine, inputs, outside, others, lastDay, worst }) => {
    const target = linkTo(worst.name);
    const input = target === undefined ? html`${worst.name}` : html`<a href="#${target}">${worst.name}</a>`;
    return html`<tr><td class="what">${engine}</td><td class="number">${grouped(outside)}</td><td class="number">${grouped(others)}</td><td class="number">${grouped(inputs)}</td><td class="limits">${lastDay || "not given"}</td><td class="what">${input}</td></tr>
`;
  });
  return html`<h3>Worst engines</h3>
${scrolled("Worst engines", html`<table><caption>By findings outside limits, then by all others. An engine is named as its sheet names it, otherwise by its file.</caption><thead><tr><th scope="col">Engine</th><th scope="col" class="number">Outside limits</th><th scope="col" class="number">Other findings</th><th scope="col" class="number">Inputs</th><th scope="col">Last measured</th><th scope="col">Worst input</th></tr></thead><tbody>${rows}</tbody></table>`)}
${rest(engines.length, "engine with findings is", "engines with findings are")}`;
}

function kindsPart(kinds: readonly KindSum[]): Markup {
  if (kinds.length === 0) return html``;
  const rows = kinds.slice(0, MOST_ROWS).map(
    ({ kind, characteristic, count, inputs }) =>
      html`<tr><td class="what">${characteristic}</td><td>${kind}</td><td class="number">${grouped(count)}</td><td class="number">${grouped(inputs)}</td></tr>
`,
  );
  return html`<h3>Most frequent findings</h3>
${scrolled("Most frequent findings", html`<table><thead><tr><th scope="col">Characteristic</th><th scope="col">Finding</th><th scope="col" class="number">How often</th><th scope="col" class="number">In inputs</th></tr></thead><tbody>${rows}</tbody></table>`)}
${rest(kinds.length, "kind of finding is", "kinds of findings are")}`;
}

function rest(count: number, one: string, many: string): Markup {
  return count > MOST_ROWS
    ? html`<p class="quiet">${counted(count - MOST_ROWS, `more ${one}`, `more ${many}`)} not listed here; crosshatch check --json lists every finding.</p>`
    : html``;
}

function trendsPart({ courses, undated }: Overview): Markup {
  const told = courses.filter(({ points }) => points.length >= FEWEST_POINTS);
  const without =
    undated > 0 &&
    html`<p class="quiet">${counted(undated, "input gives", "inputs give")} no day of measurement and ${undated === 1 ? "stands" : "stand"} in no trend.</p>`;
  if (told.length === 0) return without ? html`<h3>Trends</h3>${without}` : html``;
  const left = told.length - MOST_TRENDS;
  return html`<h3>Trends</h3>
<p class="quiet">Of every input and engine the reading of a characteristic that its limits allow least, on the day that the sheet gives.</p>
<div class="figures">${told.slice(0, MOST_TRENDS).map(trendFigure)}</div>
${without}${left > 0 && html`<p class="quiet">${counted(left, "more characteristic is", "more characteristics are")} not drawn here.</p>`}`;
}

function trendFigure({ characteristic, unit, points, left, lower, upper }: Course, i: number): Markup {
  const drawn = drawTrend({ characteristic, unit, points, lower: lower ?? undefined, upper: upper ?? undefined }, { id: `trend-${i + 1}`, width: HALF });
  if (!isDrawing(drawn)) return html`<p class="quiet">${drawn.sentence}.</p>`;
  const caption = `${characteristic}: ${counted(points.length, "reading")}${left > 0 ? `, ${grouped(left)} more are not drawn` : ""}`;
  return html`<figure class="half">${new Markup(drawn.svg)}<figcaption>${caption}</figcaption></figure>
`;
}
