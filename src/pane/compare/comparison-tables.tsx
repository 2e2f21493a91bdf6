import { useMemo, useState } from "preact/hooks";
import { type Comparison, enOf, linesOf } from "../../compare/compare.ts";
import type { ComparisonVerdict } from "../../compare/judgement.ts";
import { changesText, sizesText, wearLines } from "../../compare/words.ts";
import { placesText, uncertaintyText } from "../../core/number-text.ts";
import { type CellAddress, placeName } from "../../workbook/address.ts";
import { type ComparedLine, LineBar, useReaches } from "./line-bars.tsx";

interface Props {
  comparison: Comparison;
  /** The side of each change that stands in the open workbook, where its cell can be gone to. */
  inBook: "before" | "after" | null;
  onSelect(cell: CellAddress): void;
}

/** So many are shown at a time; the clearest come first. */
const PAGE = 60;

const LISTS: readonly (readonly [verdict: ComparisonVerdict, title: string, tone: string])[] = [
  ["differs", "Differs", "tone-doubt"],
  ["cannot tell", "Cannot be told", "tone-near"],
  ["same within", "The same within what matters", "tone-near"],
];

const BARS =
  "A bar shows where the true change may lie: thick at 90 %, thin at 95 %. Shaded: too small to matter. Filled square: differs. Bars of one characteristic share their axis.";

export function ComparisonTables({ comparison, inBook, onSelect }: Props) {
  const { between, headline, verdicts, places, refused, notes, rows, wear } = comparison;
  const lines = useMemo(() => linesOf(comparison), [comparison]);
  const reaches = useReaches(comparison);
  const worn = useMemo(() => wearLines(comparison.wear), [comparison]);
  return (
    <>
      <div class="summary">
        <h2>{headline}</h2>
      </div>
      <p class="counts">{between}</p>
      <p class="counts">
        {placesText(rows, places.length)}; {verdicts}
      </p>
      {reaches.size > 0 && <p class="hint">{BARS}</p>}
      {LISTS.map(([verdict, title, tone]) => (
        <Lines
          key={verdict}
          title={title}
          tone={tone}
          lines={lines.filter((line) => line.verdict === verdict)}
          reaches={reaches}
          comparison={comparison}
          inBook={inBook}
          onSelect={onSelect}
        />
      ))}
      <Rows title="Wear" rows={wear.length > 0 ? worn : []} />
      <Rows title="Not compared" rows={refused.map(({ label, why }) => [label, why])} />
      {notes.map((note) => (
        <p key={note} class="notice">
          Note: {note}.
        </p>
      ))}
    </>
  );
}

interface LinesProps extends Props {
  title: string;
  tone: string;
  lines: readonly ComparedLine[];
  /** How far the axis of each characteristic goes. */
  reaches: ReadonlyMap<string, number>;
}

function Lines({ title, tone, lines, reaches, comparison, inBook, onSelect }: LinesProps) {
  const [shown, setShown] = useState(PAGE);
  if (lines.length === 0) return null;
  return (
    <>
      <h3 class="group">
        {title} ({lines.length})
      </h3>
      <ul class="changes">
        {lines.slice(0, shown).map((line) => (
          <li key={line}>
            <span class="finding-head">
              <span class={`word ${tone}`}>{line.verdict}</span>
              {inBook && "before" in line && <Place cell={line[inBook].readings[0]!.cell} onSelect={onSelect} />}
            </span>
            <span class="label">{line.label}</span>
            <span>{numbersText(line, comparison)}</span>
            <LineBar line={line} reaches={reaches} />
            <span class="sentence">{line.says}</span>
            <Details line={line} />
          </li>
        ))}
      </ul>
      {lines.length > shown && (
        <button type="button" onClick={() => setShown(shown + PAGE)}>
          Show {Math.min(PAGE, lines.length - shown)} more
        </button>
      )}
    </>
  );
}

const Place = ({ cell, onSelect }: { cell: CellAddress; onSelect(cell: CellAddress): void }) => (
  <button type="button" class="place" onClick={() => onSelect(cell)}>
    {placeName(cell)}
  </button>
);

const numbersText = (line: ComparedLine, comparison: Comparison): string =>
  "changes" in line ? changesText(line) : "places" in line ? "" : sizesText(line, comparison);

/** The statistics behind a line, for who asks. */
function Details({ line }: { line: ComparedLine }) {
  const { uncertainty, p, pAdjusted, by, degreesOfFreedom, toSee } = line;
  if (uncertainty === null) return null;
  const parts = [
    `U of the difference ${uncertaintyText(uncertainty)}`,
    `En ${enOf(line)!.toFixed(2)}`,
    `p ${chance(p!)}, adjusted ${chance(pAdjusted!)}`,
    degreesOfFreedom === null ? `by the ${by}` : `by the ${by}, ${degreesOfFreedom.toFixed(1)} degrees of freedom`,
    `seen nine times in ten from ${uncertaintyText(toSee!)} on`,
  ];
  return (
    <details class="rows">
      <summary>Details</summary>
      <p>{parts.join("; ")}</p>
    </details>
  );
}

const chance = (p: number): string => (p < 0.0001 ? "below 0.0001" : p.toFixed(4));

function Rows({ title, rows }: { title: string; rows: readonly (readonly string[])[] }) {
  const [shown, setShown] = useState(PAGE);
  if (rows.length === 0) return null;
  return (
    <details class="rows">
      <summary>
        {title} ({rows.length})
      </summary>
      <dl>
        {rows.slice(0, shown).map(([label, says], at) => (
          <div key={`${at} ${label}`}>
            <dt>{label}</dt>
            <dd>{says}</dd>
          </div>
        ))}
      </dl>
      {rows.length > shown && (
        <button type="button" onClick={() => setShown(shown + PAGE)}>
          Show {Math.min(PAGE, rows.length - shown)} more
        </button>
      )}
    </details>
  );
}
