import { type Cell, isBlank } from "../core/cell.ts";
import { type Columns, foldedHeading, isGaugeTemperature, masterReadingOf, readHeadings } from "../vocabulary/headings.ts";
import { isRunInLength } from "../vocabulary/run-in.ts";
import { type ColumnFields, cellText, numbersBesideTexts } from "../vocabulary/table-lines.ts";
import type { SheetSnapshot } from "../workbook/port.ts";
import { type Reading, readingsFrom } from "./readings.ts";
import { DEGREES } from "./temperatures.ts";

/** Where a table of campaigns has what: `Campaign | Gauge | Measured on | Master at start | Master at end | Part temperature | Gauge temperature`. */
interface CampaignColumns {
  columns: Columns;
  masters: { at: number; time: "start" | "end" }[];
  name: number;
  gaugeTemperature: number;
}

/** What a workbook says of its measurings, row by row: readings of the gauges' masters, as if each stood in a row of its own, and what a person should know. */
export interface Campaigns {
  masters: Reading[];
  notes: string[];
}

/** A row in which no master was read has none; where one of two is blank that is a reading that is missing. */
export function campaignsOn(sheet: SheetSnapshot): Campaigns {
  const found: Campaigns = { masters: [], notes: [] };
  let at: CampaignColumns | undefined;
  for (const [r, line] of sheet.values.entries()) {
    const headings = campaignHeadings(line);
    if (headings !== undefined || line.every(isBlank)) at = headings;
    else if (at !== undefined) {
      const note = apart(at, line);
      if (note !== undefined) found.notes.push(note);
      if (at.masters.some((master) => !isBlank(line[master.at]))) found.masters.push(...mastersIn(at, line, { sheet, r }));
    }
  }
  return found;
}

const FIELDS = ["campaign", "gauge", "day", "unit"] as const;

function* mastersIn({ columns, masters, name }: CampaignColumns, line: readonly Cell[], { sheet, r }: { sheet: SheetSnapshot; r: number }): Generator<Reading> {
  const fields: ColumnFields = Object.fromEntries(FIELDS.flatMap((field) => (columns.at[field] === undefined ? [] : [[field, line[columns.at[field]]]])));
  for (const { at, time } of masters) {
    const position = `${name < 0 ? "" : cellText(line[name] as Cell)} ${time}`.trim();
    yield* readingsFrom(columns, { ...fields, characteristic: "master", position, value: line[at] as Cell }, () => ({
      cell: { sheet: sheet.name, row: sheet.row + r, column: sheet.column + at },
    }));
  }
}

function campaignHeadings(line: readonly Cell[]): CampaignColumns | undefined {
  const texts = line.map((cell) => (typeof cell === "string" ? cell : ""));
  const masters = texts.flatMap((text, at) => {
    const time = text === "" ? undefined : masterReadingOf(text);
    return time === undefined ? [] : [{ at, time }];
  });
  if (masters.length === 0) return undefined;
  const columns = readHeadings(texts);
  if (columns.at.campaign === undefined || columns.at.gauge === undefined) return undefined;
  return { columns, masters, name: texts.findIndex((text) => foldedHeading(text) === "master"), gaugeTemperature: texts.findIndex(isGaugeTemperature) };
}

/** Part and gauge of different temperatures: what that does to a reading no analysis knows. */
function apart({ columns, gaugeTemperature }: CampaignColumns, line: readonly Cell[]): string | undefined {
  const [part, gauge] = [columns.at.temperature, gaugeTemperature].map((at) => (at === undefined ? undefined : line[at]));
  if (typeof part !== "number" || typeof gauge !== "number" || Math.abs(part - gauge) <= DEGREES) return undefined;
  const [campaign, id] = [columns.at.campaign, columns.at.gauge].map((at) => cellText(line[at!] as Cell));
  return `in the campaign ${campaign} the part was at ${part} °C and the gauge ${id} at ${gauge} °C: only ${DEGREES} °C counts in the uncertainty, so let both lie together first`;
}

/** `Length of run-in` with a number beside it, where all sheets that say it agree. */
export function runInOf(sheets: readonly SheetSnapshot[]): number | undefined {
  const found = new Set<number>();
  for (const [text, number] of numbersBesideTexts(sheets)) if (number > 0 && isRunInLength(text)) found.add(number);
  return found.size === 1 ? [...found][0] : undefined;
}
