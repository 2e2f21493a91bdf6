import { type CellXml, oneSheet } from "../xlsx/workbook-bytes.ts";
import { crosshatch, folderOf } from "./run.ts";

import.meta.jest.setTimeout(120_000);

/** One judged reading, and formulas beside it. */
const book = (formulas: readonly string[]): Uint8Array =>
  oneSheet([
    ["Cylinder", "Clearance", "Verdict"],
    [1, 0.03, { f: "HATCH.VERDICT(B2,0.02,0.04)", v: "" }],
    ...formulas.map((f, i): CellXml[] => [i, `K${i}`, null, { f }]),
  ]);
const look = (count: number) => Array.from({ length: count }, (_, i) => `VLOOKUP("K${(i * 7) % count}",$B$3:$D$${count + 2},1,FALSE)`);
const through = (count: number) => Array.from({ length: count }, (_, i) => `SUMPRODUCT(($A$3:$A$${count + 2}>${i})*1)`);

test("a workbook that takes too much work is told as one that could not be read, and the others are checked", async () => {
  const cwd = folderOf({ "usual.xlsx": book(look(600)), "endless.xlsx": book(through(600)), "plain.xlsx": book([]) });
  const files = ["usual.xlsx", "endless.xlsx", "plain.xlsx"];
  const little = await crosshatch(["check", "--json", "--work", "1", ...files], { cwd });
  expect(little.code).toBe(2);
  expect(little.err).toContain("endless.xlsx takes more work to calculate than is done for one workbook: --work allows more\n");
  expect(JSON.parse(little.out.trim().split("\n").at(-1)!)).toMatchObject({ files: 3, rowsIn: 2, checked: 2, refused: 0 });
  const usual = await crosshatch(["check", "--json", ...files], { cwd });
  // Its limits are typed into its formula.
  expect([usual.code, usual.err]).toEqual([1, ""]);
  expect(JSON.parse(usual.out.trim().split("\n").at(-1)!)).toMatchObject({ rowsIn: 3, checked: 3, refused: 0 });
});

test.each([
  ["--work", "0", "--work 0 is no number of millions of steps: it must be 1 to 999999"],
  ["--work", "1e9", "--work 1e9 is no number of millions of steps: it must be 1 to 999999"],
  ["--memory", "63", "--memory 63 is no number of megabytes: it must be 64 to 999999"],
])("%s %s is refused", async (option, value, sentence) => {
  const { code, err } = await crosshatch(["check", option, value, "none.xlsx"]);
  expect(code).toBe(2);
  expect(err).toContain(sentence);
});

test("compare and trial have the same limits, and say the same of a workbook that takes more", async () => {
  const cwd = folderOf({ "endless.xlsx": book(through(600)), "plain.xlsx": book([]) });
  const { code, err } = await crosshatch(["compare", "--work", "1", "plain.xlsx", "endless.xlsx"], { cwd });
  expect([code, err]).toEqual([2, "crosshatch: endless.xlsx takes more work to calculate than is done for one workbook: --work allows more\n"]);
  for (const command of ["compare", "trial"]) {
    const refused = await crosshatch([command, "--memory", "63", "plain.xlsx"], { cwd });
    expect([refused.code, refused.err]).toEqual([2, expect.stringContaining("--memory 63 is no number of megabytes: it must be 64 to 999999")]);
  }
});
