import { type Finding, type JudgedRow, specOf } from "../check/finding.ts";
import { tally, tallyText, wordOf } from "../check/finding-words.ts";
import { counted, rowsText, uncertaintyText } from "../core/number-text.ts";
import type { DecisionRule, Verdict } from "../core/verdict.ts";
import { commonExaggeration } from "../drawings/bore.ts";
import { drawBoreProfile } from "../drawings/bore-profile.ts";
import { drawChangePlot } from "../drawings/change-plot.ts";
import { drawCompressionBars } from "../drawings/compression-bars.ts";
import { drawFaceHeights } from "../drawings/face-heights.ts";
import { drawRoundnessTrace } from "../drawings/roundness-trace.ts";
import { drawRunOut } from "../drawings/run-out-trace.ts";
import { drawSurfaceProfile } from "../drawings/surface-profile.ts";
import { type Drawn, isDrawing } from "../drawings/svg.ts";
import { numberText } from "../drawings/text.ts";
import type { CopiedTable, IdentityEntry, LimitRow, Placed, ReportInput } from "./content.ts";
import { decimalsFor, headed, html, type Level, limitText, Markup, placeMarkup, scrolled, typedDecimals } from "./markup.ts";

/** What came of the check, in one line. */
export function outcomePart({ name, result, unread, all }: ReportInput): Markup {
  const { findings, rowsIn, inputs } = result;
  const unreadable = unread === undefined ? html`` : html`<p class="result">Not read in full: ${name} ${unread}.</p>`;
  if (rowsIn + findings.length + inputs === 0) return unread === undefined ? html`<p class="result">There was nothing to check.</p>` : unreadable;
  const what =
    findings.length === 0 ? "Nothing was found." : `${counted(all?.count ?? findings.length, "finding")}: ${tallyText(all?.words ?? tally(findings))}.`;
  return html`${unreadable}<p class="result">${what}</p><p class="quiet">${rowsText(result)}.</p>`;
}

export function identityPart({ content: { identity } }: ReportInput, level: Level = "h3"): Markup {
  if (identity.length === 0) return html``;
  return html`${headed(level, "Engine")}<dl class="entries">${identity.map(entry)}</dl>`;
}

const entry = ({ name, text }: IdentityEntry): Markup => html`<div><dt>${name}</dt><dd>${text}</dd></div>`;

export function gaugesPart({ content: { gauges }, judged: { rows } }: ReportInput): Markup {
  const filled = gauges.filter((table) => table.rows.length > 0);
  if (filled.length > 0) return html`<h3>Gauges</h3>${filled.map(copied)}`;
  if (rows.length === 0) return html``;
  return html`<h3>Gauges</h3><p>The input names no gauges. Which ones were used, and until when their calibration holds, has to be asked of the shop.</p>`;
}

const copied = (table: CopiedTable): Markup => copiedTable("Gauges", table);

export const copiedTable = (name: string, { headings, rows }: CopiedTable, look = ""): Markup =>
  html`${scrolled(name, html`<table class="${look}"><thead><tr>${headings.map((heading) => html`<th scope="col">${heading}</th>`)}</tr></thead><tbody>${rows.map((row) => html`<tr>${row.map((cell) => html`<td>${cell}</td>`)}</tr>`)}</tbody></table>`)}`;

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
export function rulePart(inputs: readonly ReportInput[], level: Level = "h2"): Markup {
  const rows = inputs.flatMap(({ judged }) => judged.rows);
  const withDoubt = rows.some(({ uncertainty }) => uncertainty > 0);
  const has = (wanted: DecisionRule) => rows.some(({ rule }) => rule === wanted);
  const without = rows.some(({ uncertainty }) => uncertainty === 0);
  const sentences = [
    "A value on its limit is within it. Values are compared as the decimals that were typed, to nine places.",
    has("full U") &&
      "Where an uncertainty U (expanded, k = 2) is given, the rule of ISO 14253-1:1998 holds: within is proven only inside the limits drawn in by all of U, over and under only outside the limits let out by it, and in between nothing is proven.",
    has("95 %") &&
      "Where the sheet asks for the rule 95 %, within, over and under are proven at a probability of at least 95 % (JCGM 106:2012; the default of ISO 14253-1:2017), with half of U as standard uncertainty.",
    without &&
      `${withDoubt ? "Where none is given," : "No uncertainty is given for these readings, so"} a value is taken as it was read: close to a limit the part may lie on either side of it, as far as the gauge can err.`,
    rows.some(({ near }) => near > 0) && "Near limit: within, but no further from a limit than the distance that the shop has set.",
  ].filter((sentence) => sentence !== false);
  return html`${headed(level, "How verdicts are reached")}<ul>${sentences.map((sentence) => html`<li>${sentence}</li>`)}</ul>`;
}

/** Drawings of one kind that a report holds; a block of 16 cylinders in four sheets. */
const MOST_DRAWN = 64;

/** Room across the page and half of it, in CSS pixels. */
const WHOLE = 640;

export const HALF_WIDTH = 420;

