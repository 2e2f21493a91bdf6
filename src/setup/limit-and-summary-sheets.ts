import { capitalised } from "../core/words.ts";
import { type CompressionRule, RULES } from "../functions/tests/compression-rule.ts";
import type { BuildSheetChoices } from "./choices.ts";
import { CAUTION, LimitsAt, limitFormat, numberColumn, pressureUnit, type SetupContext, whenFilled } from "./columns.ts";
import type { SheetPart, VerdictColumn } from "./model.ts";
import { SheetBuilder, type SheetColumn, type TableAt } from "./page.ts";
import { hasSheet, type SheetWord } from "./sheets.ts";

/** The table of limits, by which others find it. */
export const LIMITS_TABLE = "LimitList";

/** Rows for limits of the shop's own. */
const SPARE = 6;

const FIRST = 3;

/** What the sheets judge, with the unit of its limits. None has a limit until the shop types one. */
function characteristics(choices: BuildSheetChoices, parts: readonly SheetPart[]): (readonly [string, string])[] {
  const { cylinders, unit } = choices;
  const pressure = pressureUnit(choices);
  const all: [characteristic: string, unit: string, of: SheetWord, isJudged?: boolean][] = [
    ["Taper", unit, "bores"],
    ["Out-of-round", unit, "bores"],
    ["Bore wear", unit, "bores"],
    ["Piston clearance", unit, "pistons", hasSheet(choices, "bores")],
    ["Pin clearance", unit, "pistons"],
    ["Ring end gap, top", unit, "rings"],
    ["Ring end gap, second", unit, "rings"],
    ["Ring end gap, oil", unit, "rings"],
    ["Ring side clearance, top", unit, "rings"],
    ["Ring side clearance, second", unit, "rings"],
    ["Ring side clearance, oil", unit, "rings"],
    ["Main bearing clearance", unit, "crankshaft"],
    ["Main journal wear", unit, "crankshaft"],
    ["Big end clearance", unit, "crankshaft"],
    ["Crankpin wear", unit, "crankshaft"],
    ["Main bore alignment", unit, "crankshaft", cylinders > 1],
    ["Crankshaft run-out", unit, "crankshaft"],
    ["Main bearing crush", unit, "crankshaft"],
    ["Big end crush", unit, "crankshaft"],
    ["Crankshaft end float", unit, "crankshaft"],
    ["Valve clearance, inlet", unit, "valves"],
    ["Valve clearance, exhaust", unit, "valves"],
    ["Compression ratio", "", "volumes"],
    ["Squish", unit, "volumes"],
    ["Compression pressure", pressure, "tests"],
    ["Compression at standard air", pressure, "tests"],
    ["Compression spread", pressure, "tests", cylinders > 1],
    ["Leak-down", "%", "tests"],
    ["Leak-down spread", "%", "tests", cylinders > 1],
  ];
  const own = all.filter(([, , of, isJudged = true]) => isJudged && hasSheet(choices, of)).map(([name, its]) => [name, its] as const);
  return [...own, ...parts.flatMap((part) => part.limits(choices))];
}

/** The limits, typed by the shop from the maker's service manual. */
export function limitsPage(choices: BuildSheetChoices, parts: readonly SheetPart[]): { page: SheetBuilder; limits: LimitsAt } {
  const { cylinders } = choices;
  const list = characteristics(choices, parts);
  const page = new SheetBuilder("Limits", "Limits", [
    "Type them from the maker's service manual and say where they stand. One side may stay blank: what cannot be below 0, such as taper, needs no lower limit of 0. Near: the distance from a limit inside which a value is called near it. Matters: the smallest change since the build that matters, by which Compare calls what is less the same. Where a reading has an uncertainty U, verdicts follow ISO 14253-1:1998: within, over or under only where all of U lies on that side of the limit.",
  ]);
  const inUnitOfRow = (column: SheetColumn): SheetColumn => ({
    ...column,
    special: (index) => (list[index]?.[1] === choices.unit ? { format: limitFormat(choices) } : {}),
  });
  const limit = (heading: string): SheetColumn => inUnitOfRow(numberColumn(heading, "General", "A limit, typed as a number in the unit of the row.", "number"));
  const table = page.table(
    LIMITS_TABLE,
    FIRST - 1,
    [
      { heading: "Characteristic", look: "label", width: 28, cell: ({ index }) => list[index]?.[0] ?? "" },
      limit("Lower"),
      limit("Upper"),
      { heading: "Unit", look: "label", width: 8, cell: ({ index }) => list[index]?.[1] ?? "" },
      inUnitOfRow(numberColumn("Near", "General", "A distance of at least 0.", "at least zero")),
      inUnitOfRow(numberColumn("Matters", "General", "The smallest difference that matters, above 0.")),
      { heading: "Source", look: "typed", width: 40 },
    ],
    list.length + SPARE,
  );
  page.freeze(FIRST, 1);
  const row = (characteristic: string): number => list.findIndex(([name]) => name === characteristic);
  return {
    page,
    limits: new LimitsAt(
      (heading, characteristic) => table.cell(heading, row(characteristic)),
      cylinders > 1 && hasSheet(choices, "tests") ? ruleTable(page, choices, table) : undefined,
    ),
  };
}

