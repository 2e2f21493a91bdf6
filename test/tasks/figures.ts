/** The figures of the long tasks, as they were kept by the last run of each, for the contributors' page. */
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "../../src/tools/paths.ts";
import type { FuzzFigures } from "../fuzz/figures.ts";
import type { LongUse } from "../long-use/figures.ts";
import type { Coverage } from "./coverage.ts";

interface Parity {
  functions: number;
  hosts: { host: string; inputs: number; differences: number; blanksForZeros?: number }[];
}

interface Mutation {
  folder: string;
  tried: number;
  noticed: number;
  score: number;
}

interface Simulation {
  runs: number;
  rows: [what: string, figure: string][];
}

export interface KeptFigures {
  simulation?: Simulation;
  fuzz?: FuzzFigures[];
  longUse?: LongUse;
  parity?: Parity;
  mutation?: Mutation[];
  coverage?: Coverage;
}

/** Where each task keeps its figures; one that has not run has none. */
const FILES: Readonly<Record<keyof KeptFigures, string>> = {
  fuzz: "test/fuzz/figures.json",
  simulation: "test/simulate/figures.json",
  longUse: "test/long-use/figures.json",
  parity: "test/parity/figures.json",
  mutation: "test/mutation/score.json",
  coverage: "test/tasks/coverage.json",
};

export function keptFigures(folder = root): KeptFigures {
  const kept = Object.entries(FILES).filter(([, path]) => existsSync(join(folder, path)));
  return Object.fromEntries(kept.map(([name, path]) => [name, JSON.parse(readFileSync(join(folder, path), "utf8"))]));
}

const count = (number: number): string => number.toLocaleString("en");

/** The table, or nothing where no task has run. */
export function figuresTable({ fuzz, longUse, parity, mutation, coverage, simulation }: KeptFigures): string {
  const rows = [
    ...fuzzRows(fuzz ?? []),
    ...longUseRows(longUse),
    ...parityRows(parity),
    ...mutationRows(mutation),
    ...coverageRows(coverage),
    ...simulationRows(simulation),
  ];
  return rows.length === 0 ? "" : ["| what | figure | from |", "|---|---|---|", ...rows.map((cells) => `| ${cells.join(" | ")} |`), ""].join("\n");
}

type Row = [what: string, figure: string, from: string];

function fuzzRows(runs: readonly FuzzFigures[]): Row[] {
  if (runs.length === 0) return [];
  const sum = (key: "inputs" | "results" | "refusals" | "defects"): number => runs.reduce((total, run) => total + run[key], 0);
  const most = (key: "worstMilliseconds" | "peakMegabytes"): number => Math.max(...runs.map((run) => run[key]));
  const from = "`npm run fuzz`";
  return [
    [
      "damaged inputs tried",
      `${count(sum("inputs"))}: ${count(sum("results"))} results, ${count(sum("refusals"))} refused in a sentence, ${count(sum("defects"))} defects`,
      from,
    ],
    ["longest input, largest process", `${(most("worstMilliseconds") / 1000).toFixed(1)} s of the processor, ${count(most("peakMegabytes"))} MB`, from],
  ];
}

function longUseRows(figures: LongUse | undefined): Row[] {
  if (!figures) return [];
  const { edits, checks, series, large } = figures;
  const first = series[0]!;
  const last = series.at(-1)!;
  const grown = `${first.megabytes.toFixed(1)} → ${last.megabytes.toFixed(1)} MB, ${count(first.nodes)} → ${count(last.nodes)} nodes, ${count(first.listeners)} → ${count(last.listeners)} listeners`;
  const from = "`npm run long-use`";
  return [
    [`bench and pane through ${count(edits)} edits and ${count(checks)} checks`, grown, from],
    ...large.map(({ workbook, opened, checked, scrolled, megabytes }): Row => {
      const took = `opened in ${opened.toFixed(1)} s, checked in ${checked.toFixed(1)} s, scrolled in ${scrolled.toFixed(1)} s, ${megabytes.toFixed(1)} MB`;
      return [`a workbook of ${workbook} in the browser, other work beside it`, took, from];
    }),
  ];
}

const parityRows = (figures: Parity | undefined): Row[] =>
  (figures?.hosts ?? []).map(({ host, inputs, differences, blanksForZeros }) => [
    `same answer: ${host}`,
    `${count(inputs)} calls, ${count(differences)} differences${blanksForZeros ? ` beside ${count(blanksForZeros)} in which a blank passes for 0, as help says` : ""}`,
    "`npm run parity`",
  ]);

function mutationRows(folders: readonly Mutation[] | undefined): Row[] {
  const all = folders?.find(({ folder }) => folder === "all");
  return all ? [["changes of the code that a test notices", `${all.score} % (${count(all.noticed)} of ${count(all.tried)})`, "`npm run mutation`"]] : [];
}

const coverageRows = (coverage: Coverage | undefined): Row[] =>
  (coverage ?? []).map(({ folder, statements, branches }) => [
    `run by tests: ${folder}`,
    `${statements} % of statements, ${branches} % of branches`,
    "`npm run coverage`",
  ]);

/** What Compare claims, in invented studies from CSV on. */
const simulationRows = (simulation: Simulation | undefined): Row[] =>
  (simulation?.rows ?? []).map(([what, figure]) => [what, `${figure} (${count(simulation!.runs)} of each)`, "`npm run simulate`"]);
