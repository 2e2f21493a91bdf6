import { isAbove, isBelow } from "../core/decimal.ts";
import { counted, fixed, grouped, readingText, uncertaintyText } from "../core/number-text.ts";
import type { DifferenceEstimate } from "./difference-of-changes.ts";
import type { Sides } from "./engines.ts";
import type { GroupEstimate } from "./groups.ts";
import { BEYOND_BY_CHANCE, type FamilyCounts, type LineJudgement } from "./judgement.ts";
import type { MeanEstimate } from "./mean-change.ts";
import type { PlaceEstimate } from "./place-change.ts";
import type { Wear } from "./wear.ts";

/** Changes of one engine, or differences between two that are named. */
type Between = Pick<Sides, "kind" | "names">;

/** Equal readings may stand for sizes that differ: only the verdict calls something the same. */
const sized = (difference: number, decimals: number): string =>
  difference === 0 ? "reads alike" : `${fixed(Math.abs(difference), decimals)} ${difference > 0 ? "larger" : "smaller"}`;

/** `73.020 → 73.054 mm`, or `A 73.020, B 73.054 mm`: the sizes of a place with the decimals of their like. */
export function sizesText({ before, after, sizeDecimals, unit }: PlaceEstimate, { kind, engines }: Pick<Sides, "kind" | "engines">): string {
  const [a, b] = [before, after].map(({ value }) => fixed(value, sizeDecimals));
  return `${kind === "sizes" ? `${engines![0]} ${a}, ${engines![1]} ${b}` : `${a} → ${b}`}${unit ? ` ${unit}` : ""}`;
}

/** `A 0.010, B 0.034`: what two engines have changed by. */
export const changesText = ({ changes, decimals, ...line }: DifferenceEstimate | GroupEstimate): string =>
  ("groups" in line ? line.groups : line.engines).map((name, i) => `${name} ${fixed(changes[i]!, decimals)}`).join(", ");

/** One place in a sentence. */
export function placeSays(place: PlaceEstimate & LineJudgement, { kind, names }: Between, lines: number): string {
  const { decimals, difference, direction, uncertainty } = place;
  const worse = kind === "changes" && direction === "worse" ? ", which is worse" : "";
  const where = kind === "sizes" && difference !== 0 ? ` ${names.after}` : "";
  const size = `${sized(difference, decimals)}${where}${correctionText(place)}${repeatsText(place)}${worse}`;
  const gauge = kind === "changes" ? "its gauge" : "their gauge";
  const beyond = `beyond ${gauge} (${uncertainty === null ? "" : uncertaintyText(uncertainty)})`;
  return `${size}: ${verdictWords(place, beyond, lines)}`;
}

/** What was taken out of a change before it was judged. */
function correctionText({ master, thermal, decimals }: PlaceEstimate): string {
  const parts = [
    master && master.moved !== 0
      ? `less the ${fixed(Math.abs(master.moved), decimals)} by which the master read ${master.moved > 0 ? "larger" : "smaller"}`
      : "",
    thermal ? "at 20 °C" : "",
  ].filter(Boolean);
  return parts.length === 0 ? "" : ` (${parts.join(", ")})`;
}

function repeatsText({ before, after }: PlaceEstimate): string {
  const most = Math.max(before.readings.length, after.readings.length);
  return most > 1 ? ` by the means of ${before.readings.length} and ${after.readings.length} readings` : "";
}

/** The mean over places in a sentence. */
export function meanSays(mean: MeanEstimate & LineJudgement, { kind, names }: Between, lines: number): string {
  const where = kind === "sizes" && mean.difference !== 0 ? ` ${names.after}` : "";
  const cylinders = mean.cylinders > 1 && mean.cylinders < mean.n ? ` of ${mean.cylinders} cylinders` : "";
  return `${sized(mean.difference, mean.decimals)}${where} on average over ${mean.n} places${cylinders}${withoutText(mean)}: ${averageWords(mean, lines)}`;
}

const withoutText = ({ without }: MeanEstimate): string => (without > 0 ? `, ${without} without an uncertainty left out` : "");

/** A difference between two engines' changes in a sentence. */
export function differenceSays(difference: DifferenceEstimate & LineJudgement, lines: number): string {
  const [first, second] = difference.engines;
  const { level, n } = difference;
  const size = apartText(`engine ${first}`, `engine ${second}`, difference);
  if (level === "mean") return `${size} on average over ${n} places: ${averageWords(difference, lines)}`;
  return `${size}: ${verdictWords(difference, `beyond the gauges (${difference.uncertainty === null ? "" : uncertaintyText(difference.uncertainty)})`, lines)}`;
}

/** A difference between two ways of treatment in a sentence. */
export function groupSays(line: GroupEstimate & LineJudgement, lines: number): string {
  const { groups, engines, lone } = line;
  const over = `${apartText(...groups, line)}, ${counted(engines[1], "engine")} against ${engines[0]}`;
  return lone === null ? `${over}: ${averageWords(line, lines)}` : `${over}: cannot tell, as there is only one engine of ${lone}`;
}

