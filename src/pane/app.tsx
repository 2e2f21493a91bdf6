import type { ComponentChildren } from "preact";
import { useRef, useState } from "preact/hooks";
import type { Spec } from "../core/define.ts";
import type { SheetHost } from "../sheet/sheet-host.ts";
import { AboutView } from "./about-view.tsx";
import { CheckView } from "./check-view.tsx";
import { FirstSheet } from "./first-sheet.tsx";
import { FunctionsView } from "./functions-view.tsx";
import { Later } from "./later.tsx";
import { TabList } from "./tab-list.tsx";
import { type Checker, useCheck } from "./use-check.ts";
import { LATER, TABS, type Tab } from "./views.ts";

interface Props {
  host: SheetHost;
  checker(): Promise<Checker>;
  functions(): Promise<readonly Spec[]>;
}

export function App({ host, checker, functions }: Props) {
  const [tab, setTab] = useState<Tab>("check");
  // A view is made when first opened and kept, so that going back finds it as it was left.
  const opened = useRef(new Set<Tab>());
  opened.current.add(tab);
  const [state, actions] = useCheck(host, checker);
  const later = (id: keyof typeof LATER) => <Later host={host} changes={state.changes} load={LATER[id]} />;
  const views: Record<Tab, () => ComponentChildren> = {
    check: () => <CheckView state={state} actions={actions} first={<FirstSheet host={host} />} />,
    plan: () => later("plan"),
    compare: () => later("compare"),
    setup: () => later("setup"),
    functions: () => <FunctionsView load={functions} />,
    about: () => <AboutView />,
  };
  return (
    <>
      <header>
        <h1 class="heard-only">Crosshatch</h1>
        <TabList tab={tab} onTab={setTab} />
      </header>
      <main>
        {TABS.map(({ id }) => (
          <div key={id} id={`view-${id}`} class="view" role="tabpanel" aria-labelledby={`tab-${id}`} hidden={id !== tab}>
            {opened.current.has(id) && views[id]()}
          </div>
        ))}
      </main>
    </>
  );
}
