import { type JudgedRow, specOf } from "../check/finding.ts";
import { tally, tallyText } from "../check/finding-words.ts";
import { counted, rowsText, uncertaintyText } from "../core/number-text.ts";
import type { Verdict } from "../core/verdict.ts";
import { numberText } from "../drawings/text.ts";
import type { MeasuredCell, MeasuredPart, MeasuredTable, ReportInput, ShopHead } from "./content.ts";
import { decimalsFor, html, limitText, type Markup, scrolled, typedWith } from "./markup.ts";
import { pictureAddress } from "./picture.ts";
import { copiedTable, identityPart, markOf, talliesOf } from "./sections.ts";

/** The shop's name, address and mark, where the workbook has them, beside what the paper is. */
export function headPart(shop: ShopHead | undefined, date: string): Markup {
  const address = pictureAddress(shop?.picture);
  const shown = shop && (shop.name !== "" || shop.lines.length > 0 || address !== undefined);
  const own =
    shown &&
    html`<div class="shop">${address !== undefined && html`<img src="${address}" alt="${shop.name ? `Mark of ${shop.name}` : "Mark of the shop"}">`}<div>${shop.name !== "" && html`<p class="name">${shop.name}</p>`}${shop.lines.map((line) => html`<p>${line}</p>`)}</div></div>`;
  return html`<header class="letterhead">${own}<div><h1>Engine build sheet</h1><p>As checked on ${date}</p></div></header>`;
}

/** What a customer keeps of one workbook: whose engine, what was measured and how it stands against the limits, what was noted. */
export function buildSheetPart(input: ReportInput): Markup {
  const { measured, records, remarks } = input.content;
  return html`${identityPart(input, "h2")}
${standingPart(input)}
${measuredPart(measured)}
${sourcesPart(input)}
${records.map(({ title, ...table }) => html`<h2>${title}</h2>${copiedTable(title, table, "dense")}`)}
${
  remarks.length > 0 && html`<h2>Remarks</h2><dl class="remarks">${remarks.map(({ about, text }) => html`<div><dt>${about}</dt><dd>${text}</dd></div>`)}</dl>`
}`;
}

/** How the engine stands against its limits, and what else a check found. */
function standingPart({ name, result, judged: { counts }, unread, all }: ReportInput): Markup {
  const { findings } = result;
  const others = new Map([...(all?.words ?? tally(findings))].filter(([word]) => !Object.hasOwn(counts, word)));
  const judged = talliesOf(counts);
  const inDoubt = findings.filter(({ kind }) => specOf(kind).voidsVerdicts).slice(0, MOST_IN_DOUBT);
  return html`${unread !== undefined && html`<p class="result">Not read in full: ${name} ${unread}.</p>`}<p class="result">${judged ? `Judged: ${judged}.` : "Nothing is judged yet."}</p>
<p class="quiet small">${rowsText(result)}.${others.size > 0 && ` Found beside verdicts: ${tallyText(others)}.`}</p>${inDoubt.map(
    ({ label, sentence }) => html`
<p class="result">To be cleared up first: ${label}: ${sentence}.</p>`,
  )}`;
}

/** More of one kind are counted only; the findings in full name them all. */
const MOST_IN_DOUBT = 3;

/** Most numbers across one page, with verdicts and without. */
const MOST_ACROSS = { judged: 6, read: 10 };

function measuredPart(parts: readonly MeasuredPart[]): Markup {
  const all = parts.flatMap(({ tables }) => tables.flatMap(({ rows }) => rows.flatMap(({ cells }) => cells.flatMap((cell) => cell?.judged ?? []))));
  const said = [
    "Every reading, and what was worked out and judged. Limits were typed by the shop; none is built into the program.",
    all.some(({ verdict }) => markOf(verdict) === "bad") && "■ outside its limit.",
    all.some(({ verdict }) => markOf(verdict) === "doubt") && "□ near its limit, or not proven: closer to it than the gauge can tell.",
    all.some(({ uncertainty }) => uncertainty > 0) && "U: uncertainty of the value (expanded, k = 2).",
  ].filter((sentence) => sentence !== false);
  return html`<h2>Measured</h2><p class="quiet small">${said.join(" ")}</p>
${parts.map(({ title, tables }) => html`<h3>${title}</h3>${tables.flatMap(inPieces).map((table) => measuredTable(title, table))}`)}`;
}

