import { upperTailF } from "./distributions.ts";
import { mean, squaresAboutMean, sum } from "./statistics.ts";

/** One line of an analysis of variance. */
export interface Source {
  squares: number;
  freedom: number;
  /** Mean square. */
  mean: number;
}

const source = (squares: number, freedom: number): Source => ({ squares, freedom, mean: squares / freedom });

export interface Crossed {
  parts: Source;
  operators: Source;
  interaction: Source;
  /** Within the cells: the same operator on the same part. */
  repeats: Source;
  /** Chance of so much interaction when there is none. */
  interactionP: number;
}

/**
 * Two-way crossed analysis of variance with equal repeats. `cells[part][operator]` holds the repeats,
 * at least 2, as many in each cell; at least 2 parts and 2 operators. Everything is taken about the
 * grand mean first: sums of squares of raw readings would lose the digits that matter.
 */
export function crossedAnova(cells: readonly (readonly (readonly number[])[])[]): Crossed {
  const parts = cells.length;
  const operators = cells[0]!.length;
  const repeats = cells[0]![0]!.length;
  const grand = mean(cells.flat(2));
  const means = cells.map((row) => row.map((cell) => mean(cell.map((reading) => reading - grand))));
  const partMeans = means.map((row) => mean(row));
  const operatorMeans = means[0]!.map((_, o) => mean(means.map((row) => row[o]!)));
  const centre = mean(partMeans);
  const left = means.flatMap((row, p) => row.map((cell, o) => (cell - partMeans[p]! - operatorMeans[o]! + centre) ** 2));
  const interaction = source(repeats * sum(left), (parts - 1) * (operators - 1));
  const within = source(sum(cells.flat().map(squaresAboutMean)), parts * operators * (repeats - 1));
  return {
    parts: source(operators * repeats * squaresAboutMean(partMeans), parts - 1),
    operators: source(parts * repeats * squaresAboutMean(operatorMeans), operators - 1),
    interaction,
    repeats: within,
    interactionP: upperTailF(interaction.mean / within.mean, interaction.freedom, within.freedom),
  };
}
