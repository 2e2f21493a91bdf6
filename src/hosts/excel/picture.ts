import type { CellAddress } from "../../workbook/address.ts";
import type { SheetPicture } from "../../workbook/port.ts";
import { pointsOf } from "../../workbook/styles.ts";
import type { Change } from "./change.ts";
import { openSheets } from "./write.ts";

/** Two syncs to look. */
export async function insertPicture(context: Excel.RequestContext, { sheet: name, row, column }: CellAddress, picture: SheetPicture): Promise<Change> {
  const sheet = (await openSheets(context, [name])).get(name)!;
  const corner = sheet.getCell(row, column);
  corner.load("left,top");
  sheet.shapes.load("items/id");
  await context.sync();
  const there = new Set(sheet.shapes.items.map(({ id }) => id));
  return {
    result: undefined,
    where: `the pictures of the sheet ${name}`,
    order: () => place(sheet, corner, picture),
    takeBack: async (again) => {
      const { shapes } = again.workbook.worksheets.getItem(name);
      const ours = async () => {
        shapes.load("items/id");
        await again.sync();
        return shapes.items.filter(({ id }) => !there.has(id));
      };
      for (const shape of await ours()) shape.delete();
      await again.sync();
      return (await ours()).length > 0 ? `It could not be taken back: the picture stands on the sheet ${name}.` : "";
    },
  };
}

function place(sheet: Excel.Worksheet, corner: Excel.Range, picture: SheetPicture): void {
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
}
