import { CAUTION, resultColumn, whenFilled } from "../columns.ts";
import { type RowAt, SheetBuilder, type SheetColumn, type TableAt } from "../page.ts";
import type { TrialChoices } from "./choices.ts";
import type { TrialContext } from "./readings-sheets.ts";

/** What the readings of each campaign stand in: the first ones and a second person's. */
export interface ReadingTables {
  before: TableAt;
  after: TableAt;
  second: readonly TableAt[];
}

/** What stands in place of a verdict that a cell cannot give as Compare gives it. */
const LEFT = "judged by Compare or crosshatch trial";

/**
 * Verdicts by our functions on what was read. Where a master, temperatures or second readings count as well, which a cell cannot
 * weigh as Compare does, no verdict stands there that could be another one: it says who judges it.
 */
export function verdictsPage(
  { choices, items, characteristics: names, engines, gauges, limits, sessions }: TrialContext,
  { before, after, second }: ReadingTables,
): SheetBuilder {
  const page = new SheetBuilder("Verdicts", "Verdicts", [
    "Mean change of each engine by PAIREDCHANGE, adjusted for all rows by CHANCEADJUSTED.",
    "Where masters, temperatures or second readings are typed, Compare in the pane or crosshatch trial judges: they count there. These judge every place, too.",
    CAUTION,
  ]);
  const count = 2 * choices.engines;
  const [first, last] = ["Cylinder 1", `Cylinder ${choices.cylinders}`];
  /** Readings of one engine and characteristic, as a block. */
  const block = (table: TableAt, row: number): string => {
    const [name, engine] = [names[Math.floor(row / count)]!, row % count];
    const rows = items.flatMap(({ characteristic }, i) => (characteristic === name ? [engine * items.length + i] : []));
    return `${table.cell(first, rows[0]!)}:${table.cell(last, rows.at(-1)!).split("!")[1]}`;
  };
  /** The rows of a column that hold one engine's readings of one characteristic. */
  const rowsOf = (table: TableAt, heading: string, row: number): string => {
    const rows = items.flatMap(({ characteristic }, i) => (characteristic === names[Math.floor(row / count)] ? [(row % count) * items.length + i] : []));
    return `${table.cell(heading, rows[0]!)}:${table.cell(heading, rows.at(-1)!).split("!")[1]}`;
  };
  const gaugeOf = (row: number): string => rowsOf(before, "Gauge", row).split(":")[0]!;
  const found = (heading: string, row: number): string => `IFERROR(INDEX(${gauges.body(heading)},MATCH(${gaugeOf(row)},${gauges.body("Gauge id")},0)),"")`;
  /** What else is typed of a row's readings that counts; "" for nothing. */
  const beside = (row: number): string => {
    const both = [before, after];
    const isOf = (heading: string): string =>
      both.map((table) => `SUMPRODUCT(COUNTIF(${rowsOf(table, "Session", row)},${sessions.body("Session")})*(${sessions.body(heading)}<>""))`).join("+");
    const parts: [is: string, word: string][] = [
      [`${isOf("Master at start")}+${isOf("Master at end")}`, "master"],
      [isOf("Part temperature"), "temperature"],
      [second.map((table) => `COUNT(${block(table, row)})`).join("+"), "second readings"],
      [both.map((table) => `SUMPRODUCT(--(${rowsOf(table, "Gauge", row)}<>${gaugeOf(row)}))`).join("+"), "several gauges"],
    ];
    return `=IF(COUNT(${block(after, row)})=0,"",TRIM(${parts.map(([is, word]) => `IF(${is}>0,"${word} ","")`).join("&")}))`;
  };
  const change = (row: RowAt, column: number, confidence = 0.95): string => {
    const matters = limits.cell("Matters", Math.floor(row.index / count));
    const inputs = `${block(before, row.index)},${block(after, row.index)},${row.ref("U")},IF(${matters}=0,"",${matters}),${confidence},${row.ref("Common")}`;
    return `INDEX(HATCH.PAIREDCHANGE(${inputs}),2,${column})`;
  };
  const part = (heading: string, format: string, column: number, left = '""'): SheetColumn =>
    resultColumn(
      heading,
      format,
      (row) => `=IF(OR(COUNT(${block(after, row.index)})=0,${row.ref("U")}=""),"",IF(${row.ref("Also counts")}<>"",${left},${change(row, column)}))`,
    );
  /**
   * By the rules of Compare: what differs by itself, but not when it is adjusted for all rows or not beyond what all readings share, is the
   * same within what matters while the 90 % interval is, and cannot be told otherwise. While rows are left out, p is adjusted as if they
   * showed nothing: what differs then differs, and the rest is left to Compare as well.
   */
  const verdict = (row: RowAt): string => {
    const [word, common] = [change(row, 8), row.ref("Common")];
    const matters = limits.cell("Matters", Math.floor(row.index / count));
    const shared = `SQRT(2)*IF(${common}="",${row.ref("U")},IF(${common}="none",0,${common}))`;
    const holds = `AND(${row.ref("p adjusted, at most")}<=0.05,ABS(${row.ref("Mean change")})>${shared})`;
    const isSame = `AND(N(${matters})>0,ROUND(MAX(ABS(${change(row, 2, 0.9)}),ABS(${change(row, 3, 0.9)})),9)<=${matters})`;
    const doubtful = `IF(SUMPRODUCT(--(${row.body("Also counts")}<>""))>0,"${LEFT}",IF(${isSame},"same within "&${matters},"cannot tell among so many rows"))`;
    return `IF(LEFT(${word},7)<>"differs",${word},IF(${holds},${word},${doubtful}))`;
  };
  const size = sizeFormat(choices);
  const table = page.table(
    "Verdicts",
    5,
    [
      { heading: "Characteristic", look: "label", width: 22, cell: ({ index }) => names[Math.floor(index / count)]! },
      {
        namesRow: true,
        ...resultColumn("Engine", "General", ({ index }) => `=IF(${engines.cell("Engine", index % count)}="","",${engines.cell("Engine", index % count)})`),
      },
      resultColumn("U", "General", ({ index }) => `=IF(${found("Uncertainty", index)}=0,"",${found("Uncertainty", index)})`),
      // An empty cell is equal to 0 and to "": only a typed 0 says that nothing is shared.
      resultColumn(
        "Common",
        "General",
        ({ index }) => `=IF(${found("Common part", index)}="","",IF(${found("Common part", index)}=0,"none",${found("Common part", index)}))`,
      ),
      resultColumn("Also counts", "General", ({ index }) => beside(index), 26),
      part("Mean change", size, 1),
      part("From", size, 2),
      part("To", size, 3),
      part("p", "0.0000", 6, '"left out"'),
      // Text counts as a row that was looked at.
      resultColumn(
        "p adjusted, at most",
        "0.0000",
        (row) => `=IF(ISNUMBER(${row.ref("p")}),INDEX(HATCH.CHANCEADJUSTED(${row.body("p")}),${row.index + 1}),"")`,
      ),
      part("By", "General", 7),
      resultColumn(
        "Verdict",
        "General",
        (row) =>
          `=IF(COUNT(${block(after, row.index)})=0,"",IF(${row.ref("Also counts")}<>"","${LEFT}",IF(${row.ref("U")}="","cannot tell: no U of its gauge",${verdict(row)})))`,
        40,
      ),
    ],
    names.length * count,
  );
  if (choices.engines > 1) groupsTable(page, choices, names, table, engines);
  else page.note(8 + names.length * count, "One engine of each way: the engines are judged, the ways of treatment cannot be told.");
  return page;
}

