import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "../../src/tools/paths.ts";
import type { Fuzzed, LevelFigures } from "./run.ts";

export const FIGURES = join(root, "test", "fuzz", "figures.json");

/** What a run came to, as it is kept: the code that was tried, its seed, its first input, and the same figures for each level. */
export interface FuzzFigures extends LevelFigures {
  code: string;
  seed: number;
  from: number;
  peakMegabytes: number;
  /** The inputs that led to defects. */
  open: number[];
  levels: Record<string, LevelFigures>;
}

export function figuresOf(
  { seed, from = 0 }: { seed: number; from?: number },
  { code, levels, defects, worstMilliseconds, peakMegabytes }: Fuzzed,
): FuzzFigures {
  const sum = (key: "inputs" | "results" | "refusals"): number => [...levels.values()].reduce((total, level) => total + level[key], 0);
  const inOrder = [...levels].sort(([a], [b]) => (a < b ? -1 : 1));
  return {
    code,
    seed,
    from,
    inputs: sum("inputs"),
    results: sum("results"),
    refusals: sum("refusals"),
    defects: defects.length,
    worstMilliseconds: Math.round(worstMilliseconds),
    peakMegabytes: Math.round(peakMegabytes),
    open: [...new Set(defects.map(({ index }) => index))],
    levels: Object.fromEntries(inOrder.map(([name, level]) => [name, { ...level, worstMilliseconds: Math.round(level.worstMilliseconds) }])),
  };
}

/** The runs that are kept: those of the same code beside one another, by seed and first input. Those of other code say nothing of this one, and go. */
export function withRun(runs: readonly FuzzFigures[], run: FuzzFigures): FuzzFigures[] {
  const others = runs.filter(({ code, seed, from }) => code === run.code && (seed !== run.seed || from !== run.from));
  return [...others, run].sort((a, b) => a.seed - b.seed || a.from - b.from);
}

export const keptRuns = (path = FIGURES): FuzzFigures[] => (existsSync(path) ? (JSON.parse(readFileSync(path, "utf8")) as FuzzFigures[]) : []);
