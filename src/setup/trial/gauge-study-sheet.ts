import { unitWords } from "../../core/words.ts";
import { columnLetters } from "../../workbook/address.ts";
import { lengthColumn, resultColumn } from "../columns.ts";
import { type RowAt, SheetBuilder } from "../page.ts";
import { GAUGE } from "./campaigns-sheet.ts";
import type { TrialChoices } from "./choices.ts";

const PARTS = 10;
const REPEATS = 2;
const PEOPLE = ["Person 1", "Person 2", "Person 3"];

/**
 * A study of one gauge by GAUGESTUDY, and the U that follows: of one reading by whoever reads (2 × the gauge's deviation), the step and
 * the setting (JCGM 100:2008, 5.1.2 and F.2.2.1). What one person reads differently and what the setting is off by is in all readings of a session.
 */
export function gaugeStudyPage(choices: TrialChoices): SheetBuilder {
  const { unit } = choices;
  const page = new SheetBuilder("Gauge study", "Gauge study", [
    "Ten parts that span what is measured, two or three people, each part twice, in mixed order and without looking at the first readings.",
    "Write the people's names below, above their readings; leave the name blank where there are only two. A part that is not there: clear its number.",
  ]);
  page.put(4, 1, "Who reads", "plain");
  PEOPLE.forEach((_, i) => {
    page.put(4, 2 + i, "", "typed");
  });
  const [row, count] = [5, PARTS * REPEATS];
  const readings = page.table(
    "GaugeStudy",
    row,
    [
      { heading: "Specimen", look: "typed", width: 22, cell: ({ index }) => Math.floor(index / REPEATS) + 1 },
      { heading: "Time", look: "label", width: 16, cell: ({ index }) => (index % REPEATS) + 1 },
      ...PEOPLE.map((person) => lengthColumn(person, choices, 14)),
    ],
    count,
  );
  const people = "$C$5:$E$5";
  const study = (r: number, c: number): string =>
    `INDEX(HATCH.GAUGESTUDY(${readings.body("Specimen")},${people},${readings.body(PEOPLE[0]!, PEOPLE.at(-1)!)}),${r},${c})`;
  const source = (r: number, c: number): string => `=IF(COUNT(${readings.body(PEOPLE[0]!, PEOPLE.at(-1)!)})=0,"",IFERROR(${study(r, c)},""))`;
  const sources = ["repeatability", "reproducibility", "gauge", "parts", "whole"];
  const resultsRow = row + count + 3;
  const results = page.table(
    "GaugeStudyResult",
    resultsRow,
    [
      { heading: "Source", look: "label", cell: ({ index }) => sources[index]! },
      resultColumn("Deviation", "General", ({ index }) => source(index + 2, 2)),
      resultColumn("% of whole", "0.0", ({ index }) => source(index + 2, 4)),
    ],
    sources.length,
  );
  const entriesRow = resultsRow + sources.length + 3;
  const typed = [
    { item: "Gauge", note: "which one was studied" },
    { item: "Step", note: `the smallest that it shows, in ${unitWords(unit)}` },
    { item: "U of the setting", note: `of the ring or standard it is set on, by its certificate, in ${unitWords(unit)}; 0 for none` },
  ];
  const entries = page.table(
    "GaugeStudyEntries",
    entriesRow,
    [
      { heading: "Item", look: "label", cell: ({ index }) => typed[index]!.item },
      {
        ...{ heading: "Entry", look: "typed" },
        special: (index) =>
          index === 0 ? { rule: GAUGE.rule! } : { rule: { rule: { kind: "at least zero" }, sentence: `A length in ${unitWords(unit)}, typed as a number.` } },
      },
      { heading: "Note", look: "plain", cell: ({ index }) => typed[index]!.note },
    ],
    typed.length,
  );
  const [step, setting] = [entries.cell("Entry", 1), entries.cell("Entry", 2)];
  const [by, gauge] = [results.cell("Deviation", 1), results.cell("Deviation", 2)];
  const budgetRow = entriesRow + typed.length + 3;
  const last = 3;
  const sum = (column: string): ((row: RowAt) => string) => {
    const at = columnLetters(column === "U" ? 1 : 2);
    const above = `${at}${budgetRow + 2}:${at}${budgetRow + 1 + last}`;
    return () => `=IF(OR(NOT(ISNUMBER(${gauge})),${step}="",${setting}=""),"",HATCH.COMBINE(${above}))`;
  };
  const rows = [
    // One person shows no difference between people: then a sentence stands there in place of a number.
    { part: "repeats and people", u: () => `=IF(ISNUMBER(${gauge}),2*${gauge},"")`, common: () => `=IF(ISNUMBER(${by}),2*${by},"")` },
    { part: "step", u: () => `=IF(${step}="","",${step}/SQRT(3))`, common: () => "" },
    { part: "setting", u: () => `=IF(${setting}="","",${setting})`, common: () => `=IF(${setting}="","",${setting})` },
    { part: "together", u: sum("U"), common: sum("common") },
  ];
  const taken = page.table(
    "GaugeStudyU",
    budgetRow,
    [
      { heading: "From", look: "label", cell: ({ index }) => rows[index]!.part },
      resultColumn("U of a reading", "General", (row) => rows[row.index]!.u(row)),
      resultColumn("Shared by a session", "General", (row) => rows[row.index]!.common(row)),
    ],
    rows.length,
  );
  const [U, common] = [taken.cell("U of a reading", last), taken.cell("Shared by a session", last)];
  page.note(
    budgetRow + rows.length + 2,
    `To take them over, type on the sheet Trial in the row of that gauge: =${U} under Uncertainty, =${common} under Common part.`,
  );
  return page;
}
