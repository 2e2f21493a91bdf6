import { emptySheet, type WorkbookSpec } from "../../src/workbook/sheet-spec.ts";

/** Two invented sheets with something of everything that can be described. */
export const DESCRIBED: WorkbookSpec = {
  sheets: [
    {
      ...emptySheet("Gap limits"),
      widths: [20, 11, 12],
      frozen: { rows: 2, columns: 1 },
      cells: [
        { row: 0, column: 0, content: "Limits", style: "title" },
        { row: 1, column: 0, content: "Gauge", style: "head" },
        { row: 1, column: 1, content: "Upper", style: "head" },
        { row: 1, column: 2, content: "Measured on", style: "head" },
        { row: 2, column: 0, content: "G1", style: "typed" },
        { row: 2, column: 1, content: 0.05, style: "typed", format: "0.000" },
        { row: 2, column: 2, content: "", style: "typed", format: "yyyy\\-mm\\-dd" },
        { row: 3, column: 0, content: "73,02", style: "typed" },
        { row: 3, column: 1, content: "", style: "typed", format: "0.000" },
        { row: 3, column: 2, content: "", style: "typed", format: "yyyy\\-mm\\-dd" },
      ],
      tables: [{ name: "GapLimits", row: 1, column: 0, rows: 2, headings: ["Gauge", "Upper", "Measured on"] }],
      validations: [
        { area: { row: 2, column: 1, rows: 2, columns: 1 }, rule: { kind: "above zero" }, sentence: "A length above 0." },
        { area: { row: 2, column: 2, rows: 2, columns: 1 }, rule: { kind: "date" }, sentence: "A date." },
      ],
      print: { paper: "letter", isLandscape: true },
    },
    {
      ...emptySheet("Gaps"),
      widths: [11],
      cells: [
        { row: 0, column: 0, content: "=HATCH.VERDICT(0.06,,'Gap limits'!B3)", style: "result" },
        { row: 1, column: 0, content: "mm", style: "label" },
        { row: 2, column: 0, content: "", style: "typed" },
        { row: 3, column: 0, content: "", style: "typed" },
        { row: 4, column: 0, content: "", style: "typed" },
      ],
      verdicts: [{ row: 0, column: 0, rows: 1, columns: 1 }],
      validations: [
        { area: { row: 1, column: 0, rows: 1, columns: 1 }, rule: { kind: "one of", words: ["mm"] }, sentence: "mm." },
        { area: { row: 2, column: 0, rows: 1, columns: 1 }, rule: { kind: "listed", name: "Gauges_here" }, sentence: "The id of a gauge." },
        { area: { row: 3, column: 0, rows: 1, columns: 1 }, rule: { kind: "at least zero" }, sentence: "0 or more." },
        { area: { row: 4, column: 0, rows: 1, columns: 1 }, rule: { kind: "number" }, sentence: "A number." },
      ],
      merges: [{ row: 0, column: 1, rows: 1, columns: 2 }],
    },
  ],
  names: [{ name: "Gauges_here", formula: "'Gap limits'!$A$3:$A$4" }],
};
