import { readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { strFromU8, unzipSync } from "fflate";
import { readXlsx } from "../../src/xlsx/read/read.ts";
import { crosshatch, folderOf } from "../cli/run.ts";
import { workbookBytes } from "../xlsx/workbook-bytes.ts";

import.meta.jest.setTimeout(60_000);

/** Texts that would be more than text in a workbook: formulas, markup, addresses. */
const TEXTS = ['=HYPERLINK("https://elsewhere.example","73.02")', "@SUM(1)", "</t></is></c><c><f>1+1</f></c>", '"&<b>', "https://elsewhere.example/"];
const SHEET = `=1+1 & "<b>`;
const FILE = "& name.xlsx";

const folder = folderOf({
  [FILE]: workbookBytes({
    sheets: [
      {
        name: SHEET,
        cells: [["cylinder", "characteristic", "value", "upper"], ...TEXTS.map((text) => [text, text, 73.09, 73.05]), ["1", "bore", TEXTS[0]!, 73.05]],
      },
    ],
  }),
});
afterAll(() => rmSync(folder, { recursive: true }));

test("the list of findings in a marked copy is text, letter for letter, and leads only to the workbook's own cells", async () => {
  expect((await crosshatch(["check", FILE, "--marked", "marked"], { cwd: folder })).code).toBe(1);
  const bytes = readFileSync(join(folder, "marked", FILE));
  const findings = readXlsx(bytes).sheets.find(({ name }) => name === "Findings")!;
  expect(findings.cells.filter(({ formula }) => formula !== undefined)).toEqual([]);
  const told = findings.cells.map(({ value }) => value).join("\n");
  for (const text of TEXTS) expect(told).toContain(text);
  expect(told).toContain(`'${SHEET}'!C2`);
  const parts = Object.entries(unzipSync(bytes)).map(([name, part]) => [name, strFromU8(part)] as const);
  for (const [name, xml] of parts) expect([name, /TargetMode="External"|<hyperlink [^>]*r:id=/.test(xml)]).toEqual([name, false]);
});
