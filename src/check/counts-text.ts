import { rowsText } from "../core/number-text.ts";
import type { CheckResult } from "./finding.ts";

/** `22 of 24 rows checked, 2 could not be`. Apart from the kinds of findings, which the pane loads later. */
export const countsText = ({ rowsIn, checked }: Pick<CheckResult, "rowsIn" | "checked"> & Partial<Record<keyof CheckResult, unknown>>): string =>
  rowsText(rowsIn, checked, "checked");