/** `engine B grew by 0.012 more`, `shrank by 0.001 less`; where one grew and the other shrank, which, and how far apart that is. */
function apartText(first: string, second: string, { changes, difference, decimals }: Pick<DifferenceEstimate, "changes" | "difference" | "decimals">): string {
  const [one, other] = changes;
  const amount = fixed(Math.abs(difference), decimals);
  if (difference === 0) return "changed alike";
  if (one >= 0 && other >= 0) return `${second} grew by ${amount} ${difference > 0 ? "more" : "less"}`;
  if (one <= 0 && other <= 0) return `${second} shrank by ${amount} ${difference < 0 ? "more" : "less"}`;
  return `${second} ${other > 0 ? "grew" : "shrank"} and ${first} ${one > 0 ? "grew" : "shrank"}, ${amount} apart`;
}

function averageWords(judged: LineJudgement & { decimals: number }, lines: number): string {
  if (judged.uncertainty === null) return verdictWords(judged, "", lines);
  const { decimals, lower, upper, by, n } = judged;
  const few = by === "scatter" && n <= (judged.level === "group" ? 4 : 3) ? "; the scatter is poorly known" : "";
  const { verdict, matters } = judged;
  // The interval is that of "differs"; the one of "the same" is narrower, and this one may go beyond what matters.
  const goesBeyond = verdict === "same within" && (isBelow(lower!, -matters!) || isAbove(upper!, matters!));
  const tests = goesBeyond ? ", by two one-sided tests at 5 %" : "";
  const level = goesBeyond ? " at 95 %" : "";
  return `${verdictWords(judged, "beyond what the measuring explains", lines)}${tests} (${fixed(lower!, decimals)} to ${fixed(upper!, decimals)}${level} by the ${by}${few})`;
}

function verdictWords({ verdict, withinMatters, matters, mayHide, beyondGauge, pAdjusted }: LineJudgement, beyond: string, lines: number): string {
  if (mayHide === null) return "cannot tell, as no uncertainty is given";
  if (verdict === "differs") return `differs, ${beyond}${withinMatters ? `; a difference, but less than the ${readingText(matters!)} that matters` : ""}`;
  if (verdict === "same within") return `the same within ${readingText(matters!)}`;
  const chance = beyondGauge && pAdjusted! > 0.05 && lines > 1 ? `${beyond}, but among ${grouped(lines)} that may be chance: ` : "";
  return `${chance}cannot tell, up to ${uncertaintyText(mayHide)} may hide`;
}

/** `8 of 64 lie beyond their own gauge; about 3 would by chance; 2 remain.` */
export function headline({ judged, beyondGauge, differs, lines }: FamilyCounts): string {
  if (lines === 0) return "Nothing could be compared.";
  if (judged === 0) return `Nothing can be told of ${counted(lines, "place")}: no uncertainty is given.`;
  const beyond = beyondGauge === 0 ? `None of ${grouped(judged)} lies` : `${grouped(beyondGauge)} of ${grouped(judged)} ${beyondGauge === 1 ? "lies" : "lie"}`;
  const about = BEYOND_BY_CHANCE * judged;
  const expected = about < 0.5 ? "hardly one" : `about ${grouped(Math.round(about))}`;
  const left = beyondGauge === 0 ? "" : `; ${differs === 0 ? "none" : grouped(differs)} ${differs === 1 ? "remains" : "remain"}`;
  return `${beyond} beyond ${beyondGauge === 1 || beyondGauge === 0 ? "its" : "their"} own gauge; ${expected} would by chance${left}.`;
}

/** What all lines came to: `of 67 lines 5 differ, 40 are the same within what matters, 22 cannot be told`. A line is a place, a mean or a difference. */
export function verdictsText(judgements: readonly LineJudgement[]): string {
  const count = (verdict: LineJudgement["verdict"]): number => judgements.filter((one) => one.verdict === verdict).length;
  const differs = `of ${counted(judgements.length, "line")} ${grouped(count("differs"))} ${count("differs") === 1 ? "differs" : "differ"}`;
  const open = `${grouped(count("cannot tell"))} cannot be told`;
  if (judgements.every(({ matters }) => matters === null)) return `${differs}, ${open}; nothing is called the same until what matters is typed`;
  return `${differs}, ${grouped(count("same within"))} ${count("same within") === 1 ? "is" : "are"} the same within what matters, ${open}`;
}

/** The wear that can be told from none, by label and sentence: what comes to its limit soonest goes first. */
export const wearLines = (wear: readonly Wear[]): [label: string, says: string][] =>
  wear
    .filter(({ distinguishable, verdict, n }) => distinguishable && (verdict === "differs" || n > 2))
    .sort((a, b) => (a.earliest ?? Number.MAX_VALUE) - (b.earliest ?? Number.MAX_VALUE))
    .map(({ label, says }) => [label, says]);
