import type { DecisionRule, Verdict } from "../core/verdict.ts";
import type { Details, Field, FindingSubject, KindSpec } from "./kinds/define-kind.ts";
import { kinds } from "./kinds/index.ts";

export type { Field, FindingSubject };

type Kinds = (typeof kinds)[number];

export type FindingKind = Kinds["name"];

/** The fields that a kind has beside the common ones. */
export type DetailsOf<K extends FindingKind> = Details<Extract<Kinds, { name: K }>["fields"]>;

/**
 * One thing that Check reports. A row whose reading or limit is still missing is checked: the finding
 * says what is missing; one that could not be judged at all is `refused`.
 */
export interface Finding extends FindingSubject {
  kind: FindingKind;
  /** What its kind has beside the common fields. */
  details: Details;
  /** One plain sentence with the numbers. */
  sentence: string;
}

const inOrder: readonly KindSpec[] = [...kinds].sort((a, b) => a.order - b.order);

/** What Check can report, worst first. */
export const FINDING_KINDS = inOrder.map(({ name }) => name) as readonly FindingKind[];

const specs: ReadonlyMap<string, KindSpec> = new Map(inOrder.map((spec) => [spec.name, spec]));

/** The declaration of a kind. */
export const specOf = (kind: FindingKind): KindSpec => specs.get(kind)!;

/** Written out field by field, as are subjects: objects that are spread out take ten times the room, and there can be millions of them. */
export function findingOf<K extends FindingKind>(kind: K, subject: FindingSubject, details: DetailsOf<K>): Finding {
  const { cell, label, line, value, lower, upper, margin, verdict } = subject;
  const sentence = specOf(kind).sentence(subject, details);
  return line === undefined
    ? { kind, cell, label, value, lower, upper, margin, verdict, details, sentence }
    : { kind, cell, label, line, value, lower, upper, margin, verdict, details, sentence };
}

/**
 * What a line of JSON holds of a finding behind file, kind and place. One object is spread and no more: V8
 * takes three times as long for a second, and leaves so much behind that memory grows with the findings.
 */
export const fieldsOf = ({ label, value, lower, upper, margin, verdict, details, sentence }: Finding): Record<string, unknown> => ({
  label,
  value,
  lower,
  upper,
  margin,
  verdict,
  ...details,
  sentence,
});

const places: ReadonlyMap<FindingKind, number> = new Map(FINDING_KINDS.map((kind, place) => [kind, place]));

/** How bad a finding is: the place of its kind, then how bad among its kind. What causes other findings stands before them all. */
export const severityOf = (finding: Finding): { kind: number; severity: number } => {
  const { isCause, severity } = specOf(finding.kind);
  const causes = isCause && (finding.details.causes as readonly string[]).length > 0;
  return { kind: causes ? -1 : places.get(finding.kind)!, severity: severity(finding) };
};

export const byWorst = (a: Finding, b: Finding): number => {
  const [one, other] = [severityOf(a), severityOf(b)];
  return one.kind - other.kind || other.severity - one.severity;
};

export interface CheckResult {
  /** Worst first; ties in reading order. */
  findings: Finding[];
  /** Judged rows found in the input. Always checked + refused. */
  rowsIn: number;
  checked: number;
  refused: number;
  /** Cells looked at as inputs of functions, judged or not; with no rows and no inputs there was nothing to check. */
  inputs: number;
}

/** One reading with the verdict on it, also where there is nothing to find about it. */
export interface JudgedRow extends Pick<Finding, "cell" | "label" | "line" | "value" | "lower" | "upper" | "margin"> {
  verdict: Verdict;
  /** Expanded uncertainty U, and the distance from a limit inside which a value is near it; 0 for none. */
  uncertainty: number;
  near: number;
  /** How the uncertainty was taken; null without one, or where the sheet alone judged. */
  rule: DecisionRule | null;
}

/** Verdicts as a report lists them: counted all, and kept up to so many, so that a long file cannot fill the memory. */
export class JudgedRows {
  readonly rows: JudgedRow[] = [];
  readonly counts: Record<Verdict, number> = { within: 0, "near limit": 0, "not proven": 0, over: 0, under: 0 };

  constructor(readonly most = 5000) {}

  readonly take = (row: JudgedRow): void => {
    this.counts[row.verdict]++;
    if (this.rows.length < this.most) this.rows.push(row);
  };
}
