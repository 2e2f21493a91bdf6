import { upperTailF } from "./distributions.ts";
import { mean, sum, sumOfSquares } from "./statistics.ts";

/** One line of an analysis of variance. */
export interface AnovaRow {
  sumOfSquares: number;
  degreesOfFreedom: number;
  /** Sum of squares by degree of freedom. */
  meanSquare: number;
}

export const anovaRow = (squares: number, degreesOfFreedom: number): AnovaRow => ({
  sumOfSquares: squares,
  degreesOfFreedom,
  meanSquare: squares / degreesOfFreedom,
});

/** Between and within groups of readings; each group wants at least 1 reading, one of them 2. */
export function oneWayAnova(groups: readonly (readonly number[])[]): { between: AnovaRow; within: AnovaRow; f: number } {
  // About the grand mean, so that readings with many digits in common keep those they do not share.
  const grand = mean(groups.flat());
  const own = groups.map((group) => mean(group.map((reading) => reading - grand)));
  const count = sum(groups.map((group) => group.length));
  const between = anovaRow(sum(groups.map((group, g) => group.length * own[g]! ** 2)), groups.length - 1);
  const within = anovaRow(sum(groups.map(sumOfSquares)), count - groups.length);
  return { between, within, f: between.meanSquare / within.meanSquare };
}

export interface CrossedAnova {
  parts: AnovaRow;
  operators: AnovaRow;
  interaction: AnovaRow;
  /** Within the cells: the same operator on the same part. */
  repeats: AnovaRow;
}

/**
 * Two-way crossed analysis of variance with equal repeats. `cells[part][operator]` holds the repeats,
 * at least 2 and as many in each cell; at least 2 parts and 2 operators.
 */
export function crossedAnova(cells: readonly (readonly (readonly number[])[])[]): CrossedAnova {
  const parts = cells.length;
  const operators = cells[0]!.length;
  const repeats = cells[0]![0]!.length;
  const grand = mean(cells.flat(2));
  const means = cells.map((row) => row.map((cell) => mean(cell.map((reading) => reading - grand))));
  const partMeans = means.map(mean);
  const operatorMeans = means[0]!.map((_, o) => mean(means.map((row) => row[o]!)));
  const centre = mean(partMeans);
  const left = means.flatMap((row, p) => row.map((cell, o) => (cell - partMeans[p]! - operatorMeans[o]! + centre) ** 2));
  return {
    parts: anovaRow(operators * repeats * sumOfSquares(partMeans), parts - 1),
    operators: anovaRow(parts * repeats * sumOfSquares(operatorMeans), operators - 1),
    interaction: anovaRow(repeats * sum(left), (parts - 1) * (operators - 1)),
    repeats: anovaRow(sum(cells.flat().map(sumOfSquares)), parts * operators * (repeats - 1)),
  };
}

/** Chance of so large a mean square beside another when both measure the same spread. */
export const pValue = (above: AnovaRow, below: AnovaRow): number =>
  upperTailF(above.meanSquare / below.meanSquare, above.degreesOfFreedom, below.degreesOfFreedom);
