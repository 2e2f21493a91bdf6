import type { Result } from "./cell.ts";
import type { Fault } from "./fault.ts";
import type { Param } from "./param.ts";

/** Folders of `src/functions/`, and the headings of the function table. */
export type Group = "cylinder" | "rings" | "volumes" | "valves" | "tests" | "verdict" | "measurement" | "wear" | "about";

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
export type Inputs<P> = { [K in keyof P]: P[K] extends Param<infer T> ? T : never };
type Output<K> = (K extends "value" ? Result : K extends "row" ? readonly Result[] : readonly (readonly Result[])[]) | Fault;

export interface Declaration<P extends Params, K extends "value" | "row" | "table"> {
  /** Worksheet name without the namespace: capitals, no dot, never like a cell. Stable once released. */
  name: string;
  group: Group;
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
  /** What a mechanic should know before trusting the number; shown by help. */
  notes?: readonly string[];
  /** Pure; never sees text for a number, blanks, ranges or NaN. */
  compute: (inputs: Inputs<P>) => Output<K>;
}

/** A declared worksheet function. Everything that lists functions is made from these. */
export interface Spec extends Omit<Declaration<Params, "value" | "row" | "table">, "compute"> {
  compute: (inputs: Record<string, unknown>) => Result | readonly Result[] | readonly (readonly Result[])[] | Fault;
  /** `params` as an ordered list. */
  inputs: readonly { name: string; param: Param<unknown> }[];
}

/** Declares a worksheet function; see DEVELOPERS.md, "Add a function". */
export function define<const P extends Params, K extends "value" | "row" | "table">(declaration: Declaration<P, K>): Spec {
  return {
    ...declaration,
    compute: declaration.compute as unknown as Spec["compute"],
    inputs: Object.entries(declaration.params).map(([name, param]) => ({ name, param })),
  };
}

/** The namespace in which sheets see the functions. */
export const NAMESPACE = "HATCH";

/** The trade's groups, in the order in which an engine is measured, built and tested. */
export const GROUP_TITLES: Readonly<Record<Group, string>> = {
  cylinder: "Cylinder and piston",
  rings: "Rings",
  volumes: "Volumes and compression",
  valves: "Valves",
  tests: "Tests on the assembled engine",
  verdict: "Limits and verdicts",
  measurement: "How good is the measurement",
  wear: "Change and wear",
  about: "About",
};

export const GROUPS = Object.keys(GROUP_TITLES) as Group[];

/** `CLEARANCE(hole, shaft)`, optional params in brackets. */
export function signature(spec: Pick<Spec, "name" | "inputs">): string {
  return `${spec.name}(${spec.inputs.map(({ name, param }) => (param.isOptional ? `[${name}]` : name)).join(", ")})`;
}
