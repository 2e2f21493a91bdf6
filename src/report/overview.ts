import type { CheckResult } from "../check/finding.ts";
import type { TrendPoint } from "../drawings/trend.ts";
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

export interface EngineSum {
  engine: string;
  inputs: number;
  outside: number;
  others: number;
  lastDay: string;
  /** The input with its worst findings. */
  worst: { name: string; outside: number };
}

export interface KindSum {
  kind: string;
  characteristic: string;
  count: number;
  inputs: number;
}

export interface Course {
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
