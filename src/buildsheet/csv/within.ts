import { TOLERANCE_SHARES } from "../../check/coarse-gauges.ts";

/**
 * True where limits, uncertainty and all leave no question: then the verdict is "within" and the gauge
 * fine enough. Of most readings it is true, and it costs a few comparisons; false says nothing. A limit
 * that is not given is infinitely far away.
 */
export function isClearlyWithin(value: number, lower: number, upper: number, uncertainty: number, near: number): boolean {
  return (
    value >= lower + uncertainty &&
    value <= upper - uncertainty &&
    TOLERANCE_SHARES * uncertainty <= upper - lower &&
    uncertainty >= 0 &&
    near === 0 &&
    // A limit of 0 may stand for a blank.
    (upper !== 0 || lower < 0) &&
    (lower > Number.NEGATIVE_INFINITY || upper < Number.POSITIVE_INFINITY)
  );
}
