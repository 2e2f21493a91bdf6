import { createHash } from "node:crypto";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "../../src/tools/paths.ts";
import { textOf } from "../report/page.ts";
import { crosshatch, folderOf, jsonLines } from "./run.ts";

const sample = (name: string): Buffer => readFileSync(join(root, "samples", name));
const CSV = "characteristic,value,lower,upper,unit\nbore,73.02,73,73.08,mm\nbore,73.09,73,73.08,mm\n";
const folder = (): string => folderOf({ "build-sheet.xlsx": sample("build-sheet.xlsx"), "readings.csv": CSV, "broken.xlsx": "no workbook" });
const text = (path: string): string => textOf(readFileSync(path, "utf8"));

test("check --report writes one page that stands on its own, beside what it prints", async () => {
  const cwd = folder();
  const { code, out } = await crosshatch(["check", "build-sheet.xlsx", "--report", "out.html"], { cwd });
  expect(code).toBe(1);
  expect(out).toMatch(/over +Bores!C17[\s\S]*\nreport: out\.html\n$/);
  const page = text(join(cwd, "out.html"));
  expect(page).toContain("Judged: 22 within, 4 over. 27 of 27 rows checked. Found beside verdicts: 1 missing reading.");
  expect(page).toContain(`SHA-256 of the file build-sheet.xlsx: ${createHash("sha256").update(sample("build-sheet.xlsx")).digest("hex")}`);
  expect(page).toContain("Bore profile, Bores!C4:D6");
  expect(page).toMatch(/As checked on \d{4}-\d{2}-\d{2} /);
  expect(page).not.toContain("How verdicts are reached");
  await crosshatch(["check", "build-sheet.xlsx", "--report", "all.html", "--details"], { cwd });
  for (const part of ["Findings, worst first", "How verdicts are reached", "Bores!C17"]) expect(text(join(cwd, "all.html"))).toContain(part);
});

test("several inputs stand in one report, one that cannot be read with the reason", async () => {
  const cwd = folder();
  const { code } = await crosshatch(["check", "readings.csv", "broken.xlsx", "--report", "out.html"], { cwd });
  expect(code).toBe(2);
  const page = text(join(cwd, "out.html"));
  expect(page).toMatch(/Summary .* readings\.csv 2 2 0 1 over broken\.xlsx 0 0 0 none Not read in full\./);
  expect(page).toContain("bore line 3 73.09 73.00 to 73.08 −0.01 over");
  expect(page).toMatch(/Not read in full: broken\.xlsx is /);
});

test("with --json the lines stay lines of JSON alone", async () => {
  const cwd = folder();
  const { out } = await crosshatch(["check", "readings.csv", "--json", "--report", "out.html"], { cwd });
  expect(jsonLines(out).at(-1)).toMatchObject({ files: 1, rowsIn: 2 });
  expect(existsSync(join(cwd, "out.html"))).toBe(true);
});

test("what is there is left as it is, and nothing is checked in vain; --force replaces it", async () => {
  const cwd = folder();
  writeFileSync(join(cwd, "out.html"), "mine");
  const refused = await crosshatch(["check", "readings.csv", "--report", "out.html"], { cwd });
  expect(refused).toMatchObject({ code: 2, out: "" });
  expect(refused.err).toContain("out.html is already there and is left as it is");
  expect(readFileSync(join(cwd, "out.html"), "utf8")).toBe("mine");
  expect((await crosshatch(["check", "readings.csv", "--report", "out.html", "--force"], { cwd })).code).toBe(1);
  expect(text(join(cwd, "out.html"))).toContain("Measurement report");
});

test.each([
  [["check", "readings.csv", "--report", "out.txt"], "out.txt ends with neither .html nor .pdf"],
  [["check", "readings.csv", "--report", "nowhere/out.html"], "there is no folder nowhere"],
  [["check", "readings.csv", "--report", "out.pdf", "--paper", "A3"], "--paper A3 is not known: it must be A4 or letter"],
  [["check", "-", "--report", "out.html"], "--report needs files"],
])("%j is refused with a sentence, and nothing is written", async (args, sentence) => {
  const cwd = folder();
  const { code, out, err } = await crosshatch(args, { cwd });
  expect([code, out]).toEqual([2, ""]);
  expect(err).toContain(sentence);
  expect(["out.txt", "out.html", "out.pdf"].some((name) => existsSync(join(cwd, name)))).toBe(false);
});

test("a PDF is made by the browser that is there, on the paper asked for", async () => {
  const cwd = folder();
  const { out, err } = await crosshatch(["check", "build-sheet.xlsx", "--report", "out.pdf", "--paper", "letter"], { cwd });
  expect(err).toBe("");
  expect(out).toContain("report: out.pdf");
  const pdf = readFileSync(join(cwd, "out.pdf")).toString("latin1");
  expect(pdf.startsWith("%PDF-")).toBe(true);
  expect(pdf).toContain("/MediaBox [0 0 612 792]");
  expect(existsSync(join(cwd, "out.html"))).toBe(false);
}, 60_000);

test("without a browser the page is written instead, and it is said what to do with it", async () => {
  const cwd = folder();
  const before = process.env.BROWSER_PATH;
  process.env.BROWSER_PATH = join(cwd, "no-browser");
  try {
    const { code, out, err } = await crosshatch(["check", "readings.csv", "--report", "out.pdf"], { cwd });
    expect(code).toBe(1);
    expect(err).toMatch(/^crosshatch: no PDF could be made: .*\. The report stands in out\.html: open it in a browser and print it from there\n$/);
    expect(out).toContain("report: out.html");
    expect(existsSync(join(cwd, "out.pdf"))).toBe(false);
    expect(text(join(cwd, "out.html"))).toContain("Measurement report");
  } finally {
    if (before === undefined) delete process.env.BROWSER_PATH;
    else process.env.BROWSER_PATH = before;
  }
}, 60_000);
