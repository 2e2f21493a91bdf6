import { elements } from "./elements.ts";

/** The parts of the page between which F6 goes round, as they stand on it. */
const REGIONS = ["bar", "sheet", "pane"] as const;
type Region = (typeof REGIONS)[number];

const cellField = (): HTMLElement | null => elements.grid.querySelector<HTMLElement>(".o-grid-composer .o-composer");

/** Where one was in the pane; its page forgets that when the keys go elsewhere. */
let inPane: HTMLElement | undefined;

function rememberPane(): void {
  const { pane } = elements;
  if (document.activeElement === pane) inPane = (pane.contentDocument?.activeElement ?? undefined) as HTMLElement | undefined;
}

/** The next keys go to the cell that is selected. */
export function focusSheet(): void {
  rememberPane();
  window.focus();
  cellField()?.focus();
}

const openTab = (): HTMLElement | null | undefined => elements.pane.contentDocument?.querySelector<HTMLElement>('[role="tab"][aria-selected="true"]');

function focusPane(): void {
  const { contentWindow, contentDocument } = elements.pane;
  contentWindow?.focus();
  // Back to where one was in it, or to its open tab.
  if (inPane?.ownerDocument === contentDocument) inPane?.focus();
  if (contentDocument?.activeElement === contentDocument?.body) openTab()?.focus();
}

function here(): Region {
  const { activeElement } = document;
  if (activeElement === elements.pane) return "pane";
  return elements.grid.contains(activeElement) ? "sheet" : "bar";
}

/** A pane that is not there yet would hear no key, and keep whoever came into it. */
const hasPane = (): boolean => !elements.pane.hidden && Boolean(openTab());

/** Leads on to the next part of the page, or back to the one before; a pane that is hidden or not there yet is passed over. */
export function goOn(isBack = false): void {
  rememberPane();
  const there = REGIONS.filter((region) => region !== "pane" || hasPane());
  const next = there.at((there.indexOf(here()) + (isBack ? -1 : 1)) % there.length)!;
  if (next === "sheet") focusSheet();
  else if (next === "pane") focusPane();
  else elements.book.focus();
}

/** Of the grid, over the sheet: Escape closes them first. */
const OPEN = ".o-popover, .o-menu, .o-sidePanel";

/**
 * F6 leads round the parts of the page, Escape out of the sheet where there is nothing for it to end, F8 to the next
 * finding from wherever one is. In a grid every other key is for the cells.
 */
export function takeRegionKeys(isTyping: () => boolean): void {
  addEventListener(
    "keydown",
    (event) => {
      if (event.ctrlKey || event.altKey || event.metaKey || elements.question.open) return;
      const isIdle = here() === "sheet" && !isTyping() && document.querySelector(OPEN) === null;
      if (event.key === "F6") goOn(event.shiftKey);
      else if (event.key === "F8" && !event.shiftKey) elements.pane.contentDocument?.dispatchEvent(new KeyboardEvent("keydown", { key: "F8" }));
      else if (event.key === "Escape" && isIdle) goOn();
      else return;
      event.preventDefault();
      event.stopPropagation();
    },
    { capture: true },
  );
}
