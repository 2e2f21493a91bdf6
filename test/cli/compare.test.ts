import { readFileSync, rmSync } from "node:fs";
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
  "two worn.csv": `${HEAD}\nA,1,bore,top,73.03,73.08,mm,0.003\nB,1,bore,top,73.08,73.08,mm,0.003\n`,
  "two gaps.csv": [
    "engine,campaign,cylinder,characteristic,position,value,upper,unit,uncertainty",
    ...["A,before,1,bore,top,73.02", "B,before,1,bore,top,73.04", "A,before,2,bore,top,73.02", "B,before,2,bore,top,73.04"],
    ...["A,after,1,bore,top,73.03", "B,after,1,bore,top,73.07", "A,after,2,bore,top,73.02"],
  ]
    .map((row, i) => (i === 0 ? row : `${row},73.08,mm,0.003`))
    .join("\n"),
  "both.csv": "cylinder,characteristic,before,after,unit,uncertainty\n1,bore,73.02,73.05,mm,0.003\n",
  "matters.csv": "characteristic,matters\nbore,0.01\n",
  "there.csv": "mine",
  "comma.csv": "cylinder;characteristic;value;unit;uncertainty\n1;bore;73,05;mm;0,003\n",
  "hostile.csv": `${HEAD}\nA,1,"bore \u001b[31mred\u202e",top,73.02,,mm,0.003\n=1+1,1,skirt,top,73,,mm,0.003\n`,
  "other.csv": "characteristic,value\npin,20\n",
  "head.csv": "part,size\nbore,73\n",
  "open.csv": 'value,characteristic\n1,bore\n"2,bore\n',
  "build.xlsx": book(73.02),
  "worn.xlsx": book(73.05),
  "swept.csv": `${HEAD}\nA,1,bore,top,73.02,,mm,0.003\nA,1,swept volume,,251.23559610552567,,cc,\n`,
  "text.xlsx": "not a workbook",
  "notes.md": "x",
});
afterAll(() => rmSync(folder, { recursive: true }));

const run = (...args: string[]) => crosshatch(["compare", ...args], { cwd: folder });

