import { useRef, useState } from "preact/hooks";
import type { SheetHost } from "../sheet/sheet-host.ts";
import { CheckView } from "./check-view.tsx";
import { FirstSheet } from "./first-sheet.tsx";
import { Later } from "./later.tsx";
import { TabList } from "./tab-list.tsx";
import { type Checker, useCheck } from "./use-check.ts";
import { LATER, TABS, type Tab } from "./views.ts";

interface Props {
  host: SheetHost;
  checker(): Promise<Checker>;
}

export function App({ host, checker }: Props) {
  const [tab, setTab] = useState<Tab>("check");
  // A view is made when first opened and kept, so that going back finds it as it was left.
  const opened = useRef(new Set<Tab>());
  opened.current.add(tab);
  const [state, actions] = useCheck(host, checker);
  const view = (id: Tab) =>
    id === "check" ? (
      <CheckView state={state} actions={actions} first={<FirstSheet host={host} />} />
    ) : (
      <Later host={host} changes={state.changes} load={LATER[id]} />
    );
  return (
    <>
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
    </>
  );
}
