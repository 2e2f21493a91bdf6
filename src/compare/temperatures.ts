import { broadcast } from "../core/broadcast.ts";
import { decimal } from "../core/decimal.ts";
import { Fault } from "../core/fault.ts";
import { faultBody } from "../core/sentences.ts";
import { coefficientOf } from "../functions/measurement/materials.ts";
import { toReference } from "../functions/measurement/to-reference.ts";
import { foldedHeading } from "../vocabulary/headings.ts";
import type { Reading } from "./readings.ts";
import type { Session } from "./sessions.ts";
import { isLength } from "./typed-sizes.ts";

/** How far the temperature of a measuring, and a material's coefficient, may be off: both as likely anywhere within (JCGM 100:2008, 4.3.7). */
export const DEGREES = 1;
const SHARE_OF_COEFFICIENT = 0.1;
const RECTANGULAR = Math.sqrt(3);

type Warm = Pick<Reading, "value" | "temperature" | "material">;

/** A size at 20 °C by TOREFERENCE; `undefined` where temperature or material is not given. */
function atReference({ value, temperature, material }: Warm): number | Fault | undefined {
  if (temperature === undefined || material === undefined || value === null || !(value > 0)) return undefined;
  const made = broadcast(toReference, [value, temperature, material]);
  return made instanceof Fault || typeof made === "number" ? made : undefined;
}

/** Why a reading with its temperature and material cannot be brought to 20 °C. */
export function thermalFault(reading: Reading): string | undefined {
  const made = isLength(reading) ? atReference(reading) : undefined;
  return made instanceof Fault ? faultBody(made) : undefined;
}

/** What heat has to do with the change of one place. */
export interface ThermalChange {
  /** What bringing both sizes to 20 °C adds to the change. */
  correction: number;
  /** Standard uncertainty by one degree of each measuring. */
  ofDegree: { before: number; after: number };
  /** And by the coefficient, which both share: it counts by how far the temperatures lie apart, with the sign in which it moves the change. */
  ofCoefficient: number;
}

/** Both sizes brought to 20 °C; `undefined` unless temperature and material are known of both. */
export function thermalChange(before: Session, after: Session): ThermalChange | undefined {
  const [first, last] = [before, after].map(({ readings: [reading], value, temperature }) => ({ ...reading!, value, temperature })) as [Reading, Reading];
  if (!isLength(first) || foldedHeading(first.material ?? "") !== foldedHeading(last.material ?? "")) return undefined;
  const [cold, colder] = [atReference(first), atReference(last)];
  if (typeof cold !== "number" || typeof colder !== "number") return undefined;
  const coefficient = coefficientOf(first.material!);
  if (coefficient instanceof Fault) return undefined;
  const grows = coefficient * before.value;
  return {
    correction: decimal(colder - after.value - (cold - before.value)),
    ofDegree: { before: (grows * DEGREES) / RECTANGULAR, after: (coefficient * after.value * DEGREES) / RECTANGULAR },
    ofCoefficient: (-grows * SHARE_OF_COEFFICIENT * (last.temperature! - first.temperature!)) / RECTANGULAR,
  };
}

/** True where heat is told of a place, but not enough of it to bring both sizes to 20 °C. */
export const isHalfWarm = (before: Session, after: Session): boolean =>
  [before, after].some(({ temperature }) => temperature !== undefined) && thermalChange(before, after) === undefined;
