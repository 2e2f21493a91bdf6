import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { readXlsx } from "../../src/xlsx/read/read.ts";
import { described } from "../setup/made.ts";
import { crosshatch, jsonLines } from "./run.ts";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "crosshatch-new-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const made = (...args: string[]) => crosshatch(["new", ...args]);

test("new writes the workbook that the choices describe, and check finds nothing in it but what is still to be measured", async () => {
  const out = join(folder, "port.xlsx");
  const result = await made(out, "--cylinders", "3", "--heights", "3", "--axes", "2", "--valves", "4", "--unit", "mm", "--second-readings");
  expect(result).toMatchObject({ code: 0, err: "" });
  expect(result.out).toContain(
    "port.xlsx: an empty build sheet, Engine, Limits, Bores, Pistons, Rings, Crankshaft, Rods, Camshaft, Guides and seats, Springs, Faces, Valves, Volumes, Tests, Run-in log, Second readings, Both readings, Torques, Parts list, Notes, Summary.",
  );
  const wanted = described({ cylinders: 3, heights: 3, axes: 2, valves: 4, unit: "mm", secondReadings: true });
  const read = readXlsx(readFileSync(out));
  expect(read.sheets.map(({ name }) => name)).toEqual(wanted.sheets.map(({ name }) => name));
  expect(read.tables.map(({ name, columns }) => [name, columns])).toEqual(
    wanted.sheets.flatMap(({ tables }) => tables.map(({ name, headings }) => [name, headings])),
  );

  const checked = await crosshatch(["check", out, "--json"]);
  const [...findings] = jsonLines(checked.out);
  const total = findings.pop();
  expect([checked.code, checked.err]).toEqual([1, ""]);
  expect(total).toMatchObject({ rowsIn: 0, refused: 0, notes: [], unread: [] });
  expect(findings.map(({ kind, cell }) => [kind, cell])).toEqual(["B4", "B5", "B6"].map((cell) => ["missing reading", `Bores!${cell}`]));
});

test("what is there is left as it is, unless --force says otherwise", async () => {
  const out = join(folder, "kept.xlsx");
  writeFileSync(out, "somebody's work");
  expect(await made(out, "--cylinders", "3")).toEqual({
    code: 2,
    out: "",
    err: `crosshatch: ${out} is already there and is left as it is: give another name, or --force to overwrite it. See crosshatch help\n`,
  });
  expect(readFileSync(out, "utf8")).toBe("somebody's work");
  expect((await made(out, "--cylinders", "3", "--force")).code).toBe(0);
  expect(readXlsx(readFileSync(out)).sheets).toHaveLength(19);
  expect(readdirSync(folder)).toEqual(["kept.xlsx"]);
});

test("a folder in its place is never overwritten", async () => {
  const out = join(folder, "folder.xlsx");
  mkdirSync(out);
  const result = await made(out, "--cylinders", "3", "--force");
  expect([result.code, result.err]).toEqual([2, `crosshatch: ${out} is a folder: name the file to be written in it. See crosshatch help\n`]);
});

test.each([
  [["out.xlsx"], "cylinders is not given: wanted is a whole number from 1 to 16"],
  [["out.xlsx", "--cylinders", "0"], "cylinders 0 is not possible: wanted is a whole number from 1 to 16"],
  [["out.xlsx", "--cylinders", "three"], 'cylinders "three" is not possible: wanted is a whole number from 1 to 16'],
  [["out.xlsx", "--cylinders", "3", "--heights", "6"], "heights 6 is not possible: wanted is a whole number from 2 to 5"],
  [["out.xlsx", "--cylinders", "3", "--axes", "1"], "axes 1 is not possible: wanted is a whole number from 2 to 4"],
  [["out.xlsx", "--cylinders", "3", "--valves", "2.5"], 'valves "2.5" is not possible: wanted is a whole number from 2 to 5'],
  [["out.xlsx", "--cylinders", "3", "--unit", "cm"], 'unit "cm" is not possible: wanted is mm or in'],
  [["out.xls", "--cylinders", "3"], "out.xls ends neither with .xlsx nor with .ods, which are what is written"],
  [["nowhere/out.xlsx", "--cylinders", "3"], "nowhere/out.xlsx cannot be written: there is no folder nowhere"],
])("%j is refused with a sentence, and nothing is written", async (args, sentence) => {
  expect(await made(...args)).toEqual({ code: 2, out: "", err: `crosshatch: ${sentence}. See crosshatch help\n` });
  expect(existsSync(args[0]!)).toBe(false);
});

test("help tells about new", async () => {
  const { out, code } = await crosshatch(["help", "new"]);
  expect(code).toBe(0);
  expect(out).toContain("--second-readings");
  expect(out).toContain("--force");
});
