/** How a value is known: read in its source, from memory, worked out from its source, or a rule of the trade without one. */
export type Standing = "read" | "from memory" | "computed" | "common practice";

/** A value from outside the project: what a formula must give, how closely, and who says so. */
export interface Check {
  formula: string;
  gives: number | string;
  /** Largest difference allowed, as the source prints or rounds it; 0 for a decimal that must be exact. */
  within: number;
  source: string;
  standing: Standing;
}

/** Several formulas that rest on one source. */
export const from = (source: string, standing: Standing, checks: readonly (readonly [formula: string, gives: number | string, within?: number])[]): Check[] =>
  checks.map(([formula, gives, within = 0]) => ({ formula, gives, within, source, standing }));
