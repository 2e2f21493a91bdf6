import { capitalised } from "../core/words.ts";
import { OIL_ELEMENTS } from "../vocabulary/moving-parts.ts";
import type { BuildSheetChoices } from "./choices.ts";
import { dateColumn, hoursColumn, numberColumn, resultColumn, type SetupContext, verdictColumn, whenFilled } from "./columns.ts";
import type { SheetPart } from "./model.ts";
import { SheetBuilder, type SheetColumn, type TableAt } from "./page.ts";

const GAUGES = { gas: "Gas through the breather", oil: "Oil added", samples: "Oil samples" };
const ELEMENTS = OIL_ELEMENTS.map(capitalised);
const SAMPLES = 4;
const MEASURINGS = 8;
const TOP_UPS = 12;

const gasUnit = ({ unit }: Pick<BuildSheetChoices, "unit">): string => (unit === "mm" ? "L" : "ft³");
const oilUnit = ({ unit }: Pick<BuildSheetChoices, "unit">): string => (unit === "mm" ? "L" : "qt");
const inOil = (element: string): string => `${element} in the oil`;

/** What an engine in service uses and lets past: blow-by, oil added, and what samples of its oil hold. */
export const oilSheet: SheetPart = {
  word: "oil",
  items: () => [],
  measured: Object.values(GAUGES),
  results: [],
  limits: (choices) => [
    ["Blow-by", `${gasUnit(choices)}/h`],
    ["Oil use", `${oilUnit(choices)}/h`],
    ...ELEMENTS.map((element) => [inOil(element), "mg/kg"] as const),
  ],
  page: (given) => {
    const { choices } = given;
    const page = new SheetBuilder("Oil and blow-by", "Oil and blow-by", [
      `Gas in ${gasUnit(choices)}, oil in ${oilUnit(choices)}, contents in mg/kg (ppm by mass). A running engine: exhaust gas kills indoors, belts and shafts catch clothing; hot oil burns, and used oil is bad for the skin: gloves.`,
      "Blow-by: warm, at one load and speed, every other opening of the crankcase shut. Oil: always back to one mark, as long after stopping; the first line is the filling, and a change of oil starts a new list. Needed: oil added for every hours typed, 0 where none was.",
      "Samples: drawn warm, the same way each time. What wore in is the content less that of fresh oil, by the hours on the oil; oil added thins it. A sample is compared with earlier ones of its own engine.",
    ]);
    const gas = page.table("BlowBy", 4, gasColumns(given), MEASURINGS);
    const trendRow = 4 + MEASURINGS + 3;
    page.table("BlowByTrend", trendRow, trendColumns(gas), 1);
    const addedRow = trendRow + 4;
    const added = page.table("OilAdded", addedRow, addedColumns(given), TOP_UPS);
    const useRow = addedRow + TOP_UPS + 3;
    const use = page.table("OilUse", useRow, useColumns(given, added), 1);
    const takenRow = useRow + 4;
    const taken = page.table("OilSamplesTaken", takenRow, takenColumns(given), SAMPLES);
    const samples = page.table("OilSamples", takenRow + SAMPLES + 3, sampleColumns(given, taken), SAMPLES * ELEMENTS.length);
    page.freeze(5, 1);
    return {
      page,
      judged: [
        { name: "Blow-by", table: gas, heading: "Blow-by verdict" },
        { name: "Oil use", table: use, heading: "Oil use verdict" },
        { name: "Oil samples", table: samples, heading: "Content verdict" },
      ],
    };
  },
};

function gasColumns(given: SetupContext): SheetColumn[] {
  const unit = gasUnit(given.choices);
  const u = given.engine.uncertainty(GAUGES.gas);
  return [
    { heading: "Measuring", look: "label", width: 13, cell: ({ index }) => index + 1 },
    hoursColumn("Hours run"),
    dateColumn("Measured on"),
    numberColumn("Gas measured", "0.0##", `A volume in ${unit} of at least 0, typed as a number.`, "at least zero"),
    numberColumn("Minutes", "0.0", "Minutes above 0, typed as a number: 5.5 for five and a half."),
    resultColumn("Blow-by", "0.0##", ({ ref }) =>
      whenFilled([ref("Hours run"), ref("Gas measured"), ref("Minutes")], `HATCH.BLOWBY(${ref("Gas measured")},${ref("Minutes")})`),
    ),
    resultColumn("U of the blow-by", "General", ({ ref }) => whenFilled([ref("Blow-by"), u], `60*${u}/${ref("Minutes")}`)),
    verdictColumn(given, "Blow-by", "Blow-by", { column: "U of the blow-by" }),
  ];
}

