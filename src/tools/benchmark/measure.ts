/** Time of one run in milliseconds, `runs` times after one to warm up: the median with its spread. */
export interface Timing {
  median: number;
  least: number;
  most: number;
}

export const RUNS = 7;

export function time(work: () => unknown, runs = RUNS): Timing {
  work();
  const took: number[] = [];
  for (let i = 0; i < runs; i++) {
    const start = performance.now();
    work();
    took.push(performance.now() - start);
  }
  return summary(took);
}

export function summary(took: readonly number[]): Timing {
  const sorted = [...took].sort((a, b) => a - b);
  return { median: sorted[Math.floor(sorted.length / 2)]!, least: sorted[0]!, most: sorted[sorted.length - 1]! };
}

/** One line of the results. A ratio is to the yardstick of the same run; `aim` is what it should not exceed. */
export interface Line {
  what: string;
  measured: string;
  yardstick: string;
  value: number;
  unit: "ratio" | "KB gz" | "ms";
  aim: number;
}

export const show = ({ median, least, most }: Timing): string => `${median.toFixed(1)} ms (${least.toFixed(1)}–${most.toFixed(1)})`;

export function ratioLine(what: string, measured: Timing, yardstick: Timing, aim: number): Line {
  return { what, measured: show(measured), yardstick: show(yardstick), value: measured.median / yardstick.median, unit: "ratio", aim };
}
