import { capitalised, unitWords } from "../core/words.ts";
import { PRESSED_PARTS } from "../vocabulary/moving-parts.ts";
import type { BuildSheetChoices } from "./choices.ts";
import { bySides, lengthColumn, lengthFormat, numberColumn, openLengthColumn, resultColumn, type SetupContext, verdictColumn, whenFilled } from "./columns.ts";
import type { SheetPart } from "./model.ts";
import { SheetBuilder, type SheetColumn } from "./page.ts";
import { valveRows } from "./valve-and-run-in-sheets.ts";

const HEIGHTS = ["top", "middle", "bottom"] as const;

const GUIDE = { guide: "Guides", stem: "Stems", seats: "Seats", fits: "Press fits" };
const FITS = PRESSED_PARTS.map(capitalised);
const GUIDE_LIMITS = ["Guide taper", "Stem taper", "Stem clearance", "Seat width", "Seat run-out"];

/** Guides and stems at three heights, with what wear makes of them, and seats. */
export const guidesSheet: SheetPart = {
  word: "guides",
  items: () => [],
  measured: Object.values(GUIDE),
  results: [
    ["Guide taper", GUIDE.guide, GUIDE.guide],
    ["Stem taper", GUIDE.stem, GUIDE.stem],
    ["Stem clearance", GUIDE.guide, GUIDE.stem],
    ["Interference", GUIDE.fits, GUIDE.fits],
  ],
  limits: ({ unit }) => [...bySides(GUIDE_LIMITS, unit), ...FITS.map((part) => [fitOf(part), unit] as const)],
  page: (given) => {
    const { choices } = given;
    const { columns, rows, isInlet } = valveRows(choices);
    const limitOf = (name: string) => (index: number) => `${name}, ${isInlet(index) ? "inlet" : "exhaust"}`;
    const page = new SheetBuilder("Guides and seats", "Valve guides, stems and seats", [
      `In ${unitWords(choices.unit)}. Guides and stems at the top, in the middle and at the bottom of the guide: the clearance is judged where it is least and where it is most, and waits for all six readings.`,
      "Seat run-out: the whole travel of the indicator round the seat, on a pilot in the finished guide. Guides first, seats after them.",
      `Press fits: the temperature at which the outer part, heated evenly, goes over with the gap typed; parts measured at the ambient temperature, or at ${choices.unit === "mm" ? "20 °C" : "68 °F"} where none is typed. Hot parts burn and oil on them can catch fire: clean and dry first, gloves and face shield; a press can throw pieces.`,
    ]);
    const table = page.table("GuidesAndSeats", 4, [...columns, ...guideColumns(given, limitOf), ...seatColumns(given, limitOf)], rows);
    const fits = page.table("PressFits", 4 + rows + 3, fitColumns(given), FITS.length);
    page.freeze(5, 2);
    return {
      page,
      judged: [
        ...["Guide taper", "Stem taper", "Stem clearance, tightest", "Stem clearance, loosest", "Seat width", "Seat run-out"].map((name) => ({
          ...{ name, table, heading: `${name} verdict` },
        })),
        { name: "Interference", table: fits, heading: "Interference verdict" },
      ],
    };
  },
};

const fitOf = (part: string): string => `${part} interference`;

