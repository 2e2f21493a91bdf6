import { cpus, platform, release, totalmem } from "node:os";
import type { BenchmarkLine } from "./measure.ts";
import type { Profile } from "./profile.ts";

const shown = (value: number, unit: BenchmarkLine["unit"]): string => (unit === "×" ? `${value.toFixed(2)} ×` : `${value.toFixed(1)} ${unit}`);

const isMet = ({ value, aim, atLeast }: BenchmarkLine): boolean => (atLeast ? value! >= aim! : value! <= aim!);

function row(line: BenchmarkLine): string {
  const { what, measured, yardstick, value, unit, aim, atLeast } = line;
  const figure = value === undefined ? "–" : shown(value, unit);
  const [wanted, met] =
    aim === undefined ? ["–", "–"] : [`${atLeast ? "≥" : "≤"} ${aim} ${unit}`, value === undefined ? "not measured" : isMet(line) ? "met" : "**missed**"];
  return `| ${[what, measured, yardstick, figure, wanted, met].join(" | ")} |`;
}

/** The results as a page, and where the time went in whatever missed its aim. */
export function report(lines: readonly BenchmarkLine[], profiles: readonly Profile[], seconds: number): string {
  const missed = new Set(lines.filter((line) => line.aim !== undefined && line.value !== undefined && !isMet(line)).map(({ profile }) => profile));
  return [
    "# Speed",
    "",
    `Made by \`npm run benchmark\` in ${Math.round(seconds)} s on ${cpus()[0]?.model ?? "an unknown processor"}, ${cpus().length} cores, ${(totalmem() / 2 ** 30).toFixed(0)} GiB, ${platform()} ${release()}, Node ${process.version}. Medians of at least 5 runs, least and most in brackets; ratios are to the yardstick of the same run, whose runs take turns with ours.`,
    "",
    "| what | ours | yardstick | figure | aim | |",
    "|---|---|---|---|---|---|",
    ...lines.map(row),
    "",
    "The bare loops read the rows of cells that a host hands over and make the rows of results that it must be back, but check nothing: no bound, no blank, no text among the numbers.",
    "",
    "## Where the time goes in what missed its aim",
    "",
    "Functions by the time spent in themselves, in one more run under the profiler; what runs inside another function is counted there.",
    "",
    ...profiles.filter(({ of }) => missed.has(of)).flatMap(section),
  ].join("\n");
}

const section = ({ of, self }: Profile): string[] => [
  `### ${of}`,
  "",
  "| share | where |",
  "|---|---|",
  ...self.map(({ where, share }) => `| ${(share * 100).toFixed(1)} % | \`${where}\` |`),
  "",
];
