/**
 * How far a piston stands below top dead centre, in the unit of the stroke, with the pin on the
 * cylinder's axis: r (1 − cos θ) + l − √(l² − r² sin² θ), where r is half the stroke and l the rod.
 * The rod must be longer than r.
 */
export function pistonTravelAt(degrees: number, stroke: number, rod: number): number {
  const crank = stroke / 2;
  const angle = (degrees * Math.PI) / 180;
  const side = crank * Math.sin(angle);
  return crank * (1 - Math.cos(angle)) + rod - Math.sqrt(rod * rod - side * side);
}
