import type { Group, Spec } from "../core/define.ts";
import { GROUPS } from "../core/groups.ts";

/** Specs that hold every word of the search in their name, summary, definition or params, by group. */
export function findSpecs(specs: readonly Spec[], search: string): Map<Group, Spec[]> {
  const words = search
    .toLowerCase()
    .replaceAll("hatch.", " ")
    .split(/[\s=(),]+/)
    .filter(Boolean);
  const found = new Map<Group, Spec[]>();
  for (const group of GROUPS) {
    const members = specs.filter((spec) => spec.group === group && words.every((word) => textOf(spec).includes(word)));
    if (members.length > 0) found.set(group, members);
  }
  return found;
}

const texts = new WeakMap<Spec, string>();

function textOf(spec: Spec): string {
  let text = texts.get(spec);
  if (text === undefined) {
    const params = spec.inputs.flatMap(({ name, param }) => [name, param.help]);
    text = [spec.name, spec.summary, spec.definition, ...params].join("\n").toLowerCase();
    texts.set(spec, text);
  }
  return text;
}
