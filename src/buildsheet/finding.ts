import type { Verdict } from "../core/verdict.ts";
import type { CellAddress } from "../workbook/address.ts";

/**
 * What Check can report, worst first. `refused` is input that could not be judged at all; it never
 * hides: rows in = checked + refused, and each refused row is one such finding. A row whose reading
 * or limit is still missing is checked: the finding says what is missing.
 */
export const FINDING_KINDS = [
  "outside limit",
  "refused",
  "not proven",
  "near limit",
  "likely slip",
  "missing reading",
  "missing limit",
  "calibration overdue",
  "coarse gauge",
  "mixed units",
  "overwritten formula",
  "limit in formula",
] as const;
export type FindingKind = (typeof FINDING_KINDS)[number];

export interface Finding {
  kind: FindingKind;
  /** The cell a person should look at: that of the reading where one is known, else that of the verdict. */
  cell: CellAddress;
  /** What is judged, in the sheet's own words where a label stands beside or above it. */
  label: string;
  value: number | string | null;
  lower: number | null;
  upper: number | null;
  /** Distance to the nearest limit, negative outside. */
  margin: number | null;
  verdict: Verdict | null;
  /** One plain sentence with the numbers. */
  sentence: string;
  /** Line of the file, for CSV input. */
  line?: number;
}

export interface CheckResult {
  /** Worst first; ties in reading order. */
  findings: Finding[];
  /** Judged rows found in the input. Always checked + refused. */
  rowsIn: number;
  checked: number;
  refused: number;
  /** Cells looked at as inputs of functions, judged or not; with no rows and no inputs there was nothing to check. */
  inputs: number;
}
