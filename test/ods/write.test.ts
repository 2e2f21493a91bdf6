import { strFromU8, unzipSync } from "fflate";
import { fromOpenFormula, toOpenFormula } from "../../src/ods/open-formula.ts";
import { readOds } from "../../src/ods/read.ts";
import { writeOds } from "../../src/ods/write.ts";
import { readXlsx } from "../../src/xlsx/read/read.ts";
import { writeXlsx } from "../../src/xlsx/write/workbook.ts";
import { described } from "../setup/made.ts";

const MOST = { cylinders: 16, heights: 5, axes: 4, valves: 5, unit: "in", secondReadings: true };

test.each([{ cylinders: 1 }, { cylinders: 3 }, MOST])(
  "a build sheet of %j is the same workbook as .ods and as .xlsx: cells, formulas, names, tables",
  (choices) => {
    const book = described(choices);
    const [ods, xlsx] = [readOds(writeOds(book)), readXlsx(writeXlsx(book))];
    const plain = ({ sheets }: typeof ods) =>
      sheets.map(({ name, hidden, cells }) => [
        name,
        hidden,
        cells.map(({ row, column, value, formula, beyond }) => ({ row, column, value, formula, beyond })),
      ]);
    expect(plain(ods)).toEqual(plain(xlsx));
    expect(ods.names).toEqual(xlsx.names);
    expect(ods.tables).toEqual(xlsx.tables);
  },
);

test("made twice it is the same byte for byte, and tells its kind first and unpacked", () => {
  const bytes = writeOds(described({ cylinders: 3 }));
  expect(writeOds(described({ cylinders: 3 }))).toEqual(bytes);
  expect(strFromU8(bytes.subarray(30, 84))).toBe("mimetypeapplication/vnd.oasis.opendocument.spreadsheet");
});

test("what may be typed, frozen headings and the fills of verdicts are in it", () => {
  const parts = unzipSync(writeOds(described({ cylinders: 3 })));
  const content = strFromU8(parts["content.xml"]!);
  expect(content).toContain("of:cell-content-is-decimal-number() and cell-content()&gt;0");
  expect(content).toContain('calcext:value="=&quot;over&quot;"');
  expect(content).toContain("<table:table-header-rows>");
  expect(strFromU8(parts["settings.xml"]!)).toContain('config:name="VerticalSplitMode" config:type="short">2<');
});

test.each([
  "HATCH.TAPER(B4:G4,2)",
  'IF(C4="","a,b;c",HATCH.VERDICT(C4,Limits!$B$8,\'Run-in log\'!$C$8))',
  "SUM({1,2;3,4},A1,$B$2:$C$3)",
  "COUNTIF('Both readings'!$H$4:$H$21,\"over\")+LOG10(Bore_readings)",
])("%s is itself again when it has been stored and read", (formula) => expect(fromOpenFormula(toOpenFormula(formula))).toBe(formula));
