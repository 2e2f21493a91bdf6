import { EXCEL_ABILITIES, excelHost } from "../../../src/hosts/excel/host.ts";
import { hostContract } from "../contract.ts";
import type { Stagehand } from "../stage.ts";
import { wornInExcel } from "../worn.ts";
import { ExcelBook } from "./book.ts";
import { CELL, type MockOptions, mockExcel } from "./mock.ts";

/** Excel measures in points. */
const pictureFrom = (sheet: string, { name, altTextDescription, png, width, height, left, top }: Record<string, unknown>) => ({
  corner: { sheet, row: Number(top) / CELL.height, column: Number(left) / CELL.width },
  picture: { name: String(name), description: String(altTextDescription), png: String(png), width: (Number(width) * 4) / 3, height: (Number(height) * 4) / 3 },
});

const stage =
  (options: MockOptions): Stagehand =>
  async (sheets, called) => {
    const book = new ExcelBook(sheets, called);
    const { run, changed } = mockExcel(book, options);
    return {
      host: excelHost(run),
      fill: async (cell) => book.look(cell)?.color ?? null,
      paint: async (cell, color) => book.setLook(cell, { color }),
      type: async (cell, content) => {
        book.type(cell, content);
        changed();
      },
      undo: async () => book.undo(),
      protect: async (sheet) => {
        book.sheet(sheet)!.protected = true;
      },
      selected: async () => book.active!,
      again: async () => excelHost(run),
      worn: async (sheet) => wornInExcel(book, sheet),
      pictures: async () => book.sheets.flatMap((sheet) => sheet.pictures.map((picture) => pictureFrom(sheet.name, picture))),
    };
  };

hostContract("Excel", stage({ spilled: "its value" }), EXCEL_ABILITIES);
hostContract("Excel that shows an anchor's formula where it spills", stage({ spilled: "the anchor's formula" }), EXCEL_ABILITIES);
