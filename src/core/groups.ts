import type { Group } from "./define.ts";

/** The trade's groups, in the order in which an engine is measured, built and tested. */
export const GROUP_TITLES: Readonly<Record<Group, string>> = {
  cylinder: "Cylinder and piston",
  rings: "Rings",
  volumes: "Volumes and compression",
  valves: "Valves",
  tests: "Tests on the assembled engine",
  verdict: "Limits and verdicts",
  measurement: "How good is the measurement",
  wear: "Change and wear",
  about: "About",
};

export const GROUPS = Object.keys(GROUP_TITLES) as Group[];
