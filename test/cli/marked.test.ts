import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, symlinkSync, unlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { unzipSync } from "fflate";
import { root } from "../../src/tools/paths.ts";
import { readXlsx } from "../../src/xlsx/read/read.ts";
import { richBook } from "../xlsx/patch/rich-book.ts";
import { crosshatch, folderOf, jsonLines, type Ran } from "./run.ts";

const LONG = 120_000;
const sample = readFileSync(join(root, "samples", "build-sheet.xlsx"));
const CSV = "characteristic,value,lower,upper,unit\nbore,73.02,73,73.08,mm\n";
const folder = (): string => folderOf({ "build.xlsx": sample, "rich.xlsx": richBook(), "readings.csv": CSV, "broken.xlsx": "no workbook" });
const check = (cwd: string, ...args: string[]): Promise<Ran> => crosshatch(["check", ...args], { cwd });

test(
  "each workbook gets a copy under its own name, and what is printed says so; originals stay as they are",
  async () => {
    const cwd = folder();
    const { code, out, err } = await check(cwd, "build.xlsx", "rich.xlsx", "--marked", "out");
    expect([code, err]).toEqual([1, ""]);
    expect(out).toMatch(/build\.xlsx\n[\s\S]*27 of 27 rows checked.*\n {2}marked copy: out.build\.xlsx, 5 cells marked, \d+ values written\n/);
    expect(out).toMatch(/marked copy: out.rich\.xlsx, 2 cells marked, 2 values written; the digital signature counts for the original alone\n/);
    expect(readdirSync(join(cwd, "out")).sort()).toEqual(["build.xlsx", "rich.xlsx"]);
    expect(readFileSync(join(cwd, "build.xlsx")).equals(sample)).toBe(true);
    const copy = readXlsx(readFileSync(join(cwd, "out", "build.xlsx")));
    expect(copy.sheets.at(-1)).toMatchObject({ name: "Findings", cells: expect.arrayContaining([expect.objectContaining({ value: "Bores!C17" })]) });
    expect(copy.sheets.at(-1)!.cells[1]!.value).toMatch(/^27 of 27 rows checked, 5 findings\. Checked by Crosshatch /);
  },
  LONG,
);

test(
  "a marked copy is checked with the same findings, and its own copy is the same file",
  async () => {
    const cwd = folder();
    const [first, second] = [
      await check(cwd, "build.xlsx", "--json", "--marked", "out"),
      await check(join(cwd, "out"), "build.xlsx", "--json", "--marked", "again"),
    ];
    const found = ({ out }: Ran) => jsonLines(out).slice(0, -1);
    expect(found(second)).toEqual(found(first));
    expect(jsonLines(first.out).at(-1)).toMatchObject({ marked: [{ file: "build.xlsx", copy: join("out", "build.xlsx") }], unmarked: [] });
    expect(readFileSync(join(cwd, "out", "again", "build.xlsx")).equals(readFileSync(join(cwd, "out", "build.xlsx")))).toBe(true);
  },
  LONG,
);

test(
  "a workbook with macros is read like any other, and its copy keeps them byte for byte",
  async () => {
    const cwd = folderOf({ "rich.XLSM": richBook() });
    const { code, out } = await check(cwd, "rich.XLSM", "--marked", "out");
    expect([code, out]).toEqual([1, expect.stringContaining(`marked copy: ${join("out", "rich.XLSM")}, 2 cells marked`)]);
    const [macros, kept] = [richBook(), readFileSync(join(cwd, "out", "rich.XLSM"))].map((bytes) => unzipSync(bytes)["xl/vbaProject.bin"]!);
    expect(Buffer.compare(kept!, macros!)).toBe(0);
  },
  LONG,
);

test(
  "nothing is overwritten unless that is asked for, and nothing is checked in vain",
  async () => {
    const cwd = folder();
    mkdirSync(join(cwd, "out"));
    writeFileSync(join(cwd, "out", "build.xlsx"), "mine");
    const refused = await check(cwd, "build.xlsx", "--marked", "out");
    expect([refused.code, refused.out]).toEqual([2, ""]);
    expect(refused.err).toContain(`${join("out", "build.xlsx")} is already there and left as it is: give another folder, or --force to overwrite it`);
    expect(readFileSync(join(cwd, "out", "build.xlsx"), "utf8")).toBe("mine");
    expect((await check(cwd, "build.xlsx", "--marked", "out", "--force")).code).toBe(1);
    expect(readXlsx(readFileSync(join(cwd, "out", "build.xlsx"))).sheets).toHaveLength(6);
  },
  LONG,
);

