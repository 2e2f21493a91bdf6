import { cellName, columnLetters, placeName } from "../../src/workbook/address.ts";

test("columns are lettered up to the 16 384th, XFD (Microsoft, Excel specifications and limits; from memory)", () => {
  expect([0, 25, 26, 51, 52, 701, 702, 16383].map(columnLetters)).toEqual(["A", "Z", "AA", "AZ", "BA", "ZZ", "AAA", "XFD"]);
});

test("a cell is named by its column and its row from 1", () => {
  expect(cellName({ row: 6, column: 2 })).toBe("C7");
});

test("a sheet's name is quoted where a formula needs it", () => {
  const place = (sheet: string) => placeName({ sheet, row: 6, column: 2 });
  expect(place("Bores")).toBe("Bores!C7");
  expect(place("Run-in log")).toBe("'Run-in log'!C7");
  expect(place("Yard's")).toBe("'Yard''s'!C7");
  expect(place("B12")).toBe("'B12'!C7");
  expect(place("R1C1")).toBe("'R1C1'!C7");
  expect(place("2024")).toBe("'2024'!C7");
});
