import type { DrawnInputsOf } from "../../core/define.ts";
import type { BoreReadings } from "../../drawings/bore.ts";
import type { OwnCall } from "../../formula/own-calls.ts";
import { cellsOf } from "../../formula/workbook-cells.ts";
import { characteristicNamed } from "../../vocabulary/subjects.ts";
import type { CellArea } from "../../workbook/address.ts";
import type { Placed } from "../content.ts";
import { distinct, drawnAs, labelsOf, namesOf, numberIn, placeOf, type Source } from "./source.ts";

/** One bore as a function sees it: a block, or a row of a block of which each row is a bore. */
interface Found {
  area: CellArea;
  /** Axes, where the bore is a row of heights and axes. */
  axes: number | undefined;
  standard?: number;
  limit?: number;
}

/** Every bore that a function of ours takes its readings from, once, in the order of the sheets. */
export function drawnBores(source: Source, calls: readonly OwnCall[]): Placed<BoreReadings>[] {
  const found = new Map<string, Found>();
  for (const { call, draws } of drawnAs("bore", calls)) {
    const area = source.area(call, draws.readings);
    if (!area) continue;
    const axes = source.number(call, draws.axes);
    for (const [i, bore] of boresOf(area, axes).entries()) note(found, { area: bore, axes, ...sizesOf(source, call, draws, i) });
  }
  return [...found.values()].flatMap((bore) => drawn(source, bore));
}

/** Each row is a bore where it holds whole heights. */
function boresOf(area: CellArea, axes: number | undefined): CellArea[] {
  if (axes === undefined) return [area];
  if (!Number.isInteger(axes) || axes < 1 || area.columns % axes !== 0) return [];
  return Array.from({ length: area.rows }, (_, r) => ({ ...area, row: area.row + r, rows: 1 }));
}

function sizesOf(source: Source, call: OwnCall, draws: DrawnInputsOf<"bore">, index: number): Pick<Found, "standard" | "limit"> {
  const standard = draws.standard === undefined ? undefined : source.number(call, draws.standard);
  if (standard === undefined) return {};
  const [judged] = draws.resultIs === "wear" ? source.judgedAt({ ...call.at, row: call.at.row + index }) : [];
  return judged?.upper === null || judged === undefined ? { standard } : { standard, limit: standard + judged.upper };
}

function note(found: Map<string, Found>, bore: Found): void {
  const key = `${placeOf(bore.area)}|${bore.axes ?? ""}`;
  found.set(key, {
    ...bore,
    ...found.get(key),
    ...(bore.standard === undefined ? {} : { standard: bore.standard }),
    ...(bore.limit === undefined ? {} : { limit: bore.limit }),
  });
}

function drawn(source: Source, { area, axes, standard, limit }: Found): Placed<BoreReadings>[] {
  if (isOtherHole(source, area)) return [];
  const across = axes ?? area.columns;
  const heights = axes === undefined ? area.rows : area.columns / axes;
  const inLine = source.book.block(area).flat();
  const labelled = labelsOf(source, area).flat();
  const grid = <T>(line: readonly T[]): T[][] => Array.from({ length: heights }, (_, h) => line.slice(h * across, (h + 1) * across));
  const { shared, rows, columns } = namesOf(grid(labelled));
  const what: BoreReadings = {
    name: shared || placeOf(area),
    unit: source.unit(area, "length"),
    heights: distinct(rows, "height"),
    axes: distinct(columns, "axis"),
    // An empty cell may arrive as 0, which no bore is.
    readings: grid(inLine.map((cell) => numberIn(cell) || null)),
    standard,
    limit,
  };
  if (what.readings.flat().every((reading) => reading === null)) return [];
  source.draws(area);
  return [{ what, place: placeOf(area) }];
}

/** Guides and housings have a taper as well, and are drawn as no cylinder. */
function isOtherHole(source: Source, area: CellArea): boolean {
  return [...cellsOf(area)].every((cell) => {
    const heading = source.labels.headingOf(cell);
    return ![undefined, "bore"].includes(heading === undefined ? undefined : characteristicNamed(heading));
  });
}
