import { useMemo, useState } from "preact/hooks";
import type { RangeNow } from "../../buildsheet/layout/overview.ts";
import { areaText } from "../../workbook/address.ts";
import type { SheetHost } from "../../workbook/port.ts";
import type { Entry } from "./entries.ts";
import { NOTHING_SAID, RangeForm, type Said, type Troubles } from "./range-form.tsx";

interface EntryRowProps {
  entry: Entry;
  now: RangeNow;
  host: SheetHost;
  onUse(isUsed: boolean): void;
  onSelect(): void;
  onChange(said: Said): Promise<Troubles>;
}

/** One range: whether it is used, where it is, what it holds, and what else may be said of it. */
export function EntryRow({ entry, now, host, onUse, onSelect, onChange }: EntryRowProps) {
  const place = areaText(now.area);
  const was = useMemo(() => ({ ...NOTHING_SAID, ...entry.range.fixed, place }), [entry, place]);
  const [said, setSaid] = useState(was);
  const [isOpen, setOpen] = useState(false);
  return (
    <li>
      <span class="finding-head">
        <label class="tick">
          <input type="checkbox" checked={entry.isUsed} aria-label={`Use ${place}`} onChange={(event) => onUse(event.currentTarget.checked)} />
          <span>Use</span>
        </label>
        <button type="button" class="place" onClick={onSelect}>
          {place}
        </button>
      </span>
      {now.what && <span>{now.what}</span>}
      {now.trouble && <span class="trouble">{now.trouble}</span>}
      {entry.doubts
        .filter((doubt) => doubt !== now.trouble)
        .map((doubt) => (
          <span key={doubt} class="hint">
            Look at this: {doubt}
          </span>
        ))}
      <details
        open={isOpen}
        onToggle={(event) => {
          setOpen(event.currentTarget.open);
          if (event.currentTarget.open !== isOpen) setSaid(was);
        }}
      >
        <summary aria-label={`Change ${place}`}>Change</summary>
        {isOpen && (
          <RangeForm
            id={`entry-${entry.id}`}
            said={said}
            submit="Change it"
            host={host}
            onSaid={setSaid}
            onSubmit={async () => {
              const troubles = await onChange(said);
              if (Object.keys(troubles).length === 0) setOpen(false);
              return troubles;
            }}
          />
        )}
      </details>
    </li>
  );
}
