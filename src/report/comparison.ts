import type { Comparison } from "../compare/compare.ts";
import type { ComparisonVerdict, LineJudgement } from "../compare/judgement.ts";
import { wearLines } from "../compare/words.ts";
import { counted, placesText } from "../core/number-text.ts";
import { VERSION } from "../core/version.ts";
import { CAUTIONS } from "./cautions.ts";
import { averages, denseTable, details, everyPlace, gauges } from "./comparison-tables.ts";
import { html } from "./markup.ts";
import { pageOf } from "./report.ts";
import { MOST_PRINTED } from "./sections.ts";

export interface ComparisonPage {
  date: string;
  /** The command that works it out again. */
  command: string;
  files: readonly { name: string; sha256: string }[];
}

/** One page to publish: the answer, one table with every row, what could not be compared and why, gauges and masters, and how to work it out again; details behind. */
export function renderComparison(comparison: Comparison, page: ComparisonPage): string {
  const { between, headline, verdicts, rows, places, refused, notes, wear } = comparison;
  const worn = wearLines(wear);
  const body = html`<header><h1>What differs, and what cannot be told</h1><p>${between}; compared on ${page.date}</p></header>
<main>
<p class="result">${answerOf(comparison)}</p>
<p class="quiet">${headline} ${placesText(rows, places.length)}; ${verdicts}.</p>
${averages(comparison)}
<h2>Every place</h2>
${everyPlace(comparison)}
${
  refused.length > 0 &&
  html`<h3>Not compared</h3>${denseTable(
    ["What", "Why"],
    refused.slice(0, MOST_PRINTED).map(({ label, why }) => [label, why]),
  )}`
}
<h3>Gauges and masters</h3>${gauges(places)}
${notes.length > 0 && html`<h3>Notes</h3><ul class="small">${notes.map((note) => html`<li>${note}</li>`)}</ul>`}
<h3>How it is judged</h3><ul class="small">${RULES.map((rule) => html`<li>${rule}</li>`)}</ul>
<h3>To work it out again</h3><p class="hash">${page.command}</p>
<ul class="small">${page.files.map(({ name, sha256 }) => html`<li>SHA-256 of ${name}: <span class="hash">${sha256}</span></li>`)}</ul>
<p class="small">Made by Crosshatch ${VERSION}. ${CAUTIONS[0]!.text}</p>
<section class="input apart"><h2>Details</h2>${worn.length > 0 && html`<h3>Wear</h3>${denseTable(["What", "Rate"], worn.slice(0, MOST_PRINTED))}`}<h3>Every line</h3>${details(comparison)}</section>
</main>`;
  return pageOf(`What differs, and what cannot be told: ${between}`, body);
}

const RULES: readonly string[] = [
  "Differs: beyond its gauge, and with a chance of at most 0.05 adjusted for all lines of its kind (Holm). Each kind of line is adjusted by itself.",
  "The same within what matters: a difference as large as what the shop has typed as the smallest that matters would seldom look so small (two one-sided tests at 5 %).",
  "Cannot tell: neither; the details say how large a difference may hide, and how large one would be seen nine times in ten.",
  "U is expanded, k = 2. Means go by the gauge while the scatter is not above it, otherwise by the scatter (Student's t).",
];

/** The answer: on the ways of treatment where there are some, and on the engines; otherwise on their means, or on the places. */
function answerOf({ groups, meanDifferences, means, places }: Comparison): string {
  const said = [
    ...sentence("Between the ways of treatment", groups),
    ...sentence("Between the engines", meanDifferences),
    ...(groups.length + meanDifferences.length > 0 ? [] : sentence("On average", means)),
  ];
  const all = said.length > 0 ? said : sentence("Of single places", places);
  return all.length === 0 ? "Nothing could be compared." : all.join(" ");
}

function sentence(subject: string, lines: readonly (LineJudgement & { characteristic: string })[]): string[] {
  const of = (verdict: ComparisonVerdict): string => {
    const names = [...new Set(lines.filter((line) => line.verdict === verdict).map((line) => line.characteristic))];
    return names.length > MOST_TOLD ? counted(names.length, "characteristic") : names.join(", ");
  };
  const [differs, same, open] = [of("differs"), of("same within"), of("cannot tell")];
  const parts = [differs && `${differs}: differs`, same && `${same}: the same within what matters`, open && `${open}: nobody can tell`].filter(Boolean);
  return parts.length === 0 ? [] : [`${subject}, ${parts.join("; ")}.`];
}

/** So many characteristics are named in a sentence. */
const MOST_TOLD = 4;
