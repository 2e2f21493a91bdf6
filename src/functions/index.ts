// Made by `npm run generate` from the files in this folder.
import type { Spec } from "../core/define.ts";
import { version } from "./about/version.ts";
import { bobWeight } from "./balance/bob-weight.ts";
import { massMatch } from "./balance/mass-match.ts";
import { rodEnds } from "./balance/rod-ends.ts";
import { boreSummary } from "./cylinder/bore-summary.ts";
import { boreWear } from "./cylinder/bore-wear.ts";
import { clearance } from "./cylinder/clearance.ts";
import { finishBore } from "./cylinder/finish-bore.ts";
import { hotClearance } from "./cylinder/hot-clearance.ts";
import { outOfRound } from "./cylinder/out-of-round.ts";
import { pistonClearance } from "./cylinder/piston-clearance.ts";
import { pistonMatch } from "./cylinder/piston-match.ts";
import { pistonSpeed } from "./cylinder/piston-speed.ts";
import { reborePlan } from "./cylinder/rebore-plan.ts";
import { reboreSize } from "./cylinder/rebore-size.ts";
import { roundness } from "./cylinder/roundness.ts";
import { taper } from "./cylinder/taper.ts";
import { deckClearance } from "./faces/deck-clearance.ts";
import { flatnessWithin } from "./faces/flatness-within.ts";
import { flatness } from "./faces/flatness.ts";
import { runout } from "./faces/runout.ts";
import { combine } from "./measurement/combine.ts";
import { gaugeStudy } from "./measurement/gauge-study.ts";
import { lengthOf } from "./measurement/length.ts";
import { ratioUncertainty } from "./measurement/ratio-uncertainty.ts";
import { slip } from "./measurement/slip.ts";
import { toReference } from "./measurement/to-reference.ts";
import { uncertainty } from "./measurement/uncertainty.ts";
import { ringGapAtBore } from "./rings/ring-gap-at-bore.ts";
import { ringGapFile } from "./rings/ring-gap-file.ts";
import { ringGapTarget } from "./rings/ring-gap-target.ts";
import { ringSide } from "./rings/ring-side.ts";
import { ringWear } from "./rings/ring-wear.ts";
import { bearingClearance } from "./shafts/bearing-clearance.ts";
import { crush } from "./shafts/crush.ts";
import { heatForFit } from "./shafts/heat-for-fit.ts";
import { interference } from "./shafts/interference.ts";
import { regrindPlan } from "./shafts/regrind-plan.ts";
import { regrindSize } from "./shafts/regrind-size.ts";
import { shaftWear } from "./shafts/shaft-wear.ts";
import { honeAngle } from "./surface/hone-angle.ts";
import { surface } from "./surface/surface.ts";
import { blowBy } from "./tests/blow-by.ts";
import { compressionAtStandard } from "./tests/compression-at-standard.ts";
import { compressionCheck } from "./tests/compression-check.ts";
import { compressionSpread } from "./tests/compression-spread.ts";
import { leakDown } from "./tests/leak-down.ts";
import { oilRate } from "./tests/oil-rate.ts";
import { wetTest } from "./tests/wet-test.ts";
import { coilBind } from "./valves/coil-bind.ts";
import { installedHeight } from "./valves/installed-height.ts";
import { lobeLift } from "./valves/lobe-lift.ts";
import { lobeWear } from "./valves/lobe-wear.ts";
import { shimPlan } from "./valves/shim-plan.ts";
import { shimSize } from "./valves/shim-size.ts";
import { springForce } from "./valves/spring-force.ts";
import { springHeight } from "./valves/spring-height.ts";
import { springRate } from "./valves/spring-rate.ts";
import { timingAt } from "./valves/timing-at.ts";
import { valveLift } from "./valves/valve-lift.ts";
import { valveToPiston } from "./valves/valve-to-piston.ts";
import { conformity } from "./verdict/conformity.ts";
import { explain } from "./verdict/explain.ts";
import { margin } from "./verdict/margin.ts";
import { verdict } from "./verdict/verdict.ts";
import { chamberFor } from "./volumes/chamber-for.ts";
import { compressionRatio } from "./volumes/compression-ratio.ts";
import { crankingPressure } from "./volumes/cranking-pressure.ts";
import { discVolume } from "./volumes/disc-volume.ts";
import { headSkim } from "./volumes/head-skim.ts";
import { pistonTravel } from "./volumes/piston-travel.ts";
import { squish } from "./volumes/squish.ts";
import { sweptVolume } from "./volumes/swept-volume.ts";
import { trappedRatio } from "./volumes/trapped-ratio.ts";
import { chanceAdjusted } from "./wear/chance-adjusted.ts";
import { compareGroups } from "./wear/compare-groups.ts";
import { detectable } from "./wear/detectable.ts";
import { enNumber } from "./wear/en-number.ts";
import { enginesNeeded } from "./wear/engines-needed.ts";
import { pairedChange } from "./wear/paired-change.ts";
import { realChange } from "./wear/real-change.ts";
import { sameWithin } from "./wear/same-within.ts";
import { wearLife } from "./wear/wear-life.ts";
import { wearRate } from "./wear/wear-rate.ts";

/** Every worksheet function, in the order of the trade groups. */
export const specs: readonly Spec[] = [
  boreSummary,
  boreWear,
  clearance,
  finishBore,
  hotClearance,
  outOfRound,
  pistonClearance,
  pistonMatch,
  pistonSpeed,
  reborePlan,
  reboreSize,
  roundness,
  taper,
  ringGapAtBore,
  ringGapFile,
  ringGapTarget,
  ringSide,
  ringWear,
  bearingClearance,
  crush,
  heatForFit,
  interference,
  regrindPlan,
  regrindSize,
  shaftWear,
  deckClearance,
  flatnessWithin,
  flatness,
  runout,
  honeAngle,
  surface,
  chamberFor,
  compressionRatio,
  crankingPressure,
  discVolume,
  headSkim,
  pistonTravel,
  squish,
  sweptVolume,
  trappedRatio,
  coilBind,
  installedHeight,
  lobeLift,
  lobeWear,
  shimPlan,
  shimSize,
  springForce,
  springHeight,
  springRate,
  timingAt,
  valveLift,
  valveToPiston,
  bobWeight,
  massMatch,
  rodEnds,
  blowBy,
  compressionAtStandard,
  compressionCheck,
  compressionSpread,
  leakDown,
  oilRate,
  wetTest,
  conformity,
  explain,
  margin,
  verdict,
  combine,
  gaugeStudy,
  lengthOf,
  ratioUncertainty,
  slip,
  toReference,
  uncertainty,
  chanceAdjusted,
  compareGroups,
  detectable,
  enNumber,
  enginesNeeded,
  pairedChange,
  realChange,
  sameWithin,
  wearLife,
  wearRate,
  version,
];

export const specByName: ReadonlyMap<string, Spec> = new Map(specs.map((spec) => [spec.name, spec]));
