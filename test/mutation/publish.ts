import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";

/** The parts of Stryker's report that are published. */
interface Report {
  files: Record<string, { source: string; mutants: Mutant[] }>;
}

interface Position {
  line: number;
  column: number;
}

interface Mutant {
  status: string;
  replacement?: string;
  location: { start: Position; end: Position };
}

/**
 * Why a change that no test notices may stay so; `file`, `was` and `now` as the list of survivors has them.
 * It holds for so many places of the file as it says, so that the same change elsewhere is looked at by itself.
 */
interface Reason {
  file: string;
  was: string;
  now: string;
  why: string;
  /** 1 where it is not said. */
  places?: number;
}

export interface Survivor {
  file: string;
  line: number;
  was: string;
  now: string;
}

export interface MutationFigures {
  folder: string;
  /** Source files that were changed: fewer than the folder has where only some have been run yet. */
  files: number;
  /** Changes that were tried. */
  tried: number;
  noticed: number;
  /** Changes of words that only explain, which are not tried. */
  leftAlone: number;
}

const LONGEST = 110;
const NOTICED = new Set(["Killed", "Timeout"]);

const oneLine = (code: string): string => {
  const flat = code.replace(/\s+/g, " ");
  return flat.length > LONGEST ? `${flat.slice(0, LONGEST)}…` : flat;
};

function between(source: string, start: Position, end: Position): string {
  const lines = source.split("\n").slice(start.line - 1, end.line);
  lines[lines.length - 1] = lines.at(-1)!.slice(0, end.column - 1);
  lines[0] = lines[0]!.slice(start.column - 1);
  return lines.join("\n");
}

/** What the reports of the folders come to. */
export function summarise(reports: ReadonlyMap<string, Report>): { figures: MutationFigures[]; survivors: Survivor[] } {
  const survivors: Survivor[] = [];
  const figures = [...reports].map(([folder, { files }]): MutationFigures => {
    const counted = { folder, files: Object.keys(files).length, tried: 0, noticed: 0, leftAlone: 0 };
    for (const [file, { source, mutants }] of Object.entries(files)) {
      for (const { status, replacement = "", location } of mutants) {
        if (status === "Ignored") counted.leftAlone++;
        else counted.tried++;
        if (NOTICED.has(status)) counted.noticed++;
        else if (status !== "Ignored") {
          survivors.push({ file, line: location.start.line, was: oneLine(between(source, location.start, location.end)), now: oneLine(replacement) });
        }
      }
    }
    return counted;
  });
  return { figures, survivors };
}

export const score = ({ tried, noticed }: Pick<MutationFigures, "tried" | "noticed">): number => Math.floor((1000 * noticed) / tried) / 10;

const code = (text: string): string => `\`${text.replaceAll("|", "\\|").replaceAll("`", "'")}\``;

/** The reason for one survivor after another. */
function whyOf(reasons: readonly Reason[]): (survivor: Survivor) => string {
  const left = new Map(reasons.map((reason) => [reason, reason.places ?? 1]));
  return ({ file, was, now }) => {
    const reason = reasons.find((one) => one.file === file && one.was === was && one.now === now && left.get(one)! > 0);
    if (!reason) return "no test yet";
    left.set(reason, left.get(reason)! - 1);
    return reason.why;
  };
}

/** What is published of folders of which there is no report here, because they were run on another machine. */
function publishedBefore(into: string, isHere: (folder: string) => boolean): { figures: MutationFigures[]; lines: string[] } {
  const [scores, list] = ["score.json", "survivors.md"].map((name) => join(into, name)) as [string, string];
  const figures = existsSync(scores) ? (JSON.parse(readFileSync(scores, "utf8")) as MutationFigures[]) : [];
  const lines = existsSync(list) ? readFileSync(list, "utf8").split("\n") : [];
  return {
    figures: figures.filter(({ folder }) => folder !== "all" && !isHere(folder)),
    lines: lines.filter((line) => line.startsWith("| src/") && !isHere(folderIn(line))),
  };
}

/** The folder of the file that a line of the list begins with. */
const folderIn = (line: string): string => line.slice(0, line.indexOf(":")).split("/").at(-2) ?? "";

/** Writes the figures and the list of survivors; `into` is the folder that has the reasons. */
export function publish(reports: ReadonlyMap<string, Report>, into: string): MutationFigures {
  const { figures, survivors } = summarise(reports);
  const before = publishedBefore(into, (folder) => reports.has(folder));
  const all = [...before.figures, ...figures].sort((a, b) => (a.folder < b.folder ? -1 : 1));
  const sum = (field: "files" | "tried" | "noticed" | "leftAlone") => all.reduce((total, one) => total + one[field], 0);
  const whole: MutationFigures = { folder: "all", files: sum("files"), tried: sum("tried"), noticed: sum("noticed"), leftAlone: sum("leftAlone") };
  const scored = [...all, whole].map((one) => ({ ...one, score: score(one) }));
  writeFileSync(join(into, "score.json"), `${JSON.stringify(scored, null, 2)}\n`);

  const path = join(into, "reasons.json");
  const reasons = existsSync(path) ? (JSON.parse(readFileSync(path, "utf8")) as Reason[]) : [];
  const reasonFor = whyOf(reasons);
  const lines = survivors.map((one) => `| ${one.file}:${one.line} | ${code(one.was)} | ${code(one.now)} | ${reasonFor(one)} |`);
  writeFileSync(
    join(into, "survivors.md"),
    [
      "# Changes of the sources that no test notices",
      "",
      "Made by `npm run mutation`, the reasons from `reasons.json`.",
      "",
      "| where | was | became | why no test notices it |",
      "|---|---|---|---|",
      ...[...before.lines, ...lines].sort((a, b) => (folderIn(a) === folderIn(b) ? 0 : folderIn(a) < folderIn(b) ? -1 : 1)),
      "",
    ].join("\n"),
  );
  return whole;
}

/** The reports of the folders that have been run so far. */
export function reportsIn(cache: string, folders: readonly string[]): Map<string, Report> {
  const found = folders.map((name) => [name, join(cache, `${name}-report.json`)] as const).filter(([, path]) => existsSync(path));
  return new Map(found.map(([name, path]) => [name, JSON.parse(readFileSync(path, "utf8")) as Report]));
}
