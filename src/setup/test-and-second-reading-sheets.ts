import { unitWords } from "../core/words.ts";
import {
  axisNames,
  boreHeadings,
  cylinderColumn,
  dateColumn,
  heightNames,
  hoursColumn,
  lengthColumn,
  lengthFormat,
  numberColumn,
  pressureUnit,
  resultColumn,
  type SetupContext,
  verdictColumn,
  whenFilled,
} from "./columns.ts";
import { type RowAt, SheetBuilder, type SheetColumn, type TableAt } from "./page.ts";

/** Leak-down tests of which a line is kept. */
const TESTS = 6;

/** Compression and leak-down tests of the assembled engine. */
export function testsPage(given: SetupContext): { page: SheetBuilder; tests: TableAt; standard: TableAt; spread: TableAt | undefined } {
  const { choices, engine, limits } = given;
  const leakage = engine.uncertainty("Leak-down");
  const unit = pressureUnit(choices);
  const { rule } = limits;
  const page = new SheetBuilder("Tests", "Compression and leak-down tests", [
    `Pressures in ${unit}. For a compression test ignition off and fuel shut off, all plugs out, throttle open. Stand clear of all that turns.`,
    ...(rule
      ? [
          "By the rule, and what the wet test points at: both wait for the rule and its limit, which are typed on the sheet Limits, and for the dry pressure of every cylinder; the wet test also for the wet one of a cylinder that shows 0 dry.",
        ]
      : []),
    "Under leak-down air the engine can turn over with great force: piston at top dead centre, crank held, hands and tools clear.",
  ]);
  // A dead cylinder shows 0, and holds 0.
  const pressure = (heading: string) => numberColumn(heading, "0.0#", `A pressure in ${unit}, typed as a number.`, "at least zero");
  const top = rule ? 4 : 3;
  const tests = page.table(
    "PressureTests",
    top,
    [
      cylinderColumn,
      ...["Dry", "Wet", "Supply", "Held"].map(pressure),
      verdictColumn(given, "Dry", "Compression pressure", "Compression"),
      ...(rule
        ? [
            resultColumn(
              "By the rule",
              "General",
              ({ index, body }) =>
                whenFilled([body("Dry"), rule.name, rule.limit], `INDEX(HATCH.COMPRESSIONCHECK(${body("Dry")},${rule.name},${rule.limit}),${index + 1})`),
              34,
            ),
          ]
        : []),
      resultColumn(
        "Wet points at",
        "General",
        ({ index, ref, body }) => {
          const readings = `${body("Dry")},${body("Wet")}`;
          if (!rule) return whenFilled([ref("Dry"), ref("Wet")], `INDEX(HATCH.WETTEST(${readings}),${index + 1})`);
          const test = `INDEX(HATCH.WETTEST(${readings},,${rule.limit},${rule.name}),${index + 1})`;
          // Beside a dead cylinder, oil that was not tried yet would read like oil that gained nothing.
          return whenFilled([body("Dry"), ref("Wet"), rule.name, rule.limit], `IF(COUNTIFS(${body("Dry")},0,${body("Wet")},"=")>0,"",${test})`);
        },
        34,
      ),
      resultColumn("Leak-down", "0.0", ({ ref }) => whenFilled([ref("Held")], `HATCH.LEAKDOWN(${ref("Supply")},${ref("Held")})`)),
      // Both pressures are read on gauges of one kind.
      resultColumn("U of the leak-down", "General", ({ ref }) =>
        whenFilled([ref("Leak-down"), leakage], `100*${leakage}/${ref("Supply")}*SQRT(1+(${ref("Held")}/${ref("Supply")})^2)`),
      ),
      verdictColumn(given, "Leak-down", "Leak-down", { column: "U of the leak-down" }),
    ],
    choices.cylinders,
  );
  const below = (table: TableAt) => table.table.row + table.table.rows + 3;
  const spread = choices.cylinders > 1 ? spreadTable(page, given, tests, below(tests)) : undefined;
  const standard = standardTable(page, given, tests, below(spread ?? tests) + 1);
  leakDownHistory(page, given, tests, below(standard) + 1);
  page.freeze(top + 1, 1);
  return { page, tests, standard, spread };
}

