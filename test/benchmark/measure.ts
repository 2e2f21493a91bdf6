/** Time in milliseconds: the median of several runs, with its spread. */
export interface Timing {
  median: number;
  least: number;
  most: number;
}

export const RUNS = 5;

/** Several pieces of work in turn, so that whatever else the machine does meets all of them; each once before to warm up. */
export async function together(works: readonly (() => unknown)[], runs = RUNS): Promise<Timing[]> {
  for (const work of works) await work();
  const took = works.map((): number[] => []);
  for (let run = 0; run < runs; run++) {
    for (const [i, work] of works.entries()) {
      const start = performance.now();
      await work();
      took[i]!.push(performance.now() - start);
    }
  }
  return took.map(summary);
}

export function summary(took: readonly number[]): Timing {
  const sorted = [...took].sort((a, b) => a - b);
  return { median: sorted[Math.floor(sorted.length / 2)]!, least: sorted[0]!, most: sorted[sorted.length - 1]! };
}

/** One line of the results. */
export interface BenchmarkLine {
  what: string;
  measured: string;
  /** What it is compared with, in this run, or why it is not. */
  yardstick: string;
  /** Left out where there is nothing to measure by. */
  value?: number;
  unit: "×" | "KB gz" | "ms" | "MB";
  /** What the value should not exceed; none for what is only told. */
  aim?: number;
  /** The aim is what the value should reach. */
  atLeast?: boolean;
  /** The work whose profile explains a miss. */
  profile?: string;
}

export const show = ({ median, least, most }: Timing): string => {
  const digits = median < 100 ? 1 : 0;
  return `${median.toFixed(digits)} ms (${least.toFixed(digits)}–${most.toFixed(digits)})`;
};

/** How many times as long as the yardstick it took. */
export function ratioLine(what: string, measured: Timing, yardstick: Timing, rest: Pick<BenchmarkLine, "aim" | "profile"> = {}): BenchmarkLine {
  return { what, measured: show(measured), yardstick: show(yardstick), value: measured.median / yardstick.median, unit: "×", ...rest };
}
