import { type LoadView, part } from "./parts/loading.ts";

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
    await part(import("./parts/no-eval.ts"));
    return (await part(import("./layout/layout-view.tsx"))).LayoutView;
  },
  setup: async () => (await part(import("./setup/setup-view.tsx"))).SetupView,
} satisfies Record<Exclude<Tab, "check">, LoadView>;
