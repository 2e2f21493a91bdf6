/**
 * functions.json: what Excel must know of the functions before it runs them, made from the specs.
 *
 * Made here rather than by custom-functions-metadata from JSDoc, because that tool cannot say
 * `allowErrorForDataTypeAny`: with it a cell that holds an error reaches the function, which then
 * names the argument, instead of Excel answering `#VALUE!` without a word. Excel's reference of the
 * format ("Manually create JSON metadata for custom functions") puts it at the top level and applies
 * it to params of type `any`, hence every param is one, and a range.
 */
import type { Spec } from "../core/define.ts";
import { specs as allSpecs } from "../functions/index.ts";

export interface FunctionsJson {
  allowErrorForDataTypeAny: true;
  functions: FunctionEntry[];
}

interface FunctionEntry {
  id: string;
  name: string;
  description: string;
  parameters: { name: string; description: string; type: "any"; dimensionality: "matrix"; optional?: true }[];
  /** Its type, left out, is `any`, as Microsoft's own generator leaves it. */
  result: { dimensionality: "matrix" };
}

/** Beyond this some hosts cut a description off. */
const LONGEST_DESCRIPTION = 128;
const ID = /^[A-Z]+$/;

export function functionsJson(specs: readonly Spec[] = allSpecs): FunctionsJson {
  const seen = new Set<string>();
  const functions = specs.map((spec) => {
    // Excel does not tell capitals from small letters in ids, and only warns of a second one.
    if (seen.has(spec.name.toUpperCase())) throw new Error(`Two functions are called ${spec.name}.`);
    if (!ID.test(spec.name)) throw new Error(`${spec.name} cannot be an id: capital letters only.`);
    seen.add(spec.name.toUpperCase());
    return entry(spec);
  });
  return { allowErrorForDataTypeAny: true, functions };
}

function entry(spec: Spec): FunctionEntry {
  return {
    id: spec.name,
    name: spec.name,
    description: short(spec.summary, spec.name),
    parameters: spec.inputs.map(({ name, param }) => ({
      name,
      description: short(param.help, `${spec.name}, ${name}`),
      type: "any",
      dimensionality: "matrix",
      ...(param.isOptional ? { optional: true as const } : {}),
    })),
    result: { dimensionality: "matrix" },
  };
}

function short(text: string, of: string): string {
  if (text.length === 0 || text.length > LONGEST_DESCRIPTION) {
    throw new Error(`The description of ${of} has ${text.length} characters; 1 to ${LONGEST_DESCRIPTION} are wanted.`);
  }
  return text;
}
