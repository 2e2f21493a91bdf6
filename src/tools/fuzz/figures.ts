import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "../paths.ts";
import type { Tried } from "./levels.ts";
import type { Fuzzed, LevelFigures } from "./run.ts";

export const FIGURES = join(root, "test", "hostile", "figures.json");

/** What a run came to, as it is kept: its seed, its first input, and the same figures for each level. */
export interface Figures extends LevelFigures {
  seed: number;
  from: number;
  peakMegabytes: number;
  /** The inputs whose defects are not mended. */
  open: number[];
  levels: Record<string, LevelFigures>;
}

export function figuresOf({ seed, from = 0 }: { seed: number; from?: number }, { levels, defects, worstMilliseconds, peakMegabytes }: Fuzzed): Figures {
  const sum = (key: "inputs" | "results" | "refusals"): number => [...levels.values()].reduce((total, level) => total + level[key], 0);
  const inOrder = [...levels].sort(([a], [b]) => (a < b ? -1 : 1));
  return {
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

/** The runs that are kept; the same seed and first input again take the place of the earlier run. */
export function withRun(runs: readonly Figures[], run: Figures): Figures[] {
  const others = runs.filter(({ seed, from }) => seed !== run.seed || from !== run.from);
  return [...others, run].sort((a, b) => a.seed - b.seed || a.from - b.from);
}

/** A run after its open inputs have been tried again: those that now end well count as what they came to. */
export async function triedAgain(run: Figures, tryInput: (seed: number, index: number) => Promise<Tried>): Promise<Figures> {
  const now: Figures = structuredClone(run);
  now.open = [];
  for (const index of run.open) {
    const { outcome, level } = await tryInput(run.seed, index);
    if (outcome === "defect") now.open.push(index);
    else {
      const counted = outcome === "result" ? "results" : "refusals";
      const from = now.levels[level]!.defects > 0 ? level : "lost";
      for (const figures of [now, now.levels[level]!]) figures[counted]++;
      now.defects--;
      now.levels[from]!.defects--;
      if (from === "lost") now.levels[level]!.inputs++;
    }
  }
  if (now.levels.lost?.defects === 0) delete now.levels.lost;
  return now;
}

export const keptRuns = (path = FIGURES): Figures[] => (existsSync(path) ? (JSON.parse(readFileSync(path, "utf8")) as Figures[]) : []);