describe("on screen", () => {
  test("what differs leaves 1 and stands first, after the sentence; what is missing is listed and counted", async () => {
    const { code, out, err } = await run("build.csv", "worn.csv", "--hours", "1000");
    expect({ code, err }).toEqual({ code: 1, err: "" });
    expect(out).toBe(
      [
        "build.csv against worn.csv",
        "  1 of 2 lies beyond its own gauge; hardly one would by chance; 1 remains.",
        "  differs",
        "    engine A, cylinder 2, bore, top  73.020 → 73.050 mm  0.030 larger, which is worse: differs, beyond its gauge (0.0042)",
        "  cannot be told",
        "    engine A, bore, mean of 2 places                      0.0170 larger on average over 2 places: cannot tell, up to 0.093 may hide (-0.1314 to 0.1654 by the scatter; the scatter is poorly known)",
        "    engine A, cylinder 1, bore, top   73.020 → 73.024 mm  0.004 larger, which is worse: cannot tell, up to 0.0075 may hide",
        "  wear",
        "    engine A, cylinder 2, bore, top  grows 0.0300 in 1000 h (0.0258 to 0.0342); at that rate it comes to its limit 73.080 after another 1000 h, at the earliest after 806 h",
        "  not compared",
        "    engine A, cylinder 3, bore, top  none → 73.05  it is measured after only",
        "  note: a life draws the line on as if wear went on as before: measure again before the earliest",
        "  2 of 3 places compared, 1 could not be; of 3 lines 1 differs, 2 cannot be told; nothing is called the same until what matters is typed",
        "",
      ].join("\n"),
    );
  });

  test("a size that was worked out is told of a row that is not compared with no more decimals than it can carry", async () => {
    expect((await run("build.csv", "swept.csv")).out).toContain("swept volume  none → 251.236  it is measured after only");
  });

  test("nothing that differs is no proof of sameness: it leaves 3, and says what may hide", async () => {
    const { code, out, err } = await run("build.csv", "same.csv");
    expect({ code, err }).toEqual({ code: 3, err: "" });
    expect(out).not.toContain("\n  differs");
    expect(out).toContain("None of 2 lies beyond its own gauge; hardly one would by chance.");
    expect(out).toContain("0.003 larger, which is worse: cannot tell, up to 0.0065 may hide");
    expect(out).toMatch(/2 of 2 places compared; of 3 lines 0 differ, 3 cannot be told; nothing is called the same until what matters is typed\n$/);
  });

  test("where all is the same within what matters it leaves 0", async () => {
    const { code, out } = await run("build.csv", "same.csv", "--matters", "0.01");
    expect(code).toBe(0);
    expect(out).toContain("\n  the same within what matters\n    engine A, bore, mean of 2 places");
    expect(out).toContain("0.003 larger, which is worse: the same within 0.01");
    expect((await run("build.csv", "same.csv", "--matters", "matters.csv")).code).toBe(0);
    expect((await run("build.csv", "same.csv", "--matters", "bore=0.001")).code).toBe(3);
  });

  test("workbooks are calculated anew and named by their labels; a sheet that gives no uncertainty takes the one given", async () => {
    const given = await run("build.xlsx", "worn.xlsx");
    expect(given.code).toBe(1);
    expect(given.out).toContain("cylinder 1, Wear  0.02 → 0.05  0.03 larger, which is worse: differs, beyond its gauge (0.0057)");
    expect(given.out).toContain("0.03 larger, which is worse: cannot tell, as no uncertainty is given");
    const all = await run("build.xlsx", "worn.xlsx", "--uncertainty", "0.003");
    expect(all.out).toContain("cylinder 1, bore, Thrust  73.02 → 73.05  0.03 larger, which is worse: differs, beyond its gauge (0.0042)");
    const bores = await run("build.xlsx", "worn.xlsx", "--uncertainty", "0.003", "--uncertainty", "bore=0.1");
    expect(bores.out).toContain("0.03 larger, which is worse: cannot tell, up to 0.15 may hide");
  });

  test("engine against engine, of one file too: differences of size, no wear", async () => {
    for (const files of [["two.csv", "two.csv"], ["two.csv"]]) {
      const { code, out } = await run(...files, "--engines", "A, B", "--hours", "100");
      expect(code).toBe(1);
      expect(out).toMatch(
        /^engine A of two\.csv against engine B of two\.csv\n.*\n {2}differs\n {4}cylinder 1, bore, top {2}A 73\.02, B 73\.04 mm {2}0\.02 larger on engine B: differs, beyond their gauge/,
      );
      expect(out).not.toContain("wear");
      expect(out).toContain("note: one engine each: this judges these two engines, not what was done differently to them");
    }
  });

  test("one file with columns before and after is a comparison in itself", async () => {
    const { code, out } = await run("both.csv");
    expect(code).toBe(1);
    expect(out).toMatch(/^both\.csv, before against after\n {2}1 of 1 lies/);
  });

  test("a decimal comma is read by its locale, and one side may come from standard input", async () => {
    const input = "cylinder;characteristic;value;unit;uncertainty\n1;bore;73,01;mm;0,003\n";
    const { code, out } = await crosshatch(["compare", "-", "comma.csv", "--locale", "de"], { cwd: folder, input });
    expect(code).toBe(1);
    expect(out).toMatch(/^standard input against comma\.csv\n.*\n {2}differs\n {4}cylinder 1, bore {2}73\.01 → 73\.05 mm/);
  });
});

const JUDGED = [
  ...["level", "unit", "n", "by", "degreesOfFreedom", "uncertainty", "commonUncertainty", "lower", "upper", "p", "pAdjusted", "family"],
  ...["matters", "withinMatters", "mayHide", "toSee", "verdict"],
];

