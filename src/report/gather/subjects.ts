import { saysOwner } from "../../vocabulary/headings.ts";
import { parseHeading } from "../../vocabulary/parse-heading.ts";
import { remembered } from "../../vocabulary/remembered.ts";
import type { Subject } from "../summary-facts.ts";

/** Names are no longer than this in a summary. */
const LONGEST = 80;

/** Whether a part of a label says whose it is and not what, as `Engine A` and `Cylinder 2` and no `Cylinder bore`; and the engine that it names. */
const ownerOf = remembered((part): { isOwner: boolean; engine?: string | undefined } => {
  if (!saysOwner("engine", part) && !saysOwner("cylinder", part)) return { isOwner: false };
  const { characteristic, engine } = parseHeading(part, ["engine", "cylinder", "characteristic"]);
  return { isOwner: characteristic === undefined, engine };
});

const subjectIn = remembered((what): Subject => {
  const { characteristic = what.split(", ")[0]!.trim().toLowerCase(), engine } = parseHeading(what, ["engine", "cylinder", "characteristic", "position"]);
  return { characteristic: characteristic.slice(0, LONGEST) || "not named", engine: engine?.slice(0, LONGEST) };
});

/** The characteristic and the engine that a label names: `Engine A, Cylinder 2, Taper`. */
export function subjectOf(label: string): Subject {
  const parts = label.split(", ").map((text) => ({ text, ...ownerOf(text) }));
  const engine = parts.find((part) => part.engine !== undefined)?.engine;
  // Whose it is stands in parts of its own; what is left comes again and again.
  const what = parts.filter(({ isOwner }) => !isOwner).map(({ text }) => text);
  const subject = subjectIn(what.join(", "));
  return engine === undefined ? subject : { ...subject, engine: engine.slice(0, LONGEST) };
}
