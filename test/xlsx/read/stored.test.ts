import { readFileSync } from "node:fs";
import { storageXml } from "../../../src/workbook/storage.ts";
import { readXlsx, storedSnapshot, uncalculated } from "../../../src/xlsx/read/read.ts";
import { type BookXml, workbookBytes, workbookParts } from "../workbook-bytes.ts";

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

test("what is kept for us is found where an office program has hung it on the archive, with a step up from its root", () => {
  const relation = `<Relationship Id="rId9" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/customXml" Target="../customXml/item1.xml"/>`;
  const book: BookXml = { sheets: [{ name: "Bores", cells: [[1]] }] };
  const arrows = workbookParts(book)["_rels/.rels"]!.replace("</Relationships>", `${relation}</Relationships>`);
  const texts = new Map([["layout", '{"a":1}']]);
  const read = readXlsx(workbookBytes({ ...book, parts: { "_rels/.rels": arrows, "customXml/item1.xml": storageXml(texts) } }));
  expect(read.storedTexts).toEqual(texts);
});
