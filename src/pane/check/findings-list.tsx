import { Component } from "preact";
import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import { FindingRow, type ListRow } from "./finding-row.tsx";

/**
 * Rows are made so many at a time, when they are scrolled near or walked to; until then a gap of
 * about their height stands for them, so that a list of ten thousand is there at once.
 */
const CHUNK = 60;

const ROW_HEIGHT_REM = 6.5;

interface ListProps {
  rows: readonly ListRow[];
  /** In words. */
  order: string;
  /** The row that was gone to last, and which it is among these now; -1 for none. */
  wanted: ListRow | null;
  chosen: number;
  onChoose(index: number): void;
}

/** Findings in their order. Tab reaches the list once, arrow keys walk through it, Enter or a click selects the cell. */
export function FindingsList({ rows, order, wanted, chosen, onChoose }: ListProps) {
  const [made, setMade] = useState<ReadonlySet<number>>(new Set([0]));
  const [wasReached, setReached] = useState(0);
  // A list that was made again may be shorter.
  const reached = Math.min(wasReached, rows.length - 1);
  const list = useRef<HTMLUListElement>(null);
  const hasWalked = useRef(false);
  const make = (chunks: readonly number[]) => setMade((before) => (chunks.every((chunk) => before.has(chunk)) ? before : new Set([...before, ...chunks])));

  useLayoutEffect(() => {
    if (hasWalked.current) list.current?.querySelector<HTMLElement>(`button[data-index="${reached}"]`)?.focus();
    hasWalked.current = false;
  }, [reached]);
  useEffect(() => nearing(list.current!, make), [made, rows.length]);
  useShown(list, wanted, chosen, (index) => {
    make([Math.floor(index / CHUNK)]);
    setReached(index);
  });

  const onKeyDown = (event: KeyboardEvent) => {
    const to = KEYS[event.key]?.(reached, rows.length);
    if (to === undefined || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    const target = Math.max(0, Math.min(rows.length - 1, to));
    hasWalked.current = true;
    make([Math.floor(target / CHUNK)]);
    setReached(target);
  };
  const onClick = (event: MouseEvent) => {
    const index = numberAt(event.target, "index");
    const chunk = numberAt(event.target, "chunk");
    if (chunk !== undefined) make([chunk]);
    if (index === undefined) return;
    // Not every browser gives a clicked button the focus.
    setReached(index);
    onChoose(index);
  };
  // A row can be reached by pointer and by a screen reader too; arrow keys go on from there.
  const onFocusIn = (event: FocusEvent) => {
    const index = numberAt(event.target, "index");
    if (index !== undefined) setReached(index);
  };
  const chunks = Array.from({ length: Math.ceil(rows.length / CHUNK) }, (_, chunk) => {
    const inside = (index: number) => (Math.floor(index / CHUNK) === chunk ? index : -1);
    return <Chunk key={chunk} rows={rows} chunk={chunk} isMade={made.has(chunk)} reached={inside(reached)} chosen={inside(chosen)} />;
  });
  return (
    <>
      <ul
        ref={list}
        class="findings"
        aria-label={`Findings, ${order}`}
        aria-describedby="walking"
        onKeyDown={onKeyDown}
        onFocusIn={onFocusIn}
        onClick={onClick}
      >
        {chunks}
      </ul>
      <p id="walking" class="heard-only">
        Arrow keys go from line to line. Enter selects the cell in the sheet, and opens or closes a line that stands for several findings. F8 goes to the next
        line and selects its cell.
      </p>
    </>
  );
}

/** Brings a finding into view when it becomes the chosen one; a list that is only made again stays where it is. */
function useShown(list: { readonly current: HTMLElement | null }, wanted: ListRow | null, index: number, reach: (index: number) => void): void {
  const shown = useRef(wanted);
  useLayoutEffect(() => {
    if (wanted === shown.current || index < 0) return;
    const row = list.current!.querySelector(`button[data-index="${index}"]`);
    reach(index);
    // Not made yet: it is looked for again once it is.
    if (!row) return;
    shown.current = wanted;
    row.scrollIntoView({ block: "nearest" });
  });
}

const PAGE = 8;

const KEYS: Readonly<Record<string, (index: number, count: number) => number>> = {
  ArrowDown: (index) => index + 1,
  ArrowUp: (index) => index - 1,
  PageDown: (index) => index + PAGE,
  PageUp: (index) => index - PAGE,
  Home: () => 0,
  End: (_, count) => count - 1,
};

function numberAt(target: EventTarget | null, name: "index" | "chunk"): number | undefined {
  const number = (target as Element | null)?.closest<HTMLElement>(`[data-${name}]`)?.dataset[name];
  return number === undefined ? undefined : Number(number);
}

/** Says which gaps have been scrolled near. */
function nearing(list: HTMLElement, make: (chunks: number[]) => void): () => void {
  const observer = new IntersectionObserver(
    (entries) => {
      const near = entries.filter((entry) => entry.isIntersecting).map((entry) => numberAt(entry.target, "chunk")!);
      if (near.length > 0) make(near);
    },
    { rootMargin: "1000px" },
  );
  for (const gap of list.querySelectorAll("[data-chunk]")) observer.observe(gap);
  return () => observer.disconnect();
}

interface ChunkProps {
  rows: readonly ListRow[];
  chunk: number;
  isMade: boolean;
  reached: number;
  chosen: number;
}

/** Made again only when something in it changed, so that walking through a long list touches one chunk. */
class Chunk extends Component<ChunkProps> {
  override shouldComponentUpdate(next: ChunkProps) {
    const { rows, isMade, reached, chosen } = this.props;
    return next.rows !== rows || next.isMade !== isMade || next.reached !== reached || next.chosen !== chosen;
  }

  override render({ rows, chunk, isMade, reached, chosen }: ChunkProps) {
    const start = chunk * CHUNK;
    const own = rows.slice(start, start + CHUNK);
    if (!isMade) return <Gap chunk={chunk} start={start} rows={own.length} />;
    return own.map((row, offset) => {
      const index = start + offset;
      return <FindingRow key={index} row={row} index={index} count={rows.length} isReached={index === reached} isChosen={index === chosen} />;
    });
  }
}

/** The button is for readers who do not scroll; Tab passes it by, as it does all rows but one. */
function Gap({ chunk, start, rows }: { chunk: number; start: number; rows: number }) {
  return (
    <li class="gap" data-chunk={chunk} style={{ height: `${rows * ROW_HEIGHT_REM}rem` }}>
      <button type="button" tabIndex={-1}>
        Show findings {start + 1} to {start + rows}
      </button>
    </li>
  );
}
