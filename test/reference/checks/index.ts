import type { TradeGroup } from "../../../src/core/define.ts";
import { ABOUT } from "./about.ts";
import { BALANCE } from "./balance.ts";
import type { Check } from "./check.ts";
import { CYLINDER } from "./cylinder.ts";
import { FACES } from "./faces.ts";
import { MEASUREMENT } from "./measurement.ts";
import { RINGS } from "./rings.ts";
import { SHAFTS } from "./shafts.ts";
import { SURFACE } from "./surface.ts";
import { TESTS } from "./tests.ts";
import { VALVES } from "./valves.ts";
import { VERDICTS } from "./verdict.ts";
import { VOLUMES } from "./volumes.ts";
import { WEAR } from "./wear.ts";

/** Every check against a value from outside the project, by the group of its function. */
export const CHECKS: Readonly<Record<TradeGroup, readonly Check[]>> = {
  cylinder: CYLINDER,
  rings: RINGS,
  shafts: SHAFTS,
  faces: FACES,
  surface: SURFACE,
  volumes: VOLUMES,
  valves: VALVES,
  balance: BALANCE,
  tests: TESTS,
  verdict: VERDICTS,
  measurement: MEASUREMENT,
  wear: WEAR,
  about: ABOUT,
};

/** The checks of the function of that name. */
export const checksFor = (name: string): readonly Check[] =>
  Object.values(CHECKS)
    .flat()
    .filter((check) => check.function === name);
