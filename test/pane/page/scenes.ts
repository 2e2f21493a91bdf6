import { Analysis } from "../../../src/check/analysis.ts";
import type { CheckResult, Finding } from "../../../src/check/finding.ts";
import type { Cell } from "../../../src/core/cell.ts";
import { type MemoryHost, memoryHost } from "../../../src/hosts/memory.ts";
import type { PaneOptions } from "../../../src/pane/mount.tsx";
import { finding } from "../../helpers/finding.ts";
import { comparedBook, engineBook, judgedBook } from "./engine.ts";

/** What the page under test shows: a workbook in memory, and what its check comes to. */
export interface Scene {
  host: MemoryHost;
  options: PaneOptions;
}

const cell = (sheet: string, row: number, column: number) => ({ sheet, row, column });

/** One of each kind, worst first, from two engines of an invented hire-boat yard. */
export const FINDINGS: readonly Finding[] = [
  finding({
    kind: "outside limit",
    cell: cell("Bores", 6, 2),
    label: "Engine 2, bore 3, taper",
    value: 0.062,
    lower: null,
    upper: 0.05,
    margin: -0.012,
    verdict: "over",
    sentence: "0.062 is over the upper limit 0.05 by 0.012",
  }),
  finding({
    kind: "outside limit",
    cell: cell("Rings", 9, 4),
    label: "Engine 1, cylinder 2, top ring, end gap",
    value: 0.18,
    lower: 0.25,
    upper: 0.4,
    margin: -0.07,
    verdict: "under",
    sentence: "0.18 is under the lower limit 0.25 by 0.07",
  }),
  finding({
    kind: "refused",
    cell: cell("Pistons", 4, 3),
    label: "Engine 2, piston 1, clearance",
    value: "73,02",
    sentence: 'PISTONCLEARANCE: skirt holds the text "73,02": a decimal comma is not read, type it with this sheet\'s decimal sign',
  }),
  finding({
    kind: "not proven",
    cell: cell("Bores", 8, 2),
    label: "Engine 1, bore 1, out-of-round",
    value: 0.029,
    upper: 0.03,
    margin: 0.001,
    verdict: "not proven",
    details: { uncertainty: 0.003 },
    sentence: "0.029 is within 0.03, but by less than the uncertainty 0.003 of the gauge",
  }),
  finding({
    kind: "mixed units",
    cell: cell("Bores", 3, 5),
    label: "Bore 2",
    value: 2.875,
    details: { unit: "in", likeUnit: "mm", causes: [] },
    sentence: "2.875 looks like inches among millimetres",
  }),
  finding({
    kind: "likely slip",
    cell: cell("Run-in log", 11, 1),
    label: "Bore 1, middle, thrust",
    value: 730.2,
    details: { causes: [] },
    sentence: "730.2 looks like 73.02 with the decimal point moved",
  }),
  finding({
    kind: "near limit",
    cell: cell("Pistons", 7, 6),
    label: "Engine 1, piston 3, clearance",
    value: 0.038,
    lower: 0.02,
    upper: 0.04,
    margin: 0.002,
    verdict: "near limit",
    sentence: "0.038 is within 0.02 to 0.04, 0.002 from the upper limit",
  }),
  finding({ kind: "missing reading", cell: cell("Bores", 5, 3), label: "Engine 2, bore 2, bottom, pin", sentence: "The reading is blank" }),
  finding({ kind: "missing limit", cell: cell("Valves", 2, 3), label: "Exhaust 1, clearance", value: 0.3, sentence: "0.3 has no limit to be judged by" }),
];

/** One of each kind that is about gauges and formulas instead of readings. */
const OTHERS: readonly Finding[] = [
  finding({
    kind: "calibration overdue",
    cell: cell("Run-in log", 38, 2),
    label: "Bores, Measured on",
    details: { gauge: "BG-1", usedOn: "2026-04-02", due: "2026-03-21", daysPast: 12, uses: 1 },
    sentence: "BG-1 was used on 2026-04-02, 12 days past its calibration date 2026-03-21: have it calibrated, and measure again with a gauge that is in date",
  }),
  finding({
    kind: "coarse gauge",
    cell: cell("Pistons", 4, 6),
    label: "Cylinder 1, Clearance",
    value: 0.027,
    lower: 0.02,
    upper: 0.035,
    margin: 0.007,
    verdict: "not proven",
    details: { uncertainty: 0.006, tolerance: 0.015, largestUncertainty: 0.005, readings: 3 },
    sentence:
      "the uncertainty 0.006 is more than a third of the tolerance 0.015 between 0.02 and 0.035, here and for 2 more readings: measure with a gauge whose U is at most 0.005",
  }),
  finding({
    kind: "overwritten formula",
    cell: cell("Bores", 3, 3),
    label: "Cylinder 3, Taper",
    value: 0.01,
    sentence:
      "0.01 is typed where the cells beside it hold a formula, which is =HATCH.TAPER(B4:C4,1) for this one and would give 0.02 here: put the formula back, or this cell no longer follows its readings",
  }),
  finding({
    kind: "limit in formula",
    cell: cell("Bores", 1, 2),
    label: "Cylinder 1",
    upper: 0.02,
    sentence:
      "the upper limit 0.02 is written inside the formula and in 5 more on this sheet: type it into a cell with its source beside it, and let the formula refer to that cell",
  }),
];

