import { spawn } from "node:child_process";
import { readdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { root } from "../../src/tools/paths.ts";
import { workbookBytes } from "../xlsx/workbook-bytes.ts";
import { crosshatch, folderOf, jsonLines } from "./run.ts";

const HEAD = "engine,cylinder,characteristic,position,value,lower,upper,unit,uncertainty";

/** A workbook with the results that its file keeps. */
const book = (clearance: number, stored: [number, string] = [clearance, clearance > 0.04 ? "over" : "within"]): Uint8Array =>
  workbookBytes({
    sheets: [
      {
        name: "Bores",
        cells: [
          ["Cylinder", "Thrust", "Pin", "Skirt", "Clearance", "Verdict", "Lower", "Upper"],
          [
            ...[1, 73.03, 73.02, 73.02 - clearance],
            { f: "_xldudf_HATCH_PISTONCLEARANCE(B2:C2,D2)", v: stored[0] },
            { f: "HATCH.VERDICT(E2,G2,H2)", v: stored[1] },
            ...[0.02, 0.04],
          ],
        ],
      },
    ],
  });

const FILES = {
  "within.csv": `${HEAD}\nA,1,bore,top thrust,73.02,73,73.05,mm,\nA,2,bore,top thrust,73.05,73,73.05,mm,\n`,
  "over.csv": `${HEAD}\nA,1,bore,top thrust,73.06,73,73.05,mm,\nA,2,bore,top thrust,"73,02",73,73.05,mm,\n`,
  "hostile.csv": '\uFEFF"Motor";"Value";"Upper limit"\r\n"A";"73,06";"73,05"\r\n"B \u001b[31mred\u001b[0m\u202e";"0,9";"1"\r\n"C";"x ""y""\r\nz";1\r\n;;\r\n',
  "head.csv": "part,size\nbore,73\n",
  "open.csv": 'value,upper\n1,2\n"3,2\n',
  "empty.csv": "",
  "within.xlsx": book(0.04),
  "over.xlsx": book(0.05),
  "old.xlsx": book(0.05, [99, "within"]),
  "text.xlsx": "not a workbook",
  "cut.xlsx": book(0.03).subarray(0, 300),
  "idle.xlsx": workbookBytes({ sheets: [{ name: "Notes", cells: [["Wash hands"]] }] }),
  "bare.xlsx": workbookBytes({
    sheets: [
      {
        name: "Block",
        cells: [["Bores"], ["Cylinder", "Top thrust", "Top pin"], ...[1, 2, 3].map((cylinder) => [cylinder, 73.01, 73.02])],
      },
    ],
  }),
  "old.xls": "x",
  "notes.md": "x",
};
const folder = folderOf(FILES);
afterAll(() => rmSync(folder, { recursive: true }));

const run = (...args: string[]) => crosshatch(["check", ...args], { cwd: folder });

describe("on screen", () => {
  test("all within leaves 0 and says how many rows that were", async () => {
    expect(await run("within.csv")).toEqual({ code: 0, out: "within.csv\n  2 of 2 rows checked, no findings\n\n", err: "" });
  });

  test("findings leave 1, stand worst first below one another, and rows in are checked or refused", async () => {
    const { code, out, err } = await run("over.csv");
    expect({ code, err }).toEqual({ code: 1, err: "" });
    expect(out).toBe(
      [
        "over.csv",
        "  over     line 2  engine A, cylinder 1, bore, top thrust  73.06 is over the upper limit 73.05 by 0.01",
        '  refused  line 3  engine A, cylinder 2, bore, top thrust  value holds "73,02": a decimal comma is read only when a locale that writes so is given',
        "  1 of 2 rows checked, 1 could not be, 2 findings",
        "",
        "",
      ].join("\n"),
    );
  });

  test("a workbook is calculated anew, whatever its stored results say, and those that say something else are told", async () => {
    expect(await run("within.xlsx")).toMatchObject({ code: 0, err: "" });
    const lines = (await run("old.xlsx")).out.split("\n").map((line) => line.replace(/ +/g, " "));
    expect(lines).toContain(" over Bores!E2 Cylinder 1, Clearance 0.05 is over the upper limit 0.04 by 0.01");
    expect(lines.filter((line) => line.startsWith(" wrong result"))).toEqual([
      expect.stringMatching(
        /^ wrong result Bores!E2 Cylinder 1, Clearance shows 99 where the formula gives 0\.05 from its cells: it has not been calculated since/,
      ),
      expect.stringMatching(/^ wrong result Bores!F2 Cylinder 1 shows within where the formula gives over from its cells: it has not been calculated since/),
    ]);
  });

  test("several files are closed by one line over all", async () => {
    expect((await run("within.csv", "over.csv", "over.xlsx")).out).toMatch(/\n3 files: 4 of 5 rows checked, 1 could not be, 3 findings\n$/);
  });
});

describe("as lines of JSON", () => {
  test("one for each finding, then one with the counts", async () => {
    const { code, out } = await run("--json", "over.csv", "over.xlsx");
    expect(code).toBe(1);
    const [first, second, third, ...rest] = jsonLines(out);
    expect(first).toEqual({
      file: "over.csv",
      kind: "outside limit",
      line: 2,
      label: "engine A, cylinder 1, bore, top thrust",
      value: 73.06,
      lower: 73,
      upper: 73.05,
      margin: -0.01,
      verdict: "over",
      ...{ uncertainty: 0, near: 0, rule: null, unseen: null },
      sentence: "73.06 is over the upper limit 73.05 by 0.01",
    });
    expect(second).toMatchObject({ file: "over.csv", kind: "refused", line: 3, value: "73,02" });
    expect(third).toMatchObject({ file: "over.xlsx", kind: "outside limit", cell: "Bores!E2", value: 0.05, margin: -0.01 });
    expect(rest).toEqual([{ files: 2, rowsIn: 3, checked: 2, refused: 1, findings: 3, unread: [], notes: [] }]);
  });
});

describe("more findings than are put in order", () => {
  // The how manyth line is over by how much goes up and down, so that worse ones keep coming.
  const over = (line: number): number => 1 + ((line * 7919) % 25_000) / 1000;
  const rows = 25_000;
  const input = `value,upper\n${Array.from({ length: rows }, (_, i) => `${over(i + 2)},1\n`).join("")}`;
  const worst = Array.from({ length: rows }, (_, i) => over(i + 2)).sort((a, b) => b - a);

  test("all are told as lines of JSON, the worst 5,000 last and in order", async () => {
    const { code, out } = await crosshatch(["check", "--json", "-"], { input });
    const lines = jsonLines(out);
    const total = lines.pop();
    const values = lines.map(({ value }) => value as number);
    expect([code, total]).toEqual([1, expect.objectContaining({ rowsIn: rows, findings: worst.filter((value) => value > 1).length })]);
    expect(values.slice(-5_000)).toEqual(worst.slice(0, 5_000));
    expect(values.sort((a, b) => b - a)).toEqual(worst.filter((value) => value > 1));
  });

  test("on screen the worst 5,000 stand, and how many more there are", async () => {
    const { out } = await crosshatch(["check", "-"], { input });
    const lines = out.trim().split("\n");
    expect(lines.filter((line) => line.startsWith("  over"))).toHaveLength(5_000);
    expect(lines.at(-2)).toMatch(/^ {2}19,999 more findings are not printed here, none of them worse; crosshatch check --json lists all$/);
    expect(lines.at(-1)).toMatch(/^ {2}25,000 of 25,000 rows checked, 24,999 findings$/);
  });
});

describe("hostile files", () => {
  test("a byte order mark, semicolons, CRLF and quotes are read, a decimal comma by its locale", async () => {
    const { code, out } = await run("--json", "--locale", "de", "hostile.csv");
    expect(code).toBe(1);
    const lines = jsonLines(out);
    expect(lines.map(({ kind, line, value }) => [kind, line, value])).toEqual([
      ["outside limit", 2, 73.06],
      ["refused", 4, 'x "y"\r\nz'],
      [undefined, undefined, undefined],
    ]);
    expect(lines[2]).toMatchObject({ rowsIn: 3, checked: 2, refused: 1 });
  });

  test("text of files reaches neither screen nor JSON with what steers a terminal", async () => {
    // biome-ignore lint/suspicious/noControlCharactersInRegex: it is what must not be there
    const steering = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e]/;
    for (const args of [["hostile.csv"], ["--json", "hostile.csv"]]) {
      const { out, err } = await run(...args);
      expect(out).toContain("red");
      expect(out + err).not.toMatch(steering);
    }
    expect(jsonLines((await run("--json", "hostile.csv")).out)[1]).toMatchObject({ label: "engine B \u001b[31mred\u001b[0m\u202e" });
  });
});

