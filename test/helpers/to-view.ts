import type { FrameLocator, Page } from "playwright-core";

/** Views that stand with others behind one tab, and by which names they are reached. */
const WITHIN: Readonly<Record<string, readonly [tab: string, view: string]>> = {
  "Set up": ["Set up", "New sheets"],
  Layout: ["Set up", "Layout"],
  Report: ["Report", "Page"],
  Draw: ["Report", "Drawings"],
  Functions: ["Help", "Functions"],
  About: ["Help", "Cautions and about"],
};

/** Opens a view of the pane by its tab. */
export async function toView(pane: Page | FrameLocator, name: string): Promise<void> {
  for (const step of WITHIN[name] ?? [name]) await pane.getByRole("tab", { name: step, exact: true }).click();
}
