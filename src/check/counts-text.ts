import { counted, grouped } from "../core/number-text.ts";
import type { CheckResult } from "./finding.ts";

/** Nothing that goes in gets lost: `24 rows in = 22 checked + 2 refused`. Apart from the kinds of findings, which the pane loads later. */
export const countsText = ({
  rowsIn,
  checked,
  refused,
}: Pick<CheckResult, "rowsIn" | "checked" | "refused"> & Partial<Record<keyof CheckResult, unknown>>): string =>
  `${counted(rowsIn, "row")} in = ${grouped(checked)} checked + ${grouped(refused)} refused`;