/** What is pressed into what, how tight, and how hot the outer part must be to go over. */
function fitColumns(given: SetupContext): SheetColumn[] {
  const { choices, engine } = given;
  const ambient = engine.item("Ambient temperature");
  const isMetric = choices.unit === "mm";
  const room = isMetric ? ambient : `(${ambient}-32)/1.8`;
  return [
    { heading: "Pressed in", look: "label", width: 14, cell: ({ index }) => FITS[index]! },
    { heading: "Material round it", look: "typed", width: 16 },
    lengthColumn("Outside diameter", choices),
    lengthColumn("Hole for it", choices),
    openLengthColumn("Gap to fit", choices),
    resultColumn("Interference", lengthFormat(choices), ({ ref }) =>
      whenFilled([ref("Outside diameter"), ref("Hole for it")], `HATCH.INTERFERENCE(${ref("Outside diameter")},${ref("Hole for it")})`),
    ),
    verdictColumn(given, "Interference", (index) => fitOf(FITS[index]!), "Interference"),
    resultColumn(`Heat to, ${isMetric ? "°C" : "°F"}`, "0", ({ ref }) => {
      const inputs = ["Outside diameter", "Hole for it", "Gap to fit", "Material round it"].map(ref);
      const celsius = `HATCH.HEATFORFIT(${inputs.join(",")},IF(${ambient}="",20,${room}))`;
      return whenFilled(inputs, isMetric ? celsius : `1.8*${celsius}+32`);
    }),
  ];
}

type LimitOf = (name: string) => (index: number) => string;

function guideColumns(given: SetupContext, limitOf: LimitOf): SheetColumn[] {
  const { choices } = given;
  const format = lengthFormat(choices);
  const [guides, stems] = [HEIGHTS.map((height) => `Guide ${height}`), HEIGHTS.map((height) => `Stem ${height}`)];
  const whenAll =
    (headings: readonly string[], formula: (row: Parameters<NonNullable<SheetColumn["cell"]>>[0]) => string): SheetColumn["cell"] =>
    (row) =>
      whenFilled(headings.map(row.ref), formula(row));
  const taper = (heading: string, readings: readonly string[]): SheetColumn => ({
    ...{ heading, look: "result", format },
    cell: whenAll(readings, ({ span }) => `HATCH.TAPER(${span(readings[0]!, readings[2]!)},1)`),
  });
  const clearance = (heading: string, guide: string, stem: string): SheetColumn => ({
    ...{ heading, look: "result", format },
    cell: whenAll([...guides, ...stems], ({ span }) => `HATCH.CLEARANCE(${guide}(${span(guides[0]!, guides[2]!)}),${stem}(${span(stems[0]!, stems[2]!)}))`),
  });
  return [
    ...[...guides, ...stems].map((heading) => lengthColumn(heading, choices)),
    taper("Guide taper", guides),
    verdictColumn(given, "Guide taper", limitOf("Guide taper"), "Guide taper"),
    taper("Stem taper", stems),
    verdictColumn(given, "Stem taper", limitOf("Stem taper"), "Stem taper"),
    clearance("Stem clearance, tightest", "MIN", "MAX"),
    verdictColumn(given, "Stem clearance, tightest", limitOf("Stem clearance"), "Stem clearance"),
    clearance("Stem clearance, loosest", "MAX", "MIN"),
    verdictColumn(given, "Stem clearance, loosest", limitOf("Stem clearance"), "Stem clearance"),
  ];
}

const seatColumns = (given: SetupContext, limitOf: LimitOf): SheetColumn[] => [
  lengthColumn("Seat width", given.choices),
  verdictColumn(given, "Seat width", limitOf("Seat width"), GUIDE.seats),
  openLengthColumn("Seat run-out", given.choices),
  verdictColumn(given, "Seat run-out", limitOf("Seat run-out"), GUIDE.seats),
];

const forceUnit = ({ unit }: Pick<BuildSheetChoices, "unit">): string => (unit === "mm" ? "N" : "lbf");

const SPRING = { lengths: "Spring lengths and heights", forces: "Spring forces" };

