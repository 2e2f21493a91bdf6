import * as engine from "@odoo/o-spreadsheet";
import { typedText } from "../../../src/calc/grid/grid-text.ts";
import { type FunctionGrid, registerFunctions } from "../../../src/calc/grid/register-functions.ts";
import { specs } from "../../../src/functions/index.ts";
import { benchHost, fillAt } from "../../../src/hosts/bench/host.ts";
import type { GridPicture } from "../../../src/hosts/bench/pictures.ts";
import { extendGrid, type PluginGrid } from "../../../src/hosts/bench/plugins.ts";
import type { Called, ContractCell, ContractSheet, Stage } from "../stage.ts";
import { wornOnBench } from "../worn.ts";

console.debug = () => {};
// The engine is made for browsers, which all have this; Node has it from 21.
(Object as { groupBy?: unknown }).groupBy ??= <T>(items: Iterable<T>, keyOf: (item: T) => string) => {
  const groups: Record<string, T[]> = {};
  for (const item of items) {
    groups[keyOf(item)] ??= [];
    groups[keyOf(item)]!.push(item);
  }
  return groups;
};
registerFunctions(specs, engine as unknown as FunctionGrid);
extendGrid(engine as unknown as PluginGrid);

function content(cell: ContractCell): string {
  if (cell === null || cell === undefined) return "";
  if (typeof cell !== "object") return typedText(cell);
  if ("formula" in cell) return cell.formula;
  if ("date" in cell) return String(cell.date);
  return "error" in cell ? cell.error : "";
}

export function modelOf(sheets: ContractSheet[], { names = [] }: Called = {}): engine.Model {
  const data = sheets.map(({ name, cells }, i) => ({
    id: `sheet${i}`,
    name,
    colNumber: 8,
    rowNumber: 12,
    cells: Object.fromEntries(cells.flatMap((line, row) => line.map((cell, column) => [engine.helpers.toXC(column, row), content(cell)]))),
  }));
  const namedRanges = Object.fromEntries(names.map(({ name, formula }) => [name, formula.slice(1).replaceAll("$", "")]));
  return new engine.Model({ version: "19.3.2", sheets: data, namedRanges });
}

function pictureFrom(model: engine.Model, sheetId: string, { id, row, col, width, height }: ReturnType<engine.Model["getters"]["getFigures"]>[number]) {
  const { name, description, path } = model.getters.getImage(id) as unknown as GridPicture;
  const corner = { sheet: model.getters.getSheetName(sheetId), row, column: col };
  return { corner, picture: { name, description, png: path.replace("data:image/png;base64,", ""), width, height } };
}

/** The hands and eyes of a person at a model of the bench's engine. */
export function stageOver(model: engine.Model): Stage {
  const { getters } = model;
  const place = (cell: { sheet: string; row: number; column: number }) => ({ sheetId: getters.getSheetIdByName(cell.sheet)!, col: cell.column, row: cell.row });
  return {
    host: benchHost(model, "book"),
    fill: async (cell) => fillAt(model, place(cell)) || null,
    paint: async (cell, fillColor) => {
      const { sheetId, col, row } = place(cell);
      model.dispatch("SET_FORMATTING", { sheetId, target: [{ left: col, right: col, top: row, bottom: row }], style: { fillColor } });
    },
    type: async (cell, text) => void model.dispatch("UPDATE_CELL", { ...place(cell), content: String(text) }),
    undo: async () => void model.dispatch("REQUEST_UNDO"),
    protect: async (sheet) => void model.dispatch("LOCK_SHEET", { sheetId: getters.getSheetIdByName(sheet)! }),
    selected: async () => {
      const { sheetId, col, row } = getters.getActivePosition();
      return { sheet: getters.getSheetName(sheetId), row, column: col };
    },
    again: async () => benchHost(model, "book"),
    worn: async (sheet) => wornOnBench(model, sheet),
    pictures: async () => getters.getSheetIds().flatMap((id) => getters.getFigures(id).map((figure) => pictureFrom(model, id, figure))),
  };
}
