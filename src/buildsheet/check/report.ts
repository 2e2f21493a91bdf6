import { placeName } from "../../workbook/address.ts";
import type { CheckResult, Finding, FindingKind } from "../finding.ts";
import { FINDING_KINDS } from "../finding.ts";
import type { JudgedRow } from "../judged.ts";
import type { Judged } from "./given.ts";
import { KIND_OF_VERDICT } from "./said.ts";

/** A finding before it is known what was found: what it is about. */
export type Subject = Omit<Finding, "kind" | "sentence">;

/** What a reading is about before it has been judged. */
export type Place = Pick<Finding, "cell" | "label" | "line">;

/** Gathers findings and counts rows, so that rows in = checked + refused whatever happens. */
export class Report {
  readonly #findings: Finding[] = [];
  readonly #take: (finding: Finding) => void;
  readonly #isKeeping: boolean;
  readonly #seen = new Set<string>();
  #checked = 0;
  #refused = 0;
  inputs = 0;

  /** With `judged` every verdict is told, also one of which there is nothing to say. With `take` findings are handed on as they are found and nothing is kept of them; whoever reports then sees to it that nothing comes twice. */
  constructor(
    take?: (finding: Finding) => void,
    readonly judged?: (row: JudgedRow) => void,
  ) {
    this.#take = take ?? ((finding) => void this.#findings.push(finding));
    this.#isKeeping = take === undefined;
  }

  /** One judged thing of which there is nothing to say. */
  within(): void {
    this.#checked++;
    this.inputs++;
  }

  /**
   * One judged thing: counted, and reported where there is something to say. `place` is asked for only
   * then, as most rows are within and need no name. Returns how to tell what it was about.
   */
  row(judged: Judged, place: () => Place, raw: Finding["value"] = null): () => Subject {
    const about = () => subjectOf(judged, place(), raw);
    if (judged.as === "nothing") return about;
    if (judged.as === "refused") this.#refused++;
    else this.#checked++;
    switch (judged.as) {
      case "refused":
        this.#take(findingOf("refused", about(), judged.why));
        break;
      case "missing reading":
        this.find("missing reading", about(), "the reading is still blank");
        break;
      case "missing limit":
        this.find("missing limit", about(), `${judged.value} has no limit to be judged by`);
        break;
      case "judged": {
        const kind = KIND_OF_VERDICT[judged.judgement.verdict];
        if (kind) this.#take(findingOf(kind, about(), judged.sentence));
        this.judged?.({ ...about(), verdict: judged.judgement.verdict, uncertainty: judged.uncertainty, near: judged.near });
      }
    }
    return about;
  }

  /** A row judged by the sheet alone: counted, and reported where the sheet says so. */
  said(kind: FindingKind | undefined, subject: Subject, sentence: string): void {
    this.#checked++;
    if (kind) this.#take(findingOf(kind, subject, sentence));
    if (subject.verdict) this.judged?.({ ...subject, verdict: subject.verdict, uncertainty: 0, near: 0 });
  }

  /** Something found about a reading: once a cell or line for each kind. */
  find(kind: FindingKind, subject: Subject, sentence: string): void {
    if (this.#isKeeping) {
      const place = `${kind}|${subject.line ?? placeName(subject.cell)}`;
      if (this.#seen.has(place)) return;
      this.#seen.add(place);
    }
    this.#take(findingOf(kind, subject, sentence));
  }

  /** Worst first: by kind, then by how far outside, then in reading order of the sheets named. */
  result(sheets: readonly string[] = []): CheckResult {
    const order = new Map(sheets.map((sheet, i) => [sheet, i]));
    const at = (finding: Finding) => order.get(finding.cell.sheet) ?? 0;
    const findings = this.#findings.sort((a, b) => byWorst(a, b) || at(a) - at(b) || a.cell.row - b.cell.row || a.cell.column - b.cell.column);
    return { findings, rowsIn: this.#checked + this.#refused, checked: this.#checked, refused: this.#refused, inputs: this.inputs };
  }
}

/** How bad a finding is: the place of its kind, then how far outside. */
export const badness = (finding: Finding): { kind: number; severity: number } => ({ kind: FINDING_KINDS.indexOf(finding.kind), severity: severity(finding) });

export const byWorst = (a: Finding, b: Finding): number => FINDING_KINDS.indexOf(a.kind) - FINDING_KINDS.indexOf(b.kind) || severity(b) - severity(a);

/** Written out field by field, as are subjects: objects that are spread out take ten times the room, and there can be millions of them. */
export function findingOf(kind: FindingKind, { cell, label, line, value, lower, upper, margin, verdict }: Subject, sentence: string): Finding {
  return line === undefined
    ? { kind, cell, label, value, lower, upper, margin, verdict, sentence }
    : { kind, cell, label, line, value, lower, upper, margin, verdict, sentence };
}

function subjectOf(judged: Judged, { cell, label, line }: Place, raw: Finding["value"]): Subject {
  const limits = "limits" in judged ? judged.limits : {};
  const judgement = judged.as === "judged" ? judged.judgement : undefined;
  const value = "value" in judged ? judged.value : raw;
  const lower = limits.lower ?? null;
  const upper = limits.upper ?? null;
  const margin = judgement?.margin ?? null;
  const verdict = judgement?.verdict ?? null;
  return line === undefined ? { cell, label, value, lower, upper, margin, verdict } : { cell, label, line, value, lower, upper, margin, verdict };
}

const JUDGED_KINDS = new Set<FindingKind>(["outside limit", "not proven", "near limit"]);

/** How bad, in shares of the room between the limits, so that bores and pressures can stand in one list. */
function severity({ kind, margin, lower, upper }: Finding): number {
  if (!JUDGED_KINDS.has(kind) || margin === null) return 0;
  const room = lower !== null && upper !== null ? upper - lower : Math.abs(lower ?? upper ?? 0);
  return -margin / (room > 0 ? room : 1);
}
