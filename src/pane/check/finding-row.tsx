import { type Finding, specOf } from "../../check/finding.ts";
import { commonLabel, type FindingGroup } from "../../check/finding-groups.ts";
import { tally, tallyText, wordOf } from "../../check/finding-words.ts";
import { counted } from "../../core/number-text.ts";
import { capitalised } from "../../core/words.ts";
import { placeName } from "../../workbook/address.ts";
import type { MarkTone } from "../../workbook/port.ts";
import { numbersOf } from "./finding-numbers.ts";

/** A shape for each tone, so that findings differ without colour; over and under point their way. */
const SHAPES: Readonly<Record<MarkTone | "under", string>> = {
  outside: "M6 1.5 11 10.5H1Z",
  under: "M6 10.5 1 1.5H11Z",
  doubt: "M6 1 11 6 6 11 1 6ZM6 3.1 3.1 6 6 8.9Z",
  near: "M6 1a5 5 0 1 1 0 10A5 5 0 0 1 6 1Zm0 2a3 3 0 1 0 0 6 3 3 0 0 0 0-6Z",
  fault: "M1.5 1.5h9v9h-9ZM3.5 5v2h5V5Z",
};

function ToneShape({ shape }: { shape: keyof typeof SHAPES }) {
  return (
    <svg class="shape" viewBox="0 0 12 12" aria-hidden="true">
      <path fill-rule="evenodd" d={SHAPES[shape]} />
    </svg>
  );
}

/** What a row of the list shows: a finding, or a line that stands for several and opens. */
export interface ListRow {
  /** The worst of those that a line stands for. */
  finding: Finding;
  line?: FindingGroup & { isOpen: boolean };
  /** Below the line that stands for it. */
  isWithin?: boolean;
}

interface Props {
  row: ListRow;
  index: number;
  count: number;
  /** The one row that the Tab key reaches; arrow keys go on from there. */
  isReached: boolean;
  isChosen: boolean;
}

/** One finding, a button as a whole: the verdict's word, the cell, what is judged, the numbers, one sentence. */
export function FindingRow({ row: { finding, line, isWithin }, index, count, isReached, isChosen }: Props) {
  const word = wordOf(finding);
  const tone = specOf(finding.kind).mark;
  const cause = line?.cause ?? null;
  const label = line && cause !== null ? commonLabel(line.findings.map((one) => one.label)) : finding.label;
  return (
    <li class={isWithin ? "finding within" : "finding"} aria-posinset={index + 1} aria-setsize={count}>
      <button type="button" data-index={index} tabIndex={isReached ? 0 : -1} aria-current={isChosen ? "true" : undefined} aria-expanded={line?.isOpen}>
        <span class="finding-head">
          <span class={`word tone-${tone}`}>
            <ToneShape shape={word === "under" ? "under" : tone} />
            {line && cause !== null ? tallyText(tally(line.findings)) : word}
          </span>
          <span class="place">
            {placeName(finding.cell)}
            {cause !== null && " …"}
          </span>
        </span>
        {label && <span class="label">{label}</span>}
        {cause === null && (
          <span class="numbers">
            {numbersOf(finding).map(([name, text]) => (
              <Figure key={name} name={name} text={text} />
            ))}
          </span>
        )}
        <span class="sentence">{cause === null ? finding.sentence : capitalised(cause)}</span>
        {line && (
          <span class="opens">
            <span aria-hidden="true">{line.isOpen ? "▾ " : "▸ "}</span>
            {opensText(line)}
          </span>
        )}
      </button>
    </li>
  );
}

/** What opening a line shows, or what closing it hides; that it opens is heard of the button itself. */
function opensText({ findings, cause, isOpen }: FindingGroup & { isOpen: boolean }): string {
  const what = cause === null ? counted(findings.length - 1, "finding that it causes", "findings that it causes") : `all ${findings.length}`;
  return `${isOpen ? "Hide" : "Show"} ${what}`;
}

/** The spaces are for screen readers, which read a button as one run of text. */
function Figure({ name, text }: { name: string; text: string }) {
  return (
    <span class="number">
      <span class="name">{name} </span>
      <span class="figure">{text} </span>
    </span>
  );
}
