import type { Model } from "@odoo/o-spreadsheet";
import type { Engine, Screen } from "./load-grid.ts";

/** The grid's screen over one model. */
export interface Grid {
  /** Puts what is being typed into its cell, as Enter does. */
  finishTyping(): void;
  /** Something is being typed that is in no cell yet. */
  readonly isTyping: boolean;
  setDark(dark: boolean): void;
  remove(): void;
}

export interface GridOptions {
  engine: Engine;
  screen: Screen;
  /** The templates of the grid. */
  templates: XMLDocument;
  dark: boolean;
  /** Sentences of the grid, for the page's own place for sentences. */
  tell(sentence: string): void;
}

interface Composer {
  editionMode: string;
  stopEdition(): void;
}

/** Shows a model in `place`. One model has one screen: for another model remove it and mount anew. */
export async function mountGrid(place: HTMLElement, model: Model, options: GridOptions): Promise<Grid> {
  const { engine, screen, templates, tell } = options;
  const { Component, useState, xml, App } = screen;
  const { useStoreProvider, CellComposerStore } = engine.stores;
  let composer = (): Composer | undefined => undefined;
  let look = { scheme: "" };

  class Root extends Component {
    static override template = xml`<Spreadsheet model="model" colorScheme="look.scheme" notifyUser="notify" raiseError="raise"/>`;
    static components = { Spreadsheet: engine.Spreadsheet };
    static override props = {};
    model = model;
    look = useState({ scheme: options.dark ? "dark" : "light" });
    notify = ({ text }: { text: string }) => tell(text);
    raise = (text: string, then?: () => void) => {
      tell((text.includes(RULE_BROKEN) && ownSentence(model)) || text);
      then?.();
    };

    override setup(): void {
      const stores = useStoreProvider();
      composer = () => stores.get(CellComposerStore as never) as Composer;
      look = this.look;
    }
  }

  const app = new App(Root as never, { templates });
  await app.mount(place);
  const isTyping = () => (composer()?.editionMode ?? "inactive") !== "inactive";
  // The place stays when another model is shown in it; this grid's ear for keys must not.
  const shown = new AbortController();
  place.addEventListener("beforeinput", (event) => startClean(event, isTyping()), { capture: true, signal: shown.signal });
  return {
    finishTyping() {
      if (isTyping()) composer()!.stopEdition();
    },
    get isTyping() {
      return isTyping();
    },
    setDark(dark) {
      look.scheme = dark ? "dark" : "light";
    },
    remove() {
      shown.abort();
      app.destroy();
    },
  };
}

/** In the grid's sentence when something is typed that may not be. */
const RULE_BROKEN = "violates the data validation rule";

/** What a sheet that was set up says itself where something may not be typed, of the cell in which it is being typed. */
function ownSentence({ getters }: Model): string | undefined {
  const cell = getters.getActivePosition();
  const { sentence } = (getters.getValidationRuleForCell(cell) ?? {}) as { sentence?: string };
  return sentence && `${getters.zoneToXC(cell.sheetId, { left: cell.col, right: cell.col, top: cell.row, bottom: cell.row })}: ${sentence}`;
}

/**
 * The field that takes the keys holds the cell's old content until the screen is drawn anew. A second
 * key within that time, as a gauge with a keyboard cable sends it, would land in the old content:
 * `73.0973.025`. So the old content goes before the first key is put in.
 */
function startClean(event: InputEvent, isTyping: boolean): void {
  if (isTyping || event.inputType !== "insertText" || !(event.target instanceof Element)) return;
  event.target.closest(".o-grid-composer .o-composer")?.replaceChildren();
}
