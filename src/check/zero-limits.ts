import type { Verdict } from "../core/verdict.ts";
import type { SheetLabels } from "../layout/labels.ts";
import { fieldOf } from "../vocabulary/headings.ts";
import { isNeverNegative, knownCharacteristic } from "../vocabulary/subjects.ts";
import { type CellAddress, placeName } from "../workbook/address.ts";
import type { Candidate } from "./candidates.ts";
import { type FindingCollector, unjudged } from "./collect.ts";
import { type CellJudgement, judgeGiven, withoutZeroLimit } from "./judge.ts";

interface Contradicted {
  cell: CellAddress;
  value: number;
  says: Verdict;
  upper: number | null;
  readings: number;
}

/**
 * Lower limits of 0 on what cannot be below 0. They are left out of the judgement; where the sheet's
 * own verdict goes by one and says something else, that is told once for each limit.
 */
export class ZeroLimits {
  readonly #found = new Map<string, Contradicted>();

  constructor(
    readonly report: FindingCollector,
    readonly labels: SheetLabels,
  ) {}

  /** What becomes of a candidate. */
  judge(candidate: Candidate): CellJudgement {
    const said = judgeGiven(candidate.given);
    const judged = withoutZeroLimit(said);
    if (judged === said || !this.#isNeverNegative(candidate)) return said;
    if (candidate.hasVerdict) this.#compare(candidate, said, judged);
    return judged;
  }

  #compare({ cell, beside }: Candidate, said: CellJudgement, judged: CellJudgement): void {
    if (said.as !== "judged" || judged.as !== "judged" || said.judgement.verdict === judged.judgement.verdict) return;
    const at = beside.lower ?? cell;
    const known = this.#found.get(placeName(at));
    const { value, limits, judgement } = said;
    if (known) known.readings++;
    else this.#found.set(placeName(at), { cell: at, value, says: judgement.verdict, upper: limits.upper ?? null, readings: 1 });
  }

  finish(): void {
    for (const { cell, value, says, upper, readings } of this.#found.values())
      this.report.find("zero limit", unjudged({ cell, label: this.labels.of(cell) }, value, 0, upper), { says, readings });
  }

  /** By the name that a table gives, by what the sheet calls the reading, or where that tells nothing by what it calls the limit. */
  #isNeverNegative({ characteristic, cell, beside }: Candidate): boolean {
    if (characteristic !== undefined) return isNeverNegative(characteristic);
    for (const at of [cell, beside.lower]) {
      const name = at && this.#nameOf(at);
      if (name !== undefined) return isNeverNegative(name);
    }
    return false;
  }

  /** The words of the sheet for a cell that name a characteristic: those of its heading, or of its row under a heading such as `value` or `lower`. */
  #nameOf(cell: CellAddress): string | undefined {
    const { row, heading } = this.labels.partsOf(cell);
    const isPlain = heading === undefined || fieldOf(heading) !== undefined;
    const names = [this.labels.of(cell), ...(isPlain ? row.map(({ text }) => text) : [heading])];
    return names.find((name) => knownCharacteristic(name) !== undefined);
  }
}
