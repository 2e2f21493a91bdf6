import { unitWords } from "../core/words.ts";
import {
  cylinderColumn,
  lengthColumn,
  lengthFormat,
  numberColumn,
  openLengthColumn,
  resultColumn,
  type SetupContext,
  verdictColumn,
  whenFilled,
} from "./columns.ts";
import { type RowAt, SheetBuilder, type SheetColumn, type TableAt } from "./page.ts";

/** Bearing bores and journals, the clearances between them, and what the crankshaft may move along. */
export function crankshaftPage(given: SetupContext): {
  page: SheetBuilder;
  mains: TableAt;
  bigEnds: TableAt;
  endFloat: TableAt;
  runOut: TableAt;
  alignment: TableAt | undefined;
  crush: TableAt;
} {
  const { choices } = given;
  const page = new SheetBuilder("Crankshaft", "Crankshaft", [
    `In ${unitWords(choices.unit)}. Bearing bores with the shells in and the caps tightened as the maker's service manual says, upright and across; journals likewise. The clearance is the least that the turning journal leaves.`,
    "A main bearing more than there are cylinders, as in an engine in line: leave rows blank that this engine has not. Which undersize to grind to: Plan, Crankshaft regrind, mains and crankpins apart.",
    "Run-out: the indicator on the middle main journal, the shaft in V-blocks or between centres, eight readings round one turn; a bend is half of it. A crankshaft is heavy: lift it with help. Straightening can crack it: only as its maker allows.",
  ]);
  const mains = page.table(
    "MainBearings",
    4,
    [
      { heading: "Main bearing", look: "label", width: 9, cell: ({ index }) => index + 1 },
      ...bearingColumns(given, "Main bearing bore", "Main journal", "Main bearing clearance", "Main journal wear", "Standard main journal"),
    ],
    choices.cylinders + 1,
  );
  const bigEndsRow = 4 + choices.cylinders + 1 + 2;
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
  const runOutRow = bigEndsRow + choices.cylinders + 2 + 4;
  const runOut = page.table("CrankshaftRunOut", runOutRow, runOutColumns(given), 1);
  const alignment = choices.cylinders > 1 ? alignmentTable(page, given, runOutRow + 4) : undefined;
  const crush = crushTable(page, given, alignment ? alignment.table.row + 5 : runOutRow + 4);
  page.freeze(5, 1);
  return { page, mains, bigEnds, endFloat, runOut, alignment, crush };
}

/** With its unit a heading is one of readings: a whole number under it names nothing. */
const turnOf = ({ unit }: SetupContext["choices"]): string[] => [0, 45, 90, 135, 180, 225, 270, 315].map((degrees) => `At ${degrees}° (${unit})`);

/** A height or a travel of the indicator, which has any zero point. */
const indicated = (heading: string, { choices }: SetupContext): SheetColumn =>
  numberColumn(heading, lengthFormat(choices), `A reading in ${unitWords(choices.unit)}, typed as a number, any zero point.`, "number");

function runOutColumns(given: SetupContext): SheetColumn[] {
  const format = lengthFormat(given.choices);
  const turn = turnOf(given.choices);
  const part = (heading: string, column: number, its: string) =>
    resultColumn(heading, its, ({ ref, span }) => whenFilled(turn.map(ref), `INDEX(HATCH.RUNOUT(${span(turn[0]!, turn.at(-1)!)}),2,${column})`));
  return [
    { heading: "Of", look: "label", cell: () => "Crankshaft" },
    ...turn.map((heading) => indicated(heading, given)),
    part("Crankshaft run-out", 1, format),
    part("Off centre by", 2, format),
    part("High side at, °", 3, "0"),
    verdictColumn(given, "Crankshaft run-out", "Crankshaft run-out", "Total run-out of the crankshaft"),
  ];
}

/** How far the main bores are from one straight line. */
function alignmentTable(page: SheetBuilder, given: SetupContext, row: number): TableAt {
  const mains = given.choices.cylinders + 1;
  page.note(
    row - 1,
    "Alignment: the height of the bottom of each main bore under a straightedge or wire, shells out, of as many as the engine has, from the first on. It goes by those typed, from three on, takes tilt off and assumes equal distances.",
  );
  const heights = page.table(
    "MainBoreHeights",
    row,
    [
      { heading: "Main bore", look: "label", width: 9, cell: ({ index }) => index + 1 },
      indicated("Height of the bore", given),
      // Some hosts hand an empty cell over as a height of 0; a blank text reaches all of them as none.
      resultColumn("Main bore height", lengthFormat(given.choices), ({ ref }) => whenFilled([ref("Height of the bore")], ref("Height of the bore"))),
    ],
    mains,
  );
  const all = heights.body("Main bore height");
  return page.table(
    "MainBoreAlignment",
    row + mains + 3,
    [
      { heading: "Of", look: "label", cell: () => "Main bores" },
      resultColumn("Main bores read", "0", () => `=IF(COUNT(${all})=0,"",COUNT(${all}))`),
      resultColumn("Main bore alignment", lengthFormat(given.choices), () => `=IF(COUNT(${all})<3,"",HATCH.FLATNESS(${all}))`),
      verdictColumn(given, "Main bore alignment", "Main bore alignment", "Main bore alignment"),
    ],
    1,
  );
}

const ENDS = [1, 2, 3, 4].map((end) => `Shell end ${end}`);

/** How tight the shells of each bearing sit, from the gap under its cap or from what their four ends stand proud. */
function crushTable(page: SheetBuilder, given: SetupContext, row: number): TableAt {
  const { choices, engine } = given;
  const mains = choices.cylinders + 1;
  page.note(
    row - 1,
    "Crush, the press fit of the shells on the diameter: the gap under a cap with its other side tight, or what each of the four ends stands proud with its other end flush; the gap goes first. Limits are of the diameter: one for the gap, or for all ends together, is divided by π. Never file a cap or a shell.",
  );
  const first = ENDS[0]!;
  // With its unit a heading is one of readings: a whole number under it names nothing.
  const underCap = `Gap under the cap (${choices.unit})`;
  const ends = ({ span }: RowAt) => span(first, ENDS.at(-1)!);
  return page.table(
    "BearingCrush",
    row,
    [
      { heading: "Bearing", look: "label", width: 9, cell: ({ index }) => (index < mains ? `Main ${index + 1}` : `Big end ${index - mains + 1}`) },
      ...[underCap, ...ENDS].map((heading) => openLengthColumn(heading, choices)),
      resultColumn("Crush", lengthFormat(choices), (at) => {
        const gap = at.ref(underCap);
        return `=IF(${gap}<>"",HATCH.CRUSH(${gap}),IF(COUNT(${ends(at)})<${ENDS.length},"",HATCH.CRUSH(${ends(at)})))`;
      }),
      // One gap, or four ends each with its own U, over π.
      resultColumn("U of the crush", "General", ({ ref }) => {
        const u = engine.uncertainty("Shell ends and cap gaps");
        return whenFilled([ref("Crush"), u], `IF(${ref(underCap)}<>"",1,2)*${u}/${Math.PI.toFixed(9)}`);
      }),
      verdictColumn(given, "Crush", (index) => (index < mains ? "Main bearing crush" : "Big end crush"), { column: "U of the crush" }),
    ],
    mains + choices.cylinders,
  );
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
