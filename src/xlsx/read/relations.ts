import type { Limits } from "../file-limits.ts";
import { UnreadableFile } from "../unreadable.ts";
import { readXml } from "../xml.ts";
import type { Zip } from "../zip.ts";

/** One arrow from a part to another (ECMA-376 part 2, 6.5). */
export interface Relation {
  id: string;
  /** The last step of its type: `worksheet`, `table`, `sharedStrings`; the same in both forms of the standard. */
  kind: string;
  /** The part it points to. */
  target: string;
}

/** The relations of a part; those that lead out of the file are left out. `""` is the archive itself. */
export function relationsOf(zip: Zip, part: string, limits: Limits): Relation[] {
  const slash = part.lastIndexOf("/") + 1;
  const path = `${part.slice(0, slash)}_rels/${part.slice(slash)}.rels`;
  const bytes = zip.read(path);
  const relations: Relation[] = [];
  if (!bytes) return relations;
  readXml(bytes, path, limits.depth, {
    open(name, { Id, Type, Target, TargetMode }) {
      if (name !== "Relationship" || TargetMode === "External" || !Id || !Type || !Target) return;
      relations.push({ id: Id, kind: Type.slice(Type.lastIndexOf("/") + 1), target: resolve(part.slice(0, slash), Target) });
    },
  });
  return relations;
}

/** A target as the name of a part: from the root when it starts with a slash, otherwise from the folder. */
function resolve(folder: string, target: string): string {
  const steps: string[] = [];
  for (const step of (target.startsWith("/") ? target : folder + target).split("/")) {
    if (step === "..") {
      if (steps.pop() === undefined) throw new UnreadableFile(`points out of itself with ${JSON.stringify(target)}`);
    } else if (step !== "" && step !== ".") steps.push(decode(step));
  }
  return steps.join("/");
}

function decode(step: string): string {
  try {
    return decodeURIComponent(step);
  } catch {
    return step;
  }
}
