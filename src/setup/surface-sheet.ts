import { unitWords } from "../core/words.ts";
import { cylinderColumn, lengthColumn, numberColumn, resultColumn, type SetupContext, verdictColumn, whenFilled } from "./columns.ts";
import type { SheetPart } from "./model.ts";
import { SheetBuilder, type SheetColumn } from "./page.ts";

const GAUGES = { heights: "Bore surface, roughness", ratios: "Bore surface, material ratios" };
const HEIGHTS = ["Ra", "Rz", "Rk", "Rpk", "Rvk"] as const;
/** Mr1 and Mr2: a figure behind letters would be read as a number of its own. */
const RATIOS = ["Peak material ratio", "Valley material ratio"] as const;
const FIGURES = [...HEIGHTS, ...RATIOS];

const roughnessUnit = ({ unit }: Pick<SetupContext["choices"], "unit">): string => (unit === "mm" ? "µm" : "µin");

/** The honed surface of the bores as the instrument says, and the angle that the hone makes. */
export const surfaceSheet: SheetPart = {
  word: "surface",
  items: () => [],
  measured: Object.values(GAUGES),
  results: [],
  limits: (choices) => [
    ...HEIGHTS.map((name) => [name, roughnessUnit(choices)] as const),
    ...RATIOS.map((name) => [name, "%"] as const),
    ["Cross-hatch angle", "°"],
  ],
  page: (given) => {
    const { choices } = given;
    const page = new SheetBuilder("Surface", "Surface of the bores", [
      `Roughness in ${roughnessUnit(choices)}, material ratios in %, lengths in ${unitWords(choices.unit)}. Figures as the instrument shows them, along the bore, cut-off as the maker's limits want it: the mean of several traces round the bore. Peak and valley material ratio are Mr1 and Mr2 (Rmrk1 and Rmrk2). Note which filter made the Rk figures.`,
      "From a stylus profile: paste its heights into one column of a sheet of their own, and =HATCH.SURFACE(heights, spacing) beside them gives these figures; Drawings draws it.",
      "Cross-hatch: the mean angle between the scratches, about the line across the bore; read from the axis of the bore it is 180° less this angle. Honing dust is hard and fine: eye protection, and wash the bores afterwards.",
    ]);
    const figures = page.table("BoreSurface", 4, [cylinderColumn, ...FIGURES.flatMap((name) => figureColumns(given, name))], choices.cylinders);
    const honing = page.table("Honing", 4 + choices.cylinders + 3, honingColumns(given), 1);
    page.freeze(5, 1);
    return {
      page,
      judged: [
        ...FIGURES.map((name) => ({ name, table: figures, heading: `${name} verdict` })),
        { name: "Cross-hatch angle", table: honing, heading: "Cross-hatch angle verdict" },
      ],
    };
  },
};

function figureColumns(given: SetupContext, name: (typeof FIGURES)[number]): SheetColumn[] {
  const isRatio = RATIOS.some((ratio) => ratio === name);
  const sentence = isRatio ? "A share in %, typed as a number: 9.5." : `A height in ${roughnessUnit(given.choices)} of at least 0, typed as a number.`;
  return [
    numberColumn(name, given.choices.unit === "mm" && !isRatio ? "0.00#" : "0.0#", sentence, "at least zero"),
    verdictColumn(given, name, name, isRatio ? GAUGES.ratios : GAUGES.heights),
  ];
}

function honingColumns(given: SetupContext): SheetColumn[] {
  const { choices } = given;
  // With its unit a heading is one of readings: a whole number under it names nothing.
  const typed = [`Bore honed (${choices.unit})`, "Strokes a minute", "Stroke of the hone", "Turns a minute"];
  return [
    { heading: "Of", look: "label", width: 9, cell: () => "Bores" },
    lengthColumn(typed[0]!, choices),
    numberColumn("Strokes a minute", "0.0", "Full strokes a minute, each once up and down, typed as a number."),
    lengthColumn("Stroke of the hone", choices),
    numberColumn("Turns a minute", "0", "Turns of the hone a minute, typed as a number."),
    resultColumn("Cross-hatch angle", "0.0", ({ ref }) => whenFilled(typed.map(ref), `HATCH.HONEANGLE(${typed.map(ref).join(",")})`)),
    verdictColumn(given, "Cross-hatch angle", "Cross-hatch angle"),
  ];
}
