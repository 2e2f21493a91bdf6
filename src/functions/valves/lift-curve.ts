import { Fault } from "../../core/fault.ts";
import { grid } from "../../core/inputs.ts";
import type { NumberGrid } from "../../core/param.ts";

/** A lift and the crank angle at which it was read. */
export interface LiftReading {
  angle: number;
  lift: number;
}

export const curveParams = (angleHelp: string) => ({
  angles: grid("number", angleHelp).chosen(),
  lifts: grid("number", "lift of the valve at each of the angles"),
});

/** The readings in pairs, without unused rows at the end; nothing while one in between is missing. */
export function liftCurve(angles: NumberGrid, lifts: NumberGrid): LiftReading[] | Fault | undefined {
  if (angles.values.length !== lifts.values.length || (angles.rows !== lifts.rows && angles.rows !== 1 && angles.columns !== 1))
    return new Fault("shape", "angles", `${angles.rows}×${angles.columns}`, `lifts of ${lifts.rows}×${lifts.columns}`);
  const used = Math.max(
    angles.values.findLastIndex((cell) => cell !== null),
    lifts.values.findLastIndex((cell) => cell !== null),
  );
  const pairs = angles.values.slice(0, used + 1).map((angle, i) => ({ angle, lift: lifts.values[i]! }));
  return pairs.some(({ angle, lift }) => angle === null || lift === null) ? undefined : (pairs as LiftReading[]);
}
