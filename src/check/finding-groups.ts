import { type Finding, specOf } from "./finding.ts";

/** What one line of a list stands for. */
export interface FindingGroup {
  /** The finding itself, or all that have one cause; what comes of a slip stands behind the slip. Worst first. */
  findings: readonly [Finding, ...Finding[]];
  /** The cause that they share, as a sentence without a full stop; null for a finding by itself and for a slip. */
  cause: string | null;
}

/** Findings as a check gives them, worst first, with those of one cause in one line, at the place of the worst of them. */
export function groupsByCause(findings: readonly Finding[]): FindingGroup[] {
  const lines: { findings: [Finding, ...Finding[]]; cause: string | null }[] = [];
  const byCause = new Map<string, [Finding, ...Finding[]]>();
  for (let at = 0; at < findings.length; at++) {
    const finding = findings[at]!;
    const caused = followersOf(findings, at);
    at += caused.length;
    const { cause } = specOf(finding.kind);
    const shared = caused.length > 0 ? null : cause(finding, finding.details);
    const line = shared === null ? undefined : byCause.get(shared);
    if (line) line.push(finding);
    else {
      const own: [Finding, ...Finding[]] = [finding, ...caused];
      if (shared !== null) byCause.set(shared, own);
      lines.push({ findings: own, cause: shared });
    }
  }
  return lines.map((line) => (line.findings.length === 1 ? { ...line, cause: null } : line));
}

/** What the finding at a place causes: as many as it says of those that a check puts behind it. */
function followersOf(findings: readonly Finding[], at: number): readonly Finding[] {
  const { kind, details } = findings[at]!;
  if (!specOf(kind).isCause) return [];
  const behind = findings.slice(at + 1, at + 1 + (details.causes as readonly string[]).length);
  const end = behind.findIndex((finding) => !specOf(finding.kind).followsFromReading);
  return end < 0 ? behind : behind.slice(0, end);
}

/** So many are named where labels have nothing in common. */
const MOST_NAMED = 3;

/** What labels have in common, `End gap` of `Cylinder 1, Top, End gap` and `Cylinder 2, Oil, End gap`; else what each ends with. */
export function commonLabel(labels: readonly string[]): string {
  const parts = labels.map((label) => label.split(", "));
  const shared = parts[0]!.filter((part) => parts.every((one) => one.includes(part)));
  if (shared.length > 0) return shared.join(", ");
  const ends = [...new Set(parts.map((one) => one.at(-1)!))].filter(Boolean);
  return ends.slice(0, MOST_NAMED).join(", ") + (ends.length > MOST_NAMED ? " …" : "");
}
