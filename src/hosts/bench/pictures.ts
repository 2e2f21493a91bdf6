import type { Model } from "@odoo/o-spreadsheet";
import type { CellAddress } from "../../workbook/address.ts";
import type { SheetPicture } from "../../workbook/port.ts";
import { noSheet, protectedSheet } from "../../workbook/refusals.ts";
import { step } from "./plugins.ts";

/** A picture as the grid keeps it: its file in an address of its own, and what the grid does not know beside that. */
export interface GridPicture {
  path: string;
  size: { width: number; height: number };
  mimetype: string;
  name: string;
  description: string;
}

const PNG = "image/png";

export function insertPicture(model: Model, { sheet, row, column }: CellAddress, { name, description, png, width, height }: SheetPicture): void {
  const { getters } = model;
  const sheetId = getters.getSheetIdByName(sheet);
  if (sheetId === undefined) throw noSheet(sheet);
  if (getters.isSheetLocked(sheetId)) throw protectedSheet(sheet);
  const size = { width, height };
  const definition: GridPicture = { path: `data:${PNG};base64,${png}`, size, mimetype: PNG, name, description };
  const figureId = `${sheetId}-picture${freeNumber(model)}`;
  step(model, [{ type: "CREATE_IMAGE", sheetId, figureId, col: column, row, offset: { x: 0, y: 0 }, size, definition }]);
}

/** Of no picture in the workbook yet. */
function freeNumber({ getters }: Model): number {
  const taken = getters.getSheetIds().flatMap((id) => getters.getFigures(id).map((figure) => Number(/\d+$/.exec(figure.id)?.[0] ?? 0)));
  return Math.max(0, ...taken) + 1;
}

/** The pictures of a sheet in their order. */
export const picturesOn = ({ getters }: Model, sheetId: string): GridPicture[] =>
  getters
    .getFigures(sheetId)
    .filter(({ tag }) => tag === "image")
    .map(({ id }) => getters.getImage(id) as unknown as GridPicture);

/** Pictures lie in addresses that hold them; another address is none of ours to ask. */
export function firstPicture({ getters }: Model, sheet: string): string | null {
  const sheetId = getters.getSheetIdByName(sheet);
  if (sheetId === undefined) return null;
  const [first] = getters
    .getFigures(sheetId)
    .filter(({ tag }) => tag === "image")
    .sort((a, b) => a.row - b.row || a.col - b.col);
  const { path } = first ? (getters.getImage(first.id) as unknown as GridPicture) : { path: "" };
  return /^data:[^,]*;base64,(.*)$/s.exec(path)?.[1] ?? null;
}
