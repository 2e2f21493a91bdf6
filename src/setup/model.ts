import type { WorkbookSpec } from "../workbook/sheet-spec.ts";
import type { BuildSheetChoices } from "./choices.ts";
import type { SetupContext } from "./columns.ts";
import type { SheetBuilder, TableAt } from "./page.ts";
import type { SheetWord } from "./sheets.ts";

/** A build sheet as data. */
export interface BuildSheet extends WorkbookSpec {
  title: string;
  /** What plans are made from. */
  plans?: readonly PlanSource[];
}

/** What stands on the sheets for a function that plans work. */
export interface PlanSource {
  /** The name of the function. */
  of: string;
  /** What it is about, where a workbook has several for one function. */
  about: string;
  /** Cells and numbers, by the names of the function's params; several ranges stand one a line. */
  inputs: Readonly<Record<string, string>>;
  /** Params that are the middle of two limits. */
  middles?: Readonly<Record<string, readonly [lower: string, upper: string]>>;
  /** The tables in which all that stands. */
  tables: readonly string[];
}

/** An entry of the engine's data. */
export interface Item {
  name: string;
  kind: "text" | "length" | "date" | "hours" | "number" | "fixed";
  unit?: string;
  /** What stands there from the start. */
  entry?: number | string;
  note?: string;
  /** The sheets that it is for; without any it is always asked. */
  of?: readonly SheetWord[];
}

/** A column of verdicts that the summary counts. */
export interface VerdictColumn {
  name: string;
  table: TableAt;
  heading: string;
  /** The verdict is the first word of a sentence. */
  isSentence?: boolean;
}

/** One sheet, with all that the other sheets hold for it: left out, it takes that with it. */
export interface SheetPart {
  /** What leaves it out. */
  word: SheetWord;
  /** The engine's data that it needs. */
  items(choices: BuildSheetChoices): readonly Item[];
  /** What is measured on it with a gauge. */
  measured: readonly string[];
  /** What it works out from readings, each by what was measured for it: the same twice for two readings with one gauge. */
  results: readonly (readonly [result: string, ...from: string[]])[];
  /** What it judges, with the unit of the limits. */
  limits(choices: BuildSheetChoices): readonly (readonly [characteristic: string, unit: string])[];
  page(given: SetupContext): { page: SheetBuilder; judged: readonly VerdictColumn[]; plans?: readonly PlanSource[] };
}
