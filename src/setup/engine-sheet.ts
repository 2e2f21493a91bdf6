import { unitWords } from "../core/words.ts";
import { headingKey, measuredTogether } from "../vocabulary/measured-together.ts";
import { LENGTH_UNIT_ENTRY, otherLengthWords } from "../vocabulary/units.ts";
import type { BuildSheetChoices } from "./choices.ts";
import { CAUTION, DATE_FORMAT, dateColumn, type EngineAt, lengthFormat, numberColumn, pressureUnit, resultColumn, whenFilled } from "./columns.ts";
import type { Item, SheetPart } from "./model.ts";
import { SheetBuilder, type SheetColumn, type TableAt } from "./page.ts";
import { hasOneOf, hasSheet, type SheetWord } from "./sheets.ts";

/** The table of the engine's data, by which others find it. */
export const ENGINE_TABLE = "EngineData";

const GAUGES = 10;

function items(choices: BuildSheetChoices, parts: readonly SheetPart[]): Item[] {
  const { cylinders, heights, axes, valves, unit } = choices;
  const isMetric = unit === "mm";
  const all: Item[] = [
    { name: "Owner", kind: "text" },
    { name: "Job", kind: "text" },
    { name: "Engine", kind: "text" },
    { name: "Serial number", kind: "text" },
    { name: "Hours run", kind: "hours", unit: "h", note: "at this strip-down" },
    { name: "Stripped on", kind: "date" },
    { name: "Built on", kind: "date" },
    { name: "Built by", kind: "text" },
    { name: LENGTH_UNIT_ENTRY, kind: "fixed", entry: unit, note: "of every length in this workbook" },
    { name: "Ambient temperature", kind: "number", unit: isMetric ? "°C" : "°F", note: "of the room where parts are measured" },
    {
      name: "Ambient pressure",
      kind: "number",
      unit: pressureUnit(choices),
      note: "absolute, on the day of the test",
      of: ["tests"],
    },
    { name: "Altitude", kind: "number", unit: isMetric ? "m" : "ft", note: "of that test, in place of its pressure", of: ["tests"] },
    {
      name: "Air temperature",
      kind: "number",
      unit: isMetric ? "°C" : "°F",
      note: "of that test, if the manual asks for it",
      of: ["tests"],
    },
    { name: "Cylinders", kind: "fixed", entry: cylinders },
    { name: "Heights of a bore", kind: "fixed", entry: heights, of: ["bores"] },
    { name: "Axes of a bore", kind: "fixed", entry: axes, of: ["bores"] },
    { name: "Valves of a cylinder", kind: "fixed", entry: valves },
    { name: "Standard bore", kind: "length", unit, note: "or the size it was last finished to", of: ["bores"] },
    { name: "Stroke", kind: "length", unit, of: ["volumes", "faces"] },
    { name: "Standard main journal", kind: "length", unit, note: "or the size it was last ground to", of: ["crankshaft"] },
    { name: "Standard crankpin", kind: "length", unit, note: "or the size it was last ground to", of: ["crankshaft"] },
    { name: "Gasket bore", kind: "length", unit, of: ["volumes"] },
    { name: "Gasket thickness", kind: "length", unit, note: "when compressed", of: ["volumes"] },
    { name: "Shim step", kind: "length", unit, note: "between shim sizes; blank for no shims", of: ["valves"] },
    ...parts.flatMap((part) => part.items(choices)),
  ];
  return all.filter(({ of }) => hasOneOf(choices, of));
}

const CORNERS: Readonly<Record<"first" | "second", Record<"bores" | "skirts", string>>> = {
  first: { bores: "Bores", skirts: "Piston skirts" },
  second: { bores: "Bores, second readings", skirts: "Piston skirts, second readings" },
};

/** What is measured with a gauge, and on which sheet its readings stand. */
function measured(choices: BuildSheetChoices, parts: readonly SheetPart[]): string[] {
  const { first, second } = CORNERS;
  const { secondReadings } = choices;
  const all: [string, SheetWord, boolean?][] = [
    [first.bores, "bores"],
    [second.bores, "bores", secondReadings],
    [first.skirts, "pistons"],
    [second.skirts, "pistons", secondReadings],
    ["Pins and pin bores", "pistons"],
    ["Ring end gaps", "rings"],
    ["Ring grooves and rings", "rings"],
    ["Bearing bores", "crankshaft"],
    ["Crankshaft journals", "crankshaft"],
    ["Crankshaft end float", "crankshaft"],
    ["Heights of the main bores", "crankshaft", choices.cylinders > 1],
    ["Crankshaft run-out", "crankshaft"],
    ["Shell ends and cap gaps", "crankshaft"],
    ["Valve clearances", "valves"],
    ["Valve clearances, re-check", "valves", hasSheet(choices, "run-in")],
    ["Mean bores", "volumes", !hasSheet(choices, "bores")],
    ["Deck heights", "volumes"],
    ["Chambers and crowns", "volumes"],
    ["Compression", "tests"],
    ["Leak-down", "tests"],
  ];
  const own = all.filter(([, of, isThere = true]) => isThere && hasSheet(choices, of)).map(([name]) => name);
  return [...own, ...parts.flatMap((part) => part.measured)];
}