/** How the blow-by grows from measuring to measuring; pairs without a result are left out. */
function trendColumns(gas: TableAt): SheetColumn[] {
  const [use, rate, u] = ["Hours run", "Blow-by", "U of the blow-by"].map((heading) => gas.body(heading));
  const call = `HATCH.WEARRATE(${use},${rate},IF(COUNT(${u})=0,"",MAX(${u})))`;
  const part = (heading: string, column: number, width?: number) =>
    resultColumn(heading, "0.0000", () => `=IF(COUNT(${rate})<3,"",INDEX(${call},2,${column}))`, width);
  return [
    { heading: "Trend of", look: "label", width: 13, cell: () => "blow-by" },
    part("Growth per hour", 1),
    part("Growth, from", 2),
    part("Growth, to", 3),
    part("In words", 4, 22),
  ];
}

const addedColumns = ({ choices }: SetupContext): SheetColumn[] => [
  hoursColumn("Hours at the mark"),
  dateColumn("Added on"),
  numberColumn("Oil added", "0.00", `Oil in ${oilUnit(choices)} of at least 0, typed as a number.`, "at least zero"),
  { heading: "Remarks", look: "typed", width: 24 },
];

function useColumns(given: SetupContext, added: TableAt): SheetColumn[] {
  const [use, oil] = [added.body("Hours at the mark"), added.body("Oil added")];
  const u = given.engine.uncertainty(GAUGES.oil);
  // Without a line left empty in between, which some hosts hand over as 0: the last number stands as far down as there are numbers.
  const isWaiting = [use, oil].map((column) => `IFERROR(MATCH(9E+99,${column}),0)<>COUNT(${column})`).join(",");
  const part = (heading: string, column: number) =>
    resultColumn(
      heading,
      "0.0000##",
      () => `=IF(OR(COUNT(${use})<2,COUNT(${oil})<>COUNT(${use}),${isWaiting}),"",INDEX(HATCH.OILRATE(${use},${oil}),2,${column}))`,
    );
  return [
    { heading: "Use of", look: "label", cell: () => "oil" },
    part("Oil use", 1),
    part("Last interval", 2),
    part("Trend", 3),
    // What was added after the filling, each with its own U, by hours that are exact.
    resultColumn("U of the use", "General", ({ ref }) => whenFilled([ref("Oil use"), u], `${u}*SQRT(COUNT(${use})-1)/(MAX(${use})-MIN(${use}))`)),
    verdictColumn(given, "Oil use", "Oil use", { column: "U of the use" }),
  ];
}

const takenColumns = ({ choices }: SetupContext): SheetColumn[] => [
  { heading: "Sample", look: "label", cell: ({ index }) => index + 1 },
  dateColumn("Taken on"),
  hoursColumn("Hours on the oil"),
  numberColumn("Added since", "0.00", `Oil in ${oilUnit(choices)} of at least 0, typed as a number.`, "at least zero"),
  { heading: "Oil", look: "typed", width: 18 },
];

function sampleColumns(given: SetupContext, taken: TableAt): SheetColumn[] {
  const elementOf = (index: number) => ELEMENTS[index % ELEMENTS.length]!;
  const content = (heading: string) => numberColumn(heading, "0.0#", "A content in mg/kg of at least 0, typed as a number.", "at least zero");
  return [
    { heading: "Sample", look: "label", cell: ({ index }) => Math.floor(index / ELEMENTS.length) + 1 },
    { heading: "Element", look: "label", width: 12, cell: ({ index }) => elementOf(index) },
    // The judged one first: whole numbers beside names are read as names of what stands right of them.
    content("Content"),
    content("In fresh oil"),
    verdictColumn(given, "Content", (index) => inOil(elementOf(index)), GAUGES.samples),
    resultColumn("Worn in per hour", "0.000", ({ index, ref }) => {
      const run = taken.cell("Hours on the oil", Math.floor(index / ELEMENTS.length));
      return whenFilled([ref("In fresh oil"), ref("Content"), run], `IF(${run}=0,"",ROUND((${ref("Content")}-${ref("In fresh oil")})/${run},9))`);
    }),
  ];
}
