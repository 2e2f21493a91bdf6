import { unitWords } from "../core/words.ts";
import { massMatch } from "../functions/balance/mass-match.ts";
import {
  cylinderColumn,
  lengthColumn,
  lengthFormat,
  massColumn,
  numberColumn,
  openLengthColumn,
  resultColumn,
  type SetupContext,
  verdictColumn,
  whenFilled,
} from "./columns.ts";
import { ENGINE_TABLE } from "./engine-sheet.ts";
import type { SheetPart } from "./model.ts";
import { SheetBuilder, type SheetColumn, type TableAt } from "./page.ts";

const GAUGES = { bores: "Rod bores", pins: "Pins in the small ends", side: "Rod side clearance", bend: "Rod bend and twist" };

/** Rods: both their ends, how straight they are, what they leave beside one another, and what they weigh. */
export const rodsSheet: SheetPart = {
  word: "rods",
  items: () => [{ name: "Mass tolerance", kind: "number", unit: "g", note: "most over the lightest piston or rod end" }],
  measured: Object.values(GAUGES),
  results: [
    ["Big end housing out-of-round", GAUGES.bores, GAUGES.bores],
    ["Small end clearance", GAUGES.bores, GAUGES.pins],
  ],
  limits: ({ unit }) =>
    ["Big end housing", "Big end housing out-of-round", "Small end clearance", "Rod side clearance", "Rod bend", "Rod twist"].map((name) => [name, unit]),
  page: (given) => {
    const page = new SheetBuilder("Rods", "Connecting rods", [
      `In ${unitWords(given.choices.unit)}, masses in g. Housing: the bore of the big end without shells, cap tightened as the maker's service manual says, along the rod and across it. A pin that is pressed into its rod has no clearance: leave it blank, and see HATCH.INTERFERENCE.`,
      "Bend and twist: over the length of arbor that the maker's limit is for. A bent rod is replaced, or straightened only where its maker allows it.",
      "Masses: each set is brought to its lightest. Take metal only where the maker shows it: a weakened rod or a crank out of balance can wreck the engine, and grinding needs eye protection.",
    ]);
    const rods = page.table("RodReadings", 4, rodColumns(given), given.choices.cylinders);
    const masses = page.table("RodMasses", 4 + given.choices.cylinders + 3, massColumns(given), given.choices.cylinders);
    page.note(
      masses.table.row + given.choices.cylinders + 2,
      "Bobweight of each crankpin, with every set at its lightest: what only moves to and fro counts by the share that the maker balances, one half in V engines of 90°. Type all masses of one rod, 0 for what there is none of. An engine in line with even throws takes none. Guards shut while a crankshaft spins.",
    );
    page.table("Bobweight", masses.table.row + given.choices.cylinders + 3, bobweightColumns(masses, given.choices.cylinders), 1);
    page.freeze(5, 1);
    const sets = ["Piston mass", "Big end mass", "Small end mass"].map((heading) => masses.body(heading));
    const inputs = { masses: sets.join("\n"), tolerance: given.engine.item("Mass tolerance") };
    const plans = [{ of: massMatch.name, about: "pistons and rod ends", inputs, tables: [masses.table.name, ENGINE_TABLE] }];
    return { page, judged: judgedIn(rods), plans };
  },
};

const judgedIn = (table: TableAt) => [
  { name: "Big end housing along", table, heading: "Big end housing along verdict" },
  { name: "Big end housing across", table, heading: "Big end housing across verdict" },
  { name: "Big end housing out-of-round", table, heading: "Big end housing out-of-round verdict" },
  ...["Small end clearance", "Rod side clearance", "Rod bend", "Rod twist"].map((name) => ({ name, table, heading: `${name} verdict` })),
];

