import { axisNames, DATE_FORMAT, heightNames, lengthColumn, resultColumn } from "../columns.ts";
import { type RowAt, SheetBuilder, type TableAt } from "../page.ts";
import { sessionsName } from "./campaigns-sheet.ts";
import { type TrialChoices, useHeading } from "./choices.ts";

export interface MeasuredItem {
  characteristic: string;
  position: string;
}

/** What the sheets of a trial share. */
export interface TrialContext {
  choices: TrialChoices;
  items: readonly MeasuredItem[];
  characteristics: readonly string[];
  engines: TableAt;
  gauges: TableAt;
  limits: TableAt;
  sessions: TableAt;
}

/** What is measured on each cylinder, by characteristic: the positions of one stand together. */
export function itemsOf({ heights, axes }: TrialChoices): MeasuredItem[] {
  const bores = heightNames(heights).flatMap((height) => axisNames(axes).map((axis) => ({ characteristic: "bore", position: `${height} ${axis}` })));
  const others: MeasuredItem[] = [
    { characteristic: "piston skirt", position: "" },
    { characteristic: "top ring end gap", position: "" },
    { characteristic: "second ring end gap", position: "" },
    { characteristic: "crankpin", position: "across" },
    { characteristic: "crankpin", position: "along" },
  ];
  return [...bores, ...others];
}

/** A campaign's readings: every engine, one after the other, with the positions of a characteristic together. */
export function readingsPage(given: TrialContext, campaign: string, isSecond: boolean, draw: number): { page: SheetBuilder; table: TableAt } {
  const { choices, items, characteristics, engines, limits, sessions } = given;
  const name = `${campaign === "before" ? "Before" : "After"}${isSecond ? ", second" : ""}`;
  const note = isSecond
    ? "For a second person, who does not look at the first readings. Leave it empty where nobody reads twice."
    : "Measure in the order of the first column.";
  const page = new SheetBuilder(name, `${name}: readings by cylinder`, [`${note} Each row names its session, a row of the sheet Campaigns.`]);
  const rows = choices.engines * 2 * items.length;
  const order = drawn(rows, choices.seed + draw);
  const itemAt = ({ index }: RowAt): MeasuredItem => items[index % items.length]!;
  const shown = (cell: string): string => `=IF(${cell}="","",${cell})`;
  const ofEngine = (heading: string) => (row: RowAt) => shown(engines.cell(heading, Math.floor(row.index / items.length)));
  const ofSession = (heading: string) => (row: RowAt) => {
    const found = `INDEX(${sessions.body(heading)},MATCH(${row.ref("Session")},${sessions.body("Session")},0))`;
    return `=IF(${row.ref("Session")}="","",IFERROR(IF(${found}="","",${found}),""))`;
  };
  const table = page.table(
    `Readings${campaign}${isSecond ? "second" : ""}`,
    3,
    [
      { heading: "Order", look: "label", width: 7, cell: ({ index }) => order[index]! },
      { ...resultColumn("Engine", "General", ofEngine("Engine")), namesRow: true },
      { ...resultColumn("Group", "General", ofEngine("Group"), 14), namesRow: true },
      { heading: "Campaign", look: "label", cell: () => campaign },
      { heading: "Characteristic", look: "label", width: 23, cell: (row) => itemAt(row).characteristic },
      { heading: "Position", look: "label", width: 16, cell: (row) => itemAt(row).position },
      ...Array.from({ length: choices.cylinders }, (_, i) => lengthColumn(`Cylinder ${i + 1}`, choices)),
      { heading: "Unit", look: "label", width: 6, cell: () => choices.unit },
      {
        heading: "Session",
        look: "typed",
        width: 14,
        rule: { rule: { kind: "listed", name: sessionsName(campaign) }, sentence: "A session of this campaign on the sheet Campaigns." },
      },
      resultColumn("Gauge", "General", ofSession("Gauge")),
      resultColumn("Day", DATE_FORMAT, ofSession("Measured on"), 13),
      resultColumn("Person", "General", ofSession("Person")),
      resultColumn(useHeading(choices.use), "General", ofEngine(`${useHeading(choices.use)} ${campaign}`)),
      resultColumn("Temperature", "0.0", ofSession("Part temperature")),
      resultColumn("Material", "General", (row) => shown(limits.cell("Material", characteristics.indexOf(itemAt(row).characteristic)))),
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
