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
  sheet: { holds: "the port to a workbook, its adapters, files and the headless calculation", imports: ["core", "functions"] },
  buildsheet: {
    holds: "Check, Plan, Compare, Set up, Layout and readings from CSV: formulas and readings to findings",
    imports: ["core", "functions", "math", "sheet"],
  },
  drawings: { holds: "measurements to SVG", imports: ["core", "functions", "math"] },
  report: { holds: "a check and its drawings to one printable page", imports: ["buildsheet", "core", "drawings", "functions", "sheet"] },
  pane: { holds: "the task pane", imports: ["buildsheet", "core", "drawings", "functions", "report", "sheet"] },
  addin: { holds: "the Office entry", imports: ["core", "functions", "pane", "sheet"] },
  bench: { holds: "the local page with a grid", imports: ["buildsheet", "core", "functions", "pane", "sheet"] },
  cli: { holds: "the command line", imports: ["buildsheet", "core", "functions", "report", "sheet"] },
  tools: { holds: "build, start, generate, package, sideload: what makes and serves the product", imports: ["bench", "cli", "core", "functions"] },
};
