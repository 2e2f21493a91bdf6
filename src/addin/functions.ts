/**
 * Built into dist/functions.js, a classic script that Excel runs after office.js: associates every
 * declared function with its id in functions.json.
 */

import { broadcast } from "../core/broadcast.ts";
import type { Result } from "../core/cell.ts";
import type { Spec } from "../core/define.ts";
import { Fault } from "../core/fault.ts";
import { sentence } from "../core/sentences.ts";
import { specs } from "../functions/index.ts";
import { argumentsFrom } from "./argument.ts";

function implementation(spec: Spec): (...given: unknown[]) => Result[][] {
  return (...given) => {
    const outcome = broadcast(spec, argumentsFrom(given));
    // The error class is there only once the host's own part of office.js has come, so it is looked up late.
    if (outcome instanceof Fault) throw new CustomFunctions.Error(CustomFunctions.ErrorCode.invalidValue, sentence(outcome));
    return Array.isArray(outcome) ? outcome : [[outcome]];
  };
}

for (const spec of specs) CustomFunctions.associate(spec.name, implementation(spec));
