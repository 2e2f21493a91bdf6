/** A folder of `src`. */
export interface Folder {
  /** What it holds, for the contributors' page. */
  holds: string;
  /** The folders that its files may import, types included. */
  imports: readonly string[];
}

/**
 * Every folder of `src` with what it may import, the lowest first; one below a listed folder belongs to it unless it is listed itself.
 * A folder that is not listed may import nothing. The picture and the table of the contributors' page are made from this.
 */
export const FOLDERS: Readonly<Record<string, Folder>> = {
  math: { holds: "algorithms several functions share", imports: [] },
  core: { holds: "declaring functions, broadcasting, faults and their sentences, decimals, verdicts", imports: ["math"] },
  workbook: { holds: "the port to a workbook and its model: addresses, rectangles, snapshots, styles", imports: ["core"] },
  functions: { holds: "one declared worksheet function a file", imports: ["math", "core"] },
  vocabulary: { holds: "the headings, characteristics, units, gauges and identity fields that are known", imports: ["core"] },
  formula: { holds: "parsing and evaluating formulas, own calls, precedents, spill sources", imports: ["core", "workbook", "functions"] },
  xlsx: { holds: "reading, writing and patching .xlsx", imports: ["core", "workbook"] },
  ods: { holds: "reading and writing .ods", imports: ["core", "workbook", "xlsx"] },
  drawings: { holds: "measurements to SVG", imports: ["math", "core", "functions"] },
  setup: { holds: "a new build sheet from choices", imports: ["core", "workbook", "functions", "vocabulary"] },
  "calc/grid": { holds: "the spreadsheet engine and what it needs", imports: ["core"] },
  calc: { holds: "calculating a file without a host", imports: ["core", "workbook", "functions", "formula", "xlsx", "calc/grid"] },
  layout: { holds: "how a shop's own sheet is read", imports: ["math", "core", "workbook", "functions", "vocabulary", "formula"] },
  plan: { holds: "finish bores, rings, pistons and shims from readings", imports: ["core", "workbook", "functions", "formula"] },
  "hosts/excel": { holds: "the port over Office.js", imports: ["core", "workbook"] },
  "hosts/bench": { holds: "the port over the bench's grid", imports: ["core", "workbook", "calc/grid"] },
  hosts: { holds: "the port over a file and over memory", imports: ["core", "workbook", "xlsx", "ods", "calc"] },
  "check/kinds": { holds: "the kinds of findings, declared", imports: ["core", "workbook"] },
  check: {
    holds: "the run over a workbook: verdicts, findings, outliers",
    imports: ["core", "workbook", "functions", "vocabulary", "formula", "layout", "check/kinds"],
  },
  "check/csv": { holds: "readings from CSV", imports: ["core", "vocabulary", "check"] },
  compare: {
    holds: "what differs between two measurings, what is the same within what matters, what cannot be told",
    imports: ["math", "core", "workbook", "functions", "vocabulary", "formula", "layout", "check", "check/csv"],
  },
  report: {
    holds: "a check and its drawings to one printable page",
    imports: ["core", "workbook", "functions", "vocabulary", "formula", "drawings", "layout", "check", "compare"],
  },
  pane: {
    holds: "the task pane",
    imports: ["core", "workbook", "functions", "vocabulary", "formula", "xlsx", "drawings", "setup", "layout", "plan", "check", "compare", "report"],
  },
  addin: { holds: "the Office entry", imports: ["core", "functions", "hosts/excel", "pane"] },
  bench: { holds: "the local page with a grid", imports: ["core", "workbook", "functions", "formula", "xlsx", "calc/grid", "calc", "hosts/bench", "pane"] },
  cli: {
    holds: "the command line, which also serves the bench",
    imports: ["core", "workbook", "functions", "xlsx", "ods", "setup", "calc", "layout", "hosts", "check", "check/csv", "compare", "report"],
  },
  libreoffice: { holds: "the extension for LibreOffice Calc", imports: ["core", "functions", "xlsx"] },
  tools: {
    holds: "build, start, generate, package, sideload: what makes and serves the product",
    imports: ["core", "functions", "check/kinds", "libreoffice", "cli"],
  },
};