/** Results that readings go into, by the readings, as far as all of these are in the workbook. */
function results(names: readonly string[], parts: readonly SheetPart[]): SheetPart["results"] {
  const { first, second } = CORNERS;
  const all: SheetPart["results"] = [
    ["Taper and out-of-round", first.bores, first.bores],
    ["Piston clearance", first.bores, first.skirts],
    ["Pin clearance", "Pins and pin bores", "Pins and pin bores"],
    ["Ring side clearance", "Ring grooves and rings", "Ring grooves and rings"],
    ["Bearing clearance", "Bearing bores", "Crankshaft journals"],
    ["Main bore alignment", "Heights of the main bores", "Heights of the main bores"],
    ["Total run-out of the crankshaft", "Crankshaft run-out", "Crankshaft run-out"],
    ["Compression spread", "Compression", "Compression"],
    ...parts.flatMap((part) => part.results),
    ["Bores, both readings", first.bores, second.bores],
    ["Piston skirts, both readings", first.skirts, second.skirts],
  ];
  return all.filter(([, ...from]) => from.every((name) => names.includes(name)));
}

/** Whose engine it is, what it is like, and what it was measured with. */
export function enginePage(choices: BuildSheetChoices, parts: readonly SheetPart[]): { page: SheetBuilder; engine: EngineAt } {
  const page = new SheetBuilder("Engine", "Build sheet", [
    "Shaded cells are typed, the others are calculated. Nothing here is known to the sheet until you type it.",
    CAUTION,
  ]);
  const list = items(choices, parts);
  const data = page.table(ENGINE_TABLE, 4, itemColumns(list, choices), list.length);
  const gaugesRow = 4 + list.length + 3;
  page.note(gaugesRow - 1, "Gauges: U is the expanded uncertainty at 95 %, in the unit of the gauge's readings");
  const gauges = page.table("Gauges", gaugesRow, gaugeColumns(), GAUGES);
  const measurementsRow = gaugesRow + GAUGES + 3;
  page.note(measurementsRow - 1, "What was measured with which gauge, and when");
  const names = measured(choices, parts);
  const measurements = page.table("Measurements", measurementsRow, measurementColumns(names, gauges, choices.unit), names.length);
  const resultsRow = measurementsRow + names.length + 3;
  const worked = results(names, parts);
  const uncertainties = worked.length ? page.table("ResultUncertainties", resultsRow, resultColumns(worked, measurements, names), worked.length) : undefined;
  if (uncertainties)
    page.note(resultsRow - 1, "Uncertainty of what is worked out from readings added and taken from one another: the root of the sum of the squares of theirs");
  return {
    page,
    engine: {
      item: (name) =>
        data.cell(
          "Entry",
          list.findIndex((one) => one.name === name),
        ),
      uncertainty: (of) => {
        if (names.includes(of)) return measurements.cell("U", names.indexOf(of));
        const row = worked.findIndex(([name]) => name === of);
        if (!uncertainties || row < 0) throw new Error(`nothing is measured or worked out under the name ${of}`);
        return uncertainties.cell("U of the result", row);
      },
      gauges,
      measurements,
    },
  };
}

const itemColumns = (list: readonly Item[], choices: BuildSheetChoices): SheetColumn[] => [
  { heading: "Item", look: "label", width: 31, cell: ({ index }) => list[index]!.name },
  { heading: "Entry", look: "typed", width: 26, cell: ({ index }) => list[index]!.entry ?? "", special: (index) => specialEntry(list[index]!, choices) },
  { heading: "Unit", look: "label", width: 12, cell: ({ index }) => list[index]!.unit ?? "" },
  { heading: "Note", look: "plain", width: 44, cell: ({ index }) => list[index]!.note ?? "" },
];

