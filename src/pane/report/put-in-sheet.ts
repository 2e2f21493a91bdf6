import { isDrawing } from "../../drawings/drawing.ts";
import { placeName } from "../../workbook/address.ts";
import type { SheetHost } from "../../workbook/port.ts";
import type { Drawable } from "./drawables.ts";
import { pngOf } from "./png.ts";

/** Room for a drawing in a sheet, in pixels: some seven columns of the usual width. */
const ROOM = 480;

/** Puts the picture of a drawing where the person has selected a cell, and says so. */
export async function putInSheet(host: SheetHost, { draw }: Drawable): Promise<string> {
  const drawn = draw(ROOM);
  if (!isDrawing(drawn)) return `${drawn.sentence}.`;
  const corner = await host.selection();
  const { title: name, description, width, height } = drawn;
  await host.insertPicture(corner, { name, description, png: await pngOf(drawn), width, height });
  return `Put in at ${placeName(corner)}. It shows the readings of now: it does not change with the sheet.`;
}
