import { type Bore, type Cells, type LabelGrid, type NumberGrid, Param, type Quantity } from "./param.ts";

export const quantity =
  (kind: Quantity, low?: number, lowOpen = true) =>
  (help: string) =>
    new Param<number>(kind, help, "element", low === undefined ? {} : { low, lowOpen });

/** A measured length above 0 in any one unit; `.atLeast(0)` or `.unbounded()` where zero or less can be. */
export const length = quantity("length", 0);
export const volume = quantity("volume", 0);
export const area = quantity("area", 0);
export const ratio = quantity("ratio", 0);
export const pressure = quantity("pressure", 0);
export const force = quantity("force", 0);
export const mass = quantity("mass", 0);
export const angle = quantity("angle");
export const temperature = quantity("temperature");
export const speed = quantity("speed", 0);
export const number = quantity("number");
/** A whole number of at least 1. */
export const count = quantity("count", 1, false);
export const text = (help: string) => new Param<string>("text", help, "element");
export const truth = (help: string) => new Param<boolean>("truth", help, "element");

/** One word of a fixed list, read without regard to case. */
export function choice<const C extends readonly string[]>(help: string, choices: C): Param<C[number]> {
  return new Param<C[number]>("choice", help, "element", { choices });
}

/** The readings of one bore, or with `axes` one bore a row. Each is a length above 0; a blank one leaves the bore blank. */
export const readings = (help = "bore readings: rows are heights from the top, columns are axes (thrust, then pin)") =>
  new Param<Bore>("length", help, "bore", { low: 0, lowOpen: true });

/** Nobody measures a bore on more axes at one height: a longer row of readings holds a whole bore. */
export const MOST_AXES = 4;

/** Number of axes in each row of `readings`; given, each row is one bore, height by height. */
export const axes = () =>
  new Param<number | undefined>(
    "count",
    "axes measured at each height; given, each row of readings is one bore, height by height; needed above 4 columns",
    "axes",
    { low: 1, lowOpen: false },
    true,
  );

/** The whole range as one list of numbers, row by row, blank cells left out. Bounds apply to each. */
export const list = (kind: Quantity, help: string) => new Param<readonly number[]>(kind, help, "list", kind === "number" ? {} : { low: 0, lowOpen: true });

/** The whole range as it stands, `null` where a cell is blank. Bounds apply to each. */
export const grid = (kind: Quantity, help: string) => new Param<NumberGrid>(kind, help, "grid", kind === "number" ? {} : { low: 0, lowOpen: true });

/** The whole range as it stands, for planners that put one row of results beside each cell. Bounds apply to each. */
export const cells = (kind: Quantity, help: string) => new Param<Cells>(kind, help, "cells", kind === "number" ? {} : { low: 0, lowOpen: true });

/** The whole range as words, `null` where a cell is blank. */
export const labels = (help: string) => new Param<LabelGrid>("text", help, "grid");
