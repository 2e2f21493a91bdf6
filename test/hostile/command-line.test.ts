import { createHash } from "node:crypto";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { zipSync } from "fflate";
import { crosshatch, crosshatchProcess, jsonLines, type Ran } from "../cli/run.ts";
import { type CellXml, oneSheet, workbookBytes } from "../xlsx/workbook-bytes.ts";
import { partsOf, zipBytes } from "../xlsx/zip-bytes.ts";
import { compound, kept, list, rows, sheetsOf, spill } from "./made.ts";

import.meta.jest.setTimeout(180_000);

/**
 * The hostile files, one of each kind, as their user would meet them: `crosshatch check`, each alone, then all of them
 * beside good ones in a process of its own. What becomes of the other files of each kind is in corpus.long.ts.
 */
const JUDGED: CellXml[][] = [
  ["Bore", "value", "lower", "upper"],
  [1, 73.09, 73, 73.05],
];
const GOOD = { "good.xlsx": oneSheet(JUDGED), "good.csv": "cylinder,value,upper\n1,73.09,73.05\n" };
const FOUND = "73.09 is over the upper limit 73.05 by 0.04";

const archive = (name: string): Uint8Array => zipBytes([...partsOf({ "xl/workbook.xml": "<workbook/>" }), { name, content: "x" }]);
const withWorkbook = (xml: string): Uint8Array => workbookBytes({ sheets: [], parts: { "xl/workbook.xml": xml } });

/** Those that are refused, and how the sentence begins that says why. */
const REFUSED: Record<string, [content: string | Uint8Array, why: string]> = {
  "corners.xlsx": [rows('<row r="1"><c r="A1"><v>1</v></c></row><row r="1048576"><c r="XFD1048576"><v>1</v></c></row>'), "has too many cells: the sheet"],
  "sheets.xlsx": [sheetsOf(20_000), "has 20,000 sheets, and at most 1,000 are read"],
  "parts.xlsx": [zipBytes(list(20_000, (i) => ({ name: `xl/p${i}.xml`, content: "", stored: true }))), "holds 20,000 parts, and at most"],
  "bomb.xlsx": [zipSync({ "xl/workbook.xml": new Uint8Array(3e8) }), "holds a part xl/workbook.xml that unpacks from "],
  "nested.xlsx": [workbookBytes({ sheets: [{ name: "S", cells: [] }], parts: { "xl/worksheets/sheet1.xml": oneSheet([[1]]) } }), "is damaged: its part"],
  "path.xlsx": [archive("../../escaped.xml"), 'holds a part with the name "../../escaped.xml"'],
  "twice.xlsx": [archive("XL/WORKBOOK.xml"), "holds two parts of the name XL/WORKBOOK.xml"],
  "entity.xlsx": [withWorkbook('<!DOCTYPE w [<!ENTITY x SYSTEM "file:///etc/hostname">]><workbook>&x;</workbook>'), "holds a document type in its part"],
  "deep.xlsx": [oneSheet([[{ raw: "<c>".repeat(100_000) }]]), "nests the elements of its part xl/worksheets/sheet1.xml more than"],
  "nul.xlsx": [oneSheet([[{ raw: '<c r="A1" t="inlineStr"><is><t>a&#0;b</t></is></c>' }]]), "is damaged: its part xl/worksheets/sheet1.xml is not"],
  "encrypted.xlsx": [compound("EncryptedPackage"), "is protected by a password: "],
  "cut.xlsx": [oneSheet(JUDGED).subarray(0, 400), "is cut short or damaged: "],
  "headings.csv": ["value,lower;".repeat(200_000), "has in line 1 no heading for "],
  "long.csv": [`value,upper\n1,2\n${"x".repeat(3e6)}`, "breaks off: the record that begins in line 3 is longer "],
};

const beside = (...cells: CellXml[]): Uint8Array => oneSheet([...JUDGED, [], cells]);

/** Those that are read, and what is told of them beside the reading that is over its limit. */
const READ: Record<string, [content: string | Uint8Array, told: string]> = {
  "spill.xlsx": [beside(spill("SEQUENCE(1048576,16384)")), "note: Not everything in this workbook was calculated. This would fill "],
  "pattern.xlsx": [beside("a".repeat(40), { f: 'REGEXTEST(A4,"(a+)+b")' }), "uses the function REGEXTEST, which is not known here"],
  "circle.xlsx": [beside({ f: "IFERROR(B4,7)" }, { f: "A4" }, { f: "HATCH.VERDICT(A4,,D4)" }, 9), "value holds the error #REF!: correct that cell first"],
  "__proto__.xlsx": [workbookBytes({ sheets: [{ name: "__proto__", cells: JUDGED }] }), "__proto__!B2"],
  "layout.xlsx": [kept("[".repeat(100_000), JUDGED), "note: the saved layout of this workbook is damaged: set it up again"],
  "\u202Egpj.csv": ["cylinder,value,upper\n__proto__,73.09,73.05\n", "cylinder __proto__"],
};

