// Made by `npm run generate` from the files in this folder.
import type { Spec } from "../core/define.ts";
import { pistonClearance } from "./cylinder/piston-clearance.ts";
import { taper } from "./cylinder/taper.ts";
import { slip } from "./measurement/slip.ts";
import { verdict } from "./verdict/verdict.ts";

/** Every worksheet function, in the order of the trade groups. */
export const specs: readonly Spec[] = [
  pistonClearance,
  taper,
  verdict,
  slip,
];

export const specByName: ReadonlyMap<string, Spec> = new Map(specs.map((spec) => [spec.name, spec]));
