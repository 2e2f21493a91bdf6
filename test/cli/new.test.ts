import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type CellSpec, emptySheet, type SheetSpec } from "../../src/workbook/sheet-spec.ts";
import { readXlsx } from "../../src/xlsx/read/read.ts";
import { writeXlsx } from "../../src/xlsx/write/workbook.ts";
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
    "port.xlsx: an empty build sheet, Engine, Limits, Bores, Pistons, Rings, Crankshaft, Rods, Camshaft, Guides and seats, Springs, Faces, Surface, Valves, Volumes, Tests, Oil and blow-by, Run-in log, Second readings, Both readings, Torques, Parts list, Notes, Shop, Summary.",
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
  expect(readXlsx(readFileSync(out)).sheets).toHaveLength(22);
  expect(readdirSync(folder)).toEqual(["kept.xlsx"]);
});

test("a folder in its place is never overwritten", async () => {
  const out = join(folder, "folder.xlsx");
  mkdirSync(out);
  const result = await made(out, "--cylinders", "3", "--force");
  expect([result.code, result.err]).toEqual([2, `crosshatch: ${out} is a folder: name the file to be written in it. See crosshatch help\n`]);
});

test.each([
  [["out.xlsx"], "cylinders is not given: it must be a whole number from 1 to 16"],
  [["out.xlsx", "--cylinders", "0"], "cylinders 0 is not possible: it must be a whole number from 1 to 16"],
  [["out.xlsx", "--cylinders", "three"], 'cylinders "three" is not possible: it must be a whole number from 1 to 16'],
  [["out.xlsx", "--cylinders", "3", "--heights", "6"], "heights 6 is not possible: it must be a whole number from 2 to 5"],
  [["out.xlsx", "--cylinders", "3", "--axes", "1"], "axes 1 is not possible: it must be a whole number from 2 to 4"],
  [["out.xlsx", "--cylinders", "3", "--valves", "2.5"], 'valves "2.5" is not possible: it must be a whole number from 2 to 5'],
  [["out.xlsx", "--cylinders", "3", "--unit", "cm"], 'unit "cm" is not possible: it must be mm or in'],
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

describe("a limits book", () => {
  const CHOICES = ["--cylinders", "3"];
  const shop = (): string => {
    const path = join(folder, "yard-limits.xlsx");
    const sheet = (name: string, upper: number): SheetSpec => ({
      ...emptySheet(name),
      cells: [
        ["Characteristic", "Lower", "Upper", "Unit", "Source"],
        ["Taper", "", upper, "mm", "manual, page 41"],
        ["Squish", 0.8, "", "in", ""],
      ].flatMap((line, row) => line.map((content, column): CellSpec => ({ row, column, content, style: "plain" }))),
    });
    writeFileSync(path, writeXlsx({ title: "Limits", sheets: [sheet("HB-3", 0.02), sheet("HB-4", 0.03)], names: [] }));
    return path;
  };

  test("gives a new build sheet the limits of the model that is named, with their source, and says what it could not copy", async () => {
    const out = join(folder, "new.xlsx");
    const { code, out: said, err } = await made(out, ...CHOICES, "--limits", shop(), "--model", "hb-4");
    expect([code, err]).toEqual([0, "crosshatch: yard-limits.xlsx: Squish: the limits book has it in inches, and the sheet has it in mm\n"]);
    expect(said).toContain("1 limit was copied from the limits book: look them over against the maker's service manual, and type the others.");
    const limits = readXlsx(readFileSync(out)).sheets.find(({ name }) => name === "Limits")!;
    const texts = limits.cells.map(({ value }) => value);
    expect(texts).toEqual(expect.arrayContaining([0.03, "Limits book yard-limits.xlsx, HB-4: manual, page 41"]));
  });

  test.each([
    [["--limits", "yard-limits.xlsx"], "yard-limits.xlsx has limits for HB-3, HB-4: name one with --model"],
    [["--limits", "yard-limits.xlsx", "--model", "HB-9"], "yard-limits.xlsx has no model HB-9: it has HB-3, HB-4"],
    [["--limits", "none.xlsx"], "none.xlsx is not there"],
    [["--model", "HB-3"], "--model names a sheet of the limits book: give it with --limits"],
    [["--trial", "--limits", "yard-limits.xlsx"], "--limits is for a build sheet: type the limits of a trial into its workbook"],
  ])("%j is refused, and nothing is written", async (args, sentence) => {
    shop();
    const out = join(folder, "new.xlsx");
    const { code, err } = await made(out, ...CHOICES, ...args.map((arg) => (arg.endsWith(".xlsx") ? join(folder, arg) : arg)));
    expect(code).toBe(2);
    expect(err.replaceAll(`${folder}/`, "")).toContain(sentence);
    expect(existsSync(out)).toBe(false);
  });

  test("gives its limits to a copy of a workbook that is set up; what is typed otherwise is listed and left, unless it is to be replaced", async () => {
    const [empty, filled, again, replaced] = ["old", "filled", "again", "replaced"].map((name) => join(folder, `${name}.xlsx`)) as [
      string,
      string,
      string,
      string,
    ];
    await made(empty, ...CHOICES);
    const copy = (from: string, to: string, ...args: string[]) => crosshatch(["limits", from, to, "--limits", shop(), ...args]);
    const first = await copy(empty, filled, "--model", "HB-4");
    expect(first.out.replaceAll(`${folder}/`, "")).toBe(
      "filled.xlsx: 1 limit copied from yard-limits.xlsx, HB-4. Look them over against the maker's service manual.\n",
    );
    expect(first.err).toBe("crosshatch: yard-limits.xlsx: Squish: the limits book has it in inches, and the sheet has it in mm\n");
    const second = await copy(filled, again, "--model", "HB-3");
    expect(second.out).toContain("0 limits copied from yard-limits.xlsx, HB-3, 1 typed differently there and left.");
    expect(second.err).toContain("Limits!B4, Taper: is at most 0.03, in the limits book at most 0.02; left as it is without --replace");
    expect((await copy(filled, replaced, "--model", "HB-3", "--replace")).out).toContain("0 limits copied from yard-limits.xlsx, HB-3, 1 replaced.");
    const upper = (path: string) => {
      const { cells } = readXlsx(readFileSync(path)).sheets.find(({ name }) => name === "Limits")!;
      const { row } = cells.find(({ value }) => value === "Taper")!;
      return cells.filter((cell) => cell.row === row && cell.value !== null && cell.value !== "").map(({ value }) => value);
    };
    const source = (model: string) => `Limits book yard-limits.xlsx, ${model}: manual, page 41`;
    expect([empty, filled, again, replaced].map(upper)).toEqual([
      ["Taper", "mm"],
      ["Taper", 0.03, "mm", source("HB-4")],
      ["Taper", 0.03, "mm", source("HB-4")],
      ["Taper", 0.02, "mm", source("HB-3")],
    ]);
    // All but that table's sheet, and what formulas come to, is as it was.
    expect(readXlsx(readFileSync(filled)).sheets.map(({ name, cells }) => [name, cells.filter(({ formula }) => formula !== undefined).length])).toEqual(
      readXlsx(readFileSync(empty)).sheets.map(({ name, cells }) => [name, cells.filter(({ formula }) => formula !== undefined).length]),
    );
  });
});
