import type { BuildSheetChoices } from "./choices.ts";
import { axisNames, CAUTION, dateColumn, heightNames, lengthColumn, numberColumn, resultColumn, whenFilled } from "./columns.ts";
import type { BuildSheet } from "./model.ts";
import { type RowAt, SheetBuilder, type SheetColumn, type TableAt } from "./page.ts";

export interface TrialChoices extends Pick<BuildSheetChoices, "cylinders" | "heights" | "axes" | "unit"> {
  /** Engines in each of two groups. */
  engines: number;
  /** The order of measuring follows from it: the same number gives the same order. */
  seed: number;
}

export const MOST_ENGINES = 12;

const RUNNING = "A trial is work on running engines: take the usual cautions, and let the maker's service manual decide, on running in above all.";
const GAUGES = 6;
const CAMPAIGNS = ["before", "after"] as const;

interface Item {
  characteristic: string;
  position: string;
}

/** What is measured on each cylinder, by characteristic: the positions of one stand together. */
function itemsOf({ heights, axes }: TrialChoices): Item[] {
  const bores = heightNames(heights).flatMap((height) => axisNames(axes).map((axis) => ({ characteristic: "bore", position: `${height} ${axis}` })));
  const others: Item[] = [
    { characteristic: "piston skirt", position: "" },
    { characteristic: "top ring end gap", position: "" },
    { characteristic: "second ring end gap", position: "" },
    { characteristic: "crankpin", position: "across" },
    { characteristic: "crankpin", position: "along" },
  ];
  return [...bores, ...others];
}

/**
 * An ordinary workbook for a trial: groups and engines, limits with what matters, gauges with their masters, readings wide by cylinder
 * in a drawn order, blind sheets for a second person, and verdicts by our functions. `compare` and `trial` read it as it is.
 */
export function trialWorkbookSpec(choices: TrialChoices): BuildSheet {
  const items = itemsOf(choices);
  const characteristics = [...new Set(items.map(({ characteristic }) => characteristic))];
  const { page: trial, engines, gauges } = trialPage(choices);
  const { page: limits, table: limitsAt } = limitsPage(choices, characteristics);
  const readings = CAMPAIGNS.map((campaign, i) => readingsPage(choices, items, engines, campaign, false, i));
  const second = CAMPAIGNS.map((campaign, i) => readingsPage(choices, items, engines, campaign, true, 2 + i));
  const verdicts = verdictsPage(choices, items, engines, gauges, limitsAt, readings[0]!.table, readings[1]!.table);
  const sheets = [trial, limits, mastersPage(choices), ...readings.map(({ page }) => page), ...second.map(({ page }) => page), verdicts];
  return {
    title: "Trial",
    sheets: sheets.map((page) => page.described(choices)),
    names: [{ name: "Gauge_ids", formula: gauges.body("Gauge id") }],
  };
}

function trialPage({ engines, seed, unit }: TrialChoices): { page: SheetBuilder; engines: TableAt; gauges: TableAt } {
  const page = new SheetBuilder("Trial", "Trial", [
    "Name each engine and the way in which it is treated. The engine counts: two of each way are the fewest, and few.",
    "Type the limits and what matters first, then the gauges. Read each gauge's master at the start and at the end of both campaigns.",
    RUNNING,
    CAUTION,
    `The order of measuring was drawn with the number ${seed}: the same number gives the same order.`,
  ]);
  const rows = 2 * engines;
  const table = page.table(
    "Engines",
    7,
    [
      { heading: "Engine", look: "typed", width: 14 },
      { heading: "Group", look: "typed", width: 18 },
      { heading: "Serial number", look: "typed", width: 18 },
      { heading: "Treatment", look: "typed", width: 40 },
    ],
    rows,
  );
  const gauges = page.table(
    "Gauges",
    10 + rows,
    [
      { heading: "Gauge id", look: "typed" },
      { heading: "Kind", look: "typed" },
      numberColumn("Uncertainty", "General", `U of one reading at 95 %, in ${unit}, above 0.`),
      numberColumn("Common part", "General", "The part of U that all readings of a session share; 0 for none; blank when it is not known.", "at least zero"),
      { heading: "Unit", look: "label", cell: () => unit },
      dateColumn("Calibration due"),
    ],
    GAUGES,
  );
  return { page, engines: table, gauges };
}

function limitsPage({ unit }: TrialChoices, characteristics: readonly string[]): { page: SheetBuilder; table: TableAt } {
  const page = new SheetBuilder("Limits", "Limits and what matters", [
    "Typed by the shop, from the maker's service manual; what matters is your own decision, taken before anything is measured.",
  ]);
  const size = (heading: string): SheetColumn => numberColumn(heading, "General", `A number in ${unit}.`, "number");
  const table = page.table(
    "TrialLimits",
    3,
    [
      { heading: "Characteristic", look: "label", width: 24, cell: ({ index }) => characteristics[index]! },
      size("Lower"),
      size("Upper"),
      numberColumn("Matters", "General", `The smallest difference that matters, in ${unit}, above 0.`),
      { heading: "Unit", look: "label", cell: () => unit },
      { heading: "Source", look: "typed", width: 30 },
    ],
    characteristics.length,
  );
  return { page, table };
}