function rodColumns(given: SetupContext): SheetColumn[] {
  const { choices } = given;
  const format = lengthFormat(choices);
  const [along, across] = ["Big end housing along", "Big end housing across"];
  return [
    cylinderColumn,
    lengthColumn(along!, choices),
    lengthColumn(across!, choices),
    verdictColumn(given, along!, "Big end housing", GAUGES.bores),
    verdictColumn(given, across!, "Big end housing", GAUGES.bores),
    resultColumn("Big end housing out-of-round", format, ({ ref, span }) =>
      whenFilled([ref(along!), ref(across!)], `HATCH.OUTOFROUND(${span(along!, across!)})`),
    ),
    verdictColumn(given, "Big end housing out-of-round", "Big end housing out-of-round", "Big end housing out-of-round"),
    lengthColumn("Small end bore", choices),
    lengthColumn("Pin in it", choices),
    resultColumn("Small end clearance", format, ({ ref }) => `=HATCH.CLEARANCE(${ref("Small end bore")},${ref("Pin in it")})`),
    verdictColumn(given, "Small end clearance", "Small end clearance", "Small end clearance"),
    openLengthColumn("Rod side clearance", choices),
    verdictColumn(given, "Rod side clearance", "Rod side clearance", GAUGES.side),
    openLengthColumn("Rod bend", choices),
    verdictColumn(given, "Rod bend", "Rod bend", GAUGES.bend),
    openLengthColumn("Rod twist", choices),
    verdictColumn(given, "Rod twist", "Rod twist", GAUGES.bend),
  ];
}

function massColumns({ engine }: SetupContext): SheetColumn[] {
  const tolerance = engine.item("Mass tolerance");
  /** What to take off, in the row of the part that is weighed. */
  const toTakeOff = (heading: string, of: string): SheetColumn =>
    resultColumn(heading, "0.0", ({ index, ref, body }) =>
      whenFilled([ref(of)], `INDEX(HATCH.MASSMATCH(${body(of)},IF(${tolerance}="",0,${tolerance})),${index + 1})`),
    );
  const ends = (ref: (heading: string) => string) =>
    `HATCH.RODENDS(${ref("Rod mass")},${ref("Big end mass")},IF(${ref("Small end mass weighed")}="","",${ref("Small end mass weighed")}))`;
  return [
    cylinderColumn,
    massColumn("Piston mass"),
    toTakeOff("Off the piston", "Piston mass"),
    massColumn("Rod mass"),
    massColumn("Big end mass"),
    massColumn("Small end mass weighed"),
    resultColumn("Small end mass", "0.0", ({ ref }) => whenFilled([ref("Rod mass"), ref("Big end mass")], `INDEX(${ends(ref)},2,2)`)),
    resultColumn("Missing between them", "0.0", ({ ref }) =>
      whenFilled([ref("Rod mass"), ref("Big end mass"), ref("Small end mass weighed")], `INDEX(${ends(ref)},2,4)`),
    ),
    toTakeOff("Off the big end", "Big end mass"),
    toTakeOff("Off the small end", "Small end mass"),
  ];
}

/** Masses that are not in the table of those that are matched, and how the engine is balanced. */
function bobweightColumns(masses: TableAt, cylinders: number): SheetColumn[] {
  const lightest = (heading: string, of: string): SheetColumn =>
    resultColumn(heading, "0.0", () => `=IF(COUNT(${masses.body(of)})<${cylinders},"",MIN(${masses.body(of)}))`);
  const typed = ["Shells (g)", "Pin", "Rings", "Locks"];
  const [big, small, piston] = ["Big end at its lightest", "Small end at its lightest", "Piston at its lightest"];
  return [
    { heading: "Of", look: "label", width: 9, cell: () => "Crankpin" },
    ...typed.map((heading) => numberColumn(heading, "0.0", "A mass in g of at least 0, typed as a number.", "at least zero")),
    numberColumn("Rods on it", "0", "How many rods share a crankpin, typed as a number."),
    numberColumn("Share balanced", "0.0##", "A share from 0 to 1, typed as a number: 0.5 for one half.", "at least zero"),
    numberColumn("Oil in it", "0.0", "A mass in g of at least 0, typed as a number; blank for 0.", "at least zero"),
    lightest(big!, "Big end mass"),
    lightest(small!, "Small end mass"),
    lightest(piston!, "Piston mass"),
    resultColumn("Bobweight", "0.0", ({ ref }) => {
      const rotating = [big!, "Shells (g)"].map(ref).join("+");
      const reciprocating = [small!, piston!, "Pin", "Rings", "Locks"].map(ref).join("+");
      const oil = ref("Oil in it");
      const call = `HATCH.BOBWEIGHT(${rotating},${reciprocating},${ref("Rods on it")},${ref("Share balanced")},IF(${oil}="",0,${oil}))`;
      return whenFilled([...typed, "Rods on it", "Share balanced", big!, small!, piston!].map(ref), call);
    }),
  ];
}