/** The dry pressures as they would be in standard air at sea level, for an engine that is tested on another day or higher up. */
function standardTable(page: SheetBuilder, given: SetupContext, tests: TableAt, row: number): TableAt {
  const { choices, engine } = given;
  const [ambient, altitude, warmth] = ["Ambient pressure", "Altitude", "Air temperature"].map((name) => engine.item(name));
  page.note(
    row - 1,
    "Dry pressures in standard air at sea level, from the ambient pressure (a barometer's own, not the weather report's) or the altitude on the sheet Engine, one of the two; with the air temperature by the density rule of some manuals. Compare an engine with its own readings of another day or place; the spread of one test stays what it is.",
  );
  const blankOr = (cell: string) => `IF(${cell}="","",${cell})`;
  const dry = ({ index }: RowAt) => tests.relative("Dry", index);
  return page.table(
    "StandardAir",
    row,
    [
      cylinderColumn,
      resultColumn("At standard air", "0.0#", (at) => {
        const inputs = [dry(at), ...[ambient!, altitude!, warmth!].map(blankOr), `"${pressureUnit(choices)}"`];
        return `=IF(OR(${dry(at)}="",COUNT(${ambient},${altitude})=0),"",HATCH.COMPRESSIONATSTANDARD(${inputs.join(",")}))`;
      }),
      // The air is taken as exact, so that U grows as the pressure does.
      resultColumn("U at standard air", "General", (at) => {
        const [value, u] = [at.ref("At standard air"), engine.uncertainty("Compression")];
        return whenFilled([value, u], `IF(${dry(at)}=0,"",${u}*${value}/${dry(at)})`);
      }),
      verdictColumn(given, "At standard air", "Compression at standard air", { column: "U at standard air" }),
    ],
    choices.cylinders,
  );
}

/** Leak-downs of earlier tests and of this one, cylinder by cylinder, and how they grow. */
function leakDownHistory(page: SheetBuilder, given: SetupContext, tests: TableAt, row: number): void {
  const { cylinders } = given.choices;
  const headings = Array.from({ length: cylinders }, (_, i) => `Leak-down, cylinder ${i + 1} (%)`);
  page.note(row - 1, "Leak-down over time, in %: earlier tests and this one, a line each, all cylinders. The trend waits for three, without a gap in between.");
  const history = page.table(
    "LeakDownHistory",
    row,
    [
      hoursColumn("Hours run"),
      dateColumn("Tested on"),
      ...headings.map((heading) => numberColumn(heading, "0.0", "A leak-down in % of at least 0, typed as a number.", "at least zero")),
      // Some hosts hand an empty cell over as 0; a line without hours is left out.
      resultColumn("Hours counted", "0.0", ({ ref }) => whenFilled([ref("Hours run")], ref("Hours run"))),
    ],
    TESTS,
  );
  const u = tests.body("U of the leak-down");
  const use = history.body("Hours counted");
  const isFull = (column: string) => `IFERROR(MATCH(9E+99,${column}),0)<>COUNT(${use})`;
  const part = (heading: string, column: number, width?: number) =>
    resultColumn(
      heading,
      "0.0000##",
      ({ index }) => {
        const leaks = history.body(headings[index]!);
        const rate = `HATCH.WEARRATE(${use},${leaks},IF(COUNT(${u})=0,"",MAX(${u})))`;
        return `=IF(OR(COUNT(${use})<3,COUNT(${leaks})<>COUNT(${use}),${isFull(use)},${isFull(leaks)}),"",INDEX(${rate},2,${column}))`;
      },
      width,
    );
  page.table(
    "LeakDownTrend",
    row + TESTS + 3,
    [cylinderColumn, part("Growth per hour", 1), part("Growth, from", 2), part("Growth, to", 3), part("In words", 4, 22)],
    cylinders,
  );
}

/** What the highest of several cylinders has more than the lowest. */
const spreadTable = (page: SheetBuilder, given: SetupContext, tests: TableAt, row: number): TableAt =>
  page.table(
    "PressureSpread",
    row,
    [
      { heading: "Of", look: "label", cell: () => "all" },
      resultColumn("Spread", "0.0#", () => whenFilled([tests.body("Dry")], `HATCH.COMPRESSIONSPREAD(${tests.body("Dry")})`)),
      verdictColumn(given, "Spread", "Compression spread", "Compression spread"),
      resultColumn("Leak-down spread", "0.0", () => {
        const leaks = tests.body("Leak-down");
        return whenFilled([leaks], `ROUND(MAX(${leaks})-MIN(${leaks}),9)`);
      }),
      // The two that decide, each with no more than the largest U.
      resultColumn("U of the leak-down spread", "General", ({ ref }) => {
        const u = tests.body("U of the leak-down");
        return whenFilled([ref("Leak-down spread")], `IF(COUNT(${u})=0,"",SQRT(2)*MAX(${u}))`);
      }),
      verdictColumn(given, "Leak-down spread", "Leak-down spread", { column: "U of the leak-down spread" }),
    ],
    1,
  );