const FILES = [...Object.entries(REFUSED), ...Object.entries(READ)].map(([name, [content]]) => [name, content] as const);
const sandbox = mkdtempSync(join(tmpdir(), "crosshatch-hostile-"));
const work = join(sandbox, "work");
const scratch = join(sandbox, "scratch");
for (const folder of [work, scratch]) mkdirSync(folder);
for (const [name, content] of [...FILES, ...Object.entries(GOOD)]) writeFileSync(join(work, name), content);
afterAll(() => rmSync(sandbox, { recursive: true }));

/** Every file in the sandbox with its content. */
function standing(): Map<string, string> {
  const files = readdirSync(sandbox, { recursive: true, withFileTypes: true }).filter((one) => one.isFile());
  const paths = files.map(({ path, name }) => join(path, name));
  return new Map(paths.map((path) => [path.slice(sandbox.length + 1), createHash("sha256").update(readFileSync(path)).digest("hex")]));
}
const before = standing();

const check = (...args: string[]): Promise<Ran> => crosshatch(["check", ...args], { cwd: work });
const checkApart = (...args: string[]): Promise<Ran> =>
  crosshatchProcess(["check", ...args], { cwd: work, env: { TMPDIR: scratch, TEMP: scratch, TMP: scratch } });

// biome-ignore lint/suspicious/noControlCharactersInRegex: it is what must not be there
const STEERING = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u200e\u200f\u2028-\u202e\u2066-\u2069]/;

/** Sentences, each on a line of its own and for people. */
function expectSentences(err: string): string[] {
  expect(err).not.toMatch(STEERING);
  const lines = err.split("\n").slice(0, -1);
  for (const line of lines) expect(line).toMatch(/^crosshatch: (?!a fault)\S.*[^.]$/);
  expect(err).not.toMatch(/\bat .*:\d+|Error|undefined|\[object /);
  return lines;
}

test.each(Object.keys(REFUSED))("%s is refused in a sentence", async (name) => {
  const { code, err } = await check(name);
  const lines = expectSentences(err);
  expect([code, lines.length]).toEqual([2, 1]);
  expect(lines[0]).toContain(`crosshatch: ${name} ${REFUSED[name]![1]}`);
});

test.each(Object.keys(READ))("%j is read, and what was found is told", async (name) => {
  const { code, out, err } = await check(name);
  expect([code, err]).toEqual([1, ""]);
  expect(out).toContain(FOUND);
  expect(out).toContain(READ[name]![1]);
  expect(out).not.toMatch(STEERING);
});

const ALL = [...FILES.map(([name]) => name), ...Object.keys(GOOD)];
const readable = [...Object.keys(READ), ...Object.keys(GOOD)];

test("all at once: each is told of, the good ones beside them are checked, and nothing is written", async () => {
  const { code, out, err } = await checkApart("--json", ...ALL);
  expect(code).toBe(2);
  expect(expectSentences(err)).toHaveLength(Object.keys(REFUSED).length);
  const lines = jsonLines(out);
  const found = lines.filter(({ sentence }) => sentence === FOUND).map(({ file }) => file);
  expect(found).toEqual(readable);
  const { unread, ...counts } = lines.at(-1) as { unread: { file: string }[]; rowsIn: number; checked: number; refused: number; files: number };
  expect(unread.map(({ file }) => file)).toEqual(Object.keys(REFUSED));
  expect([counts.files, counts.rowsIn]).toEqual([ALL.length, counts.checked + counts.refused]);
  expect(out).not.toMatch(STEERING);
  expect(standing()).toEqual(before);
});

test("a report on all and copies of those that are read stand where they were asked for, and nothing else does", async () => {
  const { code, err } = await checkApart("--report", "page.html", "--marked", "marked", ...ALL);
  expect(code).toBe(2);
  expectSentences(err);
  const after = standing();
  const copies = readable.filter((name) => name.endsWith(".xlsx"));
  const written = [...after.keys()].filter((path) => !before.has(path));
  expect(written.sort()).toEqual([...copies.map((name) => join("work", "marked", name)), join("work", "page.html")].sort());
  for (const [path, hash] of before) expect([path, after.get(path)]).toEqual([path, hash]);
  const page = readFileSync(join(work, "page.html"), "utf8");
  expect(ALL.filter((name) => !page.includes(name.replace("\u202E", "")))).toEqual([]);
  expect(page.split(FOUND).length - 1).toBe(readable.length);
  expect(page.match(STEERING)).toBeNull();
  const again = jsonLines((await check("--json", ...copies.map((name) => join("marked", name)))).out);
  expect(again.filter(({ sentence }) => sentence === FOUND)).toHaveLength(copies.length);
});