/** Everything that can be drawn of one input. `id` keeps the drawings of several inputs apart. */
export function figuresPart({ content }: ReportInput, id: string, width = WHOLE, level: Level = "h3"): Markup {
  const { bores, traces, turns, faces, surfaces, tests, changes } = content;
  const factor = commonExaggeration(bores.map(({ what }) => what));
  const figures = [
    ...kind("Bore profile", bores, (bore, i) => {
      const common = factor(bore);
      return drawBoreProfile(bore, { id: `${id}-bore-${i}`, width, ...(common === undefined ? {} : { factor: common }) });
    }),
    ...kind("Roundness trace", traces, (trace, i) => drawRoundnessTrace(trace, { id: `${id}-trace-${i}` })),
    ...kind("Run-out", turns, (turn, i) => drawRunOut(turn, { id: `${id}-turn-${i}`, width: HALF_WIDTH })),
    ...kind("Face heights", faces, (face, i) => drawFaceHeights(face, { id: `${id}-face-${i}`, width: HALF_WIDTH })),
    ...kind("Surface profile", surfaces, (profile, i) => drawSurfaceProfile(profile, { id: `${id}-surface-${i}`, width: HALF_WIDTH })),
    ...kind("Compression test", tests, (test, i) => drawCompressionBars(test, { id: `${id}-test-${i}`, width: HALF_WIDTH })),
    ...kind("Changes", changes, (plot, i) => drawChangePlot(plot, { id: `${id}-change-${i}`, width })),
  ];
  if (figures.length === 0) return html``;
  return html`${headed(level, "Drawings")}<div class="figures">${figures}</div>`;
}

function kind<T>(title: string, all: readonly Placed<T>[], draw: (what: T, index: number) => Drawn): Markup[] {
  const figures = all.slice(0, MOST_DRAWN).map(({ what, place }, i) => figure(draw(what, i + 1), `${title}, ${place}`));
  const rest = all.length - MOST_DRAWN;
  return rest > 0 ? [...figures, html`<p class="quiet">${title}: ${counted(rest, "more is", "more are")} not drawn here.</p>`] : figures;
}

function figure(drawn: Drawn, caption: string): Markup {
  if (!isDrawing(drawn)) return html`<p class="quiet">${caption}: ${drawn.sentence}.</p>`;
  return html`<figure class="${drawn.width <= HALF_WIDTH ? "half" : "whole"}">${new Markup(drawn.svg)}<figcaption>${caption}</figcaption></figure>
`;
}

/** More than this is not printed: nobody reads it on paper, and it is said how many are left out. */
export const MOST_PRINTED = 1000;

type Weight = "bad" | "doubt" | "";

const word = (text: string, weight: Weight): Markup => html`<td class="word ${weight}">${text}</td>`;

/** How a verdict is marked in print. */
export const markOf = (verdict: Verdict): Weight => (verdict === "within" ? "" : verdict === "over" || verdict === "under" ? "bad" : "doubt");

/** What somebody should see, worst first. */
export function findingsPart({ result: { findings }, all }: ReportInput): Markup {
  if (findings.length === 0) return html``;
  const rows = findings.slice(0, MOST_PRINTED).map((finding) => findingRow(finding));
  return html`<h3>Findings, worst first</h3>
${scrolled("Findings, worst first", html`<table><thead><tr><th scope="col">Finding</th><th scope="col">What</th><th scope="col">Where</th><th scope="col">In words</th></tr></thead><tbody>${rows}</tbody></table>`)}
${leftOut(all?.count ?? findings.length, "finding")}`;
}

const findingRow = (finding: Finding): Markup =>
  html`<tr>${word(wordOf(finding), specOf(finding.kind).isGrave ? "bad" : "doubt")}<td class="what">${finding.label}</td><td class="place">${placeMarkup(finding)}</td><td>${finding.sentence}</td></tr>
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
  const typedAs = typedDecimals(printed);
  const head = html`<tr><th scope="col">What</th><th scope="col">Where</th><th scope="col" class="number">Value</th>${withDoubt && html`<th scope="col" class="number">U</th>`}<th scope="col">Limits</th><th scope="col" class="number">Margin</th><th scope="col">Verdict</th></tr>`;
  return html`<h3>Results</h3>
${scrolled("Results", html`<table><caption>${talliesOf(counts)}. Margin: distance to the nearest limit, negative outside.</caption><thead>${head}</thead><tbody>${printed.map((row) => resultRow(row, typedAs(row), withDoubt))}</tbody></table>`)}
${leftOut(Math.max(total, printed.length), "result")}`;
}

function resultRow(row: JudgedRow, typed: number, withDoubt: boolean): Markup {
  const { label, value, uncertainty, lower, upper, margin, verdict } = row;
  const decimals = typeof value === "number" ? decimalsFor(value, [lower, upper], typed) : typed;
  return html`<tr><td class="what">${label}</td><td class="place">${placeMarkup(row)}</td><td class="number">${typeof value === "number" ? numberText(value, decimals) : value}</td>${withDoubt && html`<td class="number">${uncertainty > 0 ? uncertaintyText(uncertainty) : ""}</td>`}<td class="limits">${limitText(lower, upper, typed)}</td><td class="number">${margin === null ? "" : numberText(margin, decimals)}</td>${word(verdict, markOf(verdict))}</tr>
`;
}

/** `22 within, 1 near limit, 3 over` */
export const talliesOf = (counts: Readonly<Record<Verdict, number>>): string =>
  Object.entries(counts)
    .filter(([, count]) => count > 0)
    .map(([verdict, count]) => `${count} ${verdict}`)
    .join(", ");
