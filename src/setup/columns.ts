import { capitalised, unitWords } from "../core/words.ts";
import { isNeverNegative } from "../vocabulary/subjects.ts";
import type { BuildSheetChoices } from "./choices.ts";
import type { RowAt, SheetColumn, TableAt } from "./page.ts";

/** What the places of readings are called, by how many there are. */
const HEIGHTS: Readonly<Record<number, readonly string[]>> = {
  2: ["top", "bottom"],
  3: ["top", "middle", "bottom"],
  4: ["top", "upper middle", "lower middle", "bottom"],
  5: ["top", "upper", "middle", "lower", "bottom"],
};

/** Thrust and pin first, as the functions take them; the others by their angle from thrust. */
const AXES = ["thrust", "pin", "45°", "135°"];

const VALVES: Readonly<Record<number, readonly string[]>> = {
  2: ["Inlet", "Exhaust"],
  3: ["Inlet 1", "Inlet 2", "Exhaust"],
  4: ["Inlet 1", "Inlet 2", "Exhaust 1", "Exhaust 2"],
  5: ["Inlet 1", "Inlet 2", "Inlet 3", "Exhaust 1", "Exhaust 2"],
};

export const heightNames = (heights: number): readonly string[] => HEIGHTS[heights]!;

export const axisNames = (axes: number): readonly string[] => AXES.slice(0, axes);

export const valveNames = (valves: number): readonly string[] => VALVES[valves]!;

export const RINGS = ["Top", "Second", "Oil"] as const;

/** `Top thrust`: the heading of a column of bore readings, height by height. */
export function boreHeadings(heights: number, axes: number): string[] {
  return heightNames(heights).flatMap((height) => axisNames(axes).map((axis) => `${capitalised(height)} ${axis}`));
}

/** What every page needs to know: the choices, and where the engine's data and the limits stand. */
export interface SetupContext {
  choices: BuildSheetChoices;
  engine: EngineAt;
  limits: LimitsAt;
}

export interface EngineAt {
  /** Where an item of the engine's data stands. */
  item(name: string): string;
  /** Where the uncertainty of a reading or of a result stands. */
  uncertainty(of: string): string;
  gauges: TableAt;
  measurements: TableAt;
}

type Side = "Lower" | "Upper";

export class LimitsAt {
  constructor(
    readonly cell: (heading: Side | "Near", characteristic: string) => string,
    /** The rule of the compression test and its limit; none for one cylinder, which cannot be compared. */
    readonly rule: { name: string; limit: string } | undefined,
  ) {}

  /** For a formula: the limit, handed over as a blank while nobody has typed one. Of what cannot be below 0 a lower limit of 0 is none. */
  lower(characteristic: string): string {
    return blankWhen(this.cell("Lower", characteristic), isNeverNegative(characteristic) ? "0" : '""');
  }

  upper(characteristic: string): string {
    return blankWhen(this.cell("Upper", characteristic), '""');
  }

  near(characteristic: string): string {
    return this.cell("Near", characteristic);
  }
}

/** Some hosts make a 0 of an empty cell, which IF keeps them from; to all of them an empty cell is equal to 0. */
const blankWhen = (cell: string, nothing: "0" | '""'): string => `IF(${cell}=${nothing},"",${cell})`;

export const CAUTION = "Figures come from the readings and limits typed here; the maker's service manual and a qualified technician decide.";

export const lengthFormat = ({ unit }: Pick<BuildSheetChoices, "unit">): string => (unit === "mm" ? "0.000" : "0.0000");

/** As typed: a limit of .0012 or 0.00125 in never shows fewer figures than it has. */
export const limitFormat = ({ unit }: Pick<BuildSheetChoices, "unit">): string => (unit === "mm" ? "0.00##" : "0.0000##");

export const pressureUnit = ({ unit }: BuildSheetChoices): string => (unit === "mm" ? "bar" : "psi");

/** By burette, in a sheet of inches as well. */
export const VOLUME_UNIT = "cm³";
/** Of one in³: an inch is 2.54 cm (international yard and pound agreement of 1959). */
const CM3_OF_IN3 = 16.387064;
/** For a formula: a volume that a function gives in the cube of the sheet's unit of length, in cm³. */
export const inCm3 = ({ unit }: BuildSheetChoices, formula: string): string => (unit === "mm" ? formula : `${formula}*${CM3_OF_IN3}`);

