import { unitWords } from "../core/words.ts";
import { cylinderColumn, lengthColumn, lengthFormat, numberColumn, resultColumn, type SetupContext, SIDES, verdictColumn, whenFilled } from "./columns.ts";
import type { SheetPart } from "./model.ts";
import { SheetBuilder, type SheetColumn, type TableAt } from "./page.ts";

const GAUGES = { faces: "Face heights", parts: "Head, block, rod and piston heights", gaps: "Valve lifts and gaps" };
const FACES = ["Head", "Deck"] as const;
const ACROSS = ["left", "middle", "right"] as const;
/** From 20° before to 20° after top dead centre between exhaust and inlet. */
const ANGLES = [-20, -15, -10, -5, 0, 5, 10, 15, 20];

/** The height of each part over all, by which a skim is known. */
const HEIGHT_OF: Readonly<Record<(typeof FACES)[number], string>> = { Head: "Head height", Deck: "Block height" };

/** Faces of head and block, what has been skimmed off them, and what comes near to what over the piston. */
export const facesSheet: SheetPart = {
  word: "faces",
  items: ({ unit }) => [
    { name: "Standard head height", kind: "length", unit, note: "face to face, when new" },
    { name: "Standard block height", kind: "length", unit, note: "crankshaft's centre to deck, when new" },
    { name: "Rod length", kind: "length", unit, note: "centre to centre" },
    { name: "Places of a span", kind: "number", note: "neighbouring places the limit is for" },
  ],
  measured: Object.values(GAUGES),
  results: [
    ["Flatness", GAUGES.faces, GAUGES.faces],
    // The gap at the top and one lift.
    ["Valve to piston", GAUGES.gaps, GAUGES.gaps],
    // A stroke is the maker's figure, the three heights are measured.
    ["Deck clearance", GAUGES.parts, GAUGES.parts, GAUGES.parts],
  ],
  limits: ({ unit }) =>
    [
      ...FACES.flatMap((face) => [`${face} flatness`, `${face} flatness over a span`, HEIGHT_OF[face]]),
      ...["Deck clearance", ...SIDES.map((side) => `Valve to piston, ${side}`)],
    ].map((name) => [name, unit]),
  page: (given) => {
    const { choices } = given;
    const page = new SheetBuilder("Faces", "Faces of head and block", [
      `In ${unitWords(choices.unit)}. Heights of each face at equal steps, any zero point, face clean, dry and at room temperature: choose places that lie on metal, for the flatness waits for all of a face. It takes tilt off (least squares, ISO 12781-1); a limit for a straightedge means the largest gap under it.`,
      "Skim: taken is the standard height less the height now, left the height now less its lower limit. Deck clearance from the parts says what to expect: what is measured with an indicator counts.",
      "Valve to piston: lifts by degrees from top dead centre, gap at top dead centre along the stem with the valve shut. Turn by hand, and stop at any resistance. Compressed air for cleaning: eye protection, and never at people.",
    ]);
    const places = 2 * choices.cylinders + 1;
    const heights = page.table("FaceHeights", 4, heightColumns(given), places);
    const facesRow = 4 + places + 3;
    const faces = page.table("Faces", facesRow, faceColumns(given, heights), FACES.length);
    const deckRow = facesRow + FACES.length + 3;
    const deck = page.table("DeckStack", deckRow, deckColumns(given), choices.cylinders);
    const liftsRow = deckRow + choices.cylinders + 3;
    const lifts = page.table("ValveLifts", liftsRow, liftColumns(given), ANGLES.length);
    const gaps = page.table("ValveGaps", liftsRow + ANGLES.length + 3, gapColumns(given, lifts), SIDES.length);
    page.freeze(5, 1);
    return {
      page,
      judged: [
        { name: "Flatness", table: faces, heading: "Flatness verdict" },
        { name: "Flatness over a span", table: faces, heading: "Flatness over a span verdict" },
        { name: "Height of head and block", table: faces, heading: "Height verdict" },
        { name: "Deck clearance", table: deck, heading: "Deck clearance verdict" },
        { name: "Valve to piston", table: gaps, heading: "Valve to piston verdict" },
      ],
    };
  },
};

const heightColumns = ({ choices }: SetupContext): SheetColumn[] => [
  { heading: "Place", look: "label", width: 9, cell: ({ index }) => index + 1 },
  ...FACES.flatMap((face) =>
    ACROSS.map((across) => numberColumn(`${face} ${across}`, lengthFormat(choices), `A height in ${unitWords(choices.unit)}, typed as a number.`, "number")),
  ),
];

