import { readFileSync } from "node:fs";
import { join } from "node:path";
import { layoutSamples } from "../../samples/layouts/layouts.ts";
import { checkWorkbook } from "../../src/check/check-workbook.ts";
import type { Finding } from "../../src/check/finding.ts";
import { openWorkbook } from "../../src/hosts/file.ts";
import { isUnread, loadMapping, type Mapping } from "../../src/layout/mapping.ts";
import { proposeLayout } from "../../src/layout/propose.ts";
import { root } from "../../src/tools/paths.ts";
import { crosshatch, jsonLines } from "../cli/run.ts";

const FILES = ["one-row-a-cylinder.xlsx", "one-row-a-reading.xlsx", "cylinders-across.xlsx"];
const path = (file: string): string => join(root, "samples", "layouts", file);

/** Worked out by hand from the readings in samples/layouts/layouts.ts, and listed in samples/layouts/README.md. */
const FINDINGS = [
  "likely slip | engine A, cylinder 3, ring end gap, top | 3.2 is far from 0.34, the middle of similar readings: is the decimal point in its place? It causes 1 other finding: over",
  "likely slip | engine B, cylinder 1, bore, middle pin | 7.302 is far from 73.02, the middle of similar readings: is the decimal point in its place? It causes 4 other findings: refused at a result, refused: engine B, cylinder 1, taper, refused: engine B, cylinder 1, out-of-round, refused at a result",
  "missing reading | engine A, cylinder 1, ring end gap, second | the reading is still blank",
  "outside limit | engine A, cylinder 2, out-of-round | 0.025 is over the upper limit 0.02 by 0.005",
  "outside limit | engine A, cylinder 2, taper | 0.025 is over the upper limit 0.02 by 0.005",
  "outside limit | engine A, cylinder 3, ring end gap, top | 3.2 is over the upper limit 0.55 by 2.65",
  "outside limit | engine B, compression spread | 2.8 is over the upper limit 1.5 by 1.3",
  "outside limit | engine B, cylinder 2, compression pressure | 9.2 is under the lower limit 10 by 0.8",
  "refused | engine B, cylinder 1, bore wear | BOREWEAR: readings 7.302 is about 1/10 of the middle reading 73.015: is a decimal point wrong? (row 2, column 2)",
  "refused | engine B, cylinder 1, out-of-round | OUTOFROUND: readings 7.302 is about 1/10 of the middle reading 73.015: is a decimal point wrong? (row 2, column 2)",
  "refused | engine B, cylinder 1, piston clearance | PISTONCLEARANCE: readings 7.302 is about 1/10 of the middle reading 73.015: is a decimal point wrong? (row 2, column 2)",
  "refused | engine B, cylinder 1, taper | TAPER: readings 7.302 is about 1/10 of the middle reading 73.015: is a decimal point wrong? (row 2, column 2)",
  "refused | engine B, cylinder 2, piston clearance | PISTONCLEARANCE: skirt 2.8735 is about 1/25.4 of bore 73.015: is one in inches, the other in millimetres?",
  'refused | engine B, cylinder 3, bore, middle pin | value holds the text "73,02": a decimal comma is not read, type it with this sheet\'s decimal sign',
];

/** Where a result stands is the layout's own. */
const withoutPlaces = (text: string): string => text.replace(/ at (?:'[^']+'|\w+)!\$?[A-Z]+\$?\d+/g, " at a result");

const briefly = ({ kind, label, sentence }: Pick<Finding, "kind" | "label" | "sentence">): string => `${kind} | ${label} | ${withoutPlaces(sentence)}`;

/** Everything but the place, which is the layout's own. */
const placeless = ({ cell: _, ...finding }: Finding): Omit<Finding, "cell"> => JSON.parse(withoutPlaces(JSON.stringify(finding)));

async function opened(file: string) {
  const host = await openWorkbook(readFileSync(path(file)), file);
  const kept = await loadMapping(host);
  if (kept === null || isUnread(kept)) throw new Error(`${file} keeps no layout`);
  return { snapshot: await host.read(), kept };
}

test.each(FILES)("%s: the kept layout gives the findings that were planted", async (file) => {
  const { snapshot, kept } = await opened(file);
  const { findings, rowsIn, checked, refused } = checkWorkbook(snapshot, kept);
  expect(findings.map(briefly).sort()).toEqual(FINDINGS);
  expect({ rowsIn, checked, refused }).toEqual({ rowsIn: 41, checked: 35, refused: 6 });
});

test("the same numbers give the same findings in every layout, to the last detail but the cell", async () => {
  const all = await Promise.all(
    FILES.map(async (file) => {
      const { snapshot, kept } = await opened(file);
      const { findings, ...counts } = checkWorkbook(snapshot, kept);
      return { ...counts, findings: findings.map(placeless).sort((a, b) => (briefly(a) < briefly(b) ? -1 : 1)) };
    }),
  );
  expect(all[1]).toEqual(all[0]);
  expect(all[2]).toEqual(all[0]);
});

test.each(FILES)("%s: header recognition proposes what is kept, without a doubt but for what it leaves out", async (file) => {
  const { snapshot, kept } = await opened(file);
  const proposals = proposeLayout(snapshot);
  expect({ version: 1, ranges: proposals.map(({ range }) => range) }).toEqual(kept);
  expect(proposals.flatMap(({ doubts }) => doubts).filter((doubt) => !doubt.startsWith("left out"))).toEqual([]);
});

test.each(FILES)("%s: without the layout nothing is judged, as nothing is guessed", async (file) => {
  const { snapshot } = await opened(file);
  expect(checkWorkbook(snapshot)).toMatchObject({ findings: [], rowsIn: 0, inputs: 0 });
  const none: Mapping = { version: 1, ranges: [] };
  expect(checkWorkbook(snapshot, none)).toMatchObject({ findings: [], rowsIn: 0, inputs: 0 });
});

test("the command line reads the layouts that the workbooks keep", async () => {
  const { code, out, err } = await crosshatch(["check", "--json", ...FILES.map(path)]);
  expect({ code, err }).toEqual({ code: 1, err: "" });
  const lines = jsonLines(out) as unknown as (Finding & { file: string })[];
  expect(lines.pop()).toMatchObject({ files: 3, rowsIn: 123, checked: 105, refused: 18, findings: 42 });
  for (const file of FILES) {
    const own = lines.filter((line) => line.file.endsWith(file));
    expect(own.map(briefly).sort()).toEqual(FINDINGS);
  }
});

test("the files are the ones that the samples' program makes", async () => {
  const made = await layoutSamples();
  expect([...made.keys()].sort()).toEqual([...FILES].sort());
  for (const [file, bytes] of made) expect([file, Buffer.from(bytes).equals(readFileSync(path(file)))]).toEqual([file, true]);
});
