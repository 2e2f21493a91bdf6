import { readFileSync } from "node:fs";
import { readXlsx, storedSnapshot, uncalculated } from "../../../src/xlsx/read/read.ts";
import { workbookBytes } from "../workbook-bytes.ts";

test("a saved workbook is shown as it was saved: values of formulas, the formulas, and blanks", () => {
  const book = readXlsx(
    workbookBytes({
      sheets: [
        {
          name: "Bores",
          cells: [
            ["bore", 73.02, null],
            [null, { f: "B1*2", v: 146.04 }],
          ],
        },
        { name: "Empty", cells: [] },
      ],
    }),
  );
  expect(storedSnapshot(book, "saved.xlsx")).toEqual({
    name: "saved.xlsx",
    sheets: [
      {
        name: "Bores",
        row: 0,
        column: 0,
        values: [
          ["bore", 73.02],
          [null, 146.04],
        ],
        formulas: [
          [null, null],
          [null, "=B1*2"],
        ],
      },
      { name: "Empty", row: 0, column: 0, values: [], formulas: [] },
    ],
  });
  expect(uncalculated(book)).toBe(0);
});

test("formulas that nobody has calculated are counted", () => {
  const book = readXlsx(workbookBytes({ sheets: [{ name: "Bores", cells: [[73.02, { f: "A1*2" }]] }] }));
  expect(uncalculated(book)).toBe(1);
  expect(uncalculated(readXlsx(readFileSync("samples/build-sheet.xlsx")))).toBe(0);
});
