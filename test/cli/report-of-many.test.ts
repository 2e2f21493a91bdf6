import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { textOf } from "../report/page.ts";
import { workbookBytes } from "../xlsx/workbook-bytes.ts";
import { crosshatch, folderOf } from "./run.ts";

// Runs start threads, and the machine may be busy.
import.meta.jest.setTimeout(120_000);

/** Days as a sheet counts them: 45413 is 2024-05-01. */
const FIRST_DAY = 45_413;

/** An invented engine of the yard, measured again each year, its wear a little more each time. */
const book = (i: number): Uint8Array =>
  workbookBytes({
    sheets: [
      {
        name: "Engine",
        cells: [
          ["Serial number", `E-${i % 4}`],
          ["Measured on", FIRST_DAY + 90 * i],
          ["Unit of length", "mm"],
        ],
      },
      {
        name: "Bores",
        cells: [
          ["Cylinder", "Bore wear", "Upper", "Verdict"],
          [1, 0.05 + i / 500, 0.08, { f: "HATCH.VERDICT(B2,,C2)", v: "" }],
        ],
      },
    ],
  });

const BOOKS = 24;
const files: Record<string, string | Uint8Array> = {
  "cut.xlsx": "no workbook",
  "readings.csv": "engine,characteristic,value,upper\nA,taper,2,1\nA,taper,1,2\n",
};
for (let i = 0; i < BOOKS; i++) files[`year-${String(i).padStart(2, "0")}.xlsx`] = book(i);
const folder = folderOf(files);
afterAll(() => rmSync(folder, { recursive: true }));

const page = async (out: string, ...more: string[]): Promise<string> => {
  await crosshatch(["check", "*.xlsx", "*.csv", "--json", "--report", out, "--force", ...more], { cwd: folder });
  return readFileSync(join(folder, out), "utf8");
};

let whole = "";

test("a report on many files tells the worst engines, what is found most, and the trend over the years", async () => {
  whole = await page("whole.html");
  const text = textOf(whole);
  // 0.05 + i/500 passes 0.08 from the sixteenth on: eight workbooks, two of each engine; one row of the readings.
  expect(text).toContain("26 inputs: 9 findings; 1 not read in full. 26 of 26 rows checked.");
  expect(text).toMatch(/Worst input E-0 2 0 \d \d{4}-\d\d-\d\d year-\d\d\.xlsx/);
  expect(text).toContain("bore wear outside limit 8 8 taper outside limit 1 1");
  expect(whole).toContain('<title id="trend-1-title">Trend: bore wear</title>');
  expect(whole).toContain("In mm. 2024-05-01 E-0: 0.050;");
});

test("the worst have a section each, and of the others it is said that they have none and why one could not be read", () => {
  expect(whole.match(/id="input-\d+"/g)).toHaveLength(20);
  const text = textOf(whole);
  expect(text).toContain("6 others have none. For one of them: crosshatch check FILE --report page.html.");
  expect(text).toMatch(/Not read in full: cut\.xlsx is /);
});

test("a run that was killed and taken up again gives the same page, but for what it says of the ledger", async () => {
  const ledger = join(folder, "ledger.ndjson");
  await crosshatch(["check", "*.xlsx", "*.csv", "--json", "--ledger", "ledger.ndjson"], { cwd: folder });
  const lines = readFileSync(ledger, "utf8").split("\n");
  // As a killed run leaves it: 18 files whole, and half a line.
  writeFileSync(ledger, `${lines.slice(0, 18).join("\n")}\n${lines[18]!.slice(0, 60)}`);
  const resumed = await page("resumed.html", "--ledger", "ledger.ndjson");
  expect(resumed).toContain("of them 18 inputs unchanged and taken from the ledger");
  expect(resumed.replace(", of them 18 inputs unchanged and taken from the ledger", "")).toBe(whole);
});

test("a single file keeps its page, also when the ledger knows it", async () => {
  const run = (...more: string[]) => crosshatch(["check", "year-20.xlsx", "--report", "one.html", "--force", ...more], { cwd: folder });
  await run();
  const one = readFileSync(join(folder, "one.html"), "utf8");
  expect(textOf(one)).toMatch(/Serial number E-0 .* Judged: 1 over\. 1 of 1 row checked\./);
  await run("--ledger", "ledger.ndjson");
  expect(readFileSync(join(folder, "one.html"), "utf8")).toBe(one);
});
