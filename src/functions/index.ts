// Made by `npm run generate` from the files in this folder.
import type { Spec } from "../core/define.ts";
import { version } from "./about/version.ts";
import { boreSummary } from "./cylinder/bore-summary.ts";
import { boreWear } from "./cylinder/bore-wear.ts";
import { clearance } from "./cylinder/clearance.ts";
import { outOfRound } from "./cylinder/out-of-round.ts";
import { pistonClearance } from "./cylinder/piston-clearance.ts";
import { reboreSize } from "./cylinder/rebore-size.ts";
import { taper } from "./cylinder/taper.ts";
import { slip } from "./measurement/slip.ts";
import { toReference } from "./measurement/to-reference.ts";
import { ringGapAtBore } from "./rings/ring-gap-at-bore.ts";
import { ringGapFile } from "./rings/ring-gap-file.ts";
import { ringGapTarget } from "./rings/ring-gap-target.ts";
import { explain } from "./verdict/explain.ts";
import { margin } from "./verdict/margin.ts";
import { verdict } from "./verdict/verdict.ts";
import { compressionRatio } from "./volumes/compression-ratio.ts";
import { discVolume } from "./volumes/disc-volume.ts";
import { sweptVolume } from "./volumes/swept-volume.ts";

/** Every worksheet function, in the order of the trade groups. */
export const specs: readonly Spec[] = [
  boreSummary,
  boreWear,
  clearance,
  outOfRound,
  pistonClearance,
  reboreSize,
  taper,
  ringGapAtBore,
  ringGapFile,
  ringGapTarget,
  compressionRatio,
  discVolume,
  sweptVolume,
  explain,
  margin,
  verdict,
  slip,
  toReference,
  version,
];

export const specByName: ReadonlyMap<string, Spec> = new Map(specs.map((spec) => [spec.name, spec]));