function faceColumns(given: SetupContext, heights: TableAt): SheetColumn[] {
  const { choices, engine, limits } = given;
  const format = lengthFormat(choices);
  const face = (index: number) => FACES[index]!;
  const gridOf = (index: number) => heights.body(`${face(index)} left`, `${face(index)} right`);
  const all = heights.table.rows * ACROSS.length;
  const span = engine.item("Places of a span");
  const standard = (index: number) => engine.item(`Standard ${HEIGHT_OF[face(index)].toLowerCase()}`);
  const least = (index: number) => limits.cell("Lower", HEIGHT_OF[face(index)]);
  return [
    { heading: "Face", look: "label", width: 9, cell: ({ index }) => face(index) },
    // Some hosts hand an empty cell over as a height of 0.
    resultColumn("Flatness", format, ({ index }) => `=IF(COUNT(${gridOf(index)})<${all},"",HATCH.FLATNESS(${gridOf(index)}))`),
    verdictColumn(given, "Flatness", (index) => `${face(index)} flatness`, "Flatness"),
    resultColumn(
      "Flatness over a span",
      format,
      ({ index }) => `=IF(OR(COUNT(${gridOf(index)})<${all},${span}=""),"",HATCH.FLATNESSWITHIN(${gridOf(index)},${span},${ACROSS.length}))`,
    ),
    verdictColumn(given, "Flatness over a span", (index) => `${face(index)} flatness over a span`, "Flatness"),
    lengthColumn("Height", choices),
    verdictColumn(given, "Height", (index) => HEIGHT_OF[face(index)], GAUGES.parts),
    // Rounded, as the sheet's own subtraction leaves digits that nobody typed.
    resultColumn("Skim taken", format, ({ ref, index }) => whenFilled([ref("Height"), standard(index)], `ROUND(${standard(index)}-${ref("Height")},9)`)),
    resultColumn("Skim left", format, ({ ref, index }) => whenFilled([ref("Height"), least(index)], `ROUND(${ref("Height")}-${least(index)},9)`)),
  ];
}

function deckColumns(given: SetupContext): SheetColumn[] {
  const { choices, engine } = given;
  const stroke = engine.item("Stroke");
  const parts = ["Block height", "Rod", "Piston height"];
  return [
    cylinderColumn,
    ...parts.map((heading) => lengthColumn(heading, choices)),
    resultColumn("Deck clearance", lengthFormat(choices), ({ ref }) =>
      whenFilled([...parts.map(ref), stroke], `HATCH.DECKCLEARANCE(${ref("Block height")},${stroke},${ref("Rod")},${ref("Piston height")})`),
    ),
    verdictColumn(given, "Deck clearance", "Deck clearance", "Deck clearance"),
  ];
}

const liftColumns = ({ choices }: SetupContext): SheetColumn[] => [
  { ...numberColumn("Angle", "0", "Degrees from top dead centre, before it negative.", "number"), cell: ({ index }) => ANGLES[index]! },
  ...SIDES.map((side) =>
    numberColumn(`Lift, ${side}`, lengthFormat(choices), `A lift in ${unitWords(choices.unit)} of at least 0, typed as a number.`, "at least zero"),
  ),
];

function gapColumns(given: SetupContext, lifts: TableAt): SheetColumn[] {
  const { choices, engine } = given;
  const [stroke, rod] = [engine.item("Stroke"), engine.item("Rod length")];
  const column = (index: number) => lifts.body(`Lift, ${SIDES[index]}`);
  const least = (index: number, gap: string, angle: string) =>
    `HATCH.VALVETOPISTON(${lifts.body("Angle")},${column(index)},${stroke},${rod},${gap},IF(${angle}="",0,${angle}))`;
  const whenAll = (index: number, gap: string, formula: string) =>
    `=IF(OR(COUNT(${column(index)})<${ANGLES.length},COUNT(${lifts.body("Angle")})<${ANGLES.length},${stroke}="",${rod}="",${gap}=""),"",${formula})`;
  return [
    { heading: "Valve", look: "label", width: 9, cell: ({ index }) => (index === 0 ? "Inlet" : "Exhaust") },
    lengthColumn("Gap at the top", choices),
    numberColumn("Angle of the stem", "0.0", "Degrees from the cylinder's axis, at least 0; blank for 0.", "at least zero"),
    resultColumn("Valve to piston", lengthFormat(choices), ({ ref, index }) => {
      const gap = ref("Gap at the top");
      return whenAll(index, gap, `INDEX(${least(index, gap, ref("Angle of the stem"))},2,1)`);
    }),
    resultColumn("At angle", "0", ({ ref, index }) => {
      const gap = ref("Gap at the top");
      return whenAll(index, gap, `INDEX(${least(index, gap, ref("Angle of the stem"))},2,2)`);
    }),
    verdictColumn(given, "Valve to piston", (index) => `Valve to piston, ${SIDES[index]}`, "Valve to piston"),
  ];
}
