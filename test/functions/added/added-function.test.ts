import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readdirSync, readFileSync, realpathSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, relative, sep } from "node:path";
import { root } from "../../../src/tools/paths.ts";

/** Measured from readings against a size that is chosen, drawn as a bore, and dear to work out. */
const GROWTH = `import { decimal } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { axes, length, readings } from "../../core/inputs.ts";
import { drawnAsBore, meanOf } from "./bore-readings.ts";

/** Mean wear of a bore, on the diameter. Source: common practice. */
export const boreGrowth = define({
  name: "BOREGROWTH",
  group: "cylinder",
  role: "measures",
  summary: "Mean wear of a bore: the mean of its readings less the size that it was finished to",
  definition: "mean of readings − finished",
  source: "common practice",
  params: { readings: readings(), finished: length("the size that the bore was finished to").chosen(), axes: axes() },
  returns: value("mean wear on the diameter, in the unit of the readings"),
  draws: { ...drawnAsBore, standard: "finished", resultIs: "wear" },
  steps: ({ readings: cells }) => cells ** 3,
  examples: [
    { formula: "=HATCH.BOREGROWTH({73.02,73.04}, 73)", gives: 0.03 },
    { formula: "=HATCH.BOREGROWTH({73.02,73.04;73.01,73.01}, 73, 2)", gives: [[0.03], [0.01]] },
  ],
  compute: ({ readings: bore, finished }) => decimal(meanOf(bore) - finished),
});
`;

/** Judges, with its inputs in another order than the functions that judge today. */
const BETWEEN = `import { define, value } from "../../core/define.ts";
import { number } from "../../core/inputs.ts";
import { verdictOf } from "../../core/verdict.ts";

/** A verdict with the limits first. Source: common practice. */
export const between = define({
  name: "BETWEEN",
  group: "verdict",
  role: "judges",
  summary: "The verdict on a value between two limits, which stand before it",
  definition: "over: value > upper; under: value < lower; otherwise within",
  source: "common practice",
  params: {
    lower: number("lower limit").as("lower"),
    upper: number("upper limit").as("upper"),
    reading: number("the reading to judge").as("value"),
  },
  returns: value("the verdict in words"),
  examples: [
    { formula: "=HATCH.BETWEEN(1, 2, 3)", gives: "over" },
    { formula: "=HATCH.BETWEEN(1, 2, {1.5;0})", gives: [["within"], ["under"]] },
  ],
  compute: ({ lower, upper, reading }) => verdictOf(reading, lower, upper)!,
});
`;

const testOf = (name: string, group: string, file: string) => `import { ${name} } from "../../../src/functions/${group}/${file}.ts";

test("it is declared", () => {
  expect(${name}.group).toBe("${group}");
});
`;

/** A check against an outside value, put first in the list of its group. */
const checked = (path: string, check: string) => (text: string) => {
  const at = text.indexOf("readonly Check[] = [") + "readonly Check[] = [".length;
  if (at < 100) throw new Error(`${path} has no list of checks`);
  return `${text.slice(0, at)}\n  ...checksOf(${check}),${text.slice(at)}`;
};

const ADDED: Readonly<Record<string, string>> = {
  "src/functions/cylinder/bore-growth.ts": GROWTH,
  "test/functions/cylinder/bore-growth.test.ts": testOf("boreGrowth", "cylinder", "bore-growth"),
  "src/functions/verdict/between.ts": BETWEEN,
  "test/functions/verdict/between.test.ts": testOf("between", "verdict", "between"),
};
const CHECKED: Readonly<Record<string, string>> = {
  "test/reference/checks/cylinder.ts": `"BOREGROWTH", "common practice", "common practice", [["=HATCH.BOREGROWTH({73.02,73.04}, 73)", 0.03]]`,
  "test/reference/checks/verdict.ts": `"BETWEEN", "common practice", "common practice", [["=HATCH.BETWEEN(1, 2, 3)", "over"]]`,
};
/** What `npm run generate` writes. */
const MADE = ["README.md", "src/functions/index.ts", "test/reference/README.md"];

/** Two bores of two heights and two axes; the growth of each is judged by a limit in a cell, one reading by limits typed into the formula. */
const BORES = [
  ["Cylinder", "Top thrust", "Top pin", "Bottom thrust", "Bottom pin", "Growth", "Verdict", "Again", "Finished", "Most"],
  [1, 73.02, 73.04, 73.02, 73.04, "=HATCH.BOREGROWTH(B2:E2,$I$2,2)", "=HATCH.BETWEEN(0,$J$2,F2)", null, 73, 0.02],
  [2, 73.01, 73.01, null, 73.01, "=HATCH.BOREGROWTH(B3:E3,$I$2,2)", "=HATCH.BETWEEN(0,$J$2,F3)", "=HATCH.BETWEEN(73,73.1,B2)", null, null],
];

interface Told {
  functionsJson: { id: string; parameters: { name: string; optional?: true }[] }[];
  associated: string[];
  help: string[];
  list: string[];
  pane: string[];
  values: unknown[][][];
  refused?: string;
  findings: { kind: string; cell: string; lower: number | null; upper: number | null; sentence: string }[];
  readings: [cell: string, characteristic: string, value: number][];
  drawn: { place: string; readings: number[][]; standard?: number; limit?: number }[];
}

const PAGES = ["package.json", "package-lock.json", "tsconfig.json", "README.md", "DEVELOPERS.md"];
const NAMES = ["BOREGROWTH", "BETWEEN"];
let copy: string;
let told: Told;

