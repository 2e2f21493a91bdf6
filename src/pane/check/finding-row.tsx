import type { Finding } from "../../buildsheet/finding.ts";
import { TONES, wordOf } from "../../buildsheet/marks.ts";
import { placeName } from "../../workbook/address.ts";
import { numbersOf } from "../parts/finding-words.ts";
import { ToneShape } from "./icons.tsx";

interface Props {
  finding: Finding;
  index: number;
  count: number;
  /** The one row that the Tab key reaches; arrow keys go on from there. */
  isReached: boolean;
  isChosen: boolean;
}

/** One finding, a button as a whole: the verdict's word, the cell, what is judged, the numbers, one sentence. */
export function FindingRow({ finding, index, count, isReached, isChosen }: Props) {
  const word = wordOf(finding);
  const tone = TONES[finding.kind];
  return (
    <li class="finding" aria-posinset={index + 1} aria-setsize={count}>
      <button type="button" data-index={index} tabIndex={isReached ? 0 : -1} aria-current={isChosen ? "true" : undefined}>
        <span class="finding-head">
          <span class={`word tone-${tone}`}>
            <ToneShape shape={word === "under" ? "under" : tone} />
            {word}
          </span>
          <span class="place">{placeName(finding.cell)}</span>
        </span>
        {finding.label && <span class="label">{finding.label}</span>}
        <span class="numbers">
          {numbersOf(finding).map(([name, text]) => (
            <Figure key={name} name={name} text={text} />
          ))}
        </span>
        <span class="sentence">{finding.sentence}</span>
      </button>
    </li>
  );
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
