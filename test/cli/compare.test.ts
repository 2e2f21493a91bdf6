import { rmSync } from "node:fs";
import { join } from "node:path";
import { root } from "../../src/tools/paths.ts";
import { workbookBytes } from "../xlsx/workbook-bytes.ts";
import { crosshatch, folderOf, jsonLines } from "./run.ts";

const HEAD = "engine,cylinder,characteristic,position,value,upper,unit,uncertainty";
const SAMPLE = join(root, "samples", "compare");

/** A workbook whose stored results are old: two bores with their wear, judged with an uncertainty. */
const book = (top: number): Uint8Array =>
  workbookBytes({
    sheets: [
      {
        name: "Bores",
        cells: [
          ["Cylinder", "Thrust", "Pin", "Wear", "Verdict"],
          [1, top, 73.01, { f: "_xldudf_HATCH_BOREWEAR(B2:C2,73)", v: 99 }, { f: "HATCH.VERDICT(D2,,0.08,0.004)", v: "within" }],
        ],
      },
    ],
  });

const folder = folderOf({
  "build.csv": `${HEAD}\nA,1,bore,top,73.02,73.08,mm,0.003\nA,2,bore,top,73.02,73.08,mm,0.003\n`,
  "worn.csv": `${HEAD}\nA,1,bore,top,73.024,73.08,mm,0.003\nA,2,bore,top,73.05,73.08,mm,0.003\nA,3,bore,top,73.05,73.08,mm,0.003\n`,
  "same.csv": `${HEAD}\nA,1,bore,top,73.023,73.08,mm,0.003\nA,2,bore,top,73.018,73.08,mm,0.003\n`,
  "two.csv": `${HEAD}\nA,1,bore,top,73.02,73.08,mm,0.003\nB,1,bore,top,73.04,73.08,mm,0.003\n`,
  "comma.csv": "cylinder;characteristic;value;unit;uncertainty\n1;bore;73,05;mm;0,003\n",
  "hostile.csv": `${HEAD}\nA,1,"bore \u001b[31mred\u202e",top,73.02,,mm,0.003\n`,
  "other.csv": "characteristic,value\npin,20\n",
  "head.csv": "part,size\nbore,73\n",
  "open.csv": 'value,characteristic\n1,bore\n"2,bore\n',
  "build.xlsx": book(73.02),
  "worn.xlsx": book(73.05),
  "text.xlsx": "not a workbook",
  "notes.md": "x",
});
afterAll(() => rmSync(folder, { recursive: true }));

const run = (...args: string[]) => crosshatch(["compare", ...args], { cwd: folder });

describe("on screen", () => {
  test("real changes leave 1 and stand first, words first; what is missing is listed and counted", async () => {
    const { code, out, err } = await run("build.csv", "worn.csv", "--hours", "1000");
    expect({ code, err }).toEqual({ code: 1, err: "" });
    expect(out).toBe(
      [
        "build.csv against worn.csv",
        "  really changed",
        "    real increase  engine A, cylinder 2, bore, top  73.02 → 73.05 mm  0.03 larger: more than the 0.00424 that the gauge explains (En 7.07)",
        "  what the gauge may explain",
        "    no real change  engine A, cylinder 1, bore, top  73.02 → 73.024 mm  0.004 larger: the gauge explains up to 0.00424 (En 0.943)",
        "  not compared",
        "    refused  engine A, cylinder 3, bore, top  none → 73.05  it is measured after only",
        "  wear",
        "    engine A, cylinder 2, bore, top  grows 0.03 in 1000 h (0.0258 to 0.0342); at that rate it comes to its limit 73.08 after another 1000 h, at the earliest after 803 h",
        "  cylinders taken together",
        "    not shown to differ  A, bore  0.017 larger on average over 2 cylinders (-0.1482 to 0.1822, p 0.4156)",
        "  note: a life draws the line on as if wear went on as before: measure again before the earliest",
        "  4 of 5 rows compared, 1 could not be, 2 characteristics, 1 really changed",
        "",
      ].join("\n"),
    );
  });

  test("nothing real leaves 0", async () => {
    const { code, out, err } = await run("build.csv", "same.csv");
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).not.toContain("really changed\n    ");
    expect(out).toMatch(/4 of 4 rows compared, 2 characteristics, 0 really changed\n$/);
  });

  test("workbooks are calculated anew and named by their labels; a sheet that gives no uncertainty takes the one given", async () => {
    const given = await run("build.xlsx", "worn.xlsx");
    expect(given.code).toBe(1);
    expect(given.out).toContain("real increase  cylinder 1, Wear  0.02 → 0.05  0.03 larger: more than the 0.00566 that the gauge explains");
    expect(given.out).toContain("refused  cylinder 1, bore, Thrust  73.02 → 73.05  no uncertainty is given on either side");
    const all = await run("build.xlsx", "worn.xlsx", "--uncertainty", "0.003");
    expect(all.out).toContain("real increase  cylinder 1, bore, Thrust  73.02 → 73.05");
    expect(all.out).toMatch(/6 of 6 rows compared, 3 characteristics, 2 really changed\n$/);
  });

  test("engine against engine, of one file too", async () => {
    const { code, out } = await run("two.csv", "two.csv", "--engines", "A, B");
    expect(code).toBe(1);
    expect(out).toMatch(
      /^engine A of two\.csv against engine B of two\.csv\n {2}really changed\n {4}real increase {2}engine A, cylinder 1, bore, top {2}73\.02 → 73\.04 mm/,
    );
  });

  test("a decimal comma is read by its locale, and one side may come from standard input", async () => {
    const input = "cylinder;characteristic;value;unit;uncertainty\n1;bore;73,01;mm;0,003\n";
    const { code, out } = await crosshatch(["compare", "-", "comma.csv", "--locale", "de"], { cwd: folder, input });
    expect(code).toBe(1);
    expect(out).toContain("standard input against comma.csv\n  really changed\n    real increase  cylinder 1, bore  73.01 → 73.05 mm");
  });
});

