import { upperTailF } from "./distributions.ts";
import { mean, squaresAboutMean, sum } from "./statistics.ts";

/** One line of an analysis of variance. */
export interface Source {
  squares: number;
  freedom: number;
  /** Squares by degree of freedom. */
  mean: number;
}

export const source = (squares: number, freedom: number): Source => ({ squares, freedom, mean: squares / freedom });

/** Between and within groups of readings; each group wants at least 1 reading, one of them 2. */
export function oneWayAnova(groups: readonly (readonly number[])[]): { between: Source; within: Source; f: number } {
  // About the grand mean, so that readings with many digits in common keep those they do not share.
  const grand = mean(groups.flat());
  const own = groups.map((group) => mean(group.map((reading) => reading - grand)));
  const count = sum(groups.map((group) => group.length));
  const between = source(sum(groups.map((group, g) => group.length * own[g]! ** 2)), groups.length - 1);
  const within = source(sum(groups.map(squaresAboutMean)), count - groups.length);
  return { between, within, f: between.mean / within.mean };
}

export interface Crossed {
  parts: Source;
  operators: Source;
  interaction: Source;
  /** Within the cells: the same operator on the same part. */
  repeats: Source;
}

/**
 * Two-way crossed analysis of variance with equal repeats. `cells[part][operator]` holds the repeats,
 * at least 2 and as many in each cell; at least 2 parts and 2 operators.
 */
export function crossedAnova(cells: readonly (readonly (readonly number[])[])[]): Crossed {
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
    parts: source(operators * repeats * squaresAboutMean(partMeans), parts - 1),
    operators: source(parts * repeats * squaresAboutMean(operatorMeans), operators - 1),
    interaction: source(repeats * sum(left), (parts - 1) * (operators - 1)),
    repeats: source(sum(cells.flat().map(squaresAboutMean)), parts * operators * (repeats - 1)),
  };
}

/** Chance of so large a mean square beside another when both measure the same spread. */
export const chanceOf = (above: Source, below: Source): number => upperTailF(above.mean / below.mean, above.freedom, below.freedom);
