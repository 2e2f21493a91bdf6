import { choice } from "../../core/inputs.ts";

/** The last argument of every function that makes a volume from lengths. */
export const volumeUnit = () => choice("unit of the lengths: mm gives cm³, in gives in³", ["mm", "in"]).default("mm");

/** A volume in the cube of its lengths' unit, as the trade states it: mm³ as cm³, in³ as they are. */
export const inVolumeUnit = (cubic: number, unit: "mm" | "in"): number => (unit === "mm" ? cubic / 1000 : cubic);

/** Area of the disc of this diameter. */
export const discArea = (diameter: number): number => (Math.PI / 4) * diameter * diameter;
