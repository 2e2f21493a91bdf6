import { type CellAddress, placeName } from "../workbook/address.ts";
import { type Finding, type FindingSubject, findingOf, specOf } from "./finding.ts";
import { wordOf } from "./finding-words.ts";
import { KIND_OF_VERDICT } from "./judge.ts";

/** Which of the cells with a cause a finding rests on, by place. */
export type Resting = (causes: readonly CellAddress[]) => (finding: Finding) => ReadonlySet<string>;

const isCause = ({ kind }: Finding): boolean => specOf(kind).isCause;

/** Findings worst first, but what is mistyped stands before the findings that it causes, they follow it, and it says so. */
export function causesFirst(worstFirst: readonly Finding[], resting: Resting): Finding[] {
  const causes = new Map<string, Finding>();
  for (const finding of worstFirst) if (isCause(finding) && !causes.has(placeName(finding.cell))) causes.set(placeName(finding.cell), finding);
  if (causes.size === 0) return [...worstFirst];
  const restsOn = resting([...causes.values()].map(({ cell }) => cell));
  const caused = new Map<Finding, Finding[]>();
  const others: Finding[] = [];
  for (const finding of worstFirst) {
    const places = specOf(finding.kind).followsFromReading ? restsOn(finding) : NONE;
    const cause = [...causes].find(([place]) => places.has(place))?.[1];
    if (!cause) others.push(finding);
    else if (caused.has(cause)) caused.get(cause)!.push(finding);
    else caused.set(cause, [finding]);
  }
  const leading = [...causes.values()].flatMap((cause) => {
    const follow = caused.get(cause);
    return follow ? [saying(cause, follow), ...follow] : [];
  });
  return [...leading, ...others.filter((finding) => !caused.has(finding))];
}

const NONE: ReadonlySet<string> = new Set();

const saying = (cause: Finding, caused: readonly Finding[]): Finding =>
  findingOf(cause.kind, cause, { ...cause.details, causes: caused.map((finding) => causedText(cause, finding)) } as never);

/** `under`, `over at Bores!F2`, or `over: cylinder 1, taper` where the same cell stands for something worked out. */
function causedText(cause: Finding, finding: Finding): string {
  const word = wordOf(finding);
  if (placeName(finding.cell) !== placeName(cause.cell)) return `${word} at ${placeName(finding.cell)}`;
  return finding.label === cause.label ? word : `${word}: ${finding.label}`;
}

/** What a reading that looks mistyped causes by itself: the verdict on it. */
export function ownCauses({ verdict }: FindingSubject): string[] {
  const kind = verdict === null ? undefined : KIND_OF_VERDICT[verdict];
  return kind === undefined ? [] : [wordOf({ kind, verdict })];
}
