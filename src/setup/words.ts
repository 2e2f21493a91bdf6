/** What the places of readings are called, by how many there are. */
const HEIGHTS: Readonly<Record<number, readonly string[]>> = {
  2: ["top", "bottom"],
  3: ["top", "middle", "bottom"],
  4: ["top", "upper middle", "lower middle", "bottom"],
  5: ["top", "upper", "middle", "lower", "bottom"],
};

/** Thrust and pin first, as the functions take them; the others by their angle from thrust. */
const AXES = ["thrust", "pin", "45°", "135°"];

const VALVES: Readonly<Record<number, readonly string[]>> = {
  2: ["Inlet", "Exhaust"],
  3: ["Inlet 1", "Inlet 2", "Exhaust"],
  4: ["Inlet 1", "Inlet 2", "Exhaust 1", "Exhaust 2"],
  5: ["Inlet 1", "Inlet 2", "Inlet 3", "Exhaust 1", "Exhaust 2"],
};

export const heightNames = (heights: number): readonly string[] => HEIGHTS[heights]!;
export const axisNames = (axes: number): readonly string[] => AXES.slice(0, axes);
export const valveNames = (valves: number): readonly string[] => VALVES[valves]!;
export const RINGS = ["Top", "Second", "Oil"] as const;

/** `Top thrust`: the heading of a column of bore readings, height by height. */
export function boreHeadings(heights: number, axes: number): string[] {
  return heightNames(heights).flatMap((height) => axisNames(axes).map((axis) => `${height.charAt(0).toUpperCase()}${height.slice(1)} ${axis}`));
}