/** As many tables of nearly the same width as it takes. */
function inPieces(table: MeasuredTable): MeasuredTable[] {
  const most = isJudged(table) ? MOST_ACROSS.judged : MOST_ACROSS.read;
  const pieces = Math.ceil(table.owners.length / most);
  const across = Math.ceil(table.owners.length / pieces);
  return Array.from({ length: pieces }, (_, i) => {
    const part = <T>(all: readonly T[]) => all.slice(i * across, (i + 1) * across);
    const rows = table.rows.map(({ name, cells }) => ({ name, cells: part(cells) })).filter(({ cells }) => cells.some((cell) => cell !== null));
    return { owners: part(table.owners), rows };
  });
}

const isJudged = ({ rows }: MeasuredTable): boolean => rows.some(({ cells }) => cells.some((cell) => cell?.judged.length));

function measuredTable(title: string, table: MeasuredTable): Markup {
  const { owners, rows } = table;
  const isLimited = isJudged(table);
  const head = html`<tr><th scope="col" class="what">What</th>${owners.map((owner) => html`<th scope="col" class="number">${owner.replace(/ (?=\S+$)/, "\u00a0") || "Value"}</th>`)}${isLimited && html`<th scope="col" class="limits">Limits</th>`}</tr>`;
  const body = rows.map(({ name, cells }) => measuredRow(name, cells, isLimited));
  return html`${scrolled(title, html`<table class="dense measured${owners.length < 3 ? " narrow" : ""}"><thead>${head}</thead><tbody>${body}</tbody></table>`)}
`;
}

/** What a row is judged by stands once at its end where it is the same for all, and otherwise with each number. */
function measuredRow(name: string, cells: readonly (MeasuredCell | null)[], isLimited: boolean): Markup {
  // As of a column of the sheet: beside 73.025 what it keeps as 73.02 was read as 73.020.
  const typed = typedWith(cells.flatMap((cell) => (cell ? [cell.value, ...boundsOf(cell)] : [])));
  const limits = cells.map((cell) => (cell ? [...new Set(cell.judged.map((row) => limitsOf(row, typed)))].join("; ") : ""));
  const distinct = new Set(limits.filter(Boolean));
  const isShared = distinct.size <= 1;
  const shown = Math.max(typed, ...cells.map((cell) => (typeof cell?.value === "number" ? decimalsFor(cell.value, boundsOf(cell), typed) : 0)));
  return html`<tr><th scope="row" class="what">${name}</th>${cells.map((cell, i) => measuredCell(cell, shown, isShared ? "" : limits[i]!))}${isLimited && html`<td class="limits">${isShared ? [...distinct].join("") : "as beside each"}</td>`}</tr>
`;
}

const boundsOf = ({ judged }: MeasuredCell): (number | null)[] => judged.flatMap(({ lower, upper }) => [lower, upper]);

const limitsOf = ({ lower, upper, uncertainty }: JudgedRow, typed: number): string =>
  [limitText(lower, upper, typed), uncertainty > 0 && `U ${uncertaintyText(uncertainty)}`].filter(Boolean).join(", ");

function measuredCell(cell: MeasuredCell | null, decimals: number, limits: string): Markup {
  if (!cell) return html`<td></td>`;
  const { value, judged } = cell;
  const number = typeof value === "number" ? numberText(value, decimals) : value;
  const verdicts = [...new Set(judged.map(({ verdict }) => verdict))].sort((a, b) => WORST.indexOf(a) - WORST.indexOf(b));
  // Judged twice, by a rule and by limits of its own: what is worse counts.
  const [verdict] = verdicts;
  return html`<td class="number">${number}${verdict !== undefined && html` <span class="word ${markOf(verdict)}">${verdict}</span>`}${limits !== "" && html`<br><span class="quiet">${limits}</span>`}</td>`;
}

const WORST: readonly Verdict[] = ["over", "under", "not proven", "near limit", "within"];

/** Most sources that are named; a list of more is read with the limits. */
const MOST_SOURCES = 6;

/** Where the limits come from, by what the shop says. */
function sourcesPart({ content: { limits } }: ReportInput): Markup {
  const sources = [...new Set(limits.map(({ source }) => source).filter(Boolean))];
  const without = limits.filter(({ source }) => source === "").length;
  if (limits.length === 0) return html``;
  const named = sources.slice(0, MOST_SOURCES).join("; ");
  const more = sources.length - MOST_SOURCES;
  const said = [
    named && `Source of the limits: ${named}${more > 0 ? `; and ${more} more` : ""}.`,
    without > 0 && `${counted(without, "limit")} without a source.`,
  ].filter(Boolean);
  return html`<p class="small quiet">${said.join(" ")}</p>`;
}
