import { outOfRoundOf, taperOf } from "../functions/cylinder/bore-readings.ts";
import type { BoreReadings, Deviations } from "./bore.ts";
import { numberText, signedText, tame } from "./text.ts";

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
  return `${tame(name)}: ${isBlank ? "no readings yet" : near}, so there is no profile to draw`;
}

/** Taper and out-of-round where the bore is complete and nothing in it is a slip. */
export function summaryOf({ bore: { axes, heights, readings, unit }, deviations, decimals }: Plate): string {
  const values = readings.flat();
  if (values.includes(null)) return "not all readings are taken";
  if (deviations.rows.flat().includes("off")) return "a reading is far off the others, perhaps mistyped";
  const whole = { heights: heights.length, axes: axes.length, values: values as number[] };
  const one = (name: string, x: number) => `${name} ${numberText(x, decimals)}${unit ? ` ${tame(unit)}` : ""}`;
  const taper = heights.length > 1 ? [one("taper", taperOf(whole))] : [];
  return [...taper, ...(axes.length > 1 ? [one("out-of-round", outOfRoundOf(whole))] : [])].join(", ");
}

export function notes({ bore, deviations, factor, decimals }: Plate): string {
  const unit = bore.unit ? ` ${tame(bore.unit)}` : "";
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
  const summary = summaryOf(plate);
  return [
    `Section of the bore along each axis, from the top.`,
    ...columns,
    ...(summary ? [`${summary.charAt(0).toUpperCase()}${summary.slice(1)}.`] : []),
    notes(plate),
  ].join(" ");
}
