import { axesFault } from "../../core/broadcast-elements.ts";
import { decimal } from "../../core/decimal.ts";
import { Fault, unlike } from "../../core/fault.ts";
import { MOST_AXES } from "../../core/inputs.ts";
import type { Bore, Cells } from "../../core/param.ts";

/** How the params `readings` and `axes` are drawn, for every function that has both. */
export const drawnAsBore = { kind: "bore", readings: "readings", axes: "axes" } as const;

/** A reading and where it was taken; heights and axes count from 0. */
export interface Spot {
  reading: number;
  height: number;
  axis: number;
}

/** The largest reading; of equal ones the first from the top. */
export function largestOf({ axes, values }: Bore): Spot {
  let at = 0;
  for (let i = 1; i < values.length; i++) if (values[i]! > values[at]!) at = i;
  return { reading: values[at]!, height: Math.floor(at / axes), axis: at % axes };
}

export function smallestOf({ values }: Bore): number {
  let least = values[0]!;
  for (let i = 1; i < values.length; i++) if (values[i]! < least) least = values[i]!;
  return least;
}

export function meanOf({ values }: Bore): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  return decimal(sum / values.length);
}

/** Along each axis the largest reading less the smallest, over the heights; of these the largest. */
export function taperOf({ heights, axes, values }: Bore): number {
  let widest = 0;
  for (let axis = 0; axis < axes; axis++) widest = Math.max(widest, spread(values, axis, axes, heights));
  return decimal(widest);
}

/** At each height the largest reading less the smallest, over the axes; of these the largest. */
export function outOfRoundOf({ heights, axes, values }: Bore): number {
  let widest = 0;
  for (let height = 0; height < heights; height++) widest = Math.max(widest, spread(values, height * axes, 1, axes));
  return decimal(widest);
}

/** Largest less smallest of the `count` readings that start at `from` and stand `step` apart. */
function spread(values: readonly number[], from: number, step: number, count: number): number {
  let least = values[from]!;
  let most = least;
  for (let i = 1; i < count; i++) {
    const reading = values[from + i * step]!;
    if (reading < least) least = reading;
    if (reading > most) most = reading;
  }
  return most - least;
}

/**
 * The readings of each bore or journal of a whole range, without blank ones at the end; `null` for one with a reading
 * missing, a fault for one with a bad reading.
 */
export function boresIn(name: string, { rows, columns, values }: Cells, axesGiven: number | undefined, standard: number): (number[] | null | Fault)[] | Fault {
  if (axesGiven === undefined && columns > MOST_AXES)
    return axesFault("axes", `${name} of ${columns} columns are no ${name.replace(/s$/, "")} measured on so many axes`);
  if (axesGiven !== undefined && columns % axesGiven !== 0) return new Fault("axes", name, axesGiven, `${columns} columns of ${name}`);
  const size = axesGiven === undefined ? rows * columns : columns;
  const all = Array.from({ length: values.length / size }, (_, at) => {
    const cells = values
      .slice(at * size, (at + 1) * size)
      .map((cell) => (typeof cell === "number" ? (unlike(name, cell, "standard", standard) ?? cell) : cell));
    const bad = cells.find((cell) => cell instanceof Fault);
    return bad ?? (cells.includes(null) ? null : (cells as number[]));
  });
  const used = values.findLastIndex((cell) => cell !== null);
  return all.slice(0, Math.floor(used / size) + 1);
}