test(
  "an original is never overwritten, by whatever name its folder is called",
  async () => {
    const cwd = folder();
    if (process.platform !== "win32") symlinkSync(cwd, join(cwd, "self"));
    for (const out of [".", ...(process.platform === "win32" ? [] : ["self"])]) {
      const { code, err } = await check(cwd, "build.xlsx", "--marked", out, "--force");
      expect(code).toBe(2);
      expect(err).toContain("build.xlsx is one of the files to be checked: give another folder for the marked copies");
    }
    expect(readFileSync(join(cwd, "build.xlsx")).equals(sample)).toBe(true);
  },
  LONG,
);

test(
  "what cannot be read has no copy, the others have; readings have no cells to mark",
  async () => {
    const cwd = folder();
    const { code, out, err } = await check(cwd, "broken.xlsx", "build.xlsx", "readings.csv", "--json", "--marked", "out");
    expect(code).toBe(2);
    expect(err).toMatch(/--marked is for workbooks \(\.xlsx\): 1 file gets no copy\n[\s\S]*broken\.xlsx is a text file/);
    expect(jsonLines(out).at(-1)).toMatchObject({ files: 3, marked: [{ file: "build.xlsx" }], unread: [{ file: "broken.xlsx" }] });
    expect(readdirSync(join(cwd, "out"))).toEqual(["build.xlsx"]);
  },
  LONG,
);

test.each([
  [["readings.csv"], "--marked is for workbooks (.xlsx), and none is among the files: only those have cells to mark"],
  [["sheet.ods"], "--marked writes no copy of sheet.ods: save it as .xlsx in LibreOffice (File > Save As), and mark that"],
  [["build.xlsx"], "readings.csv is no folder: name one for the marked copies", "readings.csv"],
])(
  "%j is refused with a sentence when there is nothing to mark or nowhere to put it",
  async (files, sentence, out = "out") => {
    const cwd = folder();
    const ran = await check(cwd, ...files, "--marked", out);
    expect([ran.code, ran.out]).toEqual([2, ""]);
    expect(ran.err).toContain(sentence);
    expect(existsSync(join(cwd, "out"))).toBe(false);
  },
  LONG,
);

test(
  "a copy that cannot be written is named with the reason, and the check is told all the same",
  async () => {
    const cwd = folder();
    mkdirSync(join(cwd, "out"));
    mkdirSync(join(cwd, "out", "build.xlsx"));
    const { code, out, err } = await check(cwd, "build.xlsx", "rich.xlsx", "--json", "--marked", "out", "--force");
    expect(code).toBe(2);
    expect(err).toBe(`crosshatch: ${join("out", "build.xlsx")} is a folder: name the file to be written in it\n`);
    const total = jsonLines(out).at(-1)!;
    expect(total).toMatchObject({
      findings: 7,
      marked: [{ file: "rich.xlsx", signed: true }],
      unmarked: [{ file: "build.xlsx", reason: expect.stringContaining("is a folder") }],
    });
  },
  LONG,
);

test(
  "with a ledger an unchanged workbook keeps its copy, and gets one when it is gone",
  async () => {
    const cwd = folder();
    const run = (): Promise<Ran> => check(cwd, "build.xlsx", "--json", "--ledger", "done.ndjson", "--marked", "out");
    const copy = join(cwd, "out", "build.xlsx");
    await run();
    const { mtimeMs } = statSync(copy);
    const second = await run();
    expect(jsonLines(second.out).at(-1)).toMatchObject({ skipped: { files: 1 }, marked: [] });
    expect(statSync(copy).mtimeMs).toBe(mtimeMs);
    unlinkSync(copy);
    expect(jsonLines((await run()).out).at(-1)).toMatchObject({ skipped: { files: 0 }, marked: [{ file: "build.xlsx" }] });
    expect(existsSync(copy)).toBe(true);
  },
  LONG,
);
