// Made by `npm run generate` from the files in this folder.
import { calibrationOverdueKind } from "./calibration-overdue.ts";
import { coarseGaugeKind } from "./coarse-gauge.ts";
import { likelySlipKind } from "./likely-slip.ts";
import { limitInFormulaKind } from "./limit-in-formula.ts";
import { missingLimitKind } from "./missing-limit.ts";
import { missingReadingKind } from "./missing-reading.ts";
import { mixedUnitsKind } from "./mixed-units.ts";
import { nearLimitKind } from "./near-limit.ts";
import { noResultKind } from "./no-result.ts";
import { notProvenKind } from "./not-proven.ts";
import { outsideLimitKind } from "./outside-limit.ts";
import { overwrittenFormulaKind } from "./overwritten-formula.ts";
import { refusedKind } from "./refused.ts";
import { wrongResultKind } from "./wrong-result.ts";
import { zeroLimitKind } from "./zero-limit.ts";

/** Every kind of finding. */
export const kinds = [
  calibrationOverdueKind,
  coarseGaugeKind,
  likelySlipKind,
  limitInFormulaKind,
  missingLimitKind,
  missingReadingKind,
  mixedUnitsKind,
  nearLimitKind,
  noResultKind,
  notProvenKind,
  outsideLimitKind,
  overwrittenFormulaKind,
  refusedKind,
  wrongResultKind,
  zeroLimitKind,
] as const;
