import type { ComponentType } from "preact";
import type { SheetHost } from "../workbook/port.ts";
import { part } from "./parts.ts";

/** What a view that is loaded on first use is given. */
export interface ViewProps {
  host: SheetHost;
  /** Changes of the sheet seen so far. */
  changes: number;
  /** To be called when another layout is kept in the workbook. */
  onLayout(): void;
}

export type LoadView = () => Promise<ComponentType<ViewProps>>;

/** In the order of the tabs: what the work on an engine takes up first. */
export const TABS = [
  { id: "check", title: "Check" },
  { id: "plan", title: "Plan" },
  { id: "compare", title: "Compare" },
  { id: "draw", title: "Draw" },
  { id: "report", title: "Report" },
  { id: "setup", title: "Set up" },
  { id: "layout", title: "Layout" },
  { id: "functions", title: "Functions" },
  { id: "about", title: "About" },
] as const;
export type Tab = (typeof TABS)[number]["id"];

/** Views that are no part of the first load. */
export const LATER = {
  plan: async () => (await part(import("./plan/plan-view.tsx"))).PlanView,
  compare: async () => (await part(import("./compare/compare-view.tsx"))).CompareView,
  draw: async () => (await part(import("./report/draw-view.tsx"))).DrawView,
  report: async () => (await part(import("./report/report-view.tsx"))).ReportView,
  functions: async () => (await part(import("./functions-view.tsx"))).FunctionsView,
  about: async () => (await part(import("./about-view.tsx"))).AboutView,
  layout: async () => {
    await part(import("./no-eval.ts"));
    return (await part(import("./layout/layout-view.tsx"))).LayoutView;
  },
  setup: async () => (await part(import("./setup/setup-view.tsx"))).SetupView,
} satisfies Record<Exclude<Tab, "check">, LoadView>;