/** One decimal more than readings have. */
const sizeFormat = ({ unit }: TrialChoices): string => (unit === "mm" ? "0.0000" : "0.00000");

/** Second group less first, by the engines' mean changes: the engine is the unit. */
function groupsTable(page: SheetBuilder, choices: TrialChoices, names: readonly string[], verdicts: TableAt, engines: TableAt): void {
  const { engines: each } = choices;
  const size = sizeFormat(choices);
  const side = (index: number, group: number): string => {
    const from = index * 2 * each + group * each;
    return `${verdicts.cell("Mean change", from)}:${verdicts.cell("Mean change", from + each - 1).split("!")[1]}`;
  };
  const part = (heading: string, format: string, column: number): SheetColumn =>
    resultColumn(
      heading,
      format,
      ({ index }) =>
        `=IF(OR(COUNT(${side(index, 0)})<2,COUNT(${side(index, 1)})<2),"",INDEX(HATCH.COMPAREGROUPS(${side(index, 1)},${side(index, 0)}),2,${column}))`,
    );
  page.table(
    "Groups",
    8 + verdicts.table.rows,
    [
      { heading: "Characteristic", look: "label", width: 22, cell: ({ index }) => names[index]! },
      resultColumn("Groups", "General", () => `=${engines.cell("Group", each)}&" against "&${engines.cell("Group", 0)}`, 24),
      part("Difference", size, 1),
      part("From", size, 2),
      part("To", size, 3),
      part("p", "0.0000", 6),
      resultColumn("p adjusted", "0.0000", (row) => whenFilled([row.ref("p")], `INDEX(HATCH.CHANCEADJUSTED(${row.body("p")}),${row.index + 1})`)),
      // The gauge may still say no where the spread of the engines says yes, never the other way round.
      resultColumn(
        "By the spread of the engines",
        "General",
        (row) =>
          whenFilled(
            [row.ref("p adjusted")],
            `IF(${row.ref("p adjusted")}>0.05,"cannot tell","differs; whether the gauge can see it: Compare or crosshatch trial")`,
          ),
        44,
      ),
    ],
    names.length,
  );
}
