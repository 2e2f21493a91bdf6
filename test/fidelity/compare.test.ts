import { oneSheet } from "../xlsx/workbook-bytes.ts";
import { compareWithKept, fidelityTable, newFidelity } from "./compare.ts";

test("kept values are compared by function, what is volatile or has no value apart", () => {
  const counted = newFidelity();
  const bytes = oneSheet([
    [1, { f: "SUM(A1:A3)", v: 6 }],
    [2, { f: "SUM(A1:A2)", v: 4 }],
    [3, { f: "A1/3", v: 0.333333333333333 }],
    [null, { f: "LAMBDA(x,x)", v: 1 }],
    [null, { f: "NOSUCH(1)", v: 1 }],
    [null, { f: "1/0", v: 1 }],
    [null, { f: "NOW()", v: 1 }],
    [null, { f: "B7+1", v: 1 }],
    [null, { f: "MAX(A1:A3)" }],
    [null, { f: "A1", v: "" }],
    [null, { raw: '<c r="B11" t="e"><f>MAXIFS(A1:A3,A1:A3,1)</f><v>#NAME?</v></c>' }],
    [null, { f: "B11+1", v: 7 }],
    [null, { f: "1/0", v: "#DIV/0!" }],
    // 176 is the degree sign in code page 1252, and infinity on the Macintosh (the two encodings of the WHATWG's Encoding Standard).
    [null, { f: "CHAR(176)", v: "\u221e" }],
    [null, { f: "UNICODE(B14)", v: 8734 }],
  ]);
  compareWithKept(bytes, "book.xlsx", counted);
  expect(counted.total).toEqual({ agrees: 3, refused: 2, differs: 1, "error of ours": 1 });
  expect(counted.functions.get("SUM")).toEqual({ agrees: 1, refused: 0, differs: 1, "error of ours": 0 });
  expect([counted.volatile, counted.valueless]).toEqual([2, 2]);
  expect(counted.differing[0]).toBe("book.xlsx Sheet1!B2: =SUM(A1:A2) is 3, kept is 4");
  const table = fidelityTable(counted).split("\n");
  expect(table.slice(0, 2)).toEqual(["| function | agrees | refused | differs | error of ours |", "|---|---|---|---|---|"]);
  expect(table).toContain("| all | 3 | 2 | 1 | 1 |");
  expect(table.at(-1)).toBe(
    "Not compared: 2 volatile, 2 without a kept value, 2 with #NAME? for what the program that saved them did not know, 2 with letters of the Macintosh.",
  );
});
