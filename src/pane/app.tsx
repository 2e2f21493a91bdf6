import type { ComponentType } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import type { SheetHost } from "../workbook/port.ts";
import { CheckView } from "./check/check-view.tsx";
import { type Loaders, useCheck } from "./check/use-check.ts";
import { type LoadView, part, type ViewProps } from "./parts/loading.ts";
import { type StoredChoices, StoredChoicesContext } from "./parts/stored-choices.ts";
import { TaskLines, useTask } from "./parts/use-task.tsx";
import { LATER, TABS, type Tab } from "./views.ts";

/** For somebody who has just come: a sample to look round in. */
function FirstSheet({ host }: { host: SheetHost }) {
  const work = useTask();
  const insert = () => work.act("Putting the sample in …", async () => (await part(import("./setup/insert.ts"))).insertSample(host));
  return (
    <div class="advice">
      <p>No build sheet yet? In an empty workbook, look round in a sample first.</p>
      <div class="tools">
        <button type="button" aria-disabled={work.doing !== ""} onClick={insert}>
          Insert a sample build sheet
        </button>
      </div>
      <TaskLines {...work} />
    </div>
  );
}

/** A view that is loaded when it is first opened. */
function Later({ load, ...props }: ViewProps & { load: LoadView }) {
  const [view, setView] = useState<{ View: ComponentType<ViewProps> } | null>(null);
  const [trouble, setTrouble] = useState("");
  useEffect(() => {
    load().then(
      (View) => setView({ View }),
      (error: Error) => setTrouble(error.message),
    );
  }, [load]);
  if (view) return <view.View {...props} />;
  return (
    <>
      <p class="refusal" role="alert">
        {trouble}
      </p>
      {trouble ? (
        <button type="button" onClick={() => location.reload()}>
          Reload the pane
        </button>
      ) : (
        <p class="notice">Loading …</p>
      )}
    </>
  );
}

/** Tab reaches the chosen tab; the arrow keys, Home and End choose another. */
function TabList({ tab, onTab }: { tab: Tab; onTab(tab: Tab): void }) {
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

interface Props {
  host: SheetHost;
  kept: StoredChoices;
  load: Loaders;
}

const LAST_VIEW = "view";

const CELLS_ALONE: ReadonlySet<Tab> = new Set(["plan", "layout"]);

export function App({ host, kept, load }: Props) {
  const [tab, setTab] = useTab(kept);
  // A view is made when first opened and kept, so that going back finds it as it was left.
  const opened = useRef(new Set<Tab>());
  opened.current.add(tab);
  const [state, actions] = useCheck(host, load, tab === "check");
  // A kept layout is a change to whoever reads by it, and none to those who read cells alone.
  const [layouts, setLayouts] = useState(0);
  const onLayout = () => {
    setLayouts(layouts + 1);
    actions.changed();
  };
  const view = (id: Tab) =>
    id === "check" ? (
      <CheckView state={state} actions={actions} first={<FirstSheet host={host} />} />
    ) : (
      <Later host={host} changes={state.changes - (CELLS_ALONE.has(id) ? layouts : 0)} onLayout={onLayout} load={LATER[id]} />
    );
  return (
    <StoredChoicesContext.Provider value={kept}>
      <header>
        <h1 class="heard-only">Crosshatch</h1>
        <TabList tab={tab} onTab={setTab} />
      </header>
      <main>
        {TABS.map(({ id }) => (
          <div key={id} id={`view-${id}`} class="view" role="tabpanel" aria-labelledby={`tab-${id}`} hidden={id !== tab}>
            {opened.current.has(id) && view(id)}
          </div>
        ))}
      </main>
    </StoredChoicesContext.Provider>
  );
}

/** The view that is shown: the one that was last in this workbook, unless somebody has chosen another by then. */
function useTab(kept: StoredChoices): [tab: Tab, choose: (tab: Tab) => void] {
  const [tab, setTab] = useState<Tab>("check");
  const isChosen = useRef(false);
  useEffect(() => {
    kept.recalled.then(() => {
      const last = TABS.find(({ id }) => id === kept.value(LAST_VIEW));
      if (last && !isChosen.current) setTab(last.id);
    });
  }, [kept]);
  const choose = (chosen: Tab) => {
    isChosen.current = true;
    kept.put(LAST_VIEW, chosen, true);
    setTab(chosen);
  };
  return [tab, choose];
}
