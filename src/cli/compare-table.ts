import type { Comparison } from "../compare/compare.ts";
import { isSameEngine } from "../compare/engines.ts";
import type { MeanChange } from "../compare/mean-change.ts";
import type { PlaceChange } from "../compare/place-change.ts";
import { decimal } from "../core/decimal.ts";
import { groupedBy } from "../core/grouped.ts";
import { coupleRows, isOfTwoEngines, limitsOfPlace } from "../report/comparison-rows.ts";
import { jsonLines } from "./compare-lines.ts";
import { csvField } from "./csv-field.ts";

/** The table of the page as CSV, the refused rows with their reasons: of two engines each before and after side by side, otherwise a row for each line. */
export const tableOf = (comparison: Comparison): string => {
  const rows = [...(isOfTwoEngines(comparison) ? ofTwoEngines(comparison) : lineByLine(comparison))];
  return `${rows.map((row) => row.map((cell) => csvField(cell ?? "")).join(",")).join("\r\n")}\r\n`;
};

type Row = (string | number | null | undefined)[];

/** Columns of the table of lines, in their order. */
const COLUMNS = [
  ...["kind", "engine", "cylinder", "characteristic", "position", "before", "after", "change", "difference", "unit", "n", "by", "degreesOfFreedom"],
  ...["uncertainty", "commonUncertainty", "lower", "upper", "p", "pAdjusted", "family", "matters", "lowerLimit", "upperLimit", "mayHide", "toSee"],
  ...["beyondGauge", "verdict", "reason"],
] as const;

function* lineByLine(comparison: Comparison): Generator<Row> {
  yield [...COLUMNS];
  for (const line of jsonLines(comparison)) {
    if (line.kind === "summary" || line.kind === "wear") continue;
    const pair = line.groups ?? line.engines;
    const { lower: lowerLimit, upper: upperLimit } = (line.limits ?? {}) as Partial<ReturnType<typeof limitsOfPlace>>;
    const told: Record<string, unknown> = { ...line, lowerLimit, upperLimit, engine: Array.isArray(pair) ? pair.join(" and ") : line.engine };
    yield COLUMNS.map((column) => cellOf(told[column]));
  }
}

/** What a cell of the table says; the readings of a refused row stand one after the other. */
function cellOf(value: unknown): string | number | null {
  if (value === null || value === undefined) return null;
  if (typeof value === "number") return value;
  return Array.isArray(value) ? valuesText(value) : String(value);
}

const valuesText = (readings: readonly { value: number | null }[]): string => readings.map(({ value }) => value ?? "?").join(" ");

/** Two engines side by side: a row for each place, each characteristic on average, each two ways of treatment, and each that was refused. */
function* ofTwoEngines(comparison: Comparison): Generator<Row> {
  const { engines, means, meanDifferences, groups, refused } = comparison;
  const [first, second] = engines!;
  yield [
    ...["kind", "between", "cylinder", "characteristic", "position", "unit", "lower limit", "upper limit", "matters"],
    ...engines!.flatMap((name) => [`${name} before`, `${name} after`, `${name} correction`, `${name} change`, `${name} U`, `${name} verdict`]),
    ...["difference", "U", "p adjusted", "may hide", "verdict", "reason"],
  ];
  const between = `${second} against ${first}`;
  for (const { first: one, second: other, line } of coupleRows(comparison)) {
    const place = (one ?? other)!;
    const { lower, upper } = limitsOfPlace(place);
    yield [
      ...["place", between, place.cylinder, place.characteristic, place.position, place.unit, lower, upper, (line ?? place).matters],
      ...[one, other].flatMap(sizesOf),
      ...judged(line),
    ];
  }
  const ownOf = ({ places, unit }: MeanChange): string => `${places[0]!.own}|${unit ?? ""}`;
  for (const [key, own] of groupedBy(means, ownOf)) {
    const line = meanDifferences.find(({ characteristic, unit }) => `${characteristic}|${unit ?? ""}` === key);
    const of = engines!.map((name) => own.find(({ engine }) => isSameEngine(engine, name)));
    const [{ characteristic, unit, matters }] = own as [MeanChange];
    yield [
      ...["mean", between, null, characteristic, null, unit, null, null, (line ?? { matters }).matters],
      ...of.flatMap((mean) => (mean === undefined ? NOTHING : [null, null, null, mean.difference, mean.uncertainty, mean.verdict])),
      ...judged(line),
    ];
  }
  for (const line of groups)
    yield [
      ...["groups", `${line.groups[1]} against ${line.groups[0]}`, null, line.characteristic, null, line.unit, null, null, line.matters],
      ...[...NOTHING, ...NOTHING],
      ...judged(line).slice(0, -1),
      line.lone === null ? null : `only one engine of ${line.lone}`,
    ];
  for (const { before, after, why } of refused) {
    const [{ engine, cylinder, characteristic, position, unit }] = [...before, ...after] as [(typeof before)[number]];
    const at = engines!.findIndex((name) => isSameEngine(name, engine));
    const sizes = [valuesText(before), valuesText(after), null, null, null, null];
    yield [
      ...["refused", engine, cylinder, characteristic, position, unit, null, null, null],
      ...(at === 1 ? [...NOTHING, ...sizes] : at === 0 ? [...sizes, ...NOTHING] : [...NOTHING, ...NOTHING]),
      ...[null, null, null, null, null, why],
    ];
  }
}

const NOTHING: Row = [null, null, null, null, null, null];

/** Sizes, what the master and the temperatures take out of or add to their difference, and what that comes to. */
function sizesOf(place: PlaceChange | undefined): Row {
  if (place === undefined) return NOTHING;
  const [before, after] = [decimal(place.before.value), decimal(place.after.value)];
  return [before, after, decimal(place.difference - (after - before)), place.difference, place.uncertainty, place.verdict];
}

type Judged = Pick<Comparison["differences"][number], "difference" | "uncertainty" | "pAdjusted" | "mayHide" | "verdict">;

const judged = (line: Judged | undefined): Row =>
  line === undefined
    ? [null, null, null, null, null, "one engine only"]
    : [line.difference, line.uncertainty, line.pAdjusted, line.mayHide === null ? null : decimal(line.mayHide), line.verdict, null];
