import { asSentence } from "../core/words.ts";
import { outOfRoundOf, taperOf } from "../functions/cylinder/bore-readings.ts";
import { numberText, signedText, withoutControlCharacters } from "./text.ts";

/** Readings of one bore as they are drawn. */
export interface BoreReadings {
  /** Whose bore it is: `Engine A, Cylinder 2`. */
  name: string;
  unit?: string | undefined;
  /** Names of the heights, from the top. */
  heights: readonly string[];
  /** Names of the axes: thrust, then pin. */
  axes: readonly string[];
  /** One row a height, one reading an axis; `null` where none has been taken. */
  readings: readonly (readonly (number | null)[])[];
  /** The standard bore. Without one, deviations count from the smallest reading. */
  standard?: number | undefined;
  /** The largest bore allowed. */
  limit?: number | undefined;
}

/** Beyond this share of the bore a reading is a slip of the keyboard and not wear; it would flatten all others. */
const FARTHEST = 0.05;

/** Readings as deviations from one size: from the standard, or from the smallest reading that is no slip. */
export interface Deviations {
  base: number;
  /** Row by row; `null` for a blank, `"off"` for a reading too far away to be drawn. */
  rows: readonly (readonly (number | null | "off")[])[];
  /** Those that are drawn. */
  drawn: readonly number[];
  limit: number | undefined;
}

/** Nothing where there is no reading, or none near the standard. */
export function deviationsOf({ readings, standard, limit }: BoreReadings): Deviations | undefined {
  const taken = readings.flat().filter((reading): reading is number => reading !== null && Number.isFinite(reading));
  const base = standard ?? smallest(taken);
  if (base === undefined || !(base > 0)) return undefined;
  const rows = readings.map((line) =>
    line.map((reading) => (reading === null || !Number.isFinite(reading) ? null : near(reading, base) ? reading - base : "off")),
  );
  const drawn = rows.flat().filter((deviation): deviation is number => typeof deviation === "number");
  if (drawn.length === 0) return undefined;
  return { base, rows, drawn, limit: limit !== undefined && near(limit, base) ? limit - base : undefined };
}

const near = (reading: number, base: number): boolean => Math.abs(reading - base) <= FARTHEST * base;

function smallest(taken: readonly number[]): number | undefined {
  const inOrder = [...taken].sort((a, b) => a - b);
  const middle = inOrder[Math.floor(inOrder.length / 2)];
  return middle === undefined ? undefined : inOrder.find((reading) => near(reading, middle));
}

/** Half the nominal bore as drawn, and what a wall may move outward and inward from there, in pixels. */
export const HALF = 38;
export const OUTWARD = 30;
export const INWARD = 18;

/** With no deviation at all there is nothing to fit; this share of the bore stands for the least that counts. */
const LEAST = 2e-5;

/** How many times as large as the bore its deviations can be drawn, in steps of 1, 2 and 5. */
export function exaggerationOf(bore: BoreReadings): number | undefined {
  const found = deviationsOf(bore);
  if (!found) return undefined;
  const { base, drawn, limit } = found;
  const all = limit === undefined ? drawn : [...drawn, limit];
  const most = Math.max(...all) / OUTWARD;
  const least = -Math.min(...all) / INWARD;
  const reach = Math.max(most, least, (LEAST * base) / OUTWARD);
  return step(base / HALF / reach);
}

/** The largest of 1, 2, 5, 10, 20 … that is no more than `x`. */
function step(x: number): number {
  const power = 10 ** Math.floor(Math.log10(x * (1 + 1e-9)));
  const first = x / power;
  return power * (first >= 5 - 1e-9 ? 5 : first >= 2 - 1e-9 ? 2 : 1);
}

/** A bore that needs a much smaller factor than its fellows is drawn by its own. */
const UNLIKE = 5;

/** One factor for bores that are to be compared; those that it would carry off the paper keep their own. */
export function commonExaggeration(bores: readonly BoreReadings[]): (bore: BoreReadings) => number | undefined {
  const factors = bores
    .map(exaggerationOf)
    .filter((factor) => factor !== undefined)
    .sort((a, b) => a - b);
  const middle = factors[Math.floor(factors.length / 2)] ?? 1;
  const common = factors.find((factor) => factor * UNLIKE >= middle);
  return (bore) => {
    const own = exaggerationOf(bore);
    return own === undefined || common === undefined ? own : Math.min(own, common);
  };
}

/** A bore as it is drawn, which is also what the words beside it speak of. */
export interface Plate {
  bore: BoreReadings;
  deviations: Deviations;
  factor: number;
  decimals: number;
  pattern: string;
}

export function nothingToDraw({ name, readings, standard }: BoreReadings): string {
  const isBlank = readings.flat().every((reading) => reading === null);
  const near = standard === undefined ? "no reading is above 0" : `no reading lies near the standard ${numberText(standard)}`;
  return `${withoutControlCharacters(name)}: ${isBlank ? "no readings yet" : near}, so there is no profile to draw`;
}

/** Taper and out-of-round where the bore is complete and nothing in it is a slip. */
export function boreWords({ bore: { axes, heights, readings, unit }, deviations, decimals }: Plate): string {
  const values = readings.flat();
  if (values.includes(null)) return "not all readings are taken";
  if (deviations.rows.flat().includes("off")) return "a reading is far off the others, perhaps mistyped";
  const whole = { heights: heights.length, axes: axes.length, values: values as number[] };
  const one = (name: string, x: number) => `${name} ${numberText(x, decimals)}${unit ? ` ${withoutControlCharacters(unit)}` : ""}`;
  const taper = heights.length > 1 ? [one("taper", taperOf(whole))] : [];
  return [...taper, ...(axes.length > 1 ? [one("out-of-round", outOfRoundOf(whole))] : [])].join(", ");
}

export function notes({ bore, deviations, factor, decimals }: Plate): string {
  const unit = bore.unit ? ` ${withoutControlCharacters(bore.unit)}` : "";
  const from =
    bore.standard === undefined
      ? `Dashed line: smallest reading, ${numberText(deviations.base, decimals)}${unit}`
      : `Dashed line: standard bore, ${numberText(deviations.base)}${unit}`;
  const limit = deviations.limit === undefined ? "" : `; chain line: largest allowed, ${numberText(bore.limit!)}${unit}`;
  return `${from}${limit}. Deviations are drawn ${numberText(factor)} times as large as the bore; heights are not to scale. Bold: largest reading.${bore.unit ? "" : " The sheet names no unit."}`;
}

export function described(plate: Plate): string {
  const { bore, deviations, decimals } = plate;
  const columns = bore.axes.map((axis, a) => {
    const readings = bore.heights.map((height, h) => {
      const reading = bore.readings[h]?.[a] ?? null;
      const deviation = deviations.rows[h]?.[a];
      if (reading === null) return `${height} blank`;
      if (typeof deviation !== "number") return `${height} ${numberText(reading)} (off the scale)`;
      return `${height} ${numberText(reading, decimals)} (${signedText(deviation, decimals)})`;
    });
    return `${axis}: ${readings.join(", ")}.`;
  });
  const summary = boreWords(plate);
  return [`Section of the bore along each axis, from the top.`, ...columns, ...(summary ? [asSentence(summary)] : []), notes(plate)].join(" ");
}
