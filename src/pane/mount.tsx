import { render } from "preact";
import type { SheetHost } from "../workbook/port.ts";
import { App } from "./app.tsx";
import { StoredChoices } from "./parts/stored-choices.ts";
import "./pane.css";
import type { Loaders } from "./check/made-check.ts";
import type { Checker } from "./check/sliced-check.ts";
import { part } from "./parts/loading.ts";

/** The themes that an Office host can ask for; without one the pane follows the system's light or dark. */
export const THEMES = ["white", "colorful", "dark-gray", "black"] as const;

export type Theme = (typeof THEMES)[number];

/** Themes are blocks of `style/colours.css`; which one holds is an attribute of the page. */
function wearTheme(page: HTMLElement, theme: Theme | undefined): void {
  if (theme) page.dataset.theme = theme;
  else delete page.dataset.theme;
}

export interface PaneOptions {
  /** The host's theme; without one the pane follows the system's light or dark. */
  theme?: Theme | undefined;
  /** Checks in place of the built-in check, for a host that has its own place for long work. */
  checker?: Checker;
}

export interface Pane {
  setTheme(theme: Theme | undefined): void;
  unmount(): void;
}

/** Loaded on first use, so that the pane itself is there at once. */
const LOAD: Loaders = {
  checker: async () => (await part(import("./check/sliced-check.ts"))).checkInSlices,
  findings: () => part(import("./check/findings.ts")),
};

/** Shows the pane in `root`, over whatever workbook `host` stands for. */
export function mountPane(root: HTMLElement, host: SheetHost, options: PaneOptions = {}): Pane {
  const page = root.ownerDocument.documentElement;
  const { checker } = options;
  const kept = new StoredChoices(host);
  const write = () => kept.write();
  // The last moment before a pane may go without another word.
  root.ownerDocument.addEventListener("visibilitychange", write);
  wearTheme(page, options.theme);
  render(<App host={host} kept={kept} load={checker ? { ...LOAD, checker: async () => checker } : LOAD} />, root);
  return {
    setTheme: (theme) => wearTheme(page, theme),
    unmount: () => {
      root.ownerDocument.removeEventListener("visibilitychange", write);
      write();
      render(null, root);
    },
  };
}