const run = (...args: string[]): string => {
  const { status, stdout, stderr } = spawnSync(process.execPath, ["--import", "tsx", ...args], {
    cwd: copy,
    encoding: "utf8",
    env: { ...process.env, NODE_OPTIONS: "" },
    maxBuffer: 1e8,
  });
  if (status !== 0) throw new Error(`${args[0]} ended with ${status}:\n${stdout}${stderr}`);
  return stdout;
};

beforeAll(() => {
  copy = mkdtempSync(join(realpathSync(tmpdir()), "crosshatch-added-"));
  for (const name of PAGES) cpSync(join(root, name), join(copy, name));
  cpSync(join(root, "src"), join(copy, "src"), { recursive: true });
  cpSync(join(root, "test"), join(copy, "test"), { recursive: true, filter: (path) => path !== join(root, "test", "output") });
  symlinkSync(join(root, "node_modules"), join(copy, "node_modules"), "junction");
  for (const [path, text] of Object.entries(ADDED)) writeFileSync(join(copy, path), text);
  for (const [path, check] of Object.entries(CHECKED)) writeFileSync(join(copy, path), checked(path, check)(readFileSync(join(root, path), "utf8")));
  run(join("test", "tasks", "generate.ts"));
  const tooMuch = "=HATCH.BOREGROWTH(73+SEQUENCE(101,2)/1000,73)";
  const printed = run(join("test", "functions", "added", "told-of.ts"), JSON.stringify([NAMES, { Bores: BORES }, tooMuch]));
  told = JSON.parse(printed.trim().split("\n").at(-1)!) as Told;
}, 300_000);

afterAll(() => rmSync(copy, { recursive: true, force: true }));

const filesBelow = (folder: string): string[] =>
  ["src", "test"]
    .flatMap((part) => readdirSync(join(folder, part), { recursive: true, withFileTypes: true }))
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join("/"))
    .filter((path) => !path.startsWith("test/output/"));

test("nothing is written by hand but a function's own file, its test and its outside check", () => {
  const known = new Set([...filesBelow(root), ...PAGES]);
  const differs = (path: string) => !known.has(path) || !readFileSync(join(copy, path)).equals(readFileSync(join(root, path)));
  const written = [...filesBelow(copy), ...PAGES].filter((path) => path in ADDED || differs(path));
  expect(written.sort()).toEqual([...Object.keys(ADDED), ...Object.keys(CHECKED), ...MADE].sort());
});

test("the gate finds nothing missing in either", () => {
  expect(run(join("test", "tasks", "gate.ts"))).toBe("");
}, 120_000);

test("Excel's list, the registration, the help, the pane's search and README's table have both", () => {
  expect(told.functionsJson.map(({ id, parameters }) => [id, parameters.map(({ name, optional }) => (optional ? `[${name}]` : name))])).toEqual([
    ["BOREGROWTH", ["readings", "finished", "[axes]"]],
    ["BETWEEN", ["lower", "upper", "reading"]],
  ]);
  expect(told.associated.sort()).toEqual([...NAMES].sort());
  expect(told.help).toEqual(["HATCH.BOREGROWTH(readings, finished, [axes])", "HATCH.BETWEEN(lower, upper, reading)"]);
  expect(told.list).toEqual(NAMES);
  expect(told.pane).toEqual(NAMES);
  const readme = readFileSync(join(copy, "README.md"), "utf8");
  expect(readme).toContain(
    "| `BOREGROWTH(readings, finished, [axes])` | Mean wear of a bore: the mean of its readings less the size that it was finished to |",
  );
  expect(readme).toContain("| `BETWEEN(lower, upper, reading)` |");
});

test("the spreadsheet engine calculates both, and refuses a call that costs more than is done at a time", () => {
  expect(told.values[0]![1]!.slice(5, 7)).toEqual([0.03, "over"]);
  expect(told.refused).toBe("The formulas here take more work together than is done at a time.");
});

test("Check judges what the new function judges, by the limits that it declares as such, and looks at what the other takes", () => {
  const outside = told.findings.filter(({ kind }) => kind === "outside limit");
  expect(outside).toMatchObject([{ cell: "Bores!F2", lower: 0, upper: 0.02 }]);
  expect(told.findings.filter(({ kind }) => kind === "limit in formula")).toMatchObject([{ cell: "Bores!H3", lower: 73, upper: 73.1 }]);
  expect(told.findings.filter(({ kind }) => kind === "missing reading").map(({ cell }) => cell)).toEqual(["Bores!D3"]);
});

test("Compare takes its result for a characteristic and its readings for measured, and leaves out the size that was chosen", () => {
  const cells = told.readings.map(([cell]) => cell);
  expect(told.readings).toContainEqual(["Bores!F2", "Growth", 0.03]);
  expect(cells).toEqual(expect.arrayContaining(["Bores!B2", "Bores!E2", "Bores!C3"]));
  expect(told.readings.find(([cell]) => cell === "Bores!B2")![1]).toBe("bore");
  expect(cells.filter((cell) => ["Bores!I2", "Bores!J2", "Bores!G2"].includes(cell))).toEqual([]);
});

test("Report and Draw show its bores, with the chosen size and the largest bore that a limit on the growth allows", () => {
  expect(told.drawn.map(({ place, standard, limit }) => ({ place, standard, limit }))).toEqual([
    { place: "Bores!B2:E2", standard: 73, limit: 73.02 },
    { place: "Bores!B3:E3", standard: 73, limit: undefined },
  ]);
  expect(told.drawn[0]!.readings).toEqual([
    [73.02, 73.04],
    [73.02, 73.04],
  ]);
});
