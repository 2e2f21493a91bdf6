import type { CheckResult } from "../check/finding.ts";
import { counted, grouped, rowsText } from "../core/number-text.ts";
import { isDrawing } from "../drawings/svg.ts";
import { drawTrend, type TrendPoint } from "../drawings/trend.ts";
import { html, Markup, scrolled } from "./markup.ts";
import type { Facts, Size } from "./summary-facts.ts";

/** Different engines, kinds of findings and characteristics that are told apart; what goes beyond is counted together. */
const MOST_ENGINES = 20_000;

const MOST_KINDS = 2_000;

const MOST_CHARACTERISTICS = 200;

/** Readings of one characteristic that are kept to be drawn. */
const MOST_POINTS = 5_000;

/** What came of one input, as far as a summary needs it. */
interface Outcome extends Pick<CheckResult, "rowsIn" | "checked" | "refused"> {
  name: string;
  findings: number;
  facts?: Facts | undefined;
  /** Why it, or its rest, could not be read. */
  unread?: string | undefined;
  /** It is as it was when it was last checked, and was not checked again. */
  isUnchanged?: boolean;
}

interface EngineSum {
  engine: string;
  inputs: number;
  outside: number;
  others: number;
  lastDay: string;
  /** The input with its worst findings. */
  worst: { name: string; outside: number };
}

interface KindSum {
  kind: string;
  characteristic: string;
  count: number;
  inputs: number;
}

interface Course {
  characteristic: string;
  unit: string | undefined;
  points: TrendPoint[];
  left: number;
  lower: number | null | undefined;
  upper: number | null | undefined;
}

/** What many inputs come to together. Only sums are kept, so that thousands of them take little room. */
export class Overview {
  readonly #engines = new Map<string, EngineSum>();
  readonly #kinds = new Map<string, KindSum>();
  readonly #courses = new Map<string, Course>();
  readonly sums = { inputs: 0, rowsIn: 0, checked: 0, refused: 0, findings: 0, unchanged: 0, unread: 0 };
  /** Inputs of which nothing but their counts is known, and findings that stand in no list. */
  unknown = 0;
  more = 0;
  undated = 0;

  add(outcome: Outcome): void {
    const { sums } = this;
    sums.inputs++;
    for (const name of ["rowsIn", "checked", "refused", "findings"] as const) sums[name] += outcome[name];
    if (outcome.isUnchanged) sums.unchanged++;
    if (outcome.unread !== undefined) sums.unread++;
    const { facts, name } = outcome;
    if (!facts) {
      if (outcome.unread === undefined) this.unknown++;
      return;
    }
    this.more += facts.more;
    this.#addTallies(name, facts);
    if (facts.day === undefined) this.undated += facts.sizes.length > 0 ? 1 : 0;
    else for (const size of facts.sizes) this.#addPoint(size, engineOf(name, facts, size.engine), facts.day);
  }

  /** Worst first: by findings outside limits, then by the others. */
  get engines(): EngineSum[] {
    return [...this.#engines.values()].sort((a, b) => b.outside - a.outside || b.others - a.others || byCode(a.engine, b.engine));
  }

  /** Most frequent first. */
  get kinds(): KindSum[] {
    return [...this.#kinds.values()].sort((a, b) => b.count - a.count || b.inputs - a.inputs || byCode(a.characteristic, b.characteristic));
  }

  /** Those with most readings first. */
  get courses(): Course[] {
    return [...this.#courses.values()].sort((a, b) => b.points.length + b.left - (a.points.length + a.left) || byCode(a.characteristic, b.characteristic));
  }

  #addTallies(name: string, facts: Facts): void {
    const own = new Map<string, { outside: number; others: number }>([[engineOf(name, facts, undefined), { outside: 0, others: 0 }]]);
    for (const { kind, characteristic, engine, count } of facts.tallies) {
      const whose = engineOf(name, facts, engine);
      const sum = own.get(whose) ?? { outside: 0, others: 0 };
      sum[kind === "outside limit" ? "outside" : "others"] += count;
      own.set(whose, sum);
      this.#addKind(kind, characteristic, count);
    }
    this.#kindsOfInput.clear();
    for (const [engine, sum] of own) this.#addEngine(name, engine, sum, facts.day ?? "");
  }

  readonly #kindsOfInput = new Set<KindSum>();

  #addKind(kind: string, characteristic: string, count: number): void {
    const sum = memberOf(this.#kinds, `${kind}|${characteristic}`, MOST_KINDS, () => ({ kind, characteristic, count: 0, inputs: 0 }));
    if (!sum) {
      this.more += count;
      return;
    }
    sum.count += count;
    if (!this.#kindsOfInput.has(sum)) sum.inputs++;
    this.#kindsOfInput.add(sum);
  }

  #addEngine(name: string, engine: string, { outside, others }: { outside: number; others: number }, day: string): void {
    // An engine of which nothing was ever found stands in no list.
    if (outside + others === 0 && !this.#engines.has(engine)) return;
    const worst = { name, outside };
    const sum = memberOf(this.#engines, engine, MOST_ENGINES, () => ({ engine, inputs: 0, outside: 0, others: 0, lastDay: "", worst }));
    if (!sum) {
      this.more += outside + others;
      return;
    }
    sum.inputs++;
    sum.outside += outside;
    sum.others += others;
    if (day > sum.lastDay) sum.lastDay = day;
    if (outside > sum.worst.outside) sum.worst = worst;
  }

  #addPoint({ characteristic, unit, value, lower, upper, isOutside }: Size, engine: string, day: string): void {
    const fresh = (): Course => ({ characteristic, unit, points: [], left: 0, lower, upper });
    const course = memberOf(this.#courses, `${characteristic}|${unit ?? ""}`, MOST_CHARACTERISTICS, fresh);
    if (!course) {
      this.more++;
      return;
    }
    if (course.lower !== lower) course.lower = undefined;
    if (course.upper !== upper) course.upper = undefined;
    if (course.points.length < MOST_POINTS) course.points.push({ engine, day, value, isOutside });
    else course.left++;
  }
}

/** The member of that name, made where there is none; `undefined` where there are too many already. */
function memberOf<T>(members: Map<string, T>, name: string, most: number, fresh: () => T): T | undefined {
  const known = members.get(name);
  if (known || members.size >= most) return known;
  const made = fresh();
  members.set(name, made);
  return made;
}

const byCode = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Two workbooks may each call an engine A, so an engine that only its label names is that of its input. */
function engineOf(name: string, { engine }: Facts, named: string | undefined): string {
  if (named === undefined || named === engine) return engine ?? name;
  return `${engine ?? name}, engine ${named}`;
}

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
