import { type Comparison, enOf, linesOf } from "../compare/compare.ts";
import type { DifferenceOfChanges } from "../compare/difference-of-changes.ts";
import type { ComparisonVerdict, LineJudgement } from "../compare/judgement.ts";
import type { MasterChange } from "../compare/masters.ts";
import type { PlaceChange } from "../compare/place-change.ts";
import { uncertaintyOf } from "../compare/sessions.ts";
import { groupedBy, largestNumber } from "../core/grouped.ts";
import { counted, decimalsOf, fixed, readingText, uncertaintyText } from "../core/number-text.ts";
import { foldedHeading, labelFrom } from "../vocabulary/headings.ts";
import { ownerKey } from "../vocabulary/subjects.ts";
import { coupleRows, inOrderOfPlaces, isOfTwoEngines, limitsOfPlace } from "./comparison-rows.ts";
import { html, limitText, type Markup, scrolled } from "./markup.ts";
import { MOST_PRINTED } from "./sections.ts";

const WORDS: Readonly<Record<ComparisonVerdict, "bad" | "doubt" | "">> = { differs: "bad", "cannot tell": "doubt", "same within": "" };
const verdictCell = ({ verdict, withinMatters }: LineJudgement): Markup =>
  html`<td class="word ${WORDS[verdict]}">${verdict === "differs" && withinMatters ? "differs, less than matters" : verdict}</td>`;
const number = (text: string): Markup => html`<td class="number">${text}</td>`;
const head = (names: readonly string[], words: number): Markup =>
  html`<thead><tr>${names.map((name, i) => (i < words || i === names.length - 1 ? html`<th scope="col">${name}</th>` : html`<th scope="col" class="number">${name}</th>`))}</tr></thead>`;
export const denseTable = (names: readonly string[], rows: readonly (readonly string[])[]): Markup =>
  html`<table class="dense">${head(names, names.length)}<tbody>${rows.map((row) => html`<tr>${row.map((cell) => html`<td>${cell}</td>`)}</tr>`)}</tbody></table>`;

const signed = (change: number, decimals: number): string => `${change > 0 ? "+" : ""}${fixed(change, decimals)}`;
const uText = (uncertainty: number | null): string => (uncertainty === null ? "not given" : uncertaintyText(uncertainty));
const mattersText = (matters: number | null): string => (matters === null ? "not typed" : readingText(matters));

/** What holds on average: groups, engines against one another, and each engine. */
export function averages({ groups, means, meanDifferences }: Comparison): Markup {
  const lines = [...groups, ...meanDifferences, ...means];
  if (lines.length === 0) return html``;
  const rows = lines.map((line) => {
    const { decimals, lower, upper } = line;
    const interval = lower === null ? "" : `${signed(lower, decimals)} to ${signed(upper!, decimals)}`;
    return html`<tr><td class="what">${line.label}</td>${[signed(line.difference, decimals), interval, "lone" in line && line.lone !== null ? "–" : uText(line.uncertainty), mattersText(line.matters)].map(number)}${verdictCell(line)}</tr>
`;
  });
  return html`<h2>On average</h2>${scrolled("On average", html`<table class="dense">${head(["What", "Difference", "95 %", "U", "Matters", "Verdict"], 1)}<tbody>${rows}</tbody></table>`)}`;
}

const nameOf = ({ engine, cylinder, position }: PlaceChange, withEngine: boolean): string =>
  labelFrom({ engine: withEngine ? engine : "", cylinder, position });

/** `bore, mm: limit 73.000 to 73.080, matters 0.005`: what the rows below have in common. */
function commonText(place: PlaceChange, mattersAmong = place.matters): string {
  const { own, characteristic, unit, typedDecimals, decimals, master, thermal } = place;
  const { lower, upper } = limitsOfPlace(place);
  const limit = limitText(lower, upper, typedDecimals);
  const parts = [
    limit === "none" ? "no limit given" : `limit ${limit}`,
    mattersAmong === null ? "what matters not typed" : `matters ${readingText(mattersAmong)}`,
    master && master.moved !== 0 ? `changes less ${signed(master.moved, decimals)}, by which the master moved` : "",
    thermal ? "changes at 20 °C" : "",
  ].filter(Boolean);
  return `${own || characteristic}${unit ? `, ${unit}` : ""}: ${parts.join("; ")}`;
}

/** A table of so many rows at most, under headings of what they have in common; how many are left out is said. */
function placesTable(rows: readonly { common: string; cells: Markup }[], columns: readonly string[]): Markup {
  const rest = rows.length - MOST_PRINTED;
  const parts = [...groupedBy(rows.slice(0, MOST_PRINTED), ({ common }) => common)].map(
    ([common, own]) =>
      html`<tbody><tr><th colspan="${String(columns.length)}" scope="rowgroup">${common}</th></tr>${own.map(
        ({ cells }) => html`<tr>${cells}</tr>
`,
      )}</tbody>`,
  );
  const left = rest > 0 && html`<p>${counted(rest, "more row is", "more rows are")} not printed here; the table as CSV has all.</p>`;
  return html`${scrolled("Every place", html`<table class="dense">${head(columns, 1)}${parts}</table>`)}${left}`;
}

/** Every place, of one engine or of two side by side. */
export const everyPlace = (comparison: Comparison): Markup => (isOfTwoEngines(comparison) ? bothEngines(comparison) : oneEngine(comparison));

