import { type LoadView, part } from "./parts/loading.ts";

interface TabOf {
  id: string;
  title: string;
  /** What is heard instead of a title that is a sign. */
  label?: string;
  /** Its views, by what each is called where there are several. */
  views: readonly (readonly [id: string, title: string])[];
}

/** In the order of the work on an engine; help stands last. */
export const TABS = [
  {
    id: "set-up",
    title: "Set up",
    views: [
      ["setup", "New sheets"],
      ["layout", "Layout"],
    ],
  },
  { id: "measuring", title: "Measure", views: [["measure", ""]] },
  { id: "checking", title: "Check", views: [["check", ""]] },
  { id: "planning", title: "Plan", views: [["plan", ""]] },
  { id: "comparing", title: "Compare", views: [["compare", ""]] },
  {
    id: "reporting",
    title: "Report",
    views: [
      ["report", "Page"],
      ["draw", "Drawings"],
    ],
  },
  {
    id: "help",
    title: "?",
    label: "Help",
    views: [
      ["functions", "Functions"],
      ["about", "Cautions and about"],
    ],
  },
] as const satisfies readonly TabOf[];

export type Tab = (typeof TABS)[number];
export type View = Tab["views"][number][0];

export const VIEWS: readonly View[] = TABS.flatMap(({ views }) => views.map(([id]) => id));

export const tabOf = (view: View): Tab => TABS.find(({ views }) => views.some(([id]) => id === view))!;

/** Views that are no part of the first load. */
export const LATER = {
  measure: async () => (await part(import("./measure/measure-view.tsx"))).MeasureView,
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
} satisfies Record<Exclude<View, "check">, LoadView>;
