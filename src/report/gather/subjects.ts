import { saysOwner } from "../../vocabulary/headings.ts";
import { parseHeading } from "../../vocabulary/parse-heading.ts";
import type { Subject } from "../summary-facts.ts";

const MOST_KNOWN = 10_000;
/** Names are no longer than this in a summary. */
const LONGEST = 80;
const known = new Map<string, Subject>();

/** The characteristic and the engine that a label names: `Engine A, Cylinder 2, Taper`. */
export function subjectOf(label: string): Subject {
  const parts = label.split(", ");
  // Whose it is stands in parts of its own; what is left comes again and again.
  const engine = parts
    .filter((part) => saysOwner("engine", part))
    .map(engineIn)
    .find((name) => name !== undefined);
  const what = parts.filter((part) => !saysOwner("engine", part) && !saysOwner("cylinder", part)).join(", ");
  let subject = known.get(what);
  if (!subject) {
    const said = parseHeading(what, ["engine", "cylinder", "characteristic", "position"]);
    const characteristic = said.characteristic ?? what.split(", ")[0]!.trim().toLowerCase();
    subject = { characteristic: characteristic.slice(0, LONGEST) || "not named", engine: said.engine?.slice(0, LONGEST) };
    if (known.size >= MOST_KNOWN) known.clear();
    known.set(what, subject);
  }
  return engine === undefined ? subject : { ...subject, engine: engine.slice(0, LONGEST) };
}

/** `A` of `Engine A` */
const engineIn = (part: string): string | undefined => parseHeading(part, ["engine", "cylinder"]).engine;
