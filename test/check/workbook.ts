import * as engine from "@odoo/o-spreadsheet";
import { registerFunctions } from "../../src/calc/grid/register-functions.ts";
import { specs } from "../../src/functions/index.ts";
import { snapshotOf } from "../../src/hosts/bench/host.ts";
import type { WorkbookSnapshot } from "../../src/workbook/port.ts";

/** Rows of a sheet from A1 on, as typed: numbers, text, formulas, `null` for nothing. */
export type Typed = (number | string | null)[][];

/** A workbook calculated by the bench's engine, as Check gets it. */
export function workbook(sheets: Record<string, Typed>): WorkbookSnapshot {
  registerFunctions(specs, engine);
  const chatter = console.debug;
  console.debug = () => {};
  const model = new engine.Model({
    version: "19.3.2",
    sheets: Object.entries(sheets).map(([name, rows]) => ({ id: name, name, colNumber: 26, rowNumber: Math.max(rows.length + 20, 40), cells: cellsOf(rows) })),
  } as never);
  console.debug = chatter;
  return snapshotOf(model, "workbook");
}

function cellsOf(rows: Typed): Record<string, string> {
  const cells: Record<string, string> = {};
  for (const [r, row] of rows.entries()) {
    for (const [c, content] of row.entries()) if (content !== null) cells[`${String.fromCharCode(65 + c)}${r + 1}`] = String(content);
  }
  return cells;
}