const GAUGE: SheetColumn = {
  heading: "Gauge",
  look: "typed",
  rule: { rule: { kind: "listed", name: "Gauge_ids" }, sentence: "The id of a gauge on the sheet Trial." },
};
const MASTERS_EACH = ["start", "end"];

function mastersPage(choices: TrialChoices): SheetBuilder {
  const page = new SheetBuilder("Masters", "Masters of the gauges", [
    "Each gauge's setting ring or standard, read at the start and at the end of each campaign: what it moves by is taken out of every change.",
  ]);
  const rows = Array.from({ length: GAUGES / 2 }, () => CAMPAIGNS.flatMap((campaign) => MASTERS_EACH.map((position) => ({ campaign, position })))).flat();
  page.table(
    "Masters",
    3,
    [
      { heading: "Campaign", look: "label", cell: ({ index }) => rows[index]!.campaign },
      GAUGE,
      dateColumn("Day"),
      { heading: "Person", look: "typed", width: 14 },
      { heading: "Characteristic", look: "label", width: 14, cell: () => "master" },
      { heading: "Position", look: "label", cell: ({ index }) => rows[index]!.position },
      lengthColumn("Value", choices),
      { heading: "Unit", look: "label", cell: () => choices.unit },
      numberColumn("Temperature", "0.0", "In °C.", "number"),
      { heading: "Material", look: "typed", width: 14 },
    ],
    rows.length,
  );
  return page;
}

/** A campaign's readings: every engine, one after the other, with the positions of a characteristic together. */
function readingsPage(choices: TrialChoices, items: readonly Item[], engines: TableAt, campaign: string, isSecond: boolean, draw: number) {
  const name = `${campaign === "before" ? "Before" : "After"}${isSecond ? ", second" : ""}`;
  const note = isSecond
    ? "For a second person, who does not look at the first readings. Leave it empty where nobody reads twice."
    : "Measure in the order of the first column.";
  const page = new SheetBuilder(name, `${name}: readings by cylinder`, [note]);
  const rows = choices.engines * 2 * items.length;
  const order = drawn(rows, choices.seed + draw);
  const itemAt = ({ index }: RowAt): Item => items[index % items.length]!;
  const ofEngine = (heading: string) => (row: RowAt) => {
    const cell = engines.cell(heading, Math.floor(row.index / items.length));
    return `=IF(${cell}="","",${cell})`;
  };
  const table = page.table(
    `Readings${campaign}${isSecond ? "second" : ""}`,
    3,
    [
      { heading: "Order", look: "label", width: 7, cell: ({ index }) => order[index]! },
      { ...resultColumn("Engine", "General", ofEngine("Engine")), namesRow: true },
      { ...resultColumn("Group", "General", ofEngine("Group"), 14), namesRow: true },
      { heading: "Campaign", look: "label", cell: () => campaign },
      { heading: "Characteristic", look: "label", width: 20, cell: (row) => itemAt(row).characteristic },
      { heading: "Position", look: "label", width: 16, cell: (row) => itemAt(row).position },
      ...Array.from({ length: choices.cylinders }, (_, i) => lengthColumn(`Cylinder ${i + 1}`, choices)),
      { heading: "Unit", look: "label", width: 6, cell: () => choices.unit },
      GAUGE,
      dateColumn("Day"),
      { heading: "Person", look: "typed", width: 12 },
      numberColumn("Hours", "General", "Hours in service, 0 for a new build.", "at least zero"),
      numberColumn("Temperature", "0.0", "Of the part, in °C.", "number"),
      { heading: "Material", look: "typed", width: 14 },
    ],
    rows,
  );
  page.freeze(4, 6);
  return { page, table };
}

/** The numbers from 1 on in an order that follows from the seed alone (R. A. Fisher and F. Yates 1938; the numbers by D. H. Lehmer 1951). */
export function drawn(count: number, seed: number): number[] {
  const order = Array.from({ length: count }, (_, i) => i + 1);
  let state = (Math.abs(Math.trunc(seed)) % 2147483646) + 1;
  for (let i = count - 1; i > 0; i--) {
    state = (state * 48271) % 2147483647;
    const j = state % (i + 1);
    [order[i], order[j]] = [order[j]!, order[i]!];
  }
  return order;
}

