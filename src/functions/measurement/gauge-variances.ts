import { Fault, refuse } from "../../core/fault.ts";
import type { LabelGrid, NumberGrid } from "../../core/param.ts";
import { anovaRow, type CrossedAnova, crossedAnova, oneWayAnova, pValue } from "../../math/anova.ts";
import { allEqual } from "../../math/statistics.ts";

/** The readings of a gauge study, sorted: `cells[part][operator]` holds the repeats. */
export interface Study {
  parts: readonly string[];
  operators: readonly string[];
  cells: readonly (readonly (readonly number[])[])[];
}

interface Reading {
  part: string;
  operator: string;
  reading: number;
}

type At<T> = (row: number, column: number) => T;

/**
 * Sorts the three ranges of a study. A column of parts beside a column of operators and one of readings
 * reads as well as operators across the top of a block. Undefined while readings are still to come.
 */
export function studyOf(parts: LabelGrid, operators: LabelGrid, readings: NumberGrid): Study | Fault | undefined {
  const misfit = shapeFault("parts", parts, readings) ?? shapeFault("operators", operators, readings);
  if (misfit) return misfit;
  const found: Reading[] = [];
  const part = pick(parts);
  const operator = pick(operators);
  for (let r = 0; r < readings.rows; r++) {
    for (let c = 0; c < readings.columns; c++) {
      const reading = readings.values[r * readings.columns + c]!;
      const [p, o] = [part(r, c), operator(r, c)];
      if (reading === null && p !== null && o !== null) return undefined;
      if (reading === null) continue;
      if (p === null) return new Fault("unfit", "parts", undefined, "this reading has no part", `row ${r + 1}`);
      if (o === null) return new Fault("unfit", "operators", undefined, "this reading has no operator", `row ${r + 1}`);
      found.push({ part: p, operator: o, reading });
    }
  }
  return sorted(found);
}

function shapeFault(name: string, range: { rows: number; columns: number }, readings: NumberGrid): Fault | undefined {
  const fits = (a: number, b: number) => a === 1 || a === b;
  if (fits(range.rows, readings.rows) && fits(range.columns, readings.columns)) return undefined;
  return new Fault("shape", name, `${range.rows}×${range.columns}`, `readings of ${readings.rows}×${readings.columns}`);
}

/** A label at a reading's place; one row or one column of labels serves all. */
function pick({ rows, columns, values }: LabelGrid): At<string | null> {
  return (row, column) => values[(rows === 1 ? 0 : row) * columns + (columns === 1 ? 0 : column)]?.trim() ?? null;
}

function sorted(found: readonly Reading[]): Study | Fault {
  const parts = spellings(found.map(({ part }) => part));
  const operators = spellings(found.map(({ operator }) => operator));
  const [rows, columns] = [[...parts.keys()], [...operators.keys()]];
  const cells = rows.map(() => columns.map((): number[] => []));
  for (const { part, operator, reading } of found) cells[rows.indexOf(keyOf(part))]![columns.indexOf(keyOf(operator))]!.push(reading);
  const study = { parts: [...parts.values()], operators: [...operators.values()], cells };
  return unbalanced(study) ?? study;
}

const keyOf = (label: string): string => label.toLowerCase();

/** Each different label under its key, as it was first spelled: "ann" is "Ann". */
function spellings(labels: readonly string[]): Map<string, string> {
  const found = new Map<string, string>();
  for (const label of labels) if (!found.has(keyOf(label))) found.set(keyOf(label), label);
  return found;
}

function unbalanced({ parts, operators, cells }: Study): Fault | undefined {
  if (parts.length < 2) return refuse("parts", parts.length, "at least 2 different parts are needed");
  const repeats = cells[0]![0]!.length;
  for (const [p, row] of cells.entries()) {
    for (const [o, cell] of row.entries()) {
      if (cell.length === repeats) continue;
      return refuse(
        "readings",
        cell.length,
        `for part ${parts[p]} by ${operators[o]}, where part ${parts[0]} by ${operators[0]} has ${repeats}, as many are needed of each`,
      );
    }
  }
  if (repeats < 2) return refuse("readings", repeats, "for each part and operator, repeatability needs at least 2");
  if (cells.flat().every(allEqual)) return refuse("readings", cells[0]![0]![0], "all repeats agree, this gauge is too coarse to show its repeatability");
  return undefined;
}

/** Variances that the readings of a gauge study are made of. */
export interface GaugeVariances {
  repeatability: number;
  /** Between operators, with what is left of the interaction; undefined for one operator. */
  reproducibility: number | undefined;
  parts: number;
  interactionPValue: number | undefined;
  isPooled: boolean;
}

/** An interaction that chance alone makes at least as often as this is no interaction. */
const POOLED_FROM = 0.05;

/** Of `cells[part][operator]`, each with as many repeats. */
export function gaugeVariances(cells: readonly (readonly (readonly number[])[])[]): GaugeVariances {
  const operators = cells[0]!.length;
  const repeats = cells[0]![0]!.length;
  if (operators > 1) return crossedVariances(crossedAnova(cells), cells.length, operators, repeats);
  const { between, within } = oneWayAnova(cells.flat());
  return {
    repeatability: within.meanSquare,
    reproducibility: undefined,
    parts: share(between.meanSquare - within.meanSquare, repeats),
    interactionPValue: undefined,
    isPooled: false,
  };
}

/** Components from mean squares by their expectations with random parts and operators. */
export function crossedVariances(anova: CrossedAnova, parts: number, operators: number, repeats: number): GaugeVariances {
  const p = pValue(anova.interaction, anova.repeats);
  const isPooled = p >= POOLED_FROM;
  const pooled = anovaRow(anova.interaction.sumOfSquares + anova.repeats.sumOfSquares, anova.interaction.degreesOfFreedom + anova.repeats.degreesOfFreedom);
  const within = isPooled ? pooled : anova.repeats;
  // What parts and operators are held against: the interaction, or what it was pooled into.
  const beside = isPooled ? pooled : anova.interaction;
  return {
    repeatability: within.meanSquare,
    reproducibility: share(anova.operators.meanSquare - beside.meanSquare, parts * repeats) + share(beside.meanSquare - within.meanSquare, repeats),
    parts: share(anova.parts.meanSquare - beside.meanSquare, operators * repeats),
    interactionPValue: p,
    isPooled,
  };
}

/** A variance cannot be below nothing, but its estimate can. */
const share = (difference: number, count: number): number => Math.max(0, difference) / count;
