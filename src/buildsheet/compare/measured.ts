import type { Group, Spec } from "../../core/define.ts";

/** Groups whose functions measure an engine; the others judge, compare or weigh what these found. */
const MEASURING: ReadonlySet<Group> = new Set(["cylinder", "rings", "volumes", "valves", "tests"]);

/** Functions whose result is a decision: what to bore, file, buy or cut to. */
const DECIDING: ReadonlySet<string> = new Set([
  "FINISHBORE",
  "REBORESIZE",
  "REBOREPLAN",
  "PISTONMATCH",
  "RINGGAPTARGET",
  "RINGGAPFILE",
  "SHIMSIZE",
  "SHIMPLAN",
  "CHAMBERFOR",
  "HEADSKIM",
]);

/** Inputs that are chosen, wanted or set, by name or by function and name; all other quantities are measured on the engine. */
const SETTINGS: ReadonlySet<string> = new Set([
  "standard",
  "oversizes",
  "allowance",
  "target",
  "FINISHBORE.clearance",
  "pistonClearance",
  "perBore",
  "least",
  "most",
  "step",
  "limit",
  "gain",
  "low",
  "ratio",
  "wanted",
  "faceArea",
  "ambient",
  "exponent",
  "supply",
  "rpm",
  "angle",
  "intakeCloses",
  "boreTemperature",
  "pistonTemperature",
]);

export const isSetting = (spec: Spec, input: string): boolean => SETTINGS.has(input) || SETTINGS.has(`${spec.name}.${input}`);

/** True for an input that is measured on the engine, and so can wear. */
export function isMeasured(spec: Spec, input: string): boolean {
  const param = spec.inputs.find(({ name }) => name === input)?.param;
  return (
    MEASURING.has(spec.group) && param !== undefined && (param.isMeasured || param.lifting === "bore") && param.lifting !== "axes" && !isSetting(spec, input)
  );
}

/** True for a function whose inputs and result a comparison looks at. */
export const measures = (spec: Spec): boolean => MEASURING.has(spec.group);

/** True for a function whose result is a characteristic of the engine. */
export const isCharacteristic = (spec: Spec): boolean => measures(spec) && spec.returns.kind === "value" && !DECIDING.has(spec.name);
