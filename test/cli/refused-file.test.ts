import { readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { RefusedFile } from "../../src/cli/refused-file.ts";
import { crosshatch, folderOf } from "./run.ts";

const folder = folderOf({ "=1+1.csv": "value,upper\n@SUM(1;2),3\n", "-bore.csv": "value,upper\nx,3\n" });
afterAll(() => rmSync(folder, { recursive: true }));

/** A list of these rows. */
function listed(...rows: [string, string | number, string, string][]): string {
  const path = join(folder, "list.csv");
  const file = new RefusedFile(path, [], true);
  for (const row of rows) file.add(...row);
  file.close();
  return readFileSync(path, "utf8");
}
const rowsOf = (list: string): string[][] => (parse(list, { record_delimiter: "\n" }) as string[][]).slice(1);

/** What spreadsheets take for the beginning of a formula (OWASP, CSV Injection). */
const BEGINNINGS = ["=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠", " =", '"='];
const EVIL = BEGINNINGS.flatMap((sign) => [`${sign}1+1`, `${sign}cmd|' /C calc'!A0`]);

test.each(["file", "place", "reason", "text as written"])("no formula comes in by the %s", (which) => {
  const column = ["file", "place", "reason", "text as written"].indexOf(which);
  const rows = EVIL.map((evil) => ["f", "p", "r", "t"].map((other, i) => (i === column ? evil : other)) as [string, string, string, string]);
  expect(rowsOf(listed(...rows)).map((row) => row[column])).toEqual(EVIL.map((evil) => `'${evil}`));
});

test("what is no formula stands as it was written", () => {
  const plain = ["x,73,73.05", "A;1;-0.02;73,05;+1", 'A;"-0,02"\r\n-1.5', "a=b", "a@b", "'=1", ""];
  expect(rowsOf(listed(...plain.map((text) => ["f", 1, "r", text] as [string, number, string, string]))).map((row) => row[3])).toEqual(plain);
});

test("whatever a text holds, no cell begins a formula, also where cells are parted by semicolons and no quote counts", () => {
  const text = fc.string({ unit: fc.constantFrom(...BEGINNINGS, ",", ";", "'", " ", "a", "1", "\u0000") });
  // After a number a quote makes nonsense of a formula.
  const number = /^[+\-＋－]?[\d.,]+(?:"|$)/;
  fc.assert(
    fc.property(text, text, (name, written) => {
      const list = listed([name, 7, "x", written]);
      expect(rowsOf(list)).toEqual([[expect.any(String), "7", "x", expect.any(String)]]);
      for (const row of rowsOf(list)) for (const cell of row) expect(BEGINNINGS).not.toContain(cell[0]);
      const pieces = list.split(/[;\t\r\n]/).map((piece) => piece.replace(/^[\s"]*/, ""));
      for (const piece of pieces) if (!number.test(piece)) expect([piece, BEGINNINGS.includes(piece[0] ?? "")]).toEqual([piece, false]);
    }),
    { numRuns: 500 },
  );
});

test("lines are numbers, and files may be called as formulas begin", async () => {
  const { code, err } = await crosshatch(["check", "--refused", "list.csv", "--force", "--", "=1+1.csv", "-bore.csv"], { cwd: folder });
  expect([code, err]).toEqual([1, ""]);
  const rows = parse(readFileSync(join(folder, "list.csv"))) as string[][];
  expect(rows.slice(1).map(([file, line, , text]) => [file, line, text])).toEqual([
    ["'=1+1.csv", "2", "'@SUM(1;2),3"],
    ["'-bore.csv", "2", "x,3"],
  ]);
});