const RING = ["top", "second", "oil"];

/** A build that is half filled in: a slip with what it causes, one reading outside, twelve too close for one gauge, sixteen re-checks that are due. */
export const HALF_FILLED: readonly Finding[] = [
  finding({
    kind: "likely slip",
    cell: cell("Bores", 4, 6),
    label: "Cylinder 2, Bottom pin",
    value: 730.15,
    details: { causes: ["refused at Bores!H5", "refused at Bores!J5"] },
    sentence: "730.15 is far from 73.013, the middle of similar readings: is the decimal point in its place? It causes 2 other findings",
  }),
  ...[7, 9].map((column) =>
    finding({ kind: "refused", cell: cell("Bores", 4, column), label: "Cylinder 2, Taper", details: { why: "a decimal point" }, sentence: "a decimal point" }),
  ),
  FINDINGS[0]!,
  ...Array.from({ length: 12 }, (_, i) =>
    finding({
      kind: "not proven",
      cell: cell("Rings", 3 + i, 5),
      label: `Cylinder ${1 + Math.floor(i / 3)}, ${RING[i % 3]}, Side clearance`,
      value: 0.055,
      lower: 0.03,
      upper: 0.06,
      margin: 0.005,
      verdict: "not proven",
      details: { uncertainty: 0.01 },
      sentence: "0.055 is inside the upper limit 0.06 by 0.005, not proven either way with an uncertainty of 0.01",
    }),
  ),
  ...Array.from({ length: 16 }, (_, i) =>
    finding({
      kind: "missing reading",
      cell: cell("Run-in log", 27 + i, 2),
      label: `Valve ${i + 1}, Re-checked`,
      details: { blank: "one of a row", range: null },
      sentence: "the reading is still blank, while others that go with it are there",
    }),
  ),
];

const RESULT: CheckResult = { findings: [...FINDINGS], rowsIn: 24, checked: 23, refused: 1, inputs: 60 };

/** Many findings, each with a cell of its own. */
export function manyFindings(count: number): Finding[] {
  return Array.from({ length: count }, (_, index) =>
    finding({
      kind: index % 3 === 0 ? "outside limit" : "near limit",
      cell: cell("Batch", index, 2),
      label: `Engine ${index + 1}, bore 1, taper`,
      value: 0.05 + index / 1e5,
      upper: 0.05,
      margin: -index / 1e5,
      verdict: index % 3 === 0 ? "over" : "near limit",
      sentence: `Reading ${index + 1} against the limit 0.05`,
    }),
  );
}

const SHEETS = ["Bores", "Rings", "Pistons", "Valves", "Run-in log", "Batch"];
const book = () => memoryHost(SHEETS.map((name) => ({ name, cells: [[73.02]] })));

/** As a check gives it, of a workbook without a sheet. */
const checkedTo = (result: CheckResult) => ({ result, analysis: new Analysis({ sheets: [] }) });

const checking = (result: CheckResult, host = book()): Scene => ({ host, options: { checker: () => checkedTo(result) } });
const later = (milliseconds: number) => new Promise((resolve) => setTimeout(resolve, milliseconds));

function protectedBook(): MemoryHost {
  const host = book();
  host.protect("Rings");
  return host;
}

/** Typed values and formulas with the verdicts that they have, as a sheet that calculates shows them, for the check that the pane brings along. */
const sheet = (): Scene => {
  const judged = (row: number, value: number, verdict: string) => [
    `Bore ${row - 1}, taper`,
    value,
    { formula: `=HATCH.VERDICT(B${row}, , $D$1)`, value: verdict },
  ];
  const cells = [["", "taper", "verdict", 0.05], judged(2, 0.02, "within"), judged(3, 0.062, "over"), judged(4, 0.05, "within")];
  const host = memoryHost([{ name: "Bores", cells }]);
  const read = host.read;
  host.read = async () => {
    const snapshot = await read();
    const calculated = (line: Cell[]) => (typeof line[1] === "number" ? line.with(2, line[1] > 0.05 ? "over" : "within") : line);
    return { ...snapshot, sheets: snapshot.sheets.map((page) => ({ ...page, values: page.values.map(calculated) })) };
  };
  return { host, options: {} };
};

