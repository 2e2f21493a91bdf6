import { placeName } from "../workbook/address.ts";
import { causesFirst, type Resting } from "./causes.ts";
import { byWorst, type CheckResult, type DetailsOf, type Finding, type FindingKind, type FindingSubject, findingOf, type JudgedRow } from "./finding.ts";
import { type CellJudgement, KIND_OF_VERDICT } from "./judge.ts";

/** What a reading is about before it has been judged. */
export type FindingPlace = Pick<FindingSubject, "cell" | "label" | "line">;

/** Gathers findings and counts rows, so that every row is either checked or refused whatever happens. */
export class FindingCollector {
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
  row(judged: CellJudgement, place: () => FindingPlace, raw: Finding["value"] = null): () => FindingSubject {
    const about = () => subjectOf(judged, place(), raw);
    if (judged.as === "nothing") return about;
    if (judged.as === "refused") this.#refused++;
    else this.#checked++;
    switch (judged.as) {
      case "refused":
        this.#take(findingOf("refused", about(), { why: judged.why }));
        break;
      case "missing reading":
        this.find("missing reading", about(), { blank: "one reading", range: null });
        break;
      case "missing limit":
        this.find("missing limit", about(), { readings: 1, characteristic: null, results: [] });
        break;
      case "judged": {
        const { judgement, uncertainty, near } = judged;
        const rule = uncertainty > 0 ? judged.rule : null;
        const kind = KIND_OF_VERDICT[judgement.verdict];
        if (kind) this.#take(findingOf(kind, about(), { uncertainty, near, rule, unseen: null }));
        this.judged?.({ ...about(), verdict: judgement.verdict, uncertainty, near, rule });
      }
    }
    return about;
  }

  /** A row judged by the sheet alone, because of `unseen`: counted, and reported where the sheet says so. */
  said(subject: FindingSubject, unseen: string): void {
    this.#checked++;
    const { verdict } = subject;
    if (verdict === null) return;
    const kind = KIND_OF_VERDICT[verdict];
    if (kind) this.#take(findingOf(kind, subject, { uncertainty: 0, near: 0, rule: null, unseen }));
    this.judged?.({ ...subject, verdict, uncertainty: 0, near: 0, rule: null });
  }

  /** Something found about a reading: once a cell or line for each kind. */
  find<K extends FindingKind>(kind: K, subject: FindingSubject, details: DetailsOf<K>): void {
    if (this.#isKeeping) {
      const place = `${kind}|${subject.line ?? placeName(subject.cell)}`;
      if (this.#seen.has(place)) return;
      this.#seen.add(place);
    }
    this.#take(findingOf(kind, subject, details));
  }

  /** Worst first: by kind, then by how far outside, then in reading order of the sheets named; behind a cause stands what rests on it. */
  result(sheets: readonly string[] = [], resting: Resting = () => () => new Set()): CheckResult {
    const order = new Map(sheets.map((sheet, i) => [sheet, i]));
    const at = (finding: Finding) => order.get(finding.cell.sheet) ?? 0;
    const worstFirst = this.#findings.sort((a, b) => byWorst(a, b) || at(a) - at(b) || a.cell.row - b.cell.row || a.cell.column - b.cell.column);
    const findings = causesFirst(worstFirst, resting);
    return { findings, rowsIn: this.#checked + this.#refused, checked: this.#checked, refused: this.#refused, inputs: this.inputs };
  }
}

/** What a judged thing is about. */
export function subjectOf(judged: CellJudgement, { cell, label, line }: FindingPlace, raw: Finding["value"] = null): FindingSubject {
  const limits = "limits" in judged ? judged.limits : {};
  const judgement = judged.as === "judged" ? judged.judgement : undefined;
  const value = "value" in judged ? judged.value : raw;
  const lower = limits.lower ?? null;
  const upper = limits.upper ?? null;
  const margin = judgement?.margin ?? null;
  const verdict = judgement?.verdict ?? null;
  return line === undefined ? { cell, label, value, lower, upper, margin, verdict } : { cell, label, line, value, lower, upper, margin, verdict };
}

/** What a finding is about that judges nothing. */
export const unjudged = (place: FindingPlace, value: FindingSubject["value"], lower: number | null = null, upper: number | null = null): FindingSubject => ({
  ...place,
  ...{ value, lower, upper, margin: null, verdict: null },
});
