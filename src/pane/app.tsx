import type { ComponentType } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import type { SheetHost } from "../workbook/port.ts";
import { CheckView } from "./check/check-view.tsx";
import type { Loaders } from "./check/made-check.ts";
import { useCheck } from "./check/use-check.ts";
import { type LoadView, part, type ViewProps } from "./parts/loading.ts";
import { type StoredChoices, StoredChoicesContext } from "./parts/stored-choices.ts";
import { useKey } from "./parts/use-key.ts";
import { TaskLines, useTask } from "./parts/use-task.tsx";
import { LATER, TABS, type Tab, tabOf, VIEWS, type View } from "./views.ts";

/** For somebody who has just come: sheets of their own, or a sample to look round in. */
function FirstSheet({ host, onSetUp }: { host: SheetHost; onSetUp(): void }) {
  const work = useTask();
  const insert = () => work.act("Putting the sample in …", async () => (await part(import("./setup/insert.ts"))).insertSample(host));
  return (
    <div class="advice">
      <p>No build sheet yet? Set one up, or in an empty workbook look round in a sample first.</p>
      <div class="tools">
        <button type="button" onClick={onSetUp}>
          Set up a build sheet
        </button>
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

interface Choice {
  id: string;
  title: string;
  label?: string;
  /** What it shows. */
  shows: View;
}

/** Tab reaches the chosen one; the arrow keys, Home and End choose another. */
function Choices({
  of,
  name,
  chosen,
  choices,
  onChoice,
}: {
  of: string;
  name: string;
  chosen: string;
  choices: readonly Choice[];
  onChoice(id: string): void;
}) {
  const list = useRef<HTMLDivElement>(null);
  const onKeyDown = (event: KeyboardEvent) => {
    const here = choices.findIndex(({ id }) => id === chosen);
    const to = { ArrowRight: here + 1, ArrowLeft: here - 1, Home: 0, End: choices.length - 1 }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    const { id } = choices[(to + choices.length) % choices.length]!;
    onChoice(id);
    list.current?.querySelector<HTMLElement>(`#tab-${id}`)?.focus();
  };
  return (
    <div ref={list} class={of} role="tablist" aria-label={name} onKeyDown={onKeyDown}>
      {choices.map(({ id, title, label, shows }) => (
        <button
          key={id}
          id={`tab-${id}`}
          type="button"
          role="tab"
          title={label}
          aria-label={label}
          aria-selected={id === chosen}
          aria-controls={`view-${shows}`}
          tabIndex={id === chosen ? 0 : -1}
          onClick={() => onChoice(id)}
        >
          {title}
        </button>
      ))}
    </div>
  );
}

/** One row of tabs; below it, where a tab has several views, one of these. */
function Tabs({ view, onView }: { view: View; onView(view: View): void }) {
  const tab = tabOf(view);
  // Going back to a tab finds the view that was last there.
  const last = useRef(new Map<string, View>());
  last.current.set(tab.id, view);
  const shownBy = ({ id, views: [[first]] }: Tab): View => last.current.get(id) ?? first;
  return (
    <>
      <Choices
        of="tabs"
        name="Crosshatch"
        chosen={tab.id}
        choices={TABS.map((one) => ({ ...one, shows: shownBy(one) }))}
        onChoice={(id) => onView(shownBy(TABS.find((one) => one.id === id)!))}
      />
      {tab.views.length > 1 && (
        <Choices
          of="tabs within"
          name={"label" in tab ? tab.label : tab.title}
          chosen={view}
          choices={tab.views.map(([id, title]) => ({ id, title, shows: id }))}
          onChoice={(id) => onView(id as View)}
        />
      )}
    </>
  );
}

interface Props {
  host: SheetHost;
  kept: StoredChoices;
  load: Loaders;
}

const LAST_VIEW = "view";

const CELLS_ALONE: ReadonlySet<View> = new Set(["plan", "layout"]);

export function App({ host, kept, load }: Props) {
  const [view, setView] = useView(kept);
  // A view is made when first opened and kept, so that going back finds it as it was left.
  const opened = useRef(new Set<View>());
  opened.current.add(view);
  const [state, actions] = useCheck(host, load, view === "check");
  // A kept layout is a change to whoever reads by it, and none to those who read cells alone.
  const [layouts, setLayouts] = useState(0);
  const [proposals, setProposals] = useState(0);
  useNextFindingFromElsewhere(view === "check" ? undefined : () => setView("check"));
  const onLayout = () => {
    setLayouts(layouts + 1);
    actions.changed();
  };
  const shown = (id: View) =>
    id === "check" ? (
      <CheckView
        state={state}
        actions={actions}
        first={<FirstSheet host={host} onSetUp={() => setView("setup")} />}
        onPropose={() => {
          setProposals(proposals + 1);
          setView("layout");
        }}
      />
    ) : (
      <Later host={host} changes={state.changes - (CELLS_ALONE.has(id) ? layouts : 0)} onLayout={onLayout} proposals={proposals} load={LATER[id]} />
    );
  return (
    <StoredChoicesContext.Provider value={kept}>
      <header>
        <h1 class="heard-only">Crosshatch</h1>
        <Tabs view={view} onView={setView} />
      </header>
      <main>
        {VIEWS.map((id) => {
          const tab = tabOf(id);
          return (
            <div key={id} id={`view-${id}`} class="view" role="tabpanel" aria-labelledby={`tab-${tab.views.length > 1 ? id : tab.id}`} hidden={id !== view}>
              {opened.current.has(id) && shown(id)}
            </div>
          );
        })}
      </main>
    </StoredChoicesContext.Provider>
  );
}

/** F8 goes to the next finding from every view; those are shown by Check, which has the key while it is shown. */
function useNextFindingFromElsewhere(showCheck: (() => void) | undefined): void {
  const page = useRef<HTMLElement>(document.body);
  // After this press is over, or Check would hear it too.
  const go = (show: () => void) =>
    requestAnimationFrame(() => {
      show();
      requestAnimationFrame(() => document.dispatchEvent(new KeyboardEvent("keydown", { key: "F8" })));
    });
  useKey("F8", page, showCheck && (() => go(showCheck)));
}

/** The view that is shown: the one that was last in this workbook, unless somebody has chosen another by then. */
function useView(kept: StoredChoices): [view: View, choose: (view: View) => void] {
  const [view, setView] = useState<View>("check");
  const isChosen = useRef(false);
  useEffect(() => {
    kept.recalled.then(() => {
      const last = VIEWS.find((id) => id === kept.value(LAST_VIEW));
      if (last && !isChosen.current) setView(last);
    });
  }, [kept]);
  const choose = (chosen: View) => {
    isChosen.current = true;
    kept.put(LAST_VIEW, chosen, true);
    setView(chosen);
  };
  return [view, choose];
}
