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
  core: { holds: "declaring functions, broadcasting, faults and their sentences, decimals, verdicts", imports: [] },
  functions: { holds: "one declared worksheet function a file", imports: ["core", "math"] },
  vocabulary: { holds: "the headings, characteristics, units, gauges and identity that are known", imports: ["core"] },
  workbook: { holds: "the port to a workbook and its model: addresses, snapshots, sheets as data, styles", imports: ["core"] },
  formula: { holds: "what formulas have in common that differ only in their cells", imports: ["workbook"] },
  xlsx: { holds: "reading .xlsx and writing changes into a copy of one", imports: ["core", "workbook"] },
  "calc/grid": { holds: "what the spreadsheet engine is taught: functions, compatibility, work limits", imports: ["core", "xlsx"] },
  calc: { holds: "calculating a file without a host", imports: ["calc/grid", "core", "formula", "functions", "workbook", "xlsx"] },
  "hosts/excel": { holds: "the port's adapter for Excel", imports: ["core", "workbook"] },
  "hosts/bench": { holds: "the port's adapter for the bench", imports: ["calc/grid", "core", "workbook"] },
  hosts: { holds: "the port's adapters for a file and for memory", imports: ["calc", "core", "workbook", "xlsx"] },
  buildsheet: {
    holds: "Check, Plan, Compare, Set up, Layout and readings from CSV: formulas and readings to findings",
    imports: ["core", "formula", "functions", "math", "vocabulary", "workbook", "xlsx"],
  },
  drawings: { holds: "measurements to SVG", imports: ["core", "functions", "math"] },
  report: { holds: "a check and its drawings to one printable page", imports: ["buildsheet", "core", "drawings", "functions", "vocabulary", "workbook"] },
  pane: { holds: "the task pane", imports: ["buildsheet", "core", "drawings", "functions", "report", "vocabulary", "workbook", "xlsx"] },
  addin: { holds: "the Office entry", imports: ["core", "functions", "hosts/excel", "pane"] },
  bench: { holds: "the local page with a grid", imports: ["buildsheet", "calc", "calc/grid", "core", "functions", "hosts/bench", "pane", "workbook", "xlsx"] },
  cli: { holds: "the command line", imports: ["buildsheet", "calc", "core", "functions", "hosts", "report", "workbook", "xlsx"] },
  tools: { holds: "build, start, generate, package, sideload: what makes and serves the product", imports: ["bench", "cli", "core", "functions"] },
};
