import type { Spec } from "./define.ts";

/** `CLEARANCE(hole, shaft)`, optional params in brackets. */
export function signature(spec: Pick<Spec, "name" | "inputs">): string {
  return `${spec.name}(${spec.inputs.map(({ name, param }) => (param.isOptional ? `[${name}]` : name)).join(", ")})`;
}
