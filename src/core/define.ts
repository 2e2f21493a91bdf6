import type { Result } from "./cell.ts";
import type { Fault } from "./fault.ts";
import type { Param, ParamRole } from "./param.ts";

/** Folders of `src/functions/`, and the headings of the function table. */
export type TradeGroup =
  | "cylinder"
  | "rings"
  | "shafts"
  | "faces"
  | "surface"
  | "volumes"
  | "valves"
  | "balance"
  | "tests"
  | "verdict"
  | "measurement"
  | "wear"
  | "about";

export interface Example {
  /** As typed into a cell: `=HATCH.TAPER({73.01,73.02;73.00,73.01})`. */
  formula: string;
  /** The value, or the rows of a block; numbers are compared to the decimals written here. */
  gives: Result | readonly (readonly Result[])[];
}

/**
 * What a function leaves: one `value` per element; a `row` of labelled values per element, under a
 * header row; or a `table` that stands for the whole call, labels included.
 */
export interface Returns<K extends "value" | "row" | "table" = "value" | "row" | "table"> {
  kind: K;
  help: string;
  columns?: readonly string[];
}

export const value = (help: string): Returns<"value"> => ({ kind: "value", help });
export const row = (columns: readonly string[], help: string): Returns<"row"> => ({ kind: "row", help, columns });
export const table = (help: string): Returns<"table"> => ({ kind: "table", help });

export type Params = Record<string, Param<unknown>>;
export type InputsOf<P> = { [K in keyof P]: P[K] extends Param<infer T> ? T : never };
type Output<K> = (K extends "value" ? Result : K extends "row" ? readonly Result[] : readonly (readonly Result[])[]) | Fault;

/**
 * What a function is to those who look through a sheet.
 *
 * - `measures`: its result is one characteristic of the engine, worked out from what is measured on it.
 *   Compare sets it against that of another day.
 * - `describes`: tells more than one thing, or words, of what is measured on the engine. Compare looks at
 *   its inputs and not at its result.
 * - `decides`: what to bore, file, buy or cut to. Compare looks at its inputs only.
 * - `judges`: holds a value against limits, all of them params with the roles of a judgement. Check judges
 *   what it is given.
 * - `assists`: works on what others have found: its uncertainty, its change, its unit. Compare leaves it out.
 */
export type FunctionRole = "measures" | "describes" | "decides" | "judges" | "assists";

/**
 * What Draw and Report draw of a call, with the names of the params that hold it. `resultIs` says what
 * the result stands for in the drawing, so that a limit on it can be drawn too.
 */
export type DrawnInputs<Name extends string = string> =
  /** Each bore of the readings; with `axes` given, each row is one bore. An upper limit on `wear` is the largest bore allowed. */
  | { kind: "bore"; readings: Name; axes: Name; standard?: Name; resultIs?: "wear" }
  | { kind: "roundness"; deviations: Name }
  | { kind: "runout"; readings: Name }
  | { kind: "face"; heights: Name }
  | { kind: "surface"; profile: Name; spacing: Name; cutoff: Name }
  /** The bars of all cylinders, drawn with `rule` and `limit`, or with the upper limit on a `difference`. With `judges` Check judges them by the rule too. */
  | { kind: "compression"; pressures: Name; rule?: Name; limit?: Name; judges?: true; resultIs?: "difference" }
  /** One size measured twice, with the expanded uncertainty of each. */
  | { kind: "change"; before: Name; after: Name; uBefore: Name; uAfter: Name };

/** A characteristic that the readings of a shop's own layout come to by a function, by the names of `vocabulary/characteristics`. */
export interface Derivation {
  characteristic: string;
  /** What is read, in the order of the params. */
  from: readonly [string] | readonly [string, string];
  /** Readings of one place, of one cylinder or of one engine make one result. */
  per: "place" | "cylinder" | "engine";
  /** The least that a bore must be measured at; one measured at fewer has none. */
  heights?: number;
  axes?: number;
}

export type DrawnInputsOf<K extends DrawnInputs["kind"]> = Extract<DrawnInputs, { kind: K }>;

