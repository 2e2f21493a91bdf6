import { unitWords } from "../core/words.ts";
import {
  bySides,
  lengthColumn,
  lengthFormat,
  numberColumn,
  openLengthColumn,
  resultColumn,
  type SetupContext,
  SIDES,
  verdictColumn,
  whenFilled,
} from "./columns.ts";
import type { SheetPart } from "./model.ts";
import { SheetBuilder, type SheetColumn, type TableAt } from "./page.ts";
import { valveRows } from "./valve-and-run-in-sheets.ts";

const GAUGES = {
  lobes: "Cam lobes",
  bearings: "Camshaft bearings",
  journals: "Camshaft journals",
  runOut: "Camshaft run-out and end float",
  angles: "Crank angles",
  lifts: "Lifts for timing",
};
/** Of a valve's lift, for its timing. */
const READINGS = 15;

/** An engine with more than two valves a cylinder mostly has a camshaft for each side. */
const camshafts = ({ valves }: SetupContext["choices"]): number => (valves > 2 ? 2 : 1);

/** Lobes, journals, run-out and end float of the camshaft. */
export const camshaftSheet: SheetPart = {
  word: "camshaft",
  items: ({ unit }) => SIDES.map((side) => ({ name: `Standard lobe lift, ${side}`, kind: "length", unit, note: "new lobe's height less its base circle" })),
  measured: Object.values(GAUGES),
  results: [
    ["Lobe lift", GAUGES.lobes, GAUGES.lobes],
    ["Camshaft bearing clearance", GAUGES.bearings, GAUGES.journals],
  ],
  limits: ({ unit }) => [
    ...bySides(["Lobe height", "Lobe wear"], unit),
    ...["Camshaft bearing clearance", "Camshaft run-out", "Camshaft end float"].map((name) => [name, unit] as const),
    ...bySides(["Valve opens", "Valve closes"], "°"),
  ],
  page: (given) => {
    const { choices } = given;
    const page = new SheetBuilder("Camshaft", "Camshaft", [
      `In ${unitWords(choices.unit)}. Lobe height from the back of the base circle to the nose; base circle across the lobe where no flank reaches. Lobes that serve two valves, and bearings that this engine has not: leave rows blank.`,
      "Run-out: the whole travel of the indicator over one turn, at the middle bearing, the camshaft between centres or in V-blocks. Lobes and journals have sharp edges.",
      `Timing: crank degrees and lift at ${READINGS} places for each side, rising throughout (after 355 comes 365), closest where the valve lifts off and sets down; the lift at which opening counts is the maker's. Turn by hand, one way only, plugs out.`,
    ]);
    const { columns, rows, isInlet } = valveRows(choices);
    const sideOf = (index: number) => (isInlet(index) ? "inlet" : "exhaust");
    const lobes = page.table("CamLobes", 4, [...columns, ...lobeColumns(given, sideOf)], rows);
    const count = camshafts(choices);
    const bearingsRow = 4 + rows + 3;
    const bearings = page.table("CamBearings", bearingsRow, bearingColumns(given), count * (choices.cylinders + 1));
    const shaftsRow = bearingsRow + count * (choices.cylinders + 1) + 3;
    const shafts = page.table("Camshafts", shaftsRow, shaftColumns(given), count);
    const liftsRow = shaftsRow + count + 3;
    const lifts = page.table("TimingLifts", liftsRow, timingReadings(given), READINGS);
    const timing = page.table("ValveTiming", liftsRow + READINGS + 3, timingColumns(given, lifts), SIDES.length);
    page.freeze(5, 2);
    return {
      page,
      judged: [
        { name: "Lobe height", table: lobes, heading: "Lobe height verdict" },
        { name: "Lobe wear", table: lobes, heading: "Lobe wear verdict" },
        { name: "Camshaft bearing clearance", table: bearings, heading: "Camshaft bearing clearance verdict" },
        { name: "Camshaft run-out", table: shafts, heading: "Camshaft run-out verdict" },
        { name: "Camshaft end float", table: shafts, heading: "Camshaft end float verdict" },
        ...["Valve opens", "Valve closes"].map((name) => ({ name, table: timing, heading: `${name} verdict` })),
      ],
    };
  },
};

