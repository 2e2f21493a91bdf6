import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import { Analysis } from "../../check/analysis.ts";
import { counted } from "../../core/number-text.ts";
import { asSentence } from "../../core/words.ts";
import { WorkbookCells } from "../../formula/workbook-cells.ts";
import { isUnread, loadMapping, NO_MAPPING, storeMapping } from "../../layout/mapping.ts";
import { type Proposal, proposeRange } from "../../layout/propose.ts";
import { rangeNow } from "../../layout/ranges.ts";
import { HostRefusal, type WorkbookSnapshot } from "../../workbook/port.ts";
import type { ViewProps } from "../parts/loading.ts";
import { readArea } from "../parts/range-text.ts";
import { fieldsLike, useStored } from "../parts/stored-choices.ts";
import { sentenceOf, TaskLines, useTask } from "../parts/use-task.tsx";
import { changed, type ListedRange, mappingOf, overviewText, storedRanges, used, withOwn, withProposals } from "./entries.ts";
import { fixedOf, ListedRangeRow, NO_ANSWERS, type RangeAnswers, RangeForm, type Troubles } from "./range-form.tsx";

/** What was read, and the changes of the sheet seen by then. */
interface Seen {
  snapshot: WorkbookSnapshot;
  changes: number;
}

/** A layout of the shop's own: which ranges hold readings and which limits, proposed from the headings or pointed at. */
export function LayoutView({ host, changes, onLayout, proposals }: ViewProps) {
  const [seen, setSeen] = useState<Seen | null>(null);
  const [entries, setEntries] = useState<readonly ListedRange[]>([]);
  const [kept, setKept] = useState(NO_MAPPING);
  // Also one that cannot be read can be taken off.
  const [isThere, setThere] = useState(false);
  const [said, setSaid] = useStored("layout", NO_ANSWERS, (given) => fieldsLike(NO_ANSWERS, given));
  const work = useTask();
  const keeping = useTask();
  // Whoever added a range goes on at the line that it has become, which may stand far above the form.
  const list = useRef<HTMLUListElement>(null);
  const [added, setAdded] = useState(0);
  useEffect(() => list.current?.querySelector("input")?.focus(), [added]);
  const isBusy = work.doing !== "" || keeping.doing !== "";
  const look = async () => {
    const snapshot = await host.read();
    setSeen({ snapshot, changes });
    return snapshot;
  };
  useEffect(
    () =>
      work.act("Looking for a layout …", async () => {
        const [mapping] = await Promise.all([loadMapping(host), look()]);
        setThere(mapping !== null);
        if (isUnread(mapping)) throw new HostRefusal(asSentence(mapping.unread));
        setKept(mapping ?? NO_MAPPING);
        setEntries((before) => [...(mapping ? storedRanges(mapping) : []), ...before]);
        return mapping ? `This workbook keeps a layout of ${counted(mapping.ranges.length, "range")}.` : "This workbook keeps no layout of its own yet.";
      }),
    [host],
  );
  const propose = () =>
    work.act("Reading the headings …", async () => {
      const listed = withProposals(entries, await look());
      setEntries(listed);
      const found = listed.length - entries.length;
      return found === 0 ? "No other range has headings that are known here." : `${counted(found, "range")} proposed: look them over, then keep what is right.`;
    });
  const isReady = seen !== null && work.doing === "";
  const proposed = useRef(0);
  useEffect(() => {
    if (!isReady || proposed.current === proposals) return;
    proposed.current = proposals;
    propose();
  }, [isReady, proposals]);
  const say = async (about: RangeAnswers, take: (proposal: Proposal) => void): Promise<Troubles> => {
    try {
      const read = proposalOf(await look(), about);
      if (!("range" in read)) return read;
      take(read);
      return {};
    } catch (error) {
      return { place: sentenceOf(error) };
    }
  };
  const add = () =>
    say(said, (proposal) => {
      setEntries((before) => withOwn(before, proposal));
      setSaid(NO_ANSWERS);
      setAdded((times) => times + 1);
    });
  const keep = () =>
    keeping.act("Keeping the layout …", async () => {
      const mapping = mappingOf(entries);
      if (mapping.ranges.length === 0) return "Nothing is kept: no range is ticked.";
      await storeMapping(host, mapping);
      setKept(mapping);
      setThere(true);
      onLayout();
      return `Kept in the workbook: ${counted(mapping.ranges.length, "range")}. Check, Compare, Report, Drawings and the command line read it from now on.`;
    });
  const takeOff = () =>
    keeping.act("Taking the layout off …", async () => {
      await storeMapping(host, NO_MAPPING);
      setKept(NO_MAPPING);
      setThere(false);
      onLayout();
      return "The layout is taken off. Its ranges are listed until the pane is closed: Keep puts it back.";
    });
  const now = useMemo(() => entries.map(({ range }) => rangeNow(seen?.snapshot ?? { sheets: [] }, range)), [seen, entries]);
  const isKept = useMemo(() => JSON.stringify(kept) === JSON.stringify(mappingOf(entries)), [kept, entries]);
  return (
    <>
      <h2>A layout of your own</h2>
      <p class="notice">For a workbook laid out in the shop's own way: say once which ranges hold readings and which limits. Cells are not touched.</p>
      <div class="tools">
        <button type="button" class={entries.length === 0 ? "primary" : undefined} aria-disabled={isBusy} onClick={propose}>
          Propose from the headings
        </button>
      </div>
      <TaskLines {...work} />
      {seen && entries.length > 0 && (
        <>
          {seen.changes !== changes && <p class="stale">The sheet changed since it was read.</p>}
          <ul ref={list} class="changes" aria-label="Ranges">
            {entries.map((entry, at) => (
              <ListedRangeRow
                key={entry.id}
                entry={entry}
                now={now[at]!}
                host={host}
                onUse={(isUsed) => setEntries((before) => used(before, entry.id, isUsed))}
                onSelect={() => work.act("", () => host.select(now[at]!.area).then(() => ""))}
                onChange={(about) => say(about, (proposal) => setEntries((before) => changed(before, entry.id, proposal)))}
              />
            ))}
          </ul>
          <Finds snapshot={seen.snapshot} entries={entries} />
          {!isKept && <p class="stale">What is ticked here is not kept yet.</p>}
        </>
      )}
      {(entries.length > 0 || isThere) && (
        <div class="tools">
          <button type="button" class="primary" aria-disabled={isBusy} onClick={keep}>
            Keep this layout
          </button>
          <button type="button" aria-disabled={isBusy || !isThere} onClick={() => isThere && takeOff()}>
            Take it off
          </button>
        </div>
      )}
      <TaskLines {...keeping} />
      <section class="write" aria-label="Add a range">
        <h3>Add a range</h3>
        <RangeForm id="add" said={said} submit="Add this range" host={host} onSaid={setSaid} onSubmit={add} />
      </section>
    </>
  );
}

