import { useEffect, useRef, useState } from "preact/hooks";
import type { SheetHost } from "../workbook/port.ts";
import { CheckView } from "./check/check-view.tsx";
import type { Checker } from "./check/sliced-check.ts";
import { useCheck } from "./check/use-check.ts";
import { FirstSheet } from "./first-sheet.tsx";
import { Later } from "./later.tsx";
import { type Kept, KeptContext } from "./parts/stored-choices.ts";
import { TabList } from "./tab-list.tsx";
import { LATER, TABS, type Tab } from "./views.ts";

interface Props {
  host: SheetHost;
  kept: Kept;
  checker(): Promise<Checker>;
}

const LAST_VIEW = "view";
const CELLS_ALONE: ReadonlySet<Tab> = new Set(["plan", "layout"]);

export function App({ host, kept, checker }: Props) {
  const [tab, setTab] = useTab(kept);
  // A view is made when first opened and kept, so that going back finds it as it was left.
  const opened = useRef(new Set<Tab>());
  opened.current.add(tab);
  const [state, actions] = useCheck(host, checker, tab === "check");
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
    <KeptContext.Provider value={kept}>
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
    </KeptContext.Provider>
  );
}

/** The view that is shown: the one that was last in this workbook, unless somebody has chosen another by then. */
function useTab(kept: Kept): [tab: Tab, choose: (tab: Tab) => void] {
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