function lobeColumns(given: SetupContext, sideOf: (index: number) => string): SheetColumn[] {
  const { choices, engine } = given;
  const format = lengthFormat(choices);
  return [
    lengthColumn("Lobe height", choices),
    verdictColumn(given, "Lobe height", (index) => `Lobe height, ${sideOf(index)}`, GAUGES.lobes),
    lengthColumn("Base circle", choices),
    resultColumn("Lobe lift", format, ({ ref }) => `=HATCH.LOBELIFT(${ref("Lobe height")},${ref("Base circle")})`),
    resultColumn("Lobe wear", format, ({ ref, index }) => {
      const standard = engine.item(`Standard lobe lift, ${sideOf(index)}`);
      return whenFilled([ref("Lobe lift"), standard], `HATCH.LOBEWEAR(${ref("Lobe lift")},${standard})`);
    }),
    verdictColumn(given, "Lobe wear", (index) => `Lobe wear, ${sideOf(index)}`, "Lobe lift"),
  ];
}

function bearingColumns(given: SetupContext): SheetColumn[] {
  const { choices } = given;
  const inOne = choices.cylinders + 1;
  const readings = ["Camshaft bearing upright", "Camshaft bearing across", "Camshaft journal upright", "Camshaft journal across"];
  return [
    { heading: "Camshaft", look: "label", width: 10, cell: ({ index }) => Math.floor(index / inOne) + 1 },
    { heading: "Bearing", look: "label", width: 9, cell: ({ index }) => (index % inOne) + 1 },
    ...readings.map((heading) => lengthColumn(heading, choices)),
    // The first of what the function gives in a row of its own.
    resultColumn("Camshaft bearing clearance", lengthFormat(choices), ({ ref, span }) =>
      whenFilled(readings.map(ref), `INDEX(HATCH.BEARINGCLEARANCE(${span(readings[0]!, readings[1]!)},0,${span(readings[2]!, readings[3]!)}),2,1)`),
    ),
    verdictColumn(given, "Camshaft bearing clearance", "Camshaft bearing clearance", "Camshaft bearing clearance"),
  ];
}

const shaftColumns = (given: SetupContext): SheetColumn[] => [
  { heading: "Camshaft", look: "label", width: 10, cell: ({ index }) => index + 1 },
  ...["Camshaft run-out", "Camshaft end float"].flatMap((heading) => [
    openLengthColumn(heading, given.choices),
    verdictColumn(given, heading, heading, GAUGES.runOut),
  ]),
];

const timingReadings = (given: SetupContext): SheetColumn[] => [
  { heading: "Reading", look: "label", width: 10, cell: ({ index }) => index + 1 },
  ...SIDES.flatMap((side) => [
    numberColumn(`Crank angle, ${side}`, "0.0", "Crank degrees, typed as a number, rising from row to row.", "number"),
    numberColumn(`Lift, ${side}`, lengthFormat(given.choices), `A lift in ${unitWords(given.choices.unit)} of at least 0, typed as a number.`, "at least zero"),
  ]),
];

/** Waits for every reading: an empty cell would reach some hosts as the angle 0. */
function timingColumns(given: SetupContext, lifts: TableAt): SheetColumn[] {
  const [uAngle, uLift] = [given.engine.uncertainty(GAUGES.angles), given.engine.uncertainty(GAUGES.lifts)];
  const readings = (index: number) => [`Crank angle, ${SIDES[index]}`, `Lift, ${SIDES[index]}`].map((of) => lifts.body(of));
  const timing = (index: number, lift: string, column: number) => `INDEX(HATCH.TIMINGAT(${readings(index).join(",")},${lift}),2,${column})`;
  const part = (heading: string, column: number) =>
    resultColumn(heading, "0.0", ({ index, ref }) => {
      const waiting = readings(index).map((column) => `COUNT(${column})<${READINGS}`);
      const at = ref("Checking lift");
      return `=IF(OR(${waiting.join(",")},${at}=""),"",${timing(index, at, column)})`;
    });
  const edges = ["Valve opens", "Valve closes"] as const;
  return [
    { heading: "Valve", look: "label", width: 10, cell: ({ index }) => (index === 0 ? "Inlet" : "Exhaust") },
    lengthColumn("Checking lift", given.choices),
    part("Valve opens", 1),
    part("Valve closes", 2),
    part("Duration", 3),
    part("Centre", 4),
    ...edges.flatMap((edge, i) => [
      // What the U of the lifts is worth in degrees (JCGM 100, 5.1.3), and the U of the degree wheel.
      resultColumn(`U, ${edge.toLowerCase()}`, "0.0#", ({ index, ref }) => {
        const at = ref("Checking lift");
        const steep = `(${timing(index, `${at}+${uLift}`, i + 1)}-${timing(index, `${at}-${uLift}`, i + 1)})/2`;
        return whenFilled([ref(edge), uAngle, uLift], `IFERROR(SQRT(${uAngle}^2+(${steep})^2),"")`);
      }),
      verdictColumn(given, edge, (index) => `${edge}, ${SIDES[index]}`, { column: `U, ${edge.toLowerCase()}` }),
    ]),
  ];
}