function oneEngine({ places, kind, engines }: Comparison): Markup {
  const withEngine = new Set(places.map(({ engine }) => ownerKey("engine", engine))).size > 1;
  const sides = kind === "sizes" && engines ? [engines[0], engines[1], "Difference"] : ["Before", "After", "Change"];
  const rows = inOrderOfPlaces(places).map((place) => {
    const { sizeDecimals, decimals, before, after, difference, uncertainty } = place;
    const cells = [fixed(before.value, sizeDecimals), fixed(after.value, sizeDecimals), signed(difference, decimals), uText(uncertainty)].map(number);
    return { common: commonText(place), cells: html`<td class="what">${nameOf(place, withEngine)}</td>${cells}${verdictCell(place)}` };
  });
  return placesTable(rows, ["Place", ...sides, "U", "Verdict"]);
}

/** Two engines side by side: what each has changed by, and the difference of that. */
function bothEngines(comparison: Comparison): Markup {
  const sizes = (place: PlaceChange | undefined): Markup[] =>
    place === undefined
      ? [number("–"), number("–"), number("–")]
      : [number(fixed(place.before.value, place.sizeDecimals)), number(fixed(place.after.value, place.sizeDecimals)), changeCell(place)];
  const rows = coupleRows(comparison).map(({ first, second, line }) => {
    const one = (first ?? second)!;
    const verdict = line === undefined ? html`<td class="word">one engine only</td>` : verdictCell(line);
    const cells = html`<td class="what">${nameOf(one, false)}</td>${sizes(first)}${sizes(second)}${differenceCells(line)}${verdict}`;
    return { common: commonText(one, line === undefined ? one.matters : line.matters), cells };
  });
  const columns = ["Place", ...comparison.engines!.flatMap((name) => [`${name} before`, "after", "change"]), "Difference", "U", "Verdict"];
  return html`${placesTable(rows, columns)}<p class="small quiet">■ behind a change: it differs by itself. The verdict is on the difference of the two changes.</p>`;
}

const changeCell = (place: PlaceChange): Markup =>
  html`<td class="number">${signed(place.difference, place.decimals)}${place.verdict === "differs" ? " ■" : ""}</td>`;
const differenceCells = (line: DifferenceOfChanges | undefined): Markup[] =>
  line === undefined ? [number(""), number("")] : [number(signed(line.difference, line.decimals)), number(uText(line.uncertainty))];

/** With which gauges and on which days the places were measured, and what their masters read. */
export function gauges(places: readonly PlaceChange[]): Markup {
  const uses = places.flatMap((place) =>
    (["before", "after"] as const).map((campaign) => {
      const { gauge = "", day = "", common } = place[campaign].readings[0]!;
      return { gauge, day, common, campaign, U: uncertaintyOf(place[campaign]), master: place.master };
    }),
  );
  const rows = [...groupedBy(uses, ({ gauge, day, campaign }) => [foldedHeading(gauge), campaign, day].join("|")).values()].map((own) => {
    const [{ gauge, day, campaign, common }] = own as [(typeof own)[number]];
    const master = own.find((one) => one.master !== undefined)?.master;
    const i = campaign === "before" ? 0 : 1;
    const U = largestNumber(own.map((one) => one.U ?? 0));
    const told = master === undefined ? "not read in both" : `${masterText(master)[i]} (${counted(master.readings[i]!, "reading")})`;
    return [
      gauge || "not named",
      campaign,
      day || "not given",
      U > 0 ? uncertaintyText(U) : "not given",
      common === undefined ? "not split" : readingText(common),
      told,
      String(own.length),
    ];
  });
  return denseTable(["Gauge", "Campaign", "Day", "U", "Common part", "Master", "Places"], rows);
}

/** The means of a master's readings, with as many decimals as either needs, and at least those that shops read. */
const masterText = ({ means }: MasterChange): string[] =>
  means.map((value) => fixed(value, Math.max(3, ...means.map((mean) => Math.min(decimalsOf(mean), 4)))));

/** The statistics of every line. */
export function details(comparison: Comparison): Markup {
  const rows = linesOf(comparison)
    .slice(0, MOST_PRINTED)
    .map((line) => {
      const { decimals, n, by, degreesOfFreedom, p, pAdjusted, commonUncertainty, lower, upper, mayHide, toSee } = line;
      const en = enOf(line);
      const law = by === null ? "" : degreesOfFreedom === null ? by : `${by}, ${degreesOfFreedom < 100 ? degreesOfFreedom.toFixed(1) : "many"}`;
      const cells = [
        ...[String(n), law, commonUncertainty === null ? "" : uncertaintyText(commonUncertainty)],
        ...[lower === null ? "" : `${signed(lower, decimals + 1)} to ${signed(upper!, decimals + 1)}`, en === null ? "" : en.toFixed(2)],
        ...[p, pAdjusted].map((chance) => (chance === null ? "" : chance < 0.0005 ? "< 0.0005" : chance.toFixed(3))),
        ...[mayHide, toSee].map((size) => (size === null ? "" : uncertaintyText(size))),
      ];
      return html`<tr><td class="what">${line.label}</td>${cells.map(number)}${verdictCell(line)}</tr>
`;
    });
  return scrolled(
    "Details",
    html`<table class="dense">${head(["What", "n", "By, df", "Common U", "95 %", "En", "p", "adjusted", "May hide", "To see", "Verdict"], 1)}<tbody>${rows}</tbody></table>`,
  );
}