describe("what cannot be read", () => {
  test.each([
    ["text.xlsx", /^crosshatch: text\.xlsx is /],
    ["cut.xlsx", /^crosshatch: cut\.xlsx is /],
    ["gone.csv", /^crosshatch: gone\.csv is not there\n$/],
    ["head.csv", /^crosshatch: head\.csv has in line 1 no heading for the value; /],
    ["empty.csv", /^crosshatch: empty\.csv is empty\n$/],
    ["idle.xlsx", /^crosshatch: idle\.xlsx holds nothing to check: /],
    ["old.xls", /^crosshatch: old\.xls is neither \.xlsx, \.ods nor \.csv: save it as \.xlsx\n$/],
    ["notes.md", /^crosshatch: notes\.md is neither \.xlsx, \.ods nor \.csv\n$/],
    [".", /^crosshatch: \. is a folder: name the files in it\n$/],
  ])("%s is named with the reason and leaves 2", async (file, sentence) => {
    const { code, out, err } = await run(file);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toMatch(sentence);
  });

  test("a workbook of a shop's own without a layout is told how to get one", async () => {
    const { code, err } = await run("bare.xlsx");
    expect(code).toBe(2);
    expect(err).toMatch(
      /^crosshatch: bare\.xlsx holds nothing to check: [^;]+; its sheets look as if they held readings laid out in the shop's own way \(6 readings of bore; cylinders 1, 2, 3\): open it on the bench or in Excel, have a layout proposed under Layout and keep it, and they are checked\n$/,
    );
  });

  test("the others are still checked, and 2 wins over 1", async () => {
    const { code, out, err } = await run("--json", "text.xlsx", "over.csv", "gone.csv", "over.xlsx");
    expect(code).toBe(2);
    expect(err.trim().split("\n")).toHaveLength(2);
    const lines = jsonLines(out);
    expect(lines.slice(0, -1).map(({ file }) => file)).toEqual(["over.csv", "over.csv", "over.xlsx"]);
    expect(lines.at(-1)).toMatchObject({ files: 4, findings: 3, unread: [{ file: "text.xlsx" }, { file: "gone.csv", reason: "is not there" }] });
  });

  test("a file that breaks off is checked as far as it can be read", async () => {
    const { code, out, err } = await run("open.csv");
    expect(code).toBe(2);
    expect(out).toContain("1 of 1 row checked");
    expect(err).toBe("crosshatch: open.csv breaks off: in line 3 a quote is opened and never closed, so nothing from there on can be read\n");
  });
});

