import { useCallback, useMemo, useState } from "preact/hooks";
import { type CharacteristicChange, type Comparison, isReal } from "../../compare/compare.ts";
import { counted, rowsText } from "../../core/number-text.ts";
import { drawChangePlot } from "../../drawings/change-plot.ts";
import { type CellAddress, placeName } from "../../workbook/address.ts";
import { Picture } from "../parts/picture.tsx";
import { numberText } from "../parts/text.ts";

interface Props {
  comparison: Comparison;
  /** The side of each change that stands in the open workbook, where its cell can be gone to. */
  inBook: "before" | "after" | null;
  onSelect(cell: CellAddress): void;
}

/** So many are shown at a time; the clearest come first. */
const PAGE = 60;
/** More than these are no longer told apart at a glance. */
const DRAWN = 12;

export function ComparisonTables({ comparison, inBook, onSelect }: Props) {
  const { between, changes, real, refused, groups, notes, rowsIn, rowsCompared } = comparison;
  const plot = useCallback((width: number) => drawChangePlot({ name: between, changes: changes.slice(0, DRAWN).map(drawnChange) }, { width }), [comparison]);
  const worn = useMemo(() => wearRows(changes), [changes]);
  return (
    <section aria-label="Result of the comparison">
      <div class="summary">
        <h2>{real === 0 ? "No real change" : counted(real, "real change")}</h2>
      </div>
      <p class="counts">{between}</p>
      <p class="counts">
        {rowsText(rowsIn, rowsCompared, "compared")}; {counted(changes.length, "characteristic")}
      </p>
      {changes.length > 0 && (
        <details class="rows">
          <summary>Drawing of the clearest changes</summary>
          <Picture draw={plot} />
        </details>
      )}
      <Changes title="Really changed" changes={changes.filter(isReal)} inBook={inBook} onSelect={onSelect} />
      <Changes title="What the gauge may explain" changes={changes.filter((change) => !isReal(change))} inBook={inBook} onSelect={onSelect} />
      <Rows title="Wear" rows={worn} />
      <Rows
        title="Cylinders taken together"
        rows={groups.map(({ engine, characteristic, says }) => [[engine, characteristic].filter(Boolean).join(", "), says])}
      />
      <Rows title="Not compared" rows={refused.map(({ label, why }) => [label, why])} />
      {notes.map((note) => (
        <p key={note} class="notice">
          Note: {note}.
        </p>
      ))}
    </section>
  );
}

const drawnChange = ({ label, unit, before, after, uncertainty }: CharacteristicChange) => ({
  name: label,
  unit,
  before: before.value,
  after: after.value,
  uncertainty,
});

/** What comes to its limit soonest goes first. */
const wearRows = (changes: readonly CharacteristicChange[]): [string, string][] =>
  changes
    .flatMap(({ label, wear }) => (wear?.isReal ? [{ label, says: wear.says, soonest: wear.life?.earliest ?? Number.MAX_VALUE }] : []))
    .sort((a, b) => a.soonest - b.soonest)
    .map(({ label, says }) => [label, says]);

interface ChangesProps extends Pick<Props, "inBook" | "onSelect"> {
  title: string;
  changes: readonly CharacteristicChange[];
}

function Changes({ title, changes, inBook, onSelect }: ChangesProps) {
  const [shown, setShown] = useState(PAGE);
  if (changes.length === 0) return null;
  return (
    <>
      <h3 class="group">
        {title} ({changes.length})
      </h3>
      <ul class="changes">
        {changes.slice(0, shown).map((change) => (
          <li key={change}>
            <span class="finding-head">
              <span class={`word ${isReal(change) ? "tone-doubt" : "tone-near"}`}>{change.verdict}</span>
              {inBook && (
                <button type="button" class="place" onClick={() => onSelect(change[inBook].cell)}>
                  {placeName(change[inBook].cell)}
                </button>
              )}
            </span>
            <span class="label">{change.label}</span>
            <span>
              {numberText(change.before.value!)} → {numberText(change.after.value!)} {change.unit}
            </span>
            <span class="sentence">{change.says}</span>
          </li>
        ))}
      </ul>
      {changes.length > shown && (
        <button type="button" onClick={() => setShown(shown + PAGE)}>
          Show {Math.min(PAGE, changes.length - shown)} more
        </button>
      )}
    </>
  );
}

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
