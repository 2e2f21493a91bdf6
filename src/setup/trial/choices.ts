import { capitalised } from "../../core/words.ts";
import { USE_UNITS, type UseUnit } from "../../vocabulary/heading-words.ts";
import type { BuildSheetChoices } from "../choices.ts";

export interface TrialChoices extends Pick<BuildSheetChoices, "cylinders" | "heights" | "axes" | "unit"> {
  /** Engines in each of two groups. */
  engines: number;
  /** The order of measuring follows from it: the same number gives the same order. */
  seed: number;
  /** In what use is counted. */
  use: UseUnit;
}

/** Headings of use: `Hours`, `Miles`, `Km`. */
export const useHeading: (use: UseUnit) => string = capitalised;

export { USE_UNITS, type UseUnit };

export const MOST_ENGINES = 12;
export const LARGEST_SEED = 999_999;

export const RUNNING = "A trial is work on running engines: take the usual cautions, and let the maker's service manual decide, on running in above all.";

/** Measured twice, before and after. */
export const CAMPAIGNS = ["before", "after"] as const;