/** Each entry has a rule and a format of its own. */
function specialEntry({ kind, entry = "" }: Item, choices: BuildSheetChoices): ReturnType<NonNullable<SheetColumn["special"]>> {
  switch (kind) {
    case "length":
      return {
        format: lengthFormat(choices),
        rule: { rule: { kind: "above zero" }, sentence: `A length in ${unitWords(choices.unit)} above 0, typed as a number.` },
      };
    case "hours":
      return { rule: { rule: { kind: "at least zero" }, sentence: "Hours, typed as a number." } };
    case "number":
      return { rule: { rule: { kind: "number" }, sentence: "A number." } };
    case "date":
      return { format: DATE_FORMAT, rule: { rule: { kind: "date" }, sentence: "A date." } };
    case "fixed":
      return {
        look: "label",
        rule: { rule: { kind: "one of", words: [String(entry)] }, sentence: "The sheets are made for this; set up another workbook for another engine." },
      };
    case "text":
      return {};
  }
}

const gaugeColumns = (): SheetColumn[] => [
  { heading: "Gauge id", look: "typed" },
  { heading: "Kind", look: "typed" },
  numberColumn("Resolution", "General", "The smallest step that the gauge shows, as a number."),
  numberColumn("U of the gauge", "General", "The expanded uncertainty, as a number of at least 0.", "at least zero"),
  { heading: "Unit", look: "typed" },
  dateColumn("Calibration due"),
  { heading: "Certificate", look: "typed", width: 14 },
];

/** A bare number in another unit of length would prove what it does not: in place of it stands why there is none. */
function uncertaintyIn(unit: string, gauge: string, found: (heading: string, gauge: string) => string): string {
  const [u, own] = [found("U of the gauge", gauge), found("Unit", gauge)];
  const others = `|${otherLengthWords(unit).join("|")}|`.replaceAll('"', '""');
  const sentence = `"check: the unit of gauge "&${gauge}&" ("&${own}&") is not that of its readings: type its U in theirs"`;
  return `IF(IFERROR(FIND("|"&LOWER(TRIM(${own}))&"|","${others}"),0)>0,${sentence},${u})`;
}

/** The roughness of a bore is told in a unit of its own. */
const isOfSurface = (name: string): boolean => measuredTogether(name)?.includes(headingKey("ra")) ?? false;

function measurementColumns(names: readonly string[], gauges: TableAt, unit: string): SheetColumn[] {
  const found = (heading: string, gauge: string) => `INDEX(${gauges.body(heading)},MATCH(${gauge},${gauges.body("Gauge id")},0))`;
  const looked = (heading: string, gauge: string, shown = found(heading, gauge)) =>
    whenFilled([gauge], `IFERROR(IF(${found(heading, gauge)}="","",${shown}),"")`);
  return [
    { heading: "Measured", look: "label", cell: ({ index }) => names[index]! },
    {
      heading: "Gauge",
      look: "typed",
      rule: { rule: { kind: "listed", name: "Gauge_ids" }, sentence: "The id of a gauge in the table of gauges." },
    },
    dateColumn("Measured on"),
    { heading: "Measured by", look: "typed", width: 14 },
    resultColumn("U", "General", ({ index, ref }) =>
      looked("U of the gauge", ref("Gauge"), isOfSurface(names[index]!) ? undefined : uncertaintyIn(unit, ref("Gauge"), found)),
    ),
    resultColumn("Due", DATE_FORMAT, (row) => looked("Calibration due", row.ref("Gauge"))),
    resultColumn("Calibration", "General", ({ ref }) =>
      whenFilled([ref("Measured on"), ref("Due")], `IF(${ref("Measured on")}>${ref("Due")},"past its date","in date")`),
    ),
  ];
}

function resultColumns(worked: SheetPart["results"], measurements: TableAt, names: readonly string[]): SheetColumn[] {
  return [
    { heading: "Result", look: "label", cell: ({ index }) => worked[index]![0] },
    {
      ...resultColumn("U of the result", "General", ({ index }) => {
        const own = worked[index]!.slice(1).map((name) => measurements.cell("U", names.indexOf(name)));
        const [first, ...others] = own;
        const isTwice = others.length === 1 && others[0] === first;
        const sum = isTwice ? `${first}*SQRT(2)` : `SQRT(${own.map((cell) => `${cell}^2`).join("+")})`;
        return whenFilled(isTwice ? [first!] : own, `IFERROR(${sum},"check: the unit of a gauge is not that of its readings")`);
      }),
    },
  ];
}
