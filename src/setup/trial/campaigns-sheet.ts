import { unitWords } from "../../core/words.ts";
import type { NameSpec } from "../../workbook/sheet-spec.ts";
import { dateColumn, lengthFormat, numberColumn } from "../columns.ts";
import { SheetBuilder, type SheetColumn, type TableAt } from "../page.ts";
import { CAMPAIGNS, type TrialChoices } from "./choices.ts";

/** Measurings of one gauge on one day, in each campaign. */
const SESSIONS = 8;

/** A column of the ids of gauges on the first sheet. */
export const GAUGE: SheetColumn = {
  heading: "Gauge",
  look: "typed",
  rule: { rule: { kind: "listed", name: "Gauge_ids" }, sentence: "The id of a gauge on the sheet Trial." },
};

/** The name of the list of a campaign's sessions. */
export const sessionsName = (campaign: string): string => `Sessions_${campaign}`;

/** Who measured with which gauge on which day, how warm it was, and what the gauge's master read. */
export function campaignsPage(choices: TrialChoices): { page: SheetBuilder; sessions: TableAt; names: NameSpec[] } {
  const page = new SheetBuilder("Campaigns", "Campaigns", [
    "A row for each gauge and day of a measuring. Readings name their row; day, person and temperature come from here.",
    "Read each gauge's setting ring or standard at the start and at the end: what it moves by is taken out of every change.",
    "Let parts, ring and gauge lie together until they are of one temperature.",
  ]);
  const rows = CAMPAIGNS.flatMap((campaign) => Array.from({ length: SESSIONS }, (_, i) => ({ campaign, session: `${campaign} ${i + 1}` })));
  const master = (heading: string): SheetColumn => ({
    ...numberColumn(heading, lengthFormat(choices), `What the gauge shows on its master, in ${unitWords(choices.unit)}, typed as a number.`, "number"),
  });
  const degrees = (heading: string): SheetColumn => numberColumn(heading, "0.0", "In °C, typed as a number.", "number");
  const sessions = page.table(
    "Campaigns",
    5,
    [
      { heading: "Session", look: "label", width: 12, cell: ({ index }) => rows[index]!.session },
      { heading: "Campaign", look: "label", cell: ({ index }) => rows[index]!.campaign },
      GAUGE,
      { ...dateColumn("Measured on"), width: 14 },
      { heading: "Person", look: "typed", width: 14 },
      { heading: "Master", look: "typed", width: 18 },
      master("Master at start"),
      master("Master at end"),
      { heading: "Unit", look: "label", width: 6, cell: () => choices.unit },
      degrees("Part temperature"),
      degrees("Gauge temperature"),
    ],
    rows.length,
  );
  page.freeze(6, 3);
  const part = (campaign: string) => {
    const from = rows.findIndex((row) => row.campaign === campaign);
    return `${sessions.cell("Session", from)}:${sessions.cell("Session", from + SESSIONS - 1).split("!")[1]}`;
  };
  return { page, sessions, names: CAMPAIGNS.map((campaign) => ({ name: sessionsName(campaign), formula: part(campaign) })) };
}