/** Springs: their free length, the height at which they sit, and their force there. */
export const springsSheet: SheetPart = {
  word: "springs",
  items: () => [],
  measured: Object.values(SPRING),
  results: [
    ["Installed height", SPRING.lengths, SPRING.lengths],
    // An installed height, which is two lengths, a lift and a solid length.
    ["Coil bind", SPRING.lengths, SPRING.lengths, SPRING.lengths, SPRING.lengths],
  ],
  limits: (choices) => [...bySides(["Spring free length", "Installed height", "Coil bind"], choices.unit), ...bySides(["Spring force"], forceUnit(choices))],
  page: (given) => {
    const { choices } = given;
    const { columns, rows, isInlet } = valveRows(choices);
    const limitOf = (name: string) => (index: number) => `${name}, ${isInlet(index) ? "inlet" : "exhaust"}`;
    const page = new SheetBuilder("Springs", "Valve springs", [
      `Lengths in ${unitWords(choices.unit)}, forces in ${forceUnit(choices)}. A compressed valve spring can fly out: use a compressor made for it, wear eye protection, and keep clear.`,
      "Height measured: from the spring's seat to the underside of the retainer, valve shut, without the shims. Force and rate: from the spring tester, at a length near the installed height; the rate from two of its readings, HATCH.SPRINGRATE. Height for a force that is wanted: shim it to that, then look at what is left to coil bind.",
    ]);
    const table = page.table("ValveSprings", 3, [...columns, ...springColumns(given, limitOf)], rows);
    page.freeze(4, 2);
    return {
      page,
      judged: ["Spring free length", "Installed height", "Coil bind", "Spring force"].map((name) => ({ name, table, heading: `${name} verdict` })),
    };
  },
};

function springColumns(given: SetupContext, limitOf: LimitOf): SheetColumn[] {
  const { choices, engine } = given;
  const force = forceUnit(choices);
  return [
    lengthColumn("Spring free length", choices),
    verdictColumn(given, "Spring free length", limitOf("Spring free length"), SPRING.lengths),
    lengthColumn("Height measured", choices),
    openLengthColumn("Shims", choices),
    resultColumn("Installed height", lengthFormat(choices), ({ ref }) =>
      whenFilled([ref("Height measured")], `HATCH.INSTALLEDHEIGHT(${ref("Height measured")},IF(${ref("Shims")}="",0,${ref("Shims")}))`),
    ),
    verdictColumn(given, "Installed height", limitOf("Installed height"), "Installed height"),
    numberColumn("Force in the tester", "0.0", `A force in ${force} of at least 0, typed as a number.`, "at least zero"),
    lengthColumn("At length", choices),
    numberColumn("Spring rate", "0.0#", `A rate in ${force} per ${choices.unit} above 0, typed as a number.`),
    resultColumn("Spring force", "0.0", ({ ref }) => {
      const inputs = ["Force in the tester", "At length", "Spring rate", "Installed height"].map(ref);
      return whenFilled(inputs, `HATCH.SPRINGFORCE(${inputs.join(",")})`);
    }),
    numberColumn("Force wanted", "0.0", `A force in ${force} above 0, typed as a number.`),
    resultColumn("Height for it", lengthFormat(choices), ({ ref }) => {
      const inputs = ["Force in the tester", "At length", "Spring rate", "Force wanted"].map(ref);
      return whenFilled(inputs, `HATCH.SPRINGHEIGHT(${inputs.join(",")})`);
    }),
    lengthColumn("Valve lift", choices),
    lengthColumn("Solid length", choices),
    resultColumn("Coil bind", lengthFormat(choices), ({ ref }) => {
      const inputs = ["Installed height", "Valve lift", "Solid length"].map(ref);
      return whenFilled(inputs, `HATCH.COILBIND(${inputs.join(",")})`);
    }),
    verdictColumn(given, "Coil bind", limitOf("Coil bind"), "Coil bind"),
    // The installed height comes from two lengths; the rate is taken as exact.
    resultColumn("U of the force", "General", ({ ref }) => {
      const [ofForce, ofLength] = [engine.uncertainty(SPRING.forces), engine.uncertainty(SPRING.lengths)];
      return whenFilled([ref("Spring force"), ofForce, ofLength], `SQRT(${ofForce}^2+3*(${ref("Spring rate")}*${ofLength})^2)`);
    }),
    verdictColumn(given, "Spring force", limitOf("Spring force"), { column: "U of the force" }),
  ];
}