describe("around it", () => {
  test("standard input is read as readings", async () => {
    const { code, out } = await crosshatch(["check", "-"], { input: "value;upper\n2;1\n" });
    expect(code).toBe(1);
    expect(out).toMatch(/^standard input\n {2}over {2}line 2 {4}2 is over the upper limit 1 by 1\n/);
  });

  test("an unknown locale, an unknown option and no file at all are refused in a sentence", async () => {
    expect(await run("--locale", "??", "over.csv")).toEqual({
      code: 2,
      out: "",
      err: "crosshatch: ?? is not a locale: it must be a language tag such as de or en-GB. See crosshatch help\n",
    });
    expect(await run("--jsn", "over.csv")).toMatchObject({ code: 2, out: "", err: expect.stringContaining("unknown option '--jsn'") });
    expect(await run()).toMatchObject({ code: 2, out: "", err: "crosshatch: missing required argument 'file'. See crosshatch help\n" });
  });

  test("a reader that goes away ends it quietly, and leaves no unfinished list of what was refused", async () => {
    const child = spawn(process.execPath, [join(root, "src", "cli", "crosshatch.mjs"), "check", "--json", "--refused", "refused.csv", "-"], {
      cwd: folder,
      env: { ...process.env, NODE_OPTIONS: "" },
    });
    let err = "";
    child.stderr.on("data", (chunk: Buffer) => {
      err += chunk;
    });
    child.stdin.on("error", () => {});
    child.stdout.once("data", () => child.stdout.destroy());
    child.stdin.end(`value,upper\n${"2,1\n".repeat(50_000)}`);
    const code = await new Promise((resolve) => child.on("close", resolve));
    expect({ code, err }).toEqual({ code: 0, err: "" });
  });

  test("nothing was written beside the files", () => {
    expect(readdirSync(folder).sort()).toEqual(Object.keys(FILES).sort());
  });
});