/** The rule by which the cylinders of a compression test are compared; none is built in. */
function ruleTable(page: SheetBuilder, choices: BuildSheetChoices, { table }: TableAt): LimitsAt["rule"] {
  const row = table.row + table.rows + 3;
  const unit = pressureUnit(choices);
  page.note(row - 1, `Rule of the compression test: ${RULE_WORDS.map(([rule, words]) => `${rule}, ${words}`).join("; ")} in ${unit}.`);
  const rule = page.table(
    "CompressionRule",
    row,
    [
      { heading: "Test", look: "label", cell: () => "Compression" },
      { heading: "Rule", look: "typed", width: 14, rule: { rule: { kind: "one of", words: [...RULES] }, sentence: `One of ${RULES.join(", ")}.` } },
      numberColumn("Rule limit", "General", `The limit of the rule, as a number: a share, or a difference in ${unit}.`),
      { heading: "Rule source", look: "typed", width: 16 },
    ],
    1,
  );
  return { name: rule.cell("Rule", 0), limit: rule.cell("Rule limit", 0) };
}

const RULE_WORDS: readonly (readonly [CompressionRule, string])[] = [
  ["share", "the least share of the highest reading"],
  ["average", "how far below the average, as a share"],
  ["difference", "how far below the highest"],
];

const WORDS = ["within", "near limit", "not proven", "over", "under"] as const;

/** What the whole workbook comes to: verdicts counted by characteristic. */
export function summaryPage({ engine }: SetupContext, judged: readonly VerdictColumn[]): SheetBuilder {
  const page = new SheetBuilder("Summary", "Summary", [CAUTION]);
  const identity = ["Owner", "Job", "Engine", "Serial number", "Hours run", "Built on", "Built by"];
  identity.forEach((item, i) => {
    page.put(3 + i, 0, item, "label");
    // Without a frame: a long name goes on over the cells beside it.
    page.put(3 + i, 1, whenFilled([engine.item(item)], engine.item(item)), "plain", item === "Built on" ? "yyyy\\-mm\\-dd" : undefined);
  });
  const row = 3 + identity.length + 1;
  page.put(row, 0, "Gauges past their date", "label");
  page.put(row, 1, `=COUNTIF(${engine.measurements.body("Calibration")},"past its date")`, "result");
  const body = (index: number) => judged[index]!.table.body(judged[index]!.heading);
  const count = (word: string): SheetColumn => ({
    heading: capitalised(word),
    look: "result",
    width: 12,
    cell: ({ index }) => `=COUNTIF(${body(index)},"${word}${judged[index]!.isSentence ? ":*" : ""}")`,
  });
  page.table(
    "SummaryCounts",
    row + 2,
    [
      { heading: "Characteristic", look: "label", width: 28, cell: ({ index }) => judged[index]!.name },
      ...WORDS.map(count),
      {
        heading: "Not judged yet",
        look: "result",
        width: 15,
        cell: ({ index, span }) => `=ROWS(${body(index)})-SUM(${span(capitalised(WORDS[0]), capitalised(WORDS.at(-1)!))})`,
      },
    ],
    judged.length,
  );
  const signed = row + 2 + judged.length + 3;
  page.put(signed, 0, "Checked by", "label");
  page.put(signed, 1, "", "typed");
  page.put(signed + 1, 0, "Date", "label");
  page.put(signed + 1, 1, "", "typed", "yyyy\\-mm\\-dd");
  return page;
}
