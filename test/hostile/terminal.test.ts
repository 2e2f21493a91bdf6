import { mkdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { shardLine } from "../../src/cli/shard-command.ts";
import { crosshatch, folderOf, type Given, jsonLines } from "../cli/run.ts";
import { workbookBytes } from "../xlsx/workbook-bytes.ts";
import { zipBytes } from "../xlsx/zip-bytes.ts";

import.meta.jest.setTimeout(180_000);

/**
 * What steers a terminal or turns the writing round, in each text that can come from somebody else: a file's
 * name, a sheet's, a heading, a cell, an argument. It is printed without that, and written as an escape in JSON.
 */
const TEXT = "e\u009b31m\u202evil\u007f";
/** Windows has no file names with the first of these. */
const NAME = `${process.platform === "win32" ? "" : "\u001bc\u0007"}e\u009b31m\u202evil`;
const SHOWN = "e31mvil";
// biome-ignore lint/suspicious/noControlCharactersInRegex: it is what must not be there
const STEERING = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/;

const book = (value: number): Uint8Array =>
  workbookBytes({
    sheets: [
      {
        name: TEXT,
        cells: [
          [`cylinder ${TEXT}`, "characteristic", "value", "lower", "upper", "uncertainty"],
          [`_x001B_c${TEXT}`, `bore ${TEXT}`, value, 73, 73.05, 0.001],
          ["2", `bore ${TEXT}`, `_x001B_]0;${TEXT}_x0007_`, 73, 73.05, 0.001],
          [{ f: `nowhere${"\u009b"}+1` }, null, { f: `HATCH.VERDICT("${TEXT}",,D2)` }],
        ],
      },
    ],
  });
const HEAD = "engine,cylinder,characteristic,value,lower,upper,uncertainty";
const readings = (value: number): string => {
  const row = (cylinder: number, reading: number | string): string => `"A\u001bc${TEXT}",${cylinder},bore ${TEXT},${reading},73,73.05,0.001\n`;
  return `${HEAD}\n${row(1, value)}${row(2, value + 0.01)}${row(3, `${TEXT}\u001bc`)}`;
};

const folder = folderOf({
  [`${NAME}.xlsx`]: book(73.09),
  [`${NAME} worn.xlsx`]: book(73.2),
  [`${NAME}.csv`]: readings(73.09),
  [`${NAME} worn.csv`]: readings(73.2),
  [`${NAME} part.xlsx`]: zipBytes([{ name: `../${TEXT}`, content: "x" }]),
  [`${NAME} head.csv`]: `${TEXT},size\n1,2\n`,
  [`${NAME}.ndjson`]: `{"file":"${TEXT}"\n`,
  [`${NAME} there.html`]: "kept",
  [`${NAME} there.csv`]: "kept",
});
mkdirSync(join(folder, `${NAME} copies`, `${NAME}.xlsx`), { recursive: true });
afterAll(() => rmSync(folder, { recursive: true }));

/** Runs the command and gives what it printed, in which nothing steers and the text can be read. */
async function printed(args: readonly string[], given: Given = {}): Promise<{ out: string; err: string }> {
  const { out, err } = await crosshatch(args, { cwd: folder, ...given });
  expect([args.join(" "), (out + err).match(STEERING)]).toEqual([args.join(" "), null]);
  return { out, err };
}

describe("on standard output", () => {
  test.each([".xlsx", ".csv"])("findings of %s: file, place, label, words", async (kind) => {
    const { out } = await printed(["check", `${NAME}${kind}`]);
    expect(out).toContain(`${SHOWN}${kind}\n`);
    expect(out).toMatch(/over .*bore e31mvil/);
    expect(out).toMatch(/refused .*e31mvil.*value holds the text ".*e31mvil/);
    if (kind === ".xlsx") expect(out).toContain(`  note: '${SHOWN}'!A4: this formula cannot be read`);
    else expect(out).toContain(`engine Ac${SHOWN}, cylinder 1`);
  });

  test("a marked copy, a report, and a file that is unchanged", async () => {
    const { out } = await printed(["check", `${NAME}.xlsx`, "--marked", `${NAME} marked`, "--report", `${NAME} new.html`]);
    expect(out).toMatch(/marked copy: .*e31mvil marked.*e31mvil\.xlsx/);
    expect(out).toMatch(/\nreport: .*e31mvil new\.html/);
    const ledger = ["check", `${NAME}.csv`, "--ledger", `${NAME} kept.ndjson`];
    await printed(ledger);
    expect((await printed(ledger)).out).toMatch(/e31mvil\.csv\n {2}unchanged since/);
  });

  test("an empty build sheet", async () => {
    expect((await printed(["new", `${NAME} new.xlsx`, "--cylinders", "1"])).out).toMatch(/^.*e31mvil new\.xlsx: an empty/);
  });

  test("a comparison", async () => {
    const { out } = await printed(["compare", `${NAME}.csv`, `${NAME} worn.csv`, "--hours", "100"]);
    expect(out).toMatch(/^.*e31mvil\.csv against .*e31mvil worn\.csv\n/);
    for (const table of ["differs", "not compared", "wear"]) expect(out).toContain(`\n  ${table}\n`);
    expect(out.split(SHOWN).length).toBeGreaterThan(6);
    const none = await printed(["compare", `${NAME}.csv`, `${NAME} worn.csv`, "--engines", `${TEXT},B`]);
    expect(none.out).toContain(` is of engine ${SHOWN}\n`);
  });

  test("a value that a formula comes to", async () => {
    expect((await printed(["calc", `CHAR(27)&"c${TEXT}"`])).out).toBe(`c${SHOWN}\n`);
  });
});

describe("in JSON, where nothing is lost", () => {
  test.each([
    ["as it is sorted", []],
    ["as it is found", ["--as-found"]],
  ])("findings and counts, %s", async (_, more) => {
    const { out } = await printed(["check", "--json", ...more, `${NAME}.csv`, `${NAME}.xlsx`, `${NAME} part.xlsx`]);
    const lines = jsonLines(out);
    expect(lines).toContainEqual(expect.objectContaining({ file: `${NAME}.csv`, label: expect.stringContaining(`engine A\u001bc${TEXT}`) }));
    expect(lines).toContainEqual(expect.objectContaining({ file: `${NAME}.csv`, value: `${TEXT}\u001bc`, sentence: expect.stringContaining(TEXT) }));
    expect(lines).toContainEqual(expect.objectContaining({ file: `${NAME}.xlsx`, cell: `'${TEXT}'!C2` }));
    expect(lines.at(-1)).toMatchObject({ unread: [{ file: `${NAME} part.xlsx` }], notes: [{ file: `${NAME}.xlsx`, note: expect.stringContaining(TEXT) }] });
  });

  test("a comparison, and one that cannot be made", async () => {
    const lines = jsonLines((await printed(["compare", "--json", `${NAME}.csv`, `${NAME} worn.csv`])).out);
    for (const kind of ["change", "mean change"]) expect(lines).toContainEqual(expect.objectContaining({ kind, characteristic: `bore ${TEXT}` }));
    expect(lines).toContainEqual(expect.objectContaining({ kind: "refused", label: expect.stringContaining(TEXT) }));
    expect(lines.at(-1)).toMatchObject({ between: `${NAME}.csv against ${NAME} worn.csv` });
    const { out } = await printed(["compare", "--json", `${NAME}.csv`, `${NAME} head.csv`]);
    expect(jsonLines(out)[0]).toMatchObject({ unread: [{ file: `${NAME} head.csv` }] });
  });

  test("answers of calc", async () => {
    const input = [`"${TEXT}"&CHAR(27)\n`, `NOSUCH${TEXT}(1)\n`];
    const [value, fault] = jsonLines((await printed(["calc", "-"], { input })).out);
    expect(value).toMatchObject({ formula: input[0]!.trim(), value: `${TEXT}\u001b` });
    expect(fault).toMatchObject({ formula: input[1]!.trim(), fault: expect.any(String) });
  });
});

test("names for another program are passed on as they are, for a terminal without what steers it", async () => {
  const { out } = await crosshatch(["shard", "1/1", `${NAME}.csv`, "--null"], { cwd: folder });
  expect(out).toBe(`${NAME}.csv\0`);
  expect(shardLine(TEXT, { isNull: false, isTerminal: true })).toBe(`${SHOWN}\n`);
  expect(shardLine(TEXT, { isNull: false, isTerminal: false })).toBe(`${TEXT}\n`);
});

describe("on standard error", () => {
  test.each<[string, string[]]>([
    ["a file that is refused, with the reason", ["check", `${NAME} part.xlsx`]],
    ["one without the headings that are wanted", ["check", `${NAME} head.csv`]],
    ["one that is not there", ["check", `${NAME} gone.csv`]],
    ["one with another ending", ["check", `${NAME}.ndjson`]],
    ["a damaged ledger", ["check", `${NAME}.csv`, "--ledger", `${NAME}.ndjson`]],
    ["a copy that cannot be written", ["check", `${NAME}.xlsx`, "--marked", `${NAME} copies`, "--force"]],
    ["a report that is there", ["check", `${NAME}.csv`, "--report", `${NAME} there.html`]],
    ["a list that is there", ["check", `${NAME}.csv`, "--refused", `${NAME} there.csv`]],
    ["a query without an answer", ["check", "--from", `SELECT * FROM '${TEXT}.parquet'`]],
    ["sides that cannot be read", ["compare", `${NAME}.csv`, `${NAME} head.csv`]],
    ["a formula that comes to nothing", ["calc", `HATCH.LENGTH(1,"${TEXT}")`]],
    ["a command, an option and a number that are none", [TEXT]],
    ["an option that is none", ["check", `--${TEXT}`]],
    ["a number that is none", ["check", `${NAME}.csv`, "--threads", TEXT]],
    ["a function that is none", ["help", TEXT]],
    ["a share that is none", ["shard", TEXT, `${NAME}.csv`]],
  ])("%s", async (_, args) => {
    const { err } = await printed(args);
    expect(err).toMatch(/^crosshatch: .*e31mvil/i);
    expect(err.trim().split("\n")).toHaveLength(1);
  });

  test("why there is no PDF", async () => {
    const { err } = await printed(["check", `${NAME}.csv`, "--report", `${NAME}.pdf`], { env: { BROWSER_PATH: join(folder, `${NAME} browser`) } });
    expect(err).toMatch(/^crosshatch: no PDF could be made: .*e31mvil browser.*The report stands in .*e31mvil\.html: /);
  });
});