describe("as lines of JSON", () => {
  test("one for each line, refused row and wear, then one that sums up", async () => {
    const { code, out } = await run("build.csv", "worn.csv", "--json", "--hours", "1000");
    expect(code).toBe(1);
    const [first, second, mean, wear, other, refused, summary, ...rest] = jsonLines(out);
    expect(first).toMatchObject({
      ...{ kind: "change", engine: "A", cylinder: "2", characteristic: "bore", position: "top", level: "place", family: "places", n: 1, by: "gauge" },
      ...{ unit: "mm", before: 73.02, after: 73.05, change: 0.03, uncertainty: 0.004242641, beyondGauge: true, degreesOfFreedom: null, matters: null },
      ...{ verdict: "differs", direction: "worse", at: { before: ["line 3"], after: ["line 3"] } },
    });
    expect(second).toMatchObject({ kind: "change", verdict: "cannot tell", mayHide: expect.closeTo(0.00749, 5) });
    expect(mean).toMatchObject({ kind: "mean change", level: "mean", characteristic: "bore", n: 2, change: 0.017, by: "scatter", family: "means" });
    for (const line of [first, second, mean]) expect(Object.keys(line!)).toEqual(expect.arrayContaining(JUDGED));
    expect(wear).toMatchObject({ kind: "wear", cylinder: "2", n: 2, useFrom: 0, useTo: 1000, rate: 0.03, limit: 73.08, life: 2000, notBefore: null });
    expect(other).toMatchObject({ kind: "wear", cylinder: "1", distinguishable: false, life: null, notBefore: expect.any(Number) });
    expect(refused).toEqual({
      ...{
        kind: "refused",
        label: "engine A, cylinder 3, bore, top",
        engine: "A",
        cylinder: "3",
        characteristic: "bore",
        position: "top",
        reason: "it is measured after only",
      },
      ...{ before: [], after: [{ value: 73.05, at: "line 4" }] },
    });
    expect(summary).toMatchObject({
      ...{ kind: "summary", between: "build.csv against worn.csv", rows: 3, compared: 2, refused: 1, unread: [] },
      counts: { places: { lines: 2, judged: 2, beyondGauge: 1, expectedByChance: 0.091, differs: 1, sameWithin: 0, cannotTell: 1 }, means: { lines: 1 } },
    });
    expect(rest).toEqual([]);
  });

  test("two engines before and after have differences of changes", async () => {
    const { out } = await run("two.csv", "two worn.csv", "--json");
    const lines = jsonLines(out).filter(({ kind }) => kind === "difference of changes");
    expect(lines).toMatchObject([{ engines: ["A", "B"], cylinder: "1", difference: 0.03, changes: [0.01, 0.04], verdict: "differs" }]);
    expect(Object.keys(lines[0]!)).toEqual(expect.arrayContaining(JUDGED));
  });

  test("the sample holds what its page says", async () => {
    const { code, out } = await crosshatch(["compare", join(SAMPLE, "build.csv"), join(SAMPLE, "strip-down.csv"), "--json"]);
    expect(code).toBe(1);
    const lines = jsonLines(out);
    expect(lines[0]).toMatchObject({ label: "engine A, cylinder 2, bore, top thrust", en: 6.8 });
    expect(lines.at(-1)).toMatchObject({ rows: 38, compared: 32, refused: 6, counts: { places: { beyondGauge: 15, differs: 11 } }, unread: [] });
  });
});