describe("as lines of JSON", () => {
  test("one for each change, refused row and group, then one with the counts", async () => {
    const { code, out } = await run("build.csv", "worn.csv", "--json", "--hours", "1000");
    expect(code).toBe(1);
    const [first, second, refused, group, counts, ...rest] = jsonLines(out);
    expect(first).toMatchObject({
      ...{
        kind: "change",
        verdict: "real increase",
        label: "engine A, cylinder 2, bore, top",
        engine: "A",
        cylinder: "2",
        characteristic: "bore",
        position: "top",
      },
      ...{ unit: "mm", before: 73.02, after: 73.05, change: 0.03, uncertainty: 0.004242641, at: { before: "line 3", after: "line 3" } },
      wear: { hours: 1000, measurings: 2, rate: 0.03, isReal: true, limit: 73.08 },
    });
    expect(second).toMatchObject({ kind: "change", verdict: "no real change" });
    expect(refused).toEqual({
      kind: "refused",
      label: "engine A, cylinder 3, bore, top",
      before: [],
      after: [{ value: 73.05, at: "line 4" }],
      why: "it is measured after only",
    });
    expect(group).toMatchObject({ kind: "group", characteristic: "bore", cylinders: 2, differs: false });
    expect(counts).toEqual({
      ...{ between: "build.csv against worn.csv", rowsIn: 5, compared: 4, refused: 1, changes: 2, real: 1, groups: 1 },
      notes: ["a life draws the line on as if wear went on as before: measure again before the earliest"],
      unread: [],
    });
    expect(rest).toEqual([]);
  });

  test("the sample holds what its page says", async () => {
    const { code, out } = await crosshatch(["compare", join(SAMPLE, "build.csv"), join(SAMPLE, "strip-down.csv"), "--json"]);
    expect(code).toBe(1);
    const lines = jsonLines(out);
    expect(lines[0]).toMatchObject({ label: "engine A, cylinder 2, bore, top thrust", en: 6.8 });
    expect(lines.at(-1)).toMatchObject({ rowsIn: 74, compared: 64, refused: 10, changes: 32, real: 15, groups: 5, unread: [] });
  });
});

describe("what cannot be read or compared leaves 2", () => {
  test.each([
    [["build.csv", "missing.csv"], "missing.csv is not there"],
    [["head.csv", "build.csv"], "head.csv has in line 1 no heading for the value"],
    [["open.csv", "build.csv"], "open.csv breaks off: in line 3 a quote is opened and never closed"],
    [["build.xlsx", "text.xlsx"], "text.xlsx "],
    [["notes.md", "build.csv"], "notes.md is neither .xlsx nor .csv"],
    [["build.csv", "other.csv"], "nothing could be compared"],
    [["-", "-"], "only one of the two can come from standard input"],
    [["build.csv"], "missing required argument 'after'"],
    [["build.csv", "same.csv", "--hours", "soon"], "--hours soon is no number above 0"],
    [["build.csv", "same.csv", "--uncertainty", "-1"], "--uncertainty -1 is no number above 0"],
    [["build.csv", "same.csv", "--engines", "A"], "--engines A does not name two engines: wanted is A,B"],
  ])("%j", async (args, sentence) => {
    const { code, err } = await run(...args);
    expect(code).toBe(2);
    expect(err).toContain(`crosshatch: ${sentence}`);
  });

  test("both sides are looked at, and JSON names those that could not be read", async () => {
    const { code, out, err } = await run("missing.csv", "text.xlsx", "--json");
    expect(code).toBe(2);
    expect(err.split("\n").filter(Boolean)).toHaveLength(2);
    expect(jsonLines(out)).toMatchObject([{ rowsIn: 0, compared: 0, unread: [{ file: "missing.csv", reason: "is not there" }, { file: "text.xlsx" }] }]);
  });

  test("text of files reaches the screen without what steers a terminal", async () => {
    const { out } = await run("hostile.csv", "hostile.csv");
    expect(out).toContain("bore [31mred, top");
  });
});
