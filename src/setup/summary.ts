import { type Column, Page, type TableAt } from "./page.ts";
import { CAUTION, type Given, whenFilled } from "./parts.ts";

/** A column of verdicts that the summary counts. */
export interface Judged {
  name: string;
  table: TableAt;
  heading: string;
}

const WORDS = ["within", "near limit", "not proven", "over", "under"] as const;

const inCapitals = (word: string): string => `${word.charAt(0).toUpperCase()}${word.slice(1)}`;

/** What the whole workbook comes to: verdicts counted by characteristic. */
export function summaryPage({ engine }: Given, judged: readonly Judged[]): Page {
  const page = new Page("Summary", "Summary", [CAUTION]);
  const identity = ["Owner", "Job", "Engine", "Serial number", "Hours run", "Built on", "Built by"];
  identity.forEach((item, i) => {
    page.put(3 + i, 0, item, "label");
    page.put(3 + i, 1, whenFilled([engine.item(item)], engine.item(item)), "result", item === "Built on" ? "yyyy\\-mm\\-dd" : undefined);
  });
  const row = 3 + identity.length + 1;
  page.put(row, 0, "Gauges past their date", "label");
  page.put(row, 1, `=COUNTIF(${engine.measurements.body("Calibration")},"past its date")`, "result");
  const body = (index: number) => judged[index]!.table.body(judged[index]!.heading);
  const count = (word: string): Column => ({
    heading: inCapitals(word),
    look: "result",
    width: 12,
    cell: ({ index }) => `=COUNTIF(${body(index)},"${word}")`,
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
        cell: ({ index, span }) => `=ROWS(${body(index)})-SUM(${span(inCapitals(WORDS[0]), inCapitals(WORDS.at(-1)!))})`,
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
