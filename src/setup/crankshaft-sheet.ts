import { cylinderColumn, lengthColumn, lengthFormat, resultColumn, type SetupContext, verdictColumn, whenFilled } from "./columns.ts";
import { SheetBuilder, type SheetColumn, type TableAt } from "./page.ts";

/** Bearing bores and journals, the clearances between them, and what the crankshaft may move along. */
export function crankshaftPage(given: SetupContext): { page: SheetBuilder; mains: TableAt; bigEnds: TableAt; endFloat: TableAt } {
  const { choices } = given;
  const page = new SheetBuilder("Crankshaft", "Crankshaft", [
    `In ${choices.unit}. Bearing bores with the shells in and the caps tightened as the maker's service manual says, upright and across; journals likewise. The clearance is the least that the turning journal leaves.`,
    "A main bearing more than there are cylinders, as in an engine in line: leave rows blank that this engine has not. Which undersize to grind to: HATCH.REGRINDPLAN, mains and crankpins apart.",
  ]);
  const mains = page.table(
    "MainBearings",
    3,
    [
      { heading: "Main bearing", look: "label", width: 9, cell: ({ index }) => index + 1 },
      ...bearingColumns(given, "Main bearing bore", "Main journal", "Main bearing clearance", "Main journal wear", "Standard main journal"),
    ],
    choices.cylinders + 1,
  );
  const bigEndsRow = 3 + choices.cylinders + 1 + 2;
  const bigEnds = page.table(
    "BigEnds",
    bigEndsRow,
    [cylinderColumn, ...bearingColumns(given, "Big end bore", "Crankpin", "Big end clearance", "Crankpin wear", "Standard crankpin")],
    choices.cylinders,
  );
  const endFloat = page.table(
    "CrankshaftEndFloat",
    bigEndsRow + choices.cylinders + 2,
    [
      { heading: "Of", look: "label", cell: () => "Crankshaft" },
      lengthColumn("End float", choices),
      verdictColumn(given, "End float", "Crankshaft end float", "Crankshaft end float"),
    ],
    1,
  );
  page.freeze(4, 1);
  return { page, mains, bigEnds, endFloat };
}

/** The bearing's bore and its journal on two axes each, the clearance and the wear of the journal. */
function bearingColumns(given: SetupContext, bearing: string, journal: string, clearance: string, wear: string, standard: string): SheetColumn[] {
  const { choices, engine } = given;
  const format = lengthFormat(choices);
  const [bores, journals] = [
    [`${bearing} upright`, `${bearing} across`],
    [`${journal} upright`, `${journal} across`],
  ] as const;
  return [
    ...[...bores, ...journals].map((heading) => lengthColumn(heading, choices)),
    // The first of what the function gives in a row of its own.
    resultColumn(clearance, format, (row) => {
      const [bore, pin] = [row.span(bores[0], bores[1]), row.span(journals[0]!, journals[1]!)];
      return whenFilled(
        [...bores, ...journals].map((heading) => row.ref(heading)),
        `INDEX(HATCH.BEARINGCLEARANCE(${bore},0,${pin}),2,1)`,
      );
    }),
    verdictColumn(given, clearance, clearance, "Bearing clearance"),
    // By the smallest reading, which is the one that counts: as a range these would be readings that Check misses where a journal is not measured.
    resultColumn(wear, format, (row) =>
      whenFilled(
        [...journals.map((heading) => row.ref(heading)), engine.item(standard)],
        `HATCH.SHAFTWEAR(MIN(${row.span(journals[0]!, journals[1]!)}),${engine.item(standard)})`,
      ),
    ),
    verdictColumn(given, wear, wear, "Crankshaft journals"),
  ];
}
