import { useRef } from "preact/hooks";
import { TABS, type Tab } from "./views.ts";

/** Tab reaches the chosen tab; the arrow keys, Home and End choose another. */
export function TabList({ tab, onTab }: { tab: Tab; onTab(tab: Tab): void }) {
  const list = useRef<HTMLDivElement>(null);
  const onKeyDown = (event: KeyboardEvent) => {
    const here = TABS.findIndex(({ id }) => id === tab);
    const to = { ArrowRight: here + 1, ArrowLeft: here - 1, Home: 0, End: TABS.length - 1 }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    const { id } = TABS[(to + TABS.length) % TABS.length]!;
    onTab(id);
    list.current?.querySelector<HTMLElement>(`#tab-${id}`)?.focus();
  };
  return (
    <div ref={list} class="tabs" role="tablist" aria-label="Crosshatch" onKeyDown={onKeyDown}>
      {TABS.map(({ id, title }) => (
        <button
          key={id}
          id={`tab-${id}`}
          type="button"
          role="tab"
          aria-selected={id === tab}
          aria-controls={`view-${id}`}
          tabIndex={id === tab ? 0 : -1}
          onClick={() => onTab(id)}
        >
          {title}
        </button>
      ))}
    </div>
  );
}