export const DATE_FORMAT = "yyyy\\-mm\\-dd";

export const cylinderColumn: SheetColumn = { heading: "Cylinder", look: "label", width: 9, cell: ({ index }) => index + 1 };

/** A column of lengths that people type. */
export const lengthColumn = (heading: string, choices: Pick<BuildSheetChoices, "unit">, width?: number): SheetColumn => ({
  heading,
  look: "typed",
  format: lengthFormat(choices),
  rule: { rule: { kind: "above zero" }, sentence: `A length in ${unitWords(choices.unit)} above 0, typed as a number.` },
  ...(width ? { width } : {}),
});

/** A column of lengths that can be 0: floats, bends, run-outs. */
export const openLengthColumn = (heading: string, choices: Pick<BuildSheetChoices, "unit">): SheetColumn =>
  numberColumn(heading, lengthFormat(choices), `A length in ${unitWords(choices.unit)} of at least 0, typed as a number.`, "at least zero");

export const massColumn = (heading: string): SheetColumn => numberColumn(heading, "0.0", "A mass in g above 0, typed as a number.");

/** A column of clearances of valves, which can be tight. */
export const valveClearanceColumn = (heading: string, choices: BuildSheetChoices): SheetColumn => ({
  ...lengthColumn(heading, choices),
  rule: { rule: { kind: "at least zero" }, sentence: `A length in ${unitWords(choices.unit)}, 0 for a tight valve, typed as a number.` },
});

export const numberColumn = (
  heading: string,
  format: string,
  sentence: string,
  kind: "above zero" | "at least zero" | "number" = "above zero",
): SheetColumn => ({
  heading,
  look: "typed",
  format,
  rule: { rule: { kind }, sentence },
});

export const hoursColumn = (heading: string): SheetColumn => numberColumn(heading, "0.0", "Hours, typed as a number.", "at least zero");

export const dateColumn = (heading: string): SheetColumn => ({
  heading,
  look: "typed",
  format: DATE_FORMAT,
  width: 12,
  rule: { rule: { kind: "date" }, sentence: "A date." },
});

/** A column of results. */
export const resultColumn = (heading: string, format: string, cell: (row: RowAt) => string, width?: number): SheetColumn => ({
  heading,
  look: "result",
  format,
  cell,
  ...(width ? { width } : {}),
});

/** A column of verdicts on another column of the table, by the limits of its characteristic; U is that of something measured or worked out, or stands in a column of its own. */
export function verdictColumn(
  { engine, limits }: SetupContext,
  on: string,
  characteristic: string | ((index: number) => string),
  uncertaintyOf: string | { column: string } = "",
): SheetColumn {
  const uncertainty = ({ ref }: RowAt): string => {
    if (typeof uncertaintyOf !== "string") return ref(uncertaintyOf.column);
    return uncertaintyOf ? engine.uncertainty(uncertaintyOf) : "";
  };
  return {
    heading: `${on} verdict`,
    look: "result",
    width: 12,
    isVerdict: true,
    cell: (row) => {
      const name = typeof characteristic === "string" ? characteristic : characteristic(row.index);
      return whenFilled([row.ref(on)], `HATCH.VERDICT(${row.ref(on)},${limits.lower(name)},${limits.upper(name)},${uncertainty(row)},${limits.near(name)})`);
    },
  };
}

/** The valves of a cylinder, by what they let through. */
export const SIDES = ["inlet", "exhaust"] as const;

/** A limit of each side's own for everything that is judged on valves. */
export const bySides = (names: readonly string[], unit: string) => names.flatMap((name) => SIDES.map((side) => [`${name}, ${side}`, unit] as const));

/** A formula that stays blank while one of the cells that it needs is, or one cell of a range. */
export function whenFilled(cells: readonly string[], formula: string): string {
  const blank = cells.map((cell) => (cell.includes(":") ? `COUNTBLANK(${cell})>0` : `${cell}=""`));
  return `=IF(${blank.length === 1 ? blank[0] : `OR(${blank.join(",")})`},"",${formula})`;
}
