import type { Verdict } from "../core/verdict.ts";
import type { Finding } from "./finding.ts";

/** One reading with the verdict on it, also where there is nothing to find about it. */
export interface JudgedRow extends Pick<Finding, "cell" | "label" | "line" | "value" | "lower" | "upper" | "margin"> {
  verdict: Verdict;
  /** Expanded uncertainty U, and the distance from a limit inside which a value is near it; 0 for none. */
  uncertainty: number;
  near: number;
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
