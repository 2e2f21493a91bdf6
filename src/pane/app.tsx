import type { ComponentChildren } from "preact";
import { useRef, useState } from "preact/hooks";
import type { Spec } from "../core/define.ts";
import type { SheetHost } from "../sheet/sheet-host.ts";
import { AboutView } from "./about-view.tsx";
import { CheckView } from "./check-view.tsx";
import { FunctionsView } from "./functions-view.tsx";
import { type Checker, useCheck } from "./use-check.ts";

const TABS = [
  { id: "check", title: "Check" },
  { id: "functions", title: "Functions" },
  { id: "about", title: "About" },
] as const;
type Tab = (typeof TABS)[number]["id"];

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
  const views: Record<Tab, () => ComponentChildren> = {
    check: () => <CheckView state={state} actions={actions} />,
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