describe("as a table", () => {
  const at = (name: string) => join(folder, name);

  test("every line is a row, the refused ones with their reasons; text is no formula", async () => {
    expect((await run("build.csv", "worn.csv", "--table", "out.csv")).code).toBe(1);
    const [head, ...rows] = readFileSync(at("out.csv"), "utf8").trim().split("\r\n");
    expect(head).toMatch(/^kind,engine,cylinder,characteristic,position,before,after,change,.*,verdict,reason$/);
    expect(rows.map((row) => row.split(",")[0])).toEqual(["change", "change", "mean change", "refused"]);
    expect(rows[0]).toMatch(/^change,A,2,bore,top,73\.02,73\.05,0\.03,,mm,1,gauge,/);
    await run("hostile.csv", "hostile.csv", "--table", "hostile out.csv");
    expect(readFileSync(at("hostile out.csv"), "utf8")).toContain("'=1+1");
  });

  test("two engines in two ways stand side by side in every row, those that only one has and the refused ones with the reason", async () => {
    expect((await run("two gaps.csv", "--table", "two out.csv")).code).toBe(1);
    const [head, ...rows] = readFileSync(at("two out.csv"), "utf8")
      .trim()
      .split("\r\n")
      .map((row) => row.split(","));
    const shown = (row: string[], ...names: string[]) => names.map((name) => row[head!.indexOf(name)]);
    const names = ["kind", "cylinder", "A before", "A after", "A change", "B before", "B after", "B change", "difference", "reason"];
    expect(rows.map((row) => shown(row, ...names))).toEqual([
      ["place", "1", "73.02", "73.03", "0.01", "73.04", "73.07", "0.03", "0.02", ""],
      ["place", "2", "73.02", "73.02", "0", "", "", "", "", "one engine only"],
      ["mean", "", "", "", "0.005", "", "", "", "", "one engine only"],
      ["refused", "2", "", "", "", "73.04", "", "", "", "it is measured before only"],
    ]);
  });

  test("is not written over what is there, unless that is asked for", async () => {
    const again = await run("build.csv", "worn.csv", "--table", "there.csv");
    expect(again).toMatchObject({ code: 2, err: expect.stringContaining("there.csv") });
    expect(readFileSync(at("there.csv"), "utf8")).toBe("mine");
    expect((await run("build.csv", "worn.csv", "--table", "there.csv", "--force")).code).toBe(1);
  });
});

describe("what cannot be read or compared leaves 2", () => {
  test.each([
    [["build.csv", "missing.csv"], "missing.csv is not there"],
    [["head.csv", "build.csv"], "head.csv has in line 1 no heading for the value"],
    [["open.csv", "build.csv"], "open.csv breaks off: in line 3 a quote is opened and never closed"],
    [["build.xlsx", "text.xlsx"], "text.xlsx "],
    [["notes.md", "build.csv"], "notes.md is neither .xlsx, .ods nor .csv"],
    [["build.csv", "other.csv"], "nothing could be compared"],
    [["-", "-"], "only one of the two can come from standard input"],
    [["build.csv"], "nothing could be compared"],
    [
      ["build.csv", "same.csv", "--uncertainty", "bore="],
      "--uncertainty bore= is not understood: it must be a number above 0, or a characteristic and its number",
    ],
    [["build.csv", "same.csv", "--uncertainty", "0.1", "--uncertainty", "0.2"], "--uncertainty 0.1 and 0.2 are both for every length"],
    [["build.csv", "same.csv", "--matters", "little"], "--matters little is not understood"],
    [["build.csv", "same.csv", "--matters", "none.csv"], "--matters none.csv is not there"],
    [["build.csv", "same.csv", "--matters", "head.csv"], "--matters head.csv has in line 1 no headings for the characteristic"],
    [["build.csv", "same.csv", "--hours", "soon"], "--hours soon is no number above 0"],
    [["build.csv", "same.csv", "--uncertainty", "-1"], "--uncertainty -1 is not understood: it must be a number above 0"],
    [["build.csv", "same.csv", "--engines", "A"], "--engines A does not name two engines: it must be A,B"],
  ])("%j", async (args, sentence) => {
    const { code, err } = await run(...args);
    expect(code).toBe(2);
    expect(err).toContain(`crosshatch: ${sentence}`);
  });

  test("both sides are looked at, and JSON names those that could not be read", async () => {
    const { code, out, err } = await run("missing.csv", "text.xlsx", "--json");
    expect(code).toBe(2);
    expect(err.split("\n").filter(Boolean)).toHaveLength(2);
    expect(jsonLines(out)).toMatchObject([
      { kind: "summary", rows: 0, compared: 0, unread: [{ file: "missing.csv", reason: "is not there" }, { file: "text.xlsx" }] },
    ]);
  });

  test("text of files reaches the screen without what steers a terminal", async () => {
    const { out } = await run("hostile.csv", "hostile.csv");
    expect(out).toContain("bore [31mred, top");
  });
});
