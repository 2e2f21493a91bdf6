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

export function insertGridPicture(model: Model, { sheet, row, column }: CellAddress, { name, description, png, width, height }: SheetPicture): void {
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

const imagesOn = ({ getters }: Model, sheetId: string) => getters.getFigures(sheetId).filter(({ tag }) => tag === "image");

const pictureOf = ({ getters }: Model, figureId: string): GridPicture => getters.getImage(figureId) as unknown as GridPicture;

/** The pictures of a sheet in their order. */
export const picturesOn = (model: Model, sheetId: string): GridPicture[] => imagesOn(model, sheetId).map(({ id }) => pictureOf(model, id));

/** Pictures lie in addresses that hold them; another address is none of ours to ask. */
export function firstGridPicture(model: Model, sheet: string): string | null {
  const sheetId = model.getters.getSheetIdByName(sheet);
  if (sheetId === undefined) return null;
  const [first] = imagesOn(model, sheetId).sort((a, b) => a.row - b.row || a.col - b.col);
  return (first && /^data:[^,]*;base64,(.*)$/s.exec(pictureOf(model, first.id).path)?.[1]) ?? null;
}
