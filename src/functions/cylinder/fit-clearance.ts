import { decimal, isAbove } from "../../core/decimal.ts";
import { type Fault, swapped, unlike } from "../../core/fault.ts";

/**
 * Clearance of a running fit, on the diameter: the size of the hole less that of the shaft in it,
 * as a decimal. The names are those under which the two are known to the person who typed them; `unless`
 * says where a larger shaft belongs.
 */
export function fitClearance(hole: number, shaft: number, holeName: string, shaftName: string, unless?: string): number | Fault {
  const odd = unlike(shaftName, shaft, holeName, hole);
  if (odd) return odd;
  return isAbove(shaft, hole) ? swapped(shaftName, shaft, holeName, hole, unless) : decimal(hole - shaft);
}
