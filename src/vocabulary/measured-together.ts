import { foldedHeading } from "./headings.ts";
import { OIL_ELEMENTS } from "./moving-parts.ts";

const CRANK_ANGLES = [0, 45, 90, 135, 180, 225, 270, 315];
const across = (...parts: readonly string[]): string[] => parts.flatMap((part) => [`${part} upright`, `${part} across`]);
const bySide = (...names: readonly string[]): string[] => names.flatMap((name) => [`${name}, inlet`, `${name}, exhaust`]);

/**
 * What one gauge measures together, as a table of gauges says it in a row, and the headings under which those readings stand, as far as its
 * words are not theirs. Where two sheets have a heading, the one that is meant goes before it. Words and not columns of our sheets, because
 * workbooks are read that are years old: a test holds the two together.
 */
export const MEASURED_TOGETHER: Readonly<Record<string, readonly string[]>> = {
  "Bearing bores": across("main bearing bore", "big end bore"),
  "Crankshaft journals": across("main journal", "crankpin"),
  "Heights of the main bores": ["height of the bore", "main bore height"],
  "Crankshaft run-out": CRANK_ANGLES.map((angle) => `at ${angle}°`),
  "Shell ends and cap gaps": ["gap under the cap", ...[1, 2, 3, 4].map((end) => `shell end ${end}`)],
  "Bore surface, roughness": ["ra", "rz", "rk", "rpk", "rvk"],
  "Bore surface, material ratios": ["peak material ratio", "valley material ratio"],
  "Rod bores": ["big end housing along", "big end housing across", "small end bore"],
  "Pins in the small ends": ["pin in it"],
  "Rod bend and twist": ["rod bend", "rod twist"],
  "Cam lobes": ["lobe height", "base circle"],
  "Camshaft run-out and end float": ["camshaft run-out", "camshaft end float"],
  "Crank angles": bySide("crank angle"),
  "Lifts for timing": bySide("Camshaft!lift"),
  "Press fits": ["outside diameter", "hole for it"],
  "Spring lengths and heights": ["spring free length", "height measured", "shims", "at length", "valve lift", "solid length"],
  "Spring forces": ["force in the tester"],
  "Face heights": ["head", "deck"].flatMap((face) => ["left", "middle", "right"].map((side) => `${face} ${side}`)),
  "Head, block, rod and piston heights": ["height", "head height", "block height", "rod", "piston height"],
  "Valve lifts and gaps": [...bySide("Faces!lift"), "gap at the top"],
  "Chambers and crowns": ["chamber", "piston crown"],
  "Leak-down": ["supply", "held"],
  "Gas through the breather": ["gas measured"],
  "Oil samples": [...OIL_ELEMENTS.map((element) => `${element} content`), "in fresh oil"],
};

/** By which a heading is looked for: on a sheet, or on any. */
export const headingKey = (heading: string, sheet = ""): string => `${foldedHeading(sheet)}!${foldedHeading(heading)}`;

const BY_ROW = new Map(
  Object.entries(MEASURED_TOGETHER).map(([row, headings]) => [
    foldedHeading(row),
    headings.map((heading) => {
      const [name, sheet] = heading.split("!").reverse();
      return headingKey(name!, sheet);
    }),
  ]),
);

/** The keys of the headings that a row of a table of gauges stands for; nothing where its own words name what was measured. */
export const measuredTogether = (row: string): readonly string[] | undefined => BY_ROW.get(foldedHeading(row));
