import { excelHost } from "../../src/sheet/excel.ts";
import { hostContract } from "./contract.ts";
import { ExcelBook } from "./excel-book.ts";
import { type MockOptions, mockExcel } from "./excel-mock.ts";
import type { Stagehand } from "./stage.ts";

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
    };
  };

const ABLE = ["undo", "protect", "selected", "again", "tables", "names of all kinds"] as const;
hostContract("Excel", stage({ spilled: "its value" }), ABLE);
hostContract("Excel that shows an anchor's formula where it spills", stage({ spilled: "the anchor's formula" }), ABLE);
