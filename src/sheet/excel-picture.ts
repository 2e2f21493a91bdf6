import type { CellAddress } from "./address.ts";
import { openSheets } from "./excel-write.ts";
import { pointsOf } from "./looks.ts";
import type { SheetPicture } from "./sheet-host.ts";

/** Two syncs to look, one that changes. */
export async function insertPicture(context: Excel.RequestContext, { sheet: name, row, column }: CellAddress, picture: SheetPicture): Promise<void> {
  const sheet = (await openSheets(context, [name])).get(name)!;
  const corner = sheet.getCell(row, column);
  corner.load("left,top");
  await context.sync();
  const shape = sheet.shapes.addImage(picture.png);
  shape.name = picture.name;
  shape.altTextDescription = picture.description;
  // Until this is off, one measure changes the other.
  shape.lockAspectRatio = false;
  shape.left = corner.left;
  shape.top = corner.top;
  shape.width = pointsOf(picture.width);
  shape.height = pointsOf(picture.height);
  shape.lockAspectRatio = true;
  await context.sync();
}
