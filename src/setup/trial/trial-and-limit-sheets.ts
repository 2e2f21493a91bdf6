import { unitWords } from "../../core/words.ts";
import { CAUTION, dateColumn, numberColumn } from "../columns.ts";
import { SheetBuilder, type SheetColumn, type TableAt } from "../page.ts";
import { CAMPAIGNS, RUNNING, type TrialChoices, useHeading } from "./choices.ts";

export const GAUGES = 6;

const useColumn = (heading: string): SheetColumn => numberColumn(heading, "General", "Use so far, 0 for a new build, typed as a number.", "at least zero");

/** Engines with their groups and use, the length of the run-in, and the gauges. */
export function trialPage({ engines, seed, unit, use }: TrialChoices): { page: SheetBuilder; engines: TableAt; gauges: TableAt } {
  const page = new SheetBuilder("Trial", "Trial", [
    "Name each engine and the way in which it is treated. The engine counts: two of each way are the fewest, and few.",
    "Type the limits and what matters first, then the gauges, then a row of the sheet Campaigns for each measuring.",
    RUNNING,
    CAUTION,
  ]);
  const data = [
    { item: "Length of run-in", entry: "", unit: use === "hours" ? "h" : use, note: "as the maker's manual has it; no life is predicted from it" },
    { item: "Order drawn with", entry: seed, unit: "", note: "the same number gives the same order of measuring" },
  ] as const;
  page.table(
    "TrialData",
    6,
    [
      { heading: "Item", look: "label", width: 20, cell: ({ index }) => data[index]!.item },
      {
        ...{ heading: "Entry", look: "typed", width: 18, cell: ({ index }) => data[index]!.entry },
        special: (index) =>
          index === 0
            ? { rule: { rule: { kind: "at least zero" }, sentence: `${useHeading(use)}, typed as a number.` } }
            : {
                look: "label",
                rule: { rule: { kind: "one of", words: [String(seed)] }, sentence: "The order is drawn; set up another workbook for another." },
              },
      },
      { heading: "Unit", look: "label", width: 18, cell: ({ index }) => data[index]!.unit },
      { heading: "Note", look: "plain", width: 66, cell: ({ index }) => data[index]!.note },
    ],
    data.length,
  );
  const enginesRow = 6 + data.length + 3;
  const rows = 2 * engines;
  const table = page.table(
    "Engines",
    enginesRow,
    [
      { heading: "Engine", look: "typed" },
      { heading: "Group", look: "typed" },
      { heading: "Serial number", look: "typed" },
      { heading: "Treatment", look: "typed" },
      ...CAMPAIGNS.map((campaign) => useColumn(`${useHeading(use)} ${campaign}`)),
    ],
    rows,
  );
  const gauges = page.table(
    "Gauges",
    enginesRow + rows + 3,
    [
      { heading: "Gauge id", look: "typed" },
      { heading: "Kind", look: "typed" },
      numberColumn("Uncertainty", "General", `U of one reading at 95 %, in ${unitWords(unit)}, above 0.`),
      numberColumn("Common part", "General", "The part of U that all readings of a session share; 0 for none; blank when it is not known.", "at least zero"),
      { heading: "Unit", look: "label", cell: () => unit },
      dateColumn("Calibration due"),
    ],
    GAUGES,
  );
  return { page, engines: table, gauges };
}

/** Limits, what matters and the material of each characteristic. */
export function trialLimitsPage({ unit }: TrialChoices, characteristics: readonly string[]): { page: SheetBuilder; limits: TableAt } {
  const page = new SheetBuilder("Limits", "Limits and what matters", [
    "Typed by the shop, from the maker's service manual; what matters is your own decision, taken before anything is measured.",
    "With a material, such as grey iron or aluminium, and the temperature of the part on the sheet Campaigns, sizes are brought to 20 °C.",
  ]);
  const size = (heading: string): SheetColumn => numberColumn(heading, "General", `A number in ${unitWords(unit)}.`, "number");
  const limits = page.table(
    "TrialLimits",
    4,
    [
      { heading: "Characteristic", look: "label", width: 24, cell: ({ index }) => characteristics[index]! },
      size("Lower"),
      size("Upper"),
      numberColumn("Matters", "General", `The smallest difference that matters, in ${unitWords(unit)}, above 0.`),
      {
        ...{ heading: "Direction of wear", look: "typed", width: 18 },
        rule: { rule: { kind: "one of", words: ["larger", "smaller"] }, sentence: "larger or smaller; blank where it is as usual for the part." },
      },
      { heading: "Unit", look: "label", cell: () => unit },
      { heading: "Material", look: "typed", width: 16 },
      { heading: "Source", look: "typed", width: 30 },
    ],
    characteristics.length,
  );
  return { page, limits };
}