function verdictsPage(
  choices: TrialChoices,
  items: readonly Item[],
  engines: TableAt,
  gauges: TableAt,
  limits: TableAt,
  before: TableAt,
  after: TableAt,
): SheetBuilder {
  const page = new SheetBuilder("Verdicts", "Verdicts", [
    "Mean change of each engine by PAIREDCHANGE, adjusted for all rows by CHANCEADJUSTED; the masters are not in it. crosshatch trial takes them out, and judges every place.",
    CAUTION,
  ]);
  const names = [...new Set(items.map(({ characteristic }) => characteristic))];
  const count = 2 * choices.engines;
  const [first, last] = ["Cylinder 1", `Cylinder ${choices.cylinders}`];
  /** Readings of one engine and characteristic, as a block. */
  const block = (table: TableAt, row: number): string => {
    const [name, engine] = [names[Math.floor(row / count)]!, row % count];
    const rows = items.flatMap(({ characteristic }, i) => (characteristic === name ? [engine * items.length + i] : []));
    return `${table.cell(first, rows[0]!)}:${table.cell(last, rows.at(-1)!).split("!")[1]}`;
  };
  const found = (heading: string, row: number): string => {
    const gauge = before.cell(
      "Gauge",
      (row % count) * items.length + items.findIndex(({ characteristic }) => characteristic === names[Math.floor(row / count)]),
    );
    return `IFERROR(INDEX(${gauges.body(heading)},MATCH(${gauge},${gauges.body("Gauge id")},0)),"")`;
  };
  const part = (heading: string, format: string, column: number, width?: number): SheetColumn =>
    resultColumn(
      heading,
      format,
      (row) => {
        const matters = limits.cell("Matters", Math.floor(row.index / count));
        const inputs = `${block(before, row.index)},${block(after, row.index)},${row.ref("U")},IF(${matters}=0,"",${matters}),0.95,${row.ref("Common")}`;
        return `=IF(COUNT(${block(after, row.index)})=0,"",INDEX(HATCH.PAIREDCHANGE(${inputs}),2,${column}))`;
      },
      width,
    );
  const size = choices.unit === "mm" ? "0.0000" : "0.00000";
  const table = page.table(
    "Verdicts",
    4,
    [
      { heading: "Characteristic", look: "label", width: 22, cell: ({ index }) => names[Math.floor(index / count)]! },
      resultColumn("Engine", "General", ({ index }) => `=IF(${engines.cell("Engine", index % count)}="","",${engines.cell("Engine", index % count)})`),
      resultColumn("U", "General", ({ index }) => `=IF(${found("Uncertainty", index)}=0,"",${found("Uncertainty", index)})`),
      // An empty cell is equal to 0 and to "": only a typed 0 says that nothing is shared.
      resultColumn(
        "Common",
        "General",
        ({ index }) => `=IF(${found("Common part", index)}="","",IF(${found("Common part", index)}=0,"none",${found("Common part", index)}))`,
      ),
      part("Mean change", size, 1),
      part("From", size, 2),
      part("To", size, 3),
      part("p", "0.0000", 6),
      resultColumn("p adjusted", "0.0000", (row) => whenFilled([row.ref("p")], `INDEX(HATCH.CHANCEADJUSTED(${row.body("p")}),${row.index + 1})`)),
      part("By", "General", 7),
      part("Verdict", "General", 8, 40),
    ],
    names.length * count,
  );
  if (choices.engines > 1) groupsTable(page, choices, names, table, engines);
  else page.put(7 + names.length * count, 0, "One engine of each way: the engines are judged, the ways of treatment cannot be told.", "note");
  return page;
}

/** Second group less first, by the engines' mean changes. */
function groupsTable(page: SheetBuilder, { engines: each }: TrialChoices, names: readonly string[], verdicts: TableAt, engines: TableAt): void {
  const side = (index: number, group: number): string => {
    const from = index * 2 * each + group * each;
    return `${verdicts.cell("Mean change", from)}:${verdicts.cell("Mean change", from + each - 1).split("!")[1]}`;
  };
  const part = (heading: string, format: string, column: number, width?: number): SheetColumn =>
    resultColumn(
      heading,
      format,
      ({ index }) =>
        `=IF(OR(COUNT(${side(index, 0)})<2,COUNT(${side(index, 1)})<2),"",INDEX(HATCH.COMPAREGROUPS(${side(index, 1)},${side(index, 0)}),2,${column}))`,
      width,
    );
  page.table(
    "Groups",
    7 + verdicts.table.rows,
    [
      { heading: "Characteristic", look: "label", width: 22, cell: ({ index }) => names[index]! },
      resultColumn("Groups", "General", () => `=${engines.cell("Group", each)}&" against "&${engines.cell("Group", 0)}`, 24),
      part("Difference", "0.0000", 1),
      part("From", "0.0000", 2),
      part("To", "0.0000", 3),
      part("p", "0.0000", 6),
      part("Verdict", "General", 8, 40),
    ],
    names.length,
  );
}