/** So many places are listed. */
const MOST_UNPLACED = 40;

/** What the ticked ranges come to, before anything is kept. */
function Finds({ snapshot, entries }: { snapshot: WorkbookSnapshot; entries: readonly ListedRange[] }) {
  // Looked through once, and not with every tick.
  const analysis = useMemo(() => new Analysis(snapshot), [snapshot]);
  const { says, notes, unplaced } = useMemo(() => overviewText(analysis, entries), [analysis, entries]);
  return (
    <section aria-label="What the ticked ranges hold">
      <p class="counts">{says}</p>
      {notes.map((note) => (
        <p key={note} class="notice">
          Note: {note}.
        </p>
      ))}
      {unplaced.length > 0 && (
        <details>
          <summary>Not placed: {counted(unplaced.length, "group of numbers", "groups of numbers")}</summary>
          <p class="hint">In no ticked range, and read by no function. Where some are readings or limits, add them below.</p>
          <ul>
            {unplaced.slice(0, MOST_UNPLACED).map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
          {unplaced.length > MOST_UNPLACED && <p class="hint">and {unplaced.length - MOST_UNPLACED} more</p>}
        </details>
      )}
    </section>
  );
}

function proposalOf(snapshot: WorkbookSnapshot, about: RangeAnswers): Proposal | Troubles {
  if (about.place.trim() === "") return { place: "say which range: type it, or select it and take the selection" };
  const read = readArea(about.place, new WorkbookCells(snapshot));
  if ("sentence" in read) return { place: read.sentence };
  const proposal = proposeRange(snapshot, read.given, fixedOf(about));
  if (!proposal) return { place: `no number that could be a reading or a limit stands in ${about.place.trim()}` };
  return proposal.isComplete ? proposal : { characteristic: "nothing beside these numbers says what they are of: say it here" };
}