/** The declaration of a worksheet function: its manual, and all that any part of the program knows about it. */
export interface Declaration<P extends Params, K extends "value" | "row" | "table"> {
  /** Worksheet name without the namespace: capitals, no dot, never like a cell. Stable once released. */
  name: string;
  group: TradeGroup;
  role: FunctionRole;
  /** One line of at most 128 characters, as the autocomplete shows it. */
  summary: string;
  /** The definition as a formula, in the names of the params. */
  definition: string;
  /** Where the definition stands, or "common practice". */
  source: string;
  /** In the order of the arguments; only ever appended to. Descriptions of at most 128 characters. */
  params: P;
  returns: Returns<K>;
  /** At least one, one of them with a range. Run as tests in every host. */
  examples: readonly Example[];
  draws?: DrawnInputs<keyof P & string>;
  derives?: readonly Derivation[];
  /**
   * Steps of one call by the number of cells that each param is given, where they are more than those
   * cells and those of the result. A sheet refuses a call that would take longer than anybody waits.
   */
  steps?: (cells: Readonly<Record<keyof P & string, number>>) => number;
  /** What a mechanic should know before trusting the number; shown by help. */
  notes?: readonly string[];
  /** Pure; never sees text for a number, blanks, ranges or NaN. */
  compute: (inputs: InputsOf<P>) => Output<K>;
}

/** A declared worksheet function. Everything that lists functions is made from these. */
export interface Spec extends Omit<Declaration<Params, "value" | "row" | "table">, "compute" | "steps"> {
  compute: (inputs: Record<string, unknown>) => Result | readonly Result[] | readonly (readonly Result[])[] | Fault;
  steps?: (cells: Readonly<Record<string, number>>) => number;
  /** `params` as an ordered list. */
  inputs: readonly { name: string; param: Param<unknown> }[];
}

/** Declares a worksheet function; see DEVELOPERS.md, "Add a function". */
export function define<const P extends Params, K extends "value" | "row" | "table">(declaration: Declaration<P, K>): Spec {
  return {
    ...declaration,
    compute: declaration.compute as unknown as Spec["compute"],
    ...(declaration.steps ? { steps: declaration.steps as NonNullable<Spec["steps"]> } : {}),
    inputs: Object.entries(declaration.params).map(([name, param]) => ({ name, param })),
  };
}

const OF_ENGINE: ReadonlySet<FunctionRole> = new Set(["measures", "describes", "decides"]);

/** True for a function that works on what is measured on an engine: a comparison looks at its inputs. */
export const isOfEngine = ({ role }: Pick<Spec, "role">): boolean => OF_ENGINE.has(role);

/** True for an input that is measured on the engine, and so can wear. */
export const isMeasuredInput = (spec: Pick<Spec, "role">, { role }: Pick<Param<unknown>, "role">): boolean => isOfEngine(spec) && role === "measured";

/** Which of its params plays a role, counted from 0; −1 where none does. */
export const indexOfRole = ({ inputs }: Pick<Spec, "inputs">, role: ParamRole): number => inputs.findIndex(({ param }) => param.role === role);

/** The namespace in which sheets see the functions. */
export const NAMESPACE = "HATCH";

const OWN_CALL = new RegExp(`\\b${NAMESPACE}\\.[A-Z]`, "i");

/** Whether a formula, as people type it, names a function of ours. */
export const namesOwnFunction = (formula: string): boolean => OWN_CALL.test(formula);

/** The trade's groups, in the order in which an engine is measured, built and tested. */
export const GROUP_TITLES: Readonly<Record<TradeGroup, string>> = {
  cylinder: "Cylinder and piston",
  rings: "Rings",
  shafts: "Shafts and bearings",
  faces: "Faces and turning",
  surface: "Surface",
  volumes: "Volumes and compression",
  valves: "Valves and camshaft",
  balance: "Balance",
  tests: "Tests on the assembled engine",
  verdict: "Limits and verdicts",
  measurement: "How good is the measurement",
  wear: "Change and wear",
  about: "About",
};

export const GROUPS = Object.keys(GROUP_TITLES) as TradeGroup[];

/** `CLEARANCE(hole, shaft)`, optional params in brackets. */
export function signature(spec: Pick<Spec, "name" | "inputs">): string {
  return `${spec.name}(${spec.inputs.map(({ name, param }) => (param.isOptional ? `[${name}]` : name)).join(", ")})`;
}

/** What to write where a blank cell could pass for a reading; nothing for functions in which it cannot. */
export function blankHelp({ inputs }: Pick<Spec, "inputs">): string | undefined {
  const names = inputs.filter(({ param }) => param.zeroPasses).map(({ name }) => name);
  if (names.length === 0) return undefined;
  return `A 0 counts as typed in ${names.join(", ")}, and some versions of Excel, and LibreOffice, hand a blank cell over as 0: where that cell may be blank, write IF(C4="","",C4) in place of C4.`;
}

/** How the formulas that help shows are typed where the decimal sign is a comma. */
export const SEPARATORS =
  "Formulas are written here as in an English sheet. Where the decimal sign is a comma, inputs stand apart by a semicolon: =HATCH.CLEARANCE(A2;B2).";