/** One sheet is judged, another holds readings that nothing judges, and numbers that are no readings. */
const loose = (): Scene => {
  const judged = [
    ["", "taper", "verdict", 0.05],
    ["Bore 1", 0.02, { formula: "=HATCH.VERDICT(B2, , $D$1)", value: "within" }],
  ];
  const pistons = [["Cylinder", "Piston skirt", "Pin bore"], ...[1, 2, 3].map((cylinder) => [cylinder, 72.97 + cylinder / 100, 18.01])];
  const cells = [...pistons, [], ["", "", "", "", 4.25], ["", "", "", "", 61.5]];
  return {
    host: memoryHost([
      { name: "Bores", cells: judged },
      { name: "Pistons", cells },
    ]),
    options: {},
  };
};

/** A workbook as Excel shows it where it does not know our functions. */
const unknown = (): Scene => {
  const row = (r: number, held: number) => [
    `Cylinder ${r - 1}`,
    80,
    held,
    { formula: `=HATCH.LEAKDOWN(B${r},C${r})`, value: { error: "#NAME?" } },
    { formula: `=HATCH.VERDICT(D${r},,$F$1)`, value: { error: "#NAME?" } },
  ];
  const cells = [["", "supply", "held", "leak", "verdict", 20], row(2, 72), row(3, 40)];
  return { host: memoryHost([{ name: "Tests", cells }]), options: {} };
};

/**
 * Readings that take the check that the pane brings along some seconds, on a quick machine too: no two
 * formulas are alike but for their cells, so that each has to be taken apart.
 */
const long = (): Scene => {
  const formula = (i: number): string => `=HATCH.VERDICT(A${i + 2}+0*${i}, $C$1, $D$1)`;
  const rows = Array.from({ length: 60_000 }, (_, i) => [73.01 + (i % 7) / 1000, { formula: formula(i), value: "within" }]);
  return { host: memoryHost([{ name: "Bores", cells: [["bore", "verdict", 73, 73.05], ...rows] }]), options: {} };
};

/** The first check is there at once, no later one ever comes to an end. */
const endless = (): Scene => {
  let checks = 0;
  return { host: book(), options: { checker: (_, __, { came }) => (checks++ === 0 ? checkedTo(RESULT) : new Promise(() => came(0.42))) } };
};

/** A host that hands its workbook over only when `window.hand` is called. */
const holding = (): Scene => {
  const host = book();
  const read = host.read;
  const handed = new Promise<void>((resolve) => Object.assign(window, { hand: resolve }));
  host.read = () => handed.then(read);
  return { host, options: { checker: () => checkedTo(RESULT) } };
};

export const SCENES = {
  loose,
  unknown,
  long,
  endless,
  holding,
  sheet,
  compared: (): Scene => ({ host: comparedBook(), options: {} }),
  judged: (): Scene => ({ host: judgedBook(), options: {} }),
  blank: (): Scene => ({ host: memoryHost([{ name: "Sheet1", cells: [] }]), options: {} }),
  engine: (): Scene => ({ host: engineBook(), options: {} }),
  findings: () => checking(RESULT),
  half: () => checking({ findings: [...HALF_FILLED], rowsIn: 40, checked: 38, refused: 2, inputs: 90 }),
  others: () => checking({ findings: [...OTHERS], rowsIn: 12, checked: 12, refused: 0, inputs: 30 }),
  clean: () => checking({ findings: [], rowsIn: 24, checked: 24, refused: 0, inputs: 60 }),
  unjudged: () => checking({ findings: [], rowsIn: 0, checked: 0, refused: 0, inputs: 18 }),
  empty: () => checking({ findings: [], rowsIn: 0, checked: 0, refused: 0, inputs: 0 }),
  many: () => checking({ findings: manyFindings(10_000), rowsIn: 10_000, checked: 10_000, refused: 0, inputs: 10_000 }),
  gone: () => checking({ findings: [{ ...FINDINGS[0]!, cell: cell("Old bores", 6, 2) }], rowsIn: 1, checked: 1, refused: 0, inputs: 1 }),
  guarded: () => checking(RESULT, protectedBook()),
  slow: (): Scene => ({ host: book(), options: { checker: () => later(1500).then(() => checkedTo(RESULT)) } }),
  broken: (): Scene => ({ host: book(), options: { checker: () => Promise.reject(new Error("no such thing")) } }),
} satisfies Record<string, () => Scene>;

export type SceneName = keyof typeof SCENES;