/** What a second person measures, and where the two disagree by more than their gauges can. */
interface SecondReadings {
  /** Shows nothing of the first readings, so that they lead nobody. */
  page: SheetBuilder;
  /** Puts the readings of both beside one another. */
  both: SheetBuilder;
  /** What says how they agree. */
  bores: TableAt | undefined;
  skirts: TableAt | undefined;
}

/** Of the bores and the skirts, as far as there are sheets for them. */
export function secondReadingPages(given: SetupContext, bores: TableAt | undefined, pistons: TableAt | undefined): SecondReadings {
  const { choices } = given;
  const { cylinders, heights, axes, unit } = choices;
  const page = new SheetBuilder("Second readings", "Second readings", [
    `Diameters in ${unitWords(unit)}, read by a second person who has not seen the first readings: they stand on the sheet Both readings.`,
  ]);
  const both = new SheetBuilder("Both readings", "Both readings", [
    `Diameters in ${unitWords(unit)}. The two readings of a place may differ by the uncertainty of their difference.`,
  ]);
  const headings = boreHeadings(heights, axes);
  const inOne = headings.length;
  const boresRow = 2;
  const skirtsRow = bores ? boresRow + cylinders * inOne + 3 : boresRow;
  const ofBores: SheetColumn[] = [
    { heading: "Cylinder", look: "label", width: 9, cell: ({ index }) => Math.floor(index / inOne) + 1 },
    { heading: "Height", look: "label", width: 13, cell: ({ index }) => heightNames(heights)[Math.floor((index % inOne) / axes)]! },
    { heading: "Axis", look: "label", width: 9, cell: ({ index }) => axisNames(axes)[index % axes]! },
  ];
  const ofSkirts: SheetColumn[] = [
    { ...cylinderColumn },
    { heading: "Part", look: "label", cell: () => "skirt" },
    { heading: "Place", look: "label", cell: () => "90° to pin" },
  ];
  const typed = lengthColumn("Second reading", choices);
  for (const one of [page, both]) one.freeze(3, 3);
  const twice = (name: string, row: number, of: SheetColumn[], rows: number, first: (row: { index: number }) => string, uncertainty: string) => {
    const second = page.table(`Second${name}`, row, [...of, typed], rows);
    return both.table(`Both${name}`, row, [...of, ...comparing(given, first, second, uncertainty)], rows);
  };
  const firstBore = (at: TableAt) => (row: { index: number }) => at.relative(headings[row.index % inOne]!, Math.floor(row.index / inOne));
  const firstSkirt = (at: TableAt) => (row: { index: number }) => at.relative("Skirt", row.index);
  return {
    page,
    both,
    bores: bores && twice("Bores", boresRow, ofBores, cylinders * inOne, firstBore(bores), "Bores, both readings"),
    skirts: pistons && twice("Skirts", skirtsRow, ofSkirts, cylinders, firstSkirt(pistons), "Piston skirts, both readings"),
  };
}

function comparing({ choices, engine }: SetupContext, firstReading: (row: { index: number }) => string, second: TableAt, of: string): SheetColumn[] {
  const format = lengthFormat(choices);
  const allowed = engine.uncertainty(of);
  const shown = (cell: string) => whenFilled([cell], cell);
  const difference = ({ ref }: { ref: (heading: string) => string }) => `ABS(${ref("Second reading")}-${ref("First reading")})`;
  return [
    resultColumn("First reading", format, (row) => shown(firstReading(row))),
    resultColumn("Second reading", format, ({ index }) => shown(second.relative("Second reading", index))),
    resultColumn("Disagreement", format, (row) => whenFilled([row.ref("First reading"), row.ref("Second reading")], difference(row)), 13),
    resultColumn("May differ by", format, () => shown(allowed), 13),
    {
      heading: "Disagreement verdict",
      look: "result",
      width: 13,
      isVerdict: true,
      cell: ({ ref }) => whenFilled([ref("Disagreement")], `HATCH.VERDICT(${ref("Disagreement")},,${ref("May differ by")})`),
    },
  ];
}
